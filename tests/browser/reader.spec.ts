/** A reader, who changes nothing: stored results at once, a hand calculation, a figure by keys, and calculation sheets on paper. */
import type { Page } from 'playwright'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { cautionLine } from '../../shared/contracts/index.js'
import { type Bench, openBench } from './bench.js'
import { hasWords, pdfPages } from './pdf-text.js'
import { cellAt, listen, untilSaid, untilSaved, untilState } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterEach(() => bench.leaveAll())
afterAll(() => bench.close())

const worked = '/notebooks/worked-sizing'

const untilValue = (page: Page, cell: string, name: string, shown: RegExp) =>
  expect
    .poll(() => cellAt(page, cell).locator(`.value[data-name="${name}"] dd`).textContent(), { timeout: 20_000 })
    .toMatch(shown)

describe('a reader of the worked sizing', { timeout: 240_000 }, () => {
  it('finds stored results, opens a hand calculation, reads a figure by keys, prints it, switches units, and has changed nothing', async () => {
    await bench.untilStored(worked, 'mass-figure')
    const before = await bench.stored(worked)
    const { page, complaints } = await bench.visit(worked)
    // What the server drew: nothing had time to compute it.
    expect(await cellAt(page, 'closure').locator('.value[data-name="grossMass"] dd').textContent()).toMatch(/^1.637/)
    expect(await page.locator('.caution').textContent()).toContain(cautionLine)
    await untilSaved(page)
    await untilState(page, 'mass-figure', 'current')
    await listen(page)

    const fold = cellAt(page, 'closure').locator('.lines-fold')
    await fold.locator('summary').focus()
    await page.keyboard.press('Enter')
    const line = fold.locator('.hand-line[data-name="grossMass"] [role="math"]')
    await line.waitFor()
    expect(await line.getAttribute('aria-label')).toContain('gross mass')

    const paper = cellAt(page, 'mass-figure').locator('.figure-paper')
    await paper.scrollIntoViewIfNeeded()
    await paper.locator('svg path, svg rect').first().waitFor({ state: 'attached' })
    await paper.focus()
    await untilSaid(page, 'Arrow keys read the values')
    await page.keyboard.press('ArrowRight')
    await paper.locator('.figure-reading:not([hidden])', { hasText: 'kg' }).waitFor()
    await page.keyboard.press('Escape')

    await page.emulateMedia({ media: 'print' })
    for (const format of ['A4', 'Letter']) {
      const pages = pdfPages(await page.pdf({ format }))
      expect(pages.length).toBeGreaterThan(3)
      for (const [index, sheet] of pages.entries()) {
        const where = `page ${index + 1} of ${pages.length} on ${format}`
        expect(hasWords(sheet, 'Worked sizing of the Skerry Link'), `title on ${where}`).toBe(true)
        expect(hasWords(sheet, 'Archipelago health board (invented)'), `project on ${where}`).toBe(true)
        expect(hasWords(sheet, cautionLine), `caution on ${where}`).toBe(true)
        expect(hasWords(sheet, 'REFERENCE CALCULATION RESULT'), `heads of the columns on ${where}`).toBe(true)
      }
      const all = pages.join('')
      expect(hasWords(all, 'What the shuttle must do')).toBe(true)
      expect(hasWords(all, 'gross mass 1 637 kg')).toBe(true)
      expect(all).not.toContain('Computeall')
    }

    await page.emulateMedia({ media: 'screen' })
    await page.getByRole('group', { name: 'Units' }).getByRole('button', { name: 'aviation' }).click()
    await untilSaid(page, 'Units: aviation.')
    await untilValue(page, 'closure', 'grossMass', /^3.609 lb/)
    await untilValue(page, 'needs', 'range', /^45\.90 nmi/)
    expect(await cellAt(page, 'needs').locator('.reference').textContent()).toContain('21.60 to 64.79')
    await expect
      .poll(async () => (await line.getAttribute('aria-label'))?.replaceAll('\u202f', ' '))
      .toContain('3 609 lb')
    await paper.locator('text', { hasText: /lb$/ }).first().waitFor({ state: 'attached' })
    await page.getByRole('button', { name: 'Side drawer' }).click()
    await page.locator('#drawer-register td', { hasText: /^881\.8.lb/ }).waitFor()
    await page.reload()
    await untilValue(page, 'closure', 'grossMass', /^3.609 lb/)
    await page.emulateMedia({ media: 'print' })
    const printed = pdfPages(await page.pdf({ format: 'A4' }))
    for (const sheet of printed) expect(hasWords(sheet, 'RESULT, AVIATION UNITS')).toBe(true)
    expect(hasWords(printed.join(''), 'gross mass 3 609 lb')).toBe(true)

    expect(await bench.stored(worked)).toEqual(before)
    expect(complaints).toEqual([])
  })
})

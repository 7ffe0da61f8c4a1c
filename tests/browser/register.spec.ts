/** The register and the requirements in the drawer: one page, as an engineer works through what the sheet rests on. */
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { serious } from './axe.js'
import { type Bench, openBench } from './bench.js'
import { untilSaved, untilState, untilValue } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterAll(() => bench.close())

const hostile = `<img src=x onerror="document.title='taken'">\u202e${'long'.repeat(40)}`
const cells = {
  needs: [
    "const payload = assumption('payload', 400 * u.kg, { unit: 'kg', range: [300 * u.kg, 500 * u.kg], source: 'brief', owner: 'masses' })",
    "const packEnergy = assumption('packEnergy', 235 * u.Wh / u.kg, { unit: 'Wh/kg', distribution: { normal: 10 * u.Wh / u.kg } })",
    `const share = assumption('share', 0.25, { source: ${JSON.stringify(hostile)} })`,
  ].join('\n'),
  sums: [
    'const empty = 1200 * u.kg',
    'const gross = empty + payload / (1 - share)',
    "requirement('Heaviest', { actual: gross, atMost: 1800 * u.kg, unit: 'kg', paragraph: '2.1', means: 'analysis', owner: 'masses' })",
  ].join('\n'),
}

const names = (page: Page) => page.locator('.register tbody th').allTextContents()
const button = (page: Page, field: string, name: string) =>
  page.locator('.register').getByRole('button', { name: new RegExp(`^${field} of ${name}:`) })
const plain = (text: string | null) => (text ?? '').replace(/[\u00a0\u202f]/g, ' ')
const focusedLabel = (page: Page) => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))

async function write(page: Page, field: string, name: string, text: string, key = 'Enter'): Promise<void> {
  await button(page, field, name).click()
  await page.keyboard.press('Control+a')
  await page.keyboard.insertText(text)
  await page.keyboard.press(key)
}

describe('the register in a browser', () => {
  it('sorts, filters, changes the source in place and takes it back; requirements follow', async () => {
    const path = await bench.notebook('Register', cells)
    const { page, complaints } = await bench.visit(`${path}#register`)
    await untilSaved(page)
    await untilState(page, 'sums', 'current')
    const count = page.locator('.register-count')
    await count.filter({ hasText: '3 assumptions, 1 without a source.' }).waitFor()
    expect(await page.locator('.register tbody a[href="#cell-needs"]').count()).toBe(6)
    expect(await page.locator('.register tbody a[href="#cell-sums"]').count()).toBe(2)
    const table = plain(await page.locator('.register tbody').textContent())
    for (const words of ['range 300 kg to 500 kg', 'normal, deviation 10 Wh/kg', 'no source', hostile])
      expect(table).toContain(words)
    expect(await page.locator('.register img').count()).toBe(0)

    // Sorting, by keyboard; the head keeps the focus.
    const head = page.locator('.register thead').getByRole('button', { name: 'Assumption' })
    await head.press('Enter')
    expect(await names(page)).toEqual(['packEnergy', 'payload', 'share'])
    await page.keyboard.press('Enter')
    expect(await names(page)).toEqual(['share', 'payload', 'packEnergy'])
    expect(await page.locator('.register [aria-sort="descending"]').textContent()).toContain('Assumption')
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Assumption')

    // Filtering.
    await page.getByRole('searchbox', { name: /Show assumptions/ }).fill('MASSES')
    expect(await names(page)).toEqual(['payload'])
    expect(await count.textContent()).toContain('1 shown')
    await page.keyboard.press('Escape')
    expect(await names(page)).toHaveLength(3)
    const unsourced = page.getByRole('checkbox', { name: 'without a source (1)' })
    await unsourced.check()
    expect(await names(page)).toEqual(['packEnergy'])
    await unsourced.uncheck()

    // A value: refused with a sentence, written, computed, taken back as one step.
    await write(page, 'value', 'payload', '440 km')
    const refusal = page.locator('.in-place-refusal')
    await refusal.filter({ hasText: '"440 km" is in m, not in kg. Accepted is a number in kg' }).waitFor()
    await page.keyboard.press('Control+a')
    await page.keyboard.insertText('420')
    await page.keyboard.press('Enter')
    await untilValue(page, 'sums', 'gross', /^1.760/)
    await button(page, 'value', 'payload').filter({ hasText: '420' }).waitFor()
    await expect.poll(() => focusedLabel(page)).toContain('value of payload: 420')
    await untilSaved(page)
    expect((await bench.stored(path)).cells[0]?.source[0]).toBe(cells.needs.split('\n')[0]?.replace('400', '420'))
    await page.locator('#drawer-tab-requirements').click()
    const status = page.locator('.requirements-view tbody')
    await status.filter({ hasText: 'met, at risk: less than 5 % to spare' }).waitFor()
    const row = plain(await status.textContent())
    for (const words of ['Heaviest', '2.1', 'analysis', '1 760 kg', 'at most 1 800 kg', '40 kg (2.2 %)', 'masses'])
      expect(row).toContain(words)
    await page.getByRole('button', { name: 'Work out worst corner and P90' }).click()
    // The payload at its greatest: 1200 + 500 / 0.75. The distribution does not reach this requirement.
    await status.filter({ hasText: /67.kg, not met/ }).waitFor()
    await status.filter({ hasText: /40.kg; met in 100 % of samples/ }).waitFor()
    expect(await serious(page, '#drawer')).toEqual([])
    await page.keyboard.press('Control+z')
    await untilValue(page, 'sums', 'gross', /^1.733/)
    await page.locator('.requirements-state', { hasText: 'of values that have changed since' }).waitFor()
    await page.locator('#drawer-tab-register').click()
    await button(page, 'value', 'payload').filter({ hasText: '400' }).waitFor()

    // Escape forgets, and leaves the drawer open.
    await write(page, 'owner', 'payload', 'nobody', 'Escape')
    expect(await button(page, 'owner', 'payload').textContent()).toBe('masses')
    expect(await page.locator('#drawer').isVisible()).toBe(true)

    // Range, distribution and unit, in the words in which they stand there; each one step.
    await write(page, 'range', 'payload', '500 to 300')
    await refusal.filter({ hasText: '"500 to 300" does not rise' }).waitFor()
    await page.keyboard.press('Control+a')
    await page.keyboard.insertText('350 to 450')
    await page.keyboard.press('Enter')
    await button(page, 'range', 'payload')
      .filter({ hasText: /range 350.kg to 450.kg/ })
      .waitFor()
    await write(page, 'distribution', 'share', 'triangular, 0.2 to 0.4')
    await button(page, 'distribution', 'share').filter({ hasText: 'triangular, 0.2 to 0.4' }).waitFor()
    await write(page, 'unit', 'packEnergy', 'kWh/kg')
    await button(page, 'value', 'packEnergy')
      .filter({ hasText: /0.235.kWh\/kg/ })
      .waitFor()
    await untilSaved(page)
    const [first = '', second = '', third = ''] = (await bench.stored(path)).cells[0]?.source ?? []
    expect(first).toContain("range: [350 * u.kg, 450 * u.kg], source: 'brief'")
    expect(second).toContain("{ unit: 'kWh/kg', distribution: { normal: 10 * u.Wh / u.kg } })")
    expect(third).toMatch(/, distribution: \{ triangular: \[0\.2, 0\.4\] \} \}\)$/)
    for (let steps = 0; steps < 3; steps += 1) await page.locator('.bar').getByRole('button', { name: 'Undo' }).click()
    await button(page, 'range', 'payload')
      .filter({ hasText: /300.kg to 500.kg/ })
      .waitFor()

    // What is being typed stays, caret and all, while the table is drawn anew by another person's edit.
    const other = await bench.visit(`${path}#register`)
    await untilSaved(other.page)
    await button(page, 'note', 'payload').click()
    await page.keyboard.insertText('half')
    await page.keyboard.press('ArrowLeft')
    await write(other.page, 'source', 'packEnergy', hostile)
    await count.filter({ hasText: 'every one with a source' }).waitFor()
    await page.keyboard.insertText('-')
    expect(await page.locator('.in-place input').inputValue()).toBe('hal-f')
    await page.keyboard.press('Enter')
    await button(page, 'note', 'payload').filter({ hasText: 'hal-f' }).waitFor()
    expect(await page.locator('.register img').count()).toBe(0)

    // Everything is there after a reload, on a narrow and dark page too.
    await untilSaved(page)
    await page.reload()
    await untilState(page, 'sums', 'current')
    await button(page, 'source', 'packEnergy').filter({ hasText: hostile }).waitFor()
    await page.goto(new URL(`${path}#requirements`, bench.address).href)
    await page.locator('#drawer').getByRole('tab', { name: 'Requirements', selected: true }).waitFor()
    await page.goto(new URL(`${path}#register`, bench.address).href)
    await button(page, 'source', 'packEnergy').waitFor()
    await page.emulateMedia({ colorScheme: 'dark' })
    await page.setViewportSize({ width: 360, height: 800 })
    expect(await serious(page, '#drawer')).toEqual([])
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360)
    expect(await page.title()).not.toBe('taken')
    expect([...complaints, ...other.complaints]).toEqual([])
  }, 120_000)
})

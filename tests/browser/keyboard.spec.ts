/** Everything by keyboard, and nothing that keeps people out. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { type Bench, openBench } from './bench.js'
import { cellAt, edit, leave, untilSaved, untilState } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterEach(() => bench.leaveAll())
afterAll(() => bench.close())

const cells = async (page: Page) =>
  page.locator('.cell').evaluateAll((all) => all.map((cell) => (cell as HTMLElement).dataset.cell))

/** Presses Tab until the focus is on a button that reads so. */
async function tabTo(page: Page, label: string): Promise<void> {
  for (let presses = 0; presses < 60; presses += 1) {
    await page.keyboard.press('Tab')
    if ((await page.evaluate(() => document.activeElement?.textContent)) === label) return
  }
  throw new Error(`the Tab key does not come to "${label}"`)
}

describe('the keyboard alone', () => {
  it('adds, writes, moves and removes a cell, and undoes it', async () => {
    const path = await bench.notebook('Keys', { a: 'const a = 1', b: 'const b = 2' })
    const { page, complaints } = await bench.visit(path)
    await untilSaved(page)
    await cellAt(page, 'a').focus()
    await tabTo(page, 'Add sizing')
    await page.keyboard.press('Enter')
    await page.waitForFunction(() => document.activeElement?.closest('.surface') !== null)
    await page.keyboard.insertText('const added = a + 10')
    await leave(page)
    const added = (await cells(page))[1] ?? ''
    expect(await cells(page)).toEqual(['a', added, 'b'])
    await untilState(page, added, 'current')
    await tabTo(page, 'Down')
    await page.keyboard.press('Enter')
    expect(await cells(page)).toEqual(['a', 'b', added])
    await cellAt(page, added).focus()
    await tabTo(page, 'Remove')
    await page.keyboard.press('Enter')
    expect(await cells(page)).toEqual(['a', 'b'])
    await page.keyboard.press('Control+z')
    await page.waitForFunction(() => document.querySelectorAll('.cell').length === 3)
    await page.keyboard.press('Control+Shift+z')
    await page.waitForFunction(() => document.querySelectorAll('.cell').length === 2)
    expect(complaints).toEqual([])
  })

  it('edits the title, which a second browser sees', async () => {
    const path = await bench.notebook('Before', { a: 'const a = 1' })
    const { page } = await bench.visit(path)
    const other = await bench.visit(path)
    await untilSaved(page)
    await tabTo(page, 'Edit title')
    await page.keyboard.press('Enter')
    await page.keyboard.press('Control+a')
    await page.keyboard.type('After')
    await page.keyboard.press('Enter')
    await other.page.locator('h1', { hasText: 'After' }).waitFor()
    expect(await page.title()).toContain('After')
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Edit title')
  })

  it('shows where the focus is', async () => {
    const { page } = await bench.visit(await bench.notebook('Focus', { a: 'const a = 1' }))
    await untilSaved(page)
    await tabTo(page, 'Compute all')
    const outline = await page.evaluate(() => getComputedStyle(document.activeElement ?? document.body).outlineStyle)
    expect(outline).not.toBe('none')
  })

  it('says states and errors aloud', async () => {
    const { page } = await bench.visit(await bench.notebook('Aloud', { a: 'const a = 1' }))
    await untilSaved(page)
    await edit(page, 'a')
    await page.keyboard.press('Control+a')
    await page.keyboard.insertText("throw new Error('no wing')")
    await page.locator('.announcements', { hasText: 'no wing' }).waitFor({ state: 'attached', timeout: 30_000 })
    await page.keyboard.press('Escape')
  })
})

describe('axe', () => {
  const serious = async (page: Page) => {
    const { violations } = await new AxeBuilder({ page }).analyze()
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 160)).join(' | ')}`)
  }

  it('finds nothing serious on the list page', async () => {
    const { page, complaints } = await bench.visit('/')
    expect(await serious(page)).toEqual([])
    expect(complaints).toEqual([])
  })

  it('finds nothing serious on a sheet, reading and editing', async () => {
    const { page } = await bench.visit('/notebooks/worked-sizing')
    await untilSaved(page)
    await untilState(page, 'closure', 'current')
    expect(await serious(page)).toEqual([])
    await edit(page, 'needs')
    expect(await serious(page)).toEqual([])
  })
})

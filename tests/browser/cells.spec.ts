/** Editing the sheet: cells added, moved, split, joined, numbered and searched, each in one step of undo. One page serves many steps. */
import { readFile } from 'node:fs/promises'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { type Bench, openBench } from './bench.js'
import {
  addBelow,
  cellAt,
  cellIds,
  cellNumbers,
  drag,
  leave,
  listen,
  more,
  pressOn,
  splitAtLine,
  untilSaid,
  untilSaved,
  untilState,
} from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterEach(() => bench.leaveAll())
afterAll(() => bench.close())

const three = { a: 'const a = 1\nconst b = 2\nconst c = 3', d: 'const d = a + 1', e: 'const e = 5' }

describe('cells', () => {
  it('are added, moved, split, joined, copied and turned by keys, keep their numbers, and undo takes back one step each', async () => {
    const path = await bench.notebook('Cells', three)
    const { page, complaints } = await bench.visit(path)
    const other = await bench.visit(path)
    await untilSaved(page)
    await untilSaved(other.page)
    await listen(page)
    const undo = async (step: string) => {
      await page.keyboard.press('Control+z')
      await untilSaid(page, `Undone: ${step}.`)
    }
    const sources = async () => {
      await untilSaved(page)
      return (await bench.stored(path)).cells.map((cell) => cell.source.join('\n'))
    }

    const added = await addBelow(page, 'a', 'const f = 6')
    expect(await cellNumbers(page)).toEqual(['1', '1a', '2', '3'])
    await pressOn(page, added, 'Alt+ArrowDown')
    await pressOn(page, added, 'Alt+ArrowDown')
    expect(await cellNumbers(page)).toEqual(['1', '2', '3', '1a'])
    await untilSaid(page, 'Cell 1a is now below cell 3.')
    await undo('moving cell 1a')
    expect(await cellNumbers(page)).toEqual(['1', '2', '1a', '3'])
    await pressOn(page, added, 'Delete')
    await page.locator('.notice', { hasText: 'Cell 1a removed; Undo brings it back.' }).waitFor()
    expect(await cellIds(page)).toEqual(['a', 'd', 'e'])

    await splitAtLine(page, 'a', 2)
    const lower = (await cellIds(page))[1] ?? ''
    await page.waitForFunction(
      (cell) => document.querySelector(`[data-cell="${cell}"] .surface`)?.contains(document.activeElement) === true,
      lower,
    )
    await page.keyboard.insertText('// the caret stayed\n')
    await leave(page)
    expect((await sources()).slice(0, 2)).toEqual(['const a = 1', '// the caret stayed\nconst b = 2\nconst c = 3'])
    expect(await cellNumbers(page)).toEqual(['1', '1b', '2', '3'])
    await untilState(page, lower, 'current')
    await undo('typing')
    await undo('splitting cell 1')
    expect((await sources())[0]).toBe(three.a)

    await pressOn(page, 'a', 'Control+Alt+j')
    expect(await sources()).toEqual([`${three.a}\n\n${three.d}`, three.e])
    await undo('joining cells 1 and 2')
    expect(await sources()).toEqual(Object.values(three))

    await more(page, 'e', 'duplicate')
    await more(page, 'e', 'kind')
    await page.locator('[data-cell="e"][data-kind="rationale"]').waitFor()
    await pressOn(page, 'd', 'Control+Alt+j')
    await page.locator('.notice', { hasText: 'only cells of one kind can be joined' }).waitFor()
    expect(await cellNumbers(page)).toEqual(['1', '2', '3', '4'])
    await pressOn(page, 'e', 'Alt+ArrowUp')
    await page.getByRole('button', { name: 'Renumber cells' }).click()
    expect(await cellNumbers(page)).toEqual(['1', '2', '3', '4'])
    await untilSaid(page, 'Cells are numbered 1 to 4.')
    await other.page
      .locator('.cell:nth-child(2)[data-cell="e"][data-kind="rationale"] > .number', { hasText: '2' })
      .waitFor()
    for (const step of ['renumbering', 'moving cell 3', 'changing the kind of cell 3', 'duplicating cell 3'])
      await undo(step)
    expect(await cellIds(page)).toEqual(['a', 'd', 'e'])
    await untilSaved(page)
    await page.reload()
    expect(await cellNumbers(page)).toEqual(['1', '2', '3'])
    expect(complaints).toEqual([])
  }, 180_000)

  it('are dragged by their grip, and Escape leaves them where they were', async () => {
    const path = await bench.notebook('Dragged', three)
    const { page, complaints } = await bench.visit(path)
    await untilSaved(page)
    await drag(page, 'e', 'a', async () => {
      await page.locator('.drop-line').waitFor()
      await page.keyboard.press('Escape')
      await page.locator('.drop-line').waitFor({ state: 'detached' })
    })
    expect(await cellIds(page)).toEqual(['a', 'd', 'e'])
    await drag(page, 'e', 'a', async () => undefined)
    expect(await cellIds(page)).toEqual(['e', 'a', 'd'])
    expect(await cellNumbers(page)).toEqual(['3', '1', '2'])
    await untilSaved(page)
    expect((await bench.stored(path)).cells.map((cell) => cell.id)).toEqual(['e', 'a', 'd'])
    expect(complaints).toEqual([])
  })

  it('are found by search, which opens what is folded and ends on the cell', async () => {
    const { page, complaints } = await bench.visit('/notebooks/worked-sizing')
    await untilSaved(page)
    await page.keyboard.press('Control+Alt+f')
    await page.keyboard.type('figureOfMerit')
    await page.locator('.search .count', { hasText: /^1 of \d+$/ }).waitFor()
    const found = page.locator('.source-fold[open] [data-found]')
    await found.waitFor()
    expect(await found.textContent()).toContain('figureOfMerit')
    const cell = await found.evaluate((line) => line.closest<HTMLElement>('.cell')?.dataset.cell)
    await page.keyboard.press('Enter')
    await page.locator('.search .count', { hasText: /^2 of/ }).waitFor()
    await page.keyboard.press('Shift+Enter')
    await page.keyboard.press('Escape')
    expect(await page.evaluate(() => (document.activeElement as HTMLElement).dataset.cell)).toBe(cell)
    expect(await page.locator('[data-found]').count()).toBe(0)
    await page.keyboard.press('ArrowLeft')
    expect(
      await cellAt(page, cell ?? '')
        .locator('.source-fold')
        .getAttribute('open'),
    ).toBeNull()
    await page.getByRole('button', { name: 'Open all' }).click()
    expect(await page.locator('.source-fold:not([open])').count()).toBe(0)
    await page.getByRole('button', { name: 'Search' }).click()
    await page.keyboard.press('Control+a')
    await page.keyboard.type('no such words')
    await page.locator('.search .count', { hasText: 'not found' }).waitFor()
    expect(complaints).toEqual([])
  })
})

describe('the title block', () => {
  it('is written in place, seen by others, kept, undone, and never replaces what was not seen', async () => {
    const path = await bench.notebook('Title block', { a: 'const a = 1' })
    const { page, complaints } = await bench.visit(path)
    const other = await bench.visit(path)
    await untilSaved(page)
    await untilSaved(other.page)
    const checked = (at: typeof page) => at.locator('[data-field="checked"] dd:not(.record)')
    await page.getByRole('button', { name: 'Edit fields' }).click()
    await page.getByLabel('Checked', { exact: true }).fill('R. Marsh')
    await page.getByLabel('Date', { exact: true }).fill('3 May')
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Edit fields' }).waitFor()
    await checked(other.page).filter({ hasText: 'R. Marsh' }).waitFor()
    await page.reload()
    expect(await checked(page).textContent()).toBe('R. Marsh')
    await untilSaved(page)

    await checked(page).dblclick()
    await page.keyboard.press('Control+a')
    await page.keyboard.type('S. Fell')
    await page.keyboard.press('Enter')
    await checked(other.page).filter({ hasText: 'S. Fell' }).waitFor()
    await page.getByRole('button', { name: 'Undo' }).click()
    await checked(other.page).filter({ hasText: 'R. Marsh' }).waitFor()

    await checked(page).dblclick()
    await page.keyboard.press('Control+a')
    await page.keyboard.type('Mine')
    await fetch(new URL(`/api${path}/title-block`, bench.address), {
      method: 'PATCH',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ field: 'checked', from: 'R. Marsh', to: 'Theirs' }),
    })
    await page.keyboard.press('Enter')
    const refusal = page.locator('[data-field="checked"] [role="alert"]')
    await refusal.filter({ hasText: 'was changed to "Theirs"' }).waitFor()
    expect(await page.getByLabel('Checked', { exact: true }).inputValue()).toBe('Mine')
    await page.keyboard.press('Enter')
    await checked(other.page).filter({ hasText: 'Mine' }).waitFor()
    expect(complaints.filter((words) => !words.includes('409'))).toEqual([])
  }, 120_000)
})

describe('the notebook file', () => {
  it('is exported from the sheet, with numbers and title block', async () => {
    const path = await bench.notebook('Exported', { a: 'const a = 1', b: 'const b = 2' })
    const { page } = await bench.visit(path)
    await untilSaved(page)
    await addBelow(page, 'a', 'const c = 3')
    await untilSaved(page)
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Export file' }).click(),
    ])
    const file = JSON.parse(await readFile(await download.path(), 'utf8'))
    expect(file.cells.map((cell: { number?: string }) => cell.number)).toEqual(['1', '1a', '2'])
  })
})

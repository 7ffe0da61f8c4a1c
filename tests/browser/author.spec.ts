/** The author's first hour, once with the pointer and once by keyboard alone: begin, write, mend a unit, draw, undo, come back. */
import type { Page } from 'playwright'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { type Bench, openBench } from './bench.js'
import {
  addBelow,
  cellAt,
  cellIds,
  leave,
  listen,
  untilSaid,
  untilSaved,
  untilState,
  untilValue,
} from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterEach(() => bench.leaveAll())
afterAll(() => bench.close())

const patience = 60_000
const rationale = '## Why eight rotors\n\nAny one may fail, so that each carries *one eighth* of the thrust $T$.'
const wrong = `// Disk area
const radius = assumption('radius', 1.3 * u.m, { unit: 'm' })
const area = result('area', 8 * Math.PI * radius ** 2, { unit: 'm2' })
const sum = area + 3 * u.kg`
const drawing = `const drawn = figure.line({ caption: 'Disk area against radius.', x: { label: 'radius', unit: 'm', values: [1 * u.m, 1.3 * u.m, 1.6 * u.m] }, y: { label: 'area', unit: 'm2' }, series: [{ label: 'eight rotors', values: [25.1, 42.5, 64.3] }], })`

/** How a person does the steps that pointer and keyboard do differently. */
interface Hand {
  begin(page: Page, title: string): Promise<void>
  addFirst(page: Page, kind: 'rationale' | 'sizing'): Promise<void>
  reopen(page: Page, cell: string): Promise<void>
  undo(page: Page): Promise<void>
}

const pointer: Hand = {
  async begin(page, title) {
    await page.getByLabel('Title of a new notebook').fill(title)
    await page.getByRole('button', { name: 'Begin' }).click()
  },
  addFirst: (page, kind) =>
    page
      .locator('.sheet-end')
      .getByRole('button', { name: `Add ${kind}` })
      .click(),
  reopen: (page, cell) => cellAt(page, cell).locator('.source').dblclick(),
  undo: (page) => page.getByRole('button', { name: 'Undo' }).click(),
}

const keyboard: Hand = {
  async begin(page, title) {
    await tabTo(page, (element) => element.id === 'new-title')
    await page.keyboard.type(title)
    await page.keyboard.press('Enter')
  },
  async addFirst(page, kind) {
    await tabTo(page, (element, label) => element.textContent === label, `Add ${kind}`)
    await page.keyboard.press('Enter')
  },
  async reopen(page, cell) {
    await tabTo(page, (element, id) => element.dataset.cell === id, cell, 'Shift+Tab')
    await page.keyboard.press('Enter')
  },
  undo: (page) => page.keyboard.press('Control+z'),
}

/** Presses Tab (or another key) until the focus is on what is looked for. */
async function tabTo(
  page: Page,
  is: (element: HTMLElement, wanted: string) => boolean,
  wanted = '',
  key = 'Tab',
): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    const there = await page.evaluate(
      ([test, text]) => {
        const element = document.activeElement
        return (
          element instanceof HTMLElement &&
          new Function('element', 'wanted', `return (${test})(element, wanted)`)(element, text)
        )
      },
      [String(is), wanted] as const,
    )
    if (there) return
    await page.keyboard.press(key)
  }
  throw new Error(`the ${key} key does not come to what was looked for (${wanted || String(is)})`)
}

const inEditor = (page: Page) =>
  page.waitForFunction(() => document.activeElement?.closest('.surface') != null, undefined, { timeout: patience })

async function firstHour(hand: Hand): Promise<void> {
  const { page, complaints } = await bench.visit('/')
  await hand.begin(page, 'Tern Watch')
  await page.waitForURL('**/notebooks/*')
  await untilSaved(page)
  await listen(page)
  await hand.addFirst(page, 'rationale')
  await inEditor(page)
  await page.keyboard.insertText(rationale)
  await leave(page)
  const about = (await cellIds(page)).at(-1) ?? ''
  await cellAt(page, about).locator('.prose em', { hasText: 'one eighth' }).waitFor({ timeout: patience })
  expect(await cellAt(page, about).locator('.prose math').count()).toBe(1)

  await hand.addFirst(page, 'sizing')
  await inEditor(page)
  await page.keyboard.insertText(wrong)
  await leave(page)
  const disk = (await cellIds(page)).at(-1) ?? ''
  const finding = cellAt(page, disk).locator('.finding')
  await finding.filter({ hasText: 'line 4' }).waitFor({ timeout: patience })
  expect(await finding.first().textContent()).toContain('Cannot add')
  await hand.reopen(page, disk)
  await inEditor(page)
  await page.keyboard.press('Control+End')
  for (const _ of 'kg') await page.keyboard.press('Backspace')
  await page.keyboard.insertText('m2')
  await leave(page)
  await finding.first().waitFor({ state: 'detached', timeout: patience })
  await untilValue(page, disk, 'sum', /^45\.47/)

  const figure = await addBelow(page, disk, drawing)
  await cellAt(page, figure).locator('.figure-paper svg path').first().waitFor({ state: 'attached', timeout: patience })
  expect(await cellAt(page, figure).locator('figcaption').textContent()).toContain('Disk area against radius.')
  await page.keyboard.press('Delete')
  await untilSaid(page, 'removed; Undo brings it back.')
  expect(await cellIds(page)).not.toContain(figure)
  await hand.undo(page)
  await untilSaid(page, 'Undone: removing cell')
  await untilState(page, figure, 'current')
  await untilSaved(page)

  const seen = await cellIds(page)
  await bench.untilStored(new URL(page.url()).pathname, figure)
  await page.reload()
  expect(await cellIds(page)).toEqual(seen)
  await untilValue(page, disk, 'sum', /^45\.47/)
  expect(await page.locator('h1').textContent()).toBe('Tern Watch')
  expect(await cellAt(page, about).locator('.prose').textContent()).toContain('one eighth')
  expect(await cellAt(page, figure).locator('.figure-paper svg').count()).toBe(1)
  expect(complaints).toEqual([])
}

describe('the author', { timeout: 240_000 }, () => {
  it('begins a notebook, writes three cells, mends a unit, undoes, and finds all of it after a reload', () =>
    firstHour(pointer))
  it('does the same by keyboard alone', () => firstHour(keyboard))
})

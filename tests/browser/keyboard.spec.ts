/** Everything by keyboard, and nothing that keeps people out. */
import type { Page } from 'playwright'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { serious } from './axe.js'
import { type Bench, type Journey, openBench } from './bench.js'
import { cellAt, cellIds, edit, leave, untilSaved, untilState } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterAll(() => bench.close())

/** Presses Tab until the focus is on a button that reads so. */
async function tabTo(page: Page, label: string): Promise<void> {
  for (let presses = 0; presses < 60; presses += 1) {
    await page.keyboard.press('Tab')
    if ((await page.evaluate(() => document.activeElement?.textContent)) === label) return
  }
  throw new Error(`the Tab key does not come to "${label}"`)
}

/** A figure, so that there is something to stop at. */
const drawn = `// A figure
const mass = assumption('mass', 1600 * u.kg, { unit: 'kg' })
const twice = result('twice', 2 * mass, { unit: 'kg' })
const drawn = figure.massBreakdown({ masses: { mass, twice }, caption: 'Bars.' })`

describe('the keyboard alone', () => {
  let path: string
  let journey: Journey
  beforeAll(async () => {
    path = await bench.notebook('Keys', { a: 'const a = 1', b: 'const b = 2', drawn })
    journey = await bench.visit(path)
    await untilSaved(journey.page)
  }, 60_000)
  afterAll(async () => {
    expect(journey.complaints).toEqual([])
    await bench.leaveAll()
  })

  it('shows where the focus is, at every stop of the Tab key and in the search', async () => {
    const { page } = journey
    await untilState(page, 'drawn', 'current')
    await cellAt(page, 'drawn').locator('.figure-paper svg').waitFor({ timeout: 30_000 })
    const stops: string[] = []
    for (let presses = 0; presses < 80; presses += 1) {
      await page.keyboard.press('Tab')
      const stop = await page.evaluate(() => {
        const at = document.activeElement ?? document.body
        const { outlineStyle, outlineWidth } = getComputedStyle(at)
        const shown = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2
        return {
          name: `${at.localName} ${at.className} ${at.textContent?.slice(0, 20)}`,
          shown,
          body: at === document.body,
        }
      })
      if (stop.body) break
      expect(stop, stop.name).toMatchObject({ shown: true })
      stops.push(stop.name)
    }
    for (const words of ['Words and keys', 'figure-paper', 'Full cautions', 'Export file', 'Hand calculation'])
      expect(stops.join('; ')).toContain(words)
    await page.keyboard.press('Control+Alt+f')
    const field = page.getByLabel('Search in the notebook')
    expect(await field.evaluate((input) => getComputedStyle(input).outlineStyle)).not.toBe('none')
    await page.keyboard.type('zeppelin')
    await page.locator('.announcements', { hasText: 'not found in source' }).waitFor({ state: 'attached' })
    await page.keyboard.press('Escape')
  })

  it('edits the title, which a second browser sees', async () => {
    const { page } = journey
    const other = await bench.visit(path)
    await page.locator('.bar a').first().focus()
    await tabTo(page, 'Edit title')
    await page.keyboard.press('Enter')
    await page.keyboard.press('Control+a')
    await page.keyboard.type('After')
    await page.keyboard.press('Enter')
    await other.page.locator('h1', { hasText: 'After' }).waitFor()
    expect(await page.title()).toContain('After')
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Edit title')
    await other.context.close()
  })

  it('adds, writes, moves and removes a cell, and undoes it', async () => {
    const { page } = journey
    await cellAt(page, 'a').focus()
    await tabTo(page, 'Add sizing')
    await page.keyboard.press('Enter')
    await page.waitForFunction(() => document.activeElement?.closest('.surface') !== null)
    await page.keyboard.insertText('const added = a + 10')
    await leave(page)
    const added = (await cellIds(page))[1] ?? ''
    expect(await cellIds(page)).toEqual(['a', added, 'b', 'drawn'])
    await untilState(page, added, 'current')
    await tabTo(page, 'Down')
    await page.keyboard.press('Enter')
    expect(await cellIds(page)).toEqual(['a', 'b', added, 'drawn'])
    await cellAt(page, added).focus()
    await tabTo(page, 'Remove')
    await page.keyboard.press('Enter')
    expect(await cellIds(page)).toEqual(['a', 'b', 'drawn'])
    await page.keyboard.press('Control+z')
    await page.waitForFunction(() => document.querySelectorAll('.cell').length === 4)
    await page.keyboard.press('Control+Shift+z')
    await page.waitForFunction(() => document.querySelectorAll('.cell').length === 3)
  })

  it('says states and errors aloud', async () => {
    const { page } = journey
    await edit(page, 'a')
    await page.keyboard.press('Control+a')
    await page.keyboard.insertText("throw new Error('no wing')")
    await page.locator('.announcements', { hasText: 'no wing' }).waitFor({ state: 'attached', timeout: 30_000 })
    await page.keyboard.press('Escape')
  })
})

describe('axe', () => {
  afterEach(() => bench.leaveAll())

  it('finds nothing serious on the list, the words and keys and the cautions, light, dark and narrow', async () => {
    const { page, complaints } = await bench.visit('/')
    for (const path of ['/', '/words', '/cautions']) {
      await page.goto(new URL(path, bench.address).href)
      expect(await serious(page), path).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      await page.setViewportSize({ width: 360, height: 800 })
      expect(await serious(page), `${path}, dark and narrow`).toEqual([])
      expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBeLessThanOrEqual(360)
      await page.emulateMedia({ colorScheme: 'light' })
      await page.setViewportSize({ width: 1280, height: 1000 })
    }
    expect(complaints).toEqual([])
  }, 120_000)

  it('finds nothing serious on a sheet, reading, searching and editing', async () => {
    const { page } = await bench.visit('/notebooks/worked-sizing')
    await untilSaved(page)
    await untilState(page, 'closure', 'current')
    expect(await serious(page)).toEqual([])
    await page.keyboard.press('Control+Alt+f')
    await page.getByLabel('Search in the notebook').fill('mass')
    expect(await serious(page, '.search')).toEqual([])
    await page.keyboard.press('Escape')
    await edit(page, 'needs')
    expect(await serious(page, '[data-cell="needs"]')).toEqual([])
  })
})

/** A reader follows numbers: hand calculations that stay open and print, figures read by pointer and by keys. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Bench, type Journey, openBench } from './bench.js'
import { cellAt, untilSaved, untilState } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterAll(() => bench.close())

const source = `const count = assumption('count', 8)
const radius = assumption('radius', 1.3 * u.m, { unit: 'm' })
const area = result('area', count * Math.PI * radius ** 2, { unit: 'm^2', symbol: 'A' })
const speeds = [40 * u.mps, 50 * u.mps, 60 * u.mps]
const drawn = figure.line({
  caption: 'Power.', x: { label: 'airspeed', unit: 'm/s', values: speeds }, y: { label: 'power', unit: 'kW' },
  series: [{ label: 'clean', values: [50 * u.kW, 60 * u.kW, 80 * u.kW] }],
})`
const line = 'area = count · π · radius^2 = 8 · π · (1.3 m)^2 = 42.47 m²'

describe('a reader follows numbers', () => {
  let path: string
  let journey: Journey
  beforeAll(async () => {
    path = await bench.notebook('Reading', { disk: source, other: 'const twice = 2 * area' })
    journey = await bench.visit(path)
    await untilSaved(journey.page)
    await untilState(journey.page, 'disk', 'current')
    await bench.untilStored(path, 'other')
  }, 60_000)
  afterAll(() => expect(journey.complaints).toEqual([]))

  it('reads a figure by pointer and by keys, and leaves it with Escape', async () => {
    const { page } = journey
    const paper = cellAt(page, 'disk').locator('.figure-paper')
    await paper.locator('svg path').first().waitFor({ state: 'attached', timeout: 30_000 })
    const shown = async () => {
      const values = paper.locator('.figure-reading:not([hidden])')
      return (await values.count()) === 0
        ? null
        : (await values.locator('> *').allTextContents()).map((text) => text.replaceAll('\u202f', ' '))
    }
    await paper.scrollIntoViewIfNeeded()
    const box = await paper.boundingBox()
    await page.mouse.move((box?.x ?? 0) + 60, (box?.y ?? 0) + 150)
    await expect.poll(shown, { timeout: 20_000 }).toEqual(['airspeed 40 m/s', 'clean: 50 kW'])
    await page.mouse.move(2, 2)
    await expect.poll(shown).toBeNull()
    await paper.focus()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('End')
    await expect.poll(shown).toEqual(['clean', 'airspeed 60 m/s, power 80 kW'])
    await page.keyboard.press('Escape')
    await expect.poll(shown).toBeNull()
    expect(await paper.evaluate((element) => element === document.activeElement)).toBe(true)
  })

  it('opens a hand calculation, finds it open again, and prints it; a folded one does not print', async () => {
    const { page } = journey
    const fold = cellAt(page, 'disk').locator('.lines-fold')
    await fold.locator('summary').click()
    const words = async () =>
      (await fold.locator('.hand-line[data-name="area"] [role="math"]').getAttribute('aria-label'))?.replaceAll(
        '\u202f',
        ' ',
      )
    await expect.poll(words, { timeout: 20_000 }).toBe(line)
    await page.reload()
    await untilSaved(page)
    expect(await fold.evaluate((details: HTMLDetailsElement) => details.open)).toBe(true)
    await page.emulateMedia({ media: 'print' })
    expect(await fold.isVisible()).toBe(true)
    expect(await cellAt(page, 'other').locator('.lines-fold').isVisible()).toBe(false)
  })

  it('reads a hand calculation without script', async () => {
    const { page } = await bench.visit(path, { javaScriptEnabled: false })
    await cellAt(page, 'disk').locator('.lines-fold summary').click()
    const math = cellAt(page, 'disk').locator('.hand-line[data-name="area"] [role="math"]')
    expect(await math.isVisible()).toBe(true)
    expect(await math.getAttribute('aria-label')).toContain('π')
  })
})

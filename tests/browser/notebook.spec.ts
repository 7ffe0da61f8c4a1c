/** The first hour of an engineer: open, change a number, see the aircraft close again, lose nothing. */
import { readFile } from 'node:fs/promises'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { type Bench, openBench } from './bench.js'
import { cellAt, edit, rewrite, shownValue, untilSaved, untilState, untilValue } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterEach(() => bench.leaveAll())
afterAll(() => bench.close())

const worked = '/notebooks/worked-sizing'

describe('the worked sizing in a browser', () => {
  it('opens with its numbers, before any script has run', async () => {
    const first = await bench.visit(worked)
    await untilState(first.page, 'closure', 'current')
    await bench.untilStored(worked, 'closure')
    const { page } = await bench.visit(worked, { javaScriptEnabled: false })
    expect(await page.locator('[data-cell="closure"] .value[data-name="grossMass"] dd').textContent()).toMatch(/^1.637/)
    expect(await page.locator('.caution').textContent()).toContain('Not a basis for flight')
  })

  it('closes again and moves a figure when the payload is changed by typing, and undo takes it back', async () => {
    const { page, complaints } = await bench.visit(worked)
    await untilSaved(page)
    const figure = () => cellAt(page, 'mass-figure').locator('.figures svg').first().innerHTML()
    const before = await figure()
    const { cells } = await bench.stored(worked)
    const source = cells.find((cell) => cell.id === 'needs')?.source.join('\n') ?? ''
    await rewrite(page, 'needs', source.replace('400 * u.kg', '440 * u.kg'))
    // 0.766 per cent of gross mass for one of payload: ten per cent more payload is about 1765 kg.
    await untilValue(page, 'closure', 'grossMass', /^1.7\d\d/)
    await untilState(page, 'mass-figure', 'current')
    // Drawn in its turn, a moment after its numbers.
    await expect.poll(figure, { timeout: 20_000 }).not.toBe(before)
    await untilSaved(page)
    await page.keyboard.press('Control+z')
    await untilValue(page, 'closure', 'grossMass', /^1.637/)
    expect(complaints).toEqual([])
  })

  it('shows units with computed values, as the checker found them', async () => {
    const { page } = await bench.visit(worked)
    await untilState(page, 'closure', 'current')
    await untilValue(page, 'closure', 'grossMass', /kg$/)
  })
})

describe('edits', () => {
  it('are there after a reload, and in a second browser at once', async () => {
    const path = await bench.notebook('Reload', { a: 'const mass = 100 * u.kg' })
    const first = await bench.visit(path)
    const second = await bench.visit(path)
    await untilSaved(first.page)
    await untilSaved(second.page)
    await rewrite(first.page, 'a', 'const mass = 250 * u.kg')
    await untilValue(first.page, 'a', 'mass', '250')
    await untilValue(second.page, 'a', 'mass', '250')
    await untilSaved(first.page)
    await first.page.reload()
    expect(await shownValue(first.page, 'a', 'mass')).toContain('250')
    await first.page.locator('.bar .readers', { hasText: '2 readers here' }).waitFor({ state: 'attached' })
  }, 120_000)

  it('made while the network is lost are kept, and delivered when it is back', async () => {
    const path = await bench.notebook('Offline', { a: 'const mass = 100 * u.kg' })
    const { page, context } = await bench.visit(path)
    await untilSaved(page)
    await untilState(page, 'a', 'current')
    await context.setOffline(true)
    await page.locator('.bar .saving', { hasText: 'not connected' }).waitFor()
    await rewrite(page, 'a', 'const mass = 300 * u.kg')
    await page.locator('.bar .saving', { hasText: /not connected: \d+ edits? kept here/ }).waitFor()
    await context.setOffline(false)
    await untilSaved(page)
    expect((await bench.stored(path)).cells[0]?.source).toEqual(['const mass = 300 * u.kg'])
  })

  it('made while the server is away survive even a reload of the page', async () => {
    const path = await bench.notebook('Server away', { a: 'const mass = 100 * u.kg' })
    const { page } = await bench.visit(path)
    await untilSaved(page)
    const bringBack = await bench.stopServer()
    await page.locator('.bar .saving', { hasText: 'not connected' }).waitFor()
    await rewrite(page, 'a', 'const mass = 777 * u.kg')
    await page.locator('.bar .saving', { hasText: /kept here/ }).waitFor()
    await page.close({ runBeforeUnload: false })
    await bringBack()
    const again = await page.context().newPage()
    await again.goto(new URL(path, bench.address).href)
    await untilSaved(again)
    await untilValue(again, 'a', 'mass', '777')
    expect((await bench.stored(path)).cells[0]?.source).toEqual(['const mass = 777 * u.kg'])
  })

  it('of two people in one cell are both kept, and the caret stays on its word', async () => {
    const path = await bench.notebook('Two people', { a: 'const first = 1\nconst last = 2' })
    const [one, two] = [await bench.visit(path), await bench.visit(path)]
    await untilSaved(one.page)
    await untilSaved(two.page)
    await edit(one.page, 'a')
    await one.page.keyboard.press('Control+End')
    await edit(two.page, 'a')
    await two.page.keyboard.press('Control+Home')
    await two.page.keyboard.press('End')
    await two.page.keyboard.type('111')
    await one.page.waitForFunction(
      () => document.querySelector('[data-cell="a"] .value[data-name="first"]')?.textContent?.includes('111') === true,
    )
    await one.page.keyboard.type('3')
    await untilSaved(one.page)
    expect((await bench.stored(path)).cells[0]?.source).toEqual(['const first = 1111', 'const last = 23'])
  }, 120_000)
})

describe('a printed sheet', () => {
  it('repeats title block, caution and column heads, keeps figures whole and shows every assumption', async () => {
    const { page } = await bench.visit(worked)
    await untilState(page, 'mass-figure', 'current')
    await page.emulateMedia({ media: 'print' })
    const style = (selector: string, property: string) =>
      page
        .locator(selector)
        .first()
        .evaluate((element, name) => getComputedStyle(element).getPropertyValue(name), property)
    // Browsers repeat a table's head on every page.
    expect(await style('.sheet', 'display')).toBe('table')
    expect(await style('.sheet-head', 'display')).toBe('table-header-group')
    for (const part of ['.title-block', '.caution', '.column-heads'])
      expect(await page.locator(`.sheet-head > ${part}`).isVisible(), part).toBe(true)
    for (const part of ['.figure', '.hand-line', '.value', '.source .line'])
      expect(await style(part, 'break-inside'), part).toBe('avoid')
    const assumptions = page.locator('.reference details .assumption')
    expect(await assumptions.count()).toBeGreaterThan(10)
    expect(await assumptions.last().isVisible()).toBe(true)
    for (const part of ['.bar', '.sheet-end', '.downloads'])
      expect(await page.locator(part).first().isVisible(), part).toBe(false)
    const width = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    expect(width).toBe(0)
  }, 120_000)

  it('shows the cell that is being edited as text', async () => {
    const path = await bench.notebook('Printed', { a: '// A long line\nconst mass = 100 * u.kg' })
    const { page } = await bench.visit(path)
    await untilSaved(page)
    await edit(page, 'a')
    expect(await page.locator('.surface').count()).toBe(1)
    await page.pdf({ format: 'A4' })
    await page.locator('.surface').waitFor({ state: 'detached' })
    expect(await cellAt(page, 'a').locator('.calculation').textContent()).toContain('const mass = 100 * u.kg')
  }, 120_000)
})

describe('a figure', () => {
  it('can be taken away as SVG, PNG and CSV', async () => {
    const { page, complaints } = await bench.visit(worked)
    await untilState(page, 'mass-figure', 'current')
    const take = async (kind: string) => {
      const button = cellAt(page, 'mass-figure').getByRole('button', { name: `Download figure 1 as ${kind}` })
      const [download] = await Promise.all([page.waitForEvent('download'), button.click()])
      const path = await download.path()
      return { name: download.suggestedFilename(), bytes: await readFile(path) }
    }
    const svg = await take('SVG')
    expect(svg.name).toBe('figure-1.svg')
    expect(svg.bytes.toString()).toMatch(/^<\?xml.*<svg[\s\S]*battery/s)
    const png = await take('PNG')
    expect(png.bytes.subarray(1, 4).toString()).toBe('PNG')
    expect(png.bytes.length).toBeGreaterThan(5000)
    const csv = await take('CSV')
    expect(csv.bytes.toString()).toContain('battery')
    expect(complaints).toEqual([])
  }, 120_000)
})

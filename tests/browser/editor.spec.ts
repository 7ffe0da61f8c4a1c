/** The code editor of sizing cells, as an engineer meets it: proposals, hover, units while typing, rename, undo. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { type Bench, openBench } from './bench.js'
import { cellAt, edit, untilSaved, untilState } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterEach(() => bench.leaveAll())
afterAll(() => bench.close())

/** A loaded machine may take long; a healthy one never waits so long. */
const patience = 90_000
const editorIn = (page: Page, id: string) => cellAt(page, id).locator('.monaco-editor')

/** Opens a cell in the code editor, waiting for its code if need be. */
async function editCode(page: Page, id: string): Promise<void> {
  await edit(page, id)
  await editorIn(page, id).locator('.view-line').first().waitFor({ timeout: patience })
  await page.waitForFunction(
    (cell) => document.querySelector(`[data-cell="${cell}"] .monaco-editor`)?.contains(document.activeElement) === true,
    id,
  )
}

async function openNotebook(cells: Readonly<Record<string, string>>) {
  const path = await bench.notebook('Editor', cells)
  const journey = await bench.visit(path)
  await untilSaved(journey.page)
  return { ...journey, path }
}

const sources = async (path: string) =>
  Object.fromEntries((await bench.stored(path)).cells.map((cell) => [cell.id, cell.source.join('\n')]))

/** Waits until the server has a source that reads so. */
async function untilStored(path: string, id: string, source: string): Promise<void> {
  await expect.poll(async () => (await sources(path))[id], { timeout: patience }).toBe(source)
}

describe('the code editor', { timeout: 240_000 }, () => {
  it('opens soon, and says how long it took', async () => {
    const path = await bench.notebook('Editor', { a: 'const mass = 100 * u.kg' })
    const begun = performance.now()
    const { page, complaints } = await bench.visit(path)
    await untilSaved(page)
    await editCode(page, 'a')
    const first = performance.now() - begun
    await page.keyboard.press('Escape')
    const again = performance.now()
    await editCode(page, 'a')
    const assets = await page.evaluate(() =>
      performance
        .getEntriesByType('resource')
        .filter((entry): entry is PerformanceResourceTiming => entry.name.includes('cell-editor'))
        .map((entry) => `${entry.name.split('/').at(-1)} ${Math.round(entry.decodedBodySize / 1024)} kB`),
    )
    console.info(
      `first editor usable ${Math.round(first)} ms after navigation began, the next after ${Math.round(performance.now() - again)} ms; ${assets.join(', ')}`,
    )
    expect(complaints).toEqual([])
  })

  it('takes keys as fast as they come', async () => {
    const { page, path } = await openNotebook({ a: '' })
    await editCode(page, 'a')
    await page.keyboard.type("const a = [1, (2 + 3)]\nconst b = { c: 'text' }\nconst d = a[0]")
    await page.keyboard.press('Escape')
    await untilStored(path, 'a', "const a = [1, (2 + 3)]\nconst b = { c: 'text' }\nconst d = a[0]")
  })

  it('proposes the methods of the kernel with equation, units, validity and source', async () => {
    const { page } = await openNotebook({ a: 'const day = air.standard(600)' })
    await editCode(page, 'a')
    await page.keyboard.press('Control+End')
    await page.keyboard.type('\nconst lift = rotor.')
    await page.keyboard.type('hov')
    const proposals = page.locator('.suggest-widget.visible')
    await proposals.locator('.monaco-list-row', { hasText: /^hover/ }).waitFor({ timeout: patience })
    const details = page.locator('.suggest-details')
    await details.getByText('Equation').first().waitFor({ timeout: patience })
    const words = (await details.textContent()) ?? ''
    expect(words).toContain('sqrt(T/(2 rho A))')
    expect(words).toContain('[N]')
    expect(words).toContain('Valid for')
    expect(words).toContain('Leishman')
    const box = await details.boundingBox()
    expect(box?.y).toBeGreaterThanOrEqual(0)
    await page.keyboard.press('Tab')
    await editorIn(page, 'a').locator('.view-line', { hasText: 'rotor.hover' }).waitFor({ timeout: patience })
  })

  it('hovering over a name says its dimension in words and the cell that declares it, and leads there', async () => {
    const { page } = await openNotebook({ a: 'const thrust = 17 * u.kN', b: 'const half = thrust / 2' })
    await untilState(page, 'b', 'current')
    await editCode(page, 'b')
    const name = editorIn(page, 'b').locator('.view-line span', { hasText: 'thrust' }).last()
    await editorIn(page, 'b').getByText('N', { exact: true }).first().waitFor({ timeout: patience })
    const place = await name.boundingBox()
    if (place === null) throw new Error('the name is not on the screen')
    await page.mouse.move(place.x + 40, place.y + place.height / 2, { steps: 3 })
    const hover = page.locator('.monaco-hover', { hasText: 'a force, in N' })
    await hover.waitFor({ timeout: patience })
    expect(await hover.textContent()).toContain('Declared in cell 1')
    await page.keyboard.press('Control+Home')
    for (const _ of 'const half = t') await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Control+Alt+d')
    await editorIn(page, 'a').waitFor({ timeout: patience })
    expect(await editorIn(page, 'b').count()).toBe(0)
  })

  it('shows inferred units as tags after declared names, and none on pure numbers', async () => {
    const { page } = await openNotebook({
      a: 'const thrust = 17 * u.kN\nconst disk = 40 * u.m2\nconst loading = thrust / disk\nconst count = 8',
    })
    await editCode(page, 'a')
    const lines = editorIn(page, 'a').locator('.view-line')
    await lines
      .filter({ hasText: /disk.*m²/ })
      .first()
      .waitFor({ timeout: patience })
    const texts = (await lines.allTextContents()).map((text) => text.replace(/\s+/g, ' '))
    expect(texts.find((text) => text.includes('loading'))).toMatch(/loading ?(?:Pa|N\/m²)/)
    expect(texts.find((text) => text.includes('count'))).toMatch(/count = 8/)
  })

  it('flags a wrong unit while it is typed, in words, is content when it is mended, and mends a plain one itself', async () => {
    const { page, path } = await openNotebook({ a: 'const range = 85 * u.km', b: '' })
    await editCode(page, 'b')
    await page.keyboard.type('const sum = range + 2 * u.kg')
    await editorIn(page, 'b').locator('.squiggly-error').first().waitFor({ timeout: patience })
    const finding = cellAt(page, 'b').locator('.finding')
    await finding.filter({ hasText: 'Cannot add range (m)' }).waitFor({ timeout: patience })
    await page.keyboard.press('Escape')
    await page.keyboard.press('Escape')
    await editCode(page, 'b')
    await page.keyboard.press('Control+End')
    for (const _ of 'kg') await page.keyboard.press('Backspace')
    await page.keyboard.type('km')
    await finding.first().waitFor({ state: 'detached', timeout: patience })
    await editorIn(page, 'b').locator('.squiggly-error').first().waitFor({ state: 'detached', timeout: patience })

    await page.keyboard.type('\nconst more = range + 2')
    await finding.filter({ hasText: 'Cannot add range (m) and 2 (a pure number)' }).waitFor({ timeout: patience })
    await page.keyboard.press('Control+.')
    await page.getByText('Multiply by u.km').waitFor({ timeout: patience })
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    await finding.first().waitFor({ state: 'detached', timeout: patience })
    await untilStored(path, 'b', 'const sum = range + 2 * u.km\nconst more = range + 2 * u.km')
  })

  it('renames a name in every cell, as one step that undo takes back', async () => {
    const before = { a: "const range = assumption('range', 85 * u.km)", b: 'const twice = 2 * range' }
    const { page, path } = await openNotebook(before)
    await untilState(page, 'b', 'current')
    await editCode(page, 'b')
    await page.keyboard.press('Control+End')
    await page.keyboard.press('F2')
    const box = page.locator('.rename-box')
    await box.waitFor({ timeout: patience })
    await page.keyboard.type('twice')
    await page.keyboard.press('Enter')
    await box.locator('output', { hasText: 'already declares "twice"' }).waitFor({ timeout: patience })
    await box.locator('input').fill('sector')
    await page.keyboard.press('Enter')
    await untilStored(path, 'b', 'const twice = 2 * sector')
    expect((await sources(path)).a).toBe("const sector = assumption('sector', 85 * u.km)")
    await untilState(page, 'b', 'current')
    await page.keyboard.press('Control+z')
    await untilStored(path, 'b', before.b)
    expect((await sources(path)).a).toBe(before.a)
  })

  it('undoes only what this person typed, and keeps the caret where they were', async () => {
    const { page, path } = await openNotebook({ a: 'const first = 1\nconst last = 2' })
    const other = await bench.visit(path)
    await untilSaved(other.page)
    await editCode(page, 'a')
    await editCode(other.page, 'a')
    await page.keyboard.press('Control+End')
    await page.keyboard.type('00')
    await editorIn(other.page, 'a').getByText('200').waitFor({ timeout: patience })
    await other.page.keyboard.press('Control+Home')
    await other.page.keyboard.type('// theirs\n')
    await editorIn(page, 'a').getByText('// theirs').waitFor({ timeout: patience })
    await page.keyboard.press('Control+z')
    await untilStored(path, 'a', '// theirs\nconst first = 1\nconst last = 2')
    await page.keyboard.press('Control+y')
    await untilStored(path, 'a', '// theirs\nconst first = 1\nconst last = 200')
    await page.keyboard.type('7')
    await untilStored(path, 'a', '// theirs\nconst first = 1\nconst last = 2007')
  })

  it('leaves the cell to plain text when its code cannot be loaded', async () => {
    const path = await bench.notebook('No editor', { a: 'const a = 1' })
    const { page, context } = await bench.visit('/')
    await context.route(/cell-editor.*\.js/, (route) => route.abort())
    await page.goto(new URL(path, bench.address).href)
    await untilSaved(page)
    await edit(page, 'a')
    await page.keyboard.press('Control+End')
    await page.keyboard.type('2')
    await untilStored(path, 'a', 'const a = 12')
    expect(await editorIn(page, 'a').count()).toBe(0)
  })

  it('keeps nobody out: axe finds nothing serious while editing, and no menu or command list of its own opens', async () => {
    const { page } = await openNotebook({ a: 'const mass = 100 * u.kg' })
    await editCode(page, 'a')
    const { violations } = await new AxeBuilder({ page }).analyze()
    const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical')
    expect(
      serious.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 200)).join(' | ')}`),
    ).toEqual([])
    await page.keyboard.press('F1')
    await page.keyboard.press('Control+Shift+p')
    await editorIn(page, 'a').locator('.view-lines').click({ button: 'right' })
    await page.waitForTimeout(300)
    expect(await page.locator('.quick-input-widget, .monaco-menu, .context-view .monaco-menu-container').count()).toBe(
      0,
    )
  })
})

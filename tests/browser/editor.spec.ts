/** The code editor of sizing cells, as an engineer meets it: proposals, hover, units while typing, rename, undo. */
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { serious } from './axe.js'
import { type Bench, openBench } from './bench.js'
import { cellAt, edit, untilSaved, untilState } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
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

const sources = async (path: string) =>
  Object.fromEntries((await bench.stored(path)).cells.map((cell) => [cell.id, cell.source.join('\n')]))

/** Waits until the server has a source that reads so. */
async function untilStored(path: string, id: string, source: string): Promise<void> {
  await expect.poll(async () => (await sources(path))[id], { timeout: patience }).toBe(source)
}

/** One sheet in which every journey has cells of its own. */
const cells = {
  mass: 'const mass = 100 * u.kg',
  keys: '',
  proposals: 'const day = air.standard(600)',
  thrust: 'const thrust = 17 * u.kN',
  half: 'const half = thrust / 2',
  loading: 'const upward = 17 * u.kN\nconst disk = 40 * u.m2\nconst loading = upward / disk\nconst count = 8',
  range: "const range = assumption('range', 85 * u.km)",
  sum: '',
  twice: 'const twice = 2 * range',
  both: 'const first = 1\nconst last = 2',
}

describe('the code editor', { timeout: 240_000 }, () => {
  let path: string
  let page: Page
  let complaints: readonly string[]
  let begun: number
  beforeAll(async () => {
    path = await bench.notebook('Editor', cells)
    begun = performance.now()
    ;({ page, complaints } = await bench.visit(path))
  }, 60_000)

  it('opens soon, and says how long it took', async () => {
    await untilSaved(page)
    await editCode(page, 'mass')
    const first = performance.now() - begun
    await page.keyboard.press('Escape')
    const again = performance.now()
    await editCode(page, 'mass')
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
    await editCode(page, 'keys')
    await page.keyboard.type("const a = [1, (2 + 3)]\nconst b = { c: 'text' }\nconst d = a[0]")
    await page.keyboard.press('Escape')
    await untilStored(path, 'keys', "const a = [1, (2 + 3)]\nconst b = { c: 'text' }\nconst d = a[0]")
  })

  it('proposes the methods of the kernel with equation, units, validity and source', async () => {
    await editCode(page, 'proposals')
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
    await editorIn(page, 'proposals').locator('.view-line', { hasText: 'rotor.hover' }).waitFor({ timeout: patience })
  })

  it('hovering over a name says its dimension in words and the cell that declares it, and leads there', async () => {
    await untilState(page, 'half', 'current')
    await editCode(page, 'half')
    const name = editorIn(page, 'half').locator('.view-line span', { hasText: 'thrust' }).last()
    await editorIn(page, 'half').getByText('N', { exact: true }).first().waitFor({ timeout: patience })
    const hover = page.locator('.monaco-hover', { hasText: 'a force, in N' })
    // Cells above may still change their height, and with it the place of the name.
    await expect
      .poll(
        async () => {
          const place = await name.boundingBox()
          if (place === null) return false
          await page.mouse.move(2, 2)
          await page.mouse.move(place.x + 40, place.y + place.height / 2, { steps: 3 })
          return hover.waitFor({ timeout: 2000 }).then(
            () => true,
            () => false,
          )
        },
        { timeout: patience },
      )
      .toBe(true)
    expect(await hover.textContent()).toContain('Declared in cell 4')
    await page.keyboard.press('Control+Home')
    for (const _ of 'const half = t') await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Control+Alt+d')
    await editorIn(page, 'thrust').waitFor({ timeout: patience })
    expect(await editorIn(page, 'half').count()).toBe(0)
  })

  it('shows inferred units as tags after declared names, and none on pure numbers', async () => {
    await editCode(page, 'loading')
    const lines = editorIn(page, 'loading').locator('.view-line')
    await lines
      .filter({ hasText: /disk.*m²/ })
      .first()
      .waitFor({ timeout: patience })
    const texts = (await lines.allTextContents()).map((text) => text.replace(/\s+/g, ' '))
    expect(texts.find((text) => text.includes('loading'))).toMatch(/loading ?(?:Pa|N\/m²)/)
    expect(texts.find((text) => text.includes('count'))).toMatch(/count = 8/)
  })

  it('flags a wrong unit while it is typed, in words, is content when it is mended, and mends a plain one itself', async () => {
    await editCode(page, 'sum')
    await page.keyboard.type('const sum = range + 2 * u.kg')
    await editorIn(page, 'sum').locator('.squiggly-error').first().waitFor({ timeout: patience })
    const finding = cellAt(page, 'sum').locator('.finding')
    await finding.filter({ hasText: 'Cannot add range (m)' }).waitFor({ timeout: patience })
    await page.keyboard.press('Escape')
    await page.keyboard.press('Escape')
    await editCode(page, 'sum')
    await page.keyboard.press('Control+End')
    for (const _ of 'kg') await page.keyboard.press('Backspace')
    await page.keyboard.type('km')
    await finding.first().waitFor({ state: 'detached', timeout: patience })
    await editorIn(page, 'sum').locator('.squiggly-error').first().waitFor({ state: 'detached', timeout: patience })

    await page.keyboard.type('\nconst more = range + 2')
    await finding.filter({ hasText: 'Cannot add range (m) and 2 (a pure number)' }).waitFor({ timeout: patience })
    await page.keyboard.press('Control+.')
    await page.getByText('Multiply by u.km').waitFor({ timeout: patience })
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    await finding.first().waitFor({ state: 'detached', timeout: patience })
    await untilStored(path, 'sum', 'const sum = range + 2 * u.km\nconst more = range + 2 * u.km')
  })

  it('renames a name in every cell, as one step that undo takes back', async () => {
    await untilState(page, 'twice', 'current')
    await editCode(page, 'twice')
    await page.keyboard.press('Control+End')
    await page.keyboard.press('F2')
    const box = page.locator('.rename-box')
    await box.waitFor({ timeout: patience })
    await page.keyboard.type('twice')
    await page.keyboard.press('Enter')
    await box.locator('output', { hasText: 'already declares "twice"' }).waitFor({ timeout: patience })
    await box.locator('input').fill('sector')
    await page.keyboard.press('Enter')
    await untilStored(path, 'twice', 'const twice = 2 * sector')
    expect((await sources(path)).range).toBe("const sector = assumption('sector', 85 * u.km)")
    await untilState(page, 'twice', 'current')
    await page.keyboard.press('Control+z')
    await untilStored(path, 'twice', cells.twice)
    expect((await sources(path)).range).toBe(cells.range)
  })

  it('undoes only what this person typed, and keeps the caret where they were', async () => {
    const other = await bench.visit(path)
    await untilSaved(other.page)
    await editCode(page, 'both')
    await editCode(other.page, 'both')
    await page.keyboard.press('Control+End')
    await page.keyboard.type('00')
    await editorIn(other.page, 'both').getByText('200').waitFor({ timeout: patience })
    await other.page.keyboard.press('Control+Home')
    await other.page.keyboard.type('// theirs\n')
    await editorIn(page, 'both').getByText('// theirs').waitFor({ timeout: patience })
    await page.keyboard.press('Control+z')
    await untilStored(path, 'both', '// theirs\nconst first = 1\nconst last = 2')
    await page.keyboard.press('Control+y')
    await untilStored(path, 'both', '// theirs\nconst first = 1\nconst last = 200')
    await page.keyboard.type('7')
    await untilStored(path, 'both', '// theirs\nconst first = 1\nconst last = 2007')
    await other.context.close()
  })

  it('leaves the cell to plain text when its code cannot be loaded', async () => {
    const alone = await bench.notebook('No editor', { a: 'const a = 1' })
    const visitor = await bench.visit('/')
    await visitor.context.route(/cell-editor.*\.js/, (route) => route.abort())
    await visitor.page.goto(new URL(alone, bench.address).href)
    await untilSaved(visitor.page)
    await edit(visitor.page, 'a')
    await visitor.page.keyboard.press('Control+End')
    await visitor.page.keyboard.type('2')
    await untilStored(alone, 'a', 'const a = 12')
    expect(await editorIn(visitor.page, 'a').count()).toBe(0)
    await visitor.context.close()
  })

  it('keeps nobody out: axe finds nothing serious while editing, and no menu or command list of its own opens', async () => {
    await editCode(page, 'mass')
    expect(await serious(page, '[data-cell="mass"]')).toEqual([])
    await page.keyboard.press('F1')
    await page.keyboard.press('Control+Shift+p')
    await editorIn(page, 'mass').locator('.view-lines').click({ button: 'right' })
    await page.waitForTimeout(300)
    expect(await page.locator('.quick-input-widget, .monaco-menu, .context-view .monaco-menu-container').count()).toBe(
      0,
    )
  })
})

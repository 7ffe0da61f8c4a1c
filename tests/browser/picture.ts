/**
 * Pictures of pages kept as coarse grids of lightness: what a layout looks like from across the room. Letters may be drawn a little
 * otherwise by another Chromium; a column, a block or a figure that is gone, moved or of another size shows.
 */
import { existsSync } from 'node:fs'
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright'

const folder = join(import.meta.dirname, 'pictures')
/** Where a changed picture is laid to be looked at; not kept. */
const changedFolder = join(import.meta.dirname, '../.out/pictures')
/** Edge of a block whose mean lightness is kept [px]. */
const block = 20
/** A block counts as different when its lightness, smoothed over its neighbours, is off by more than this, of 31 from black to white. */
const visible = 1.5
/** Pictures are compared field by field of so many blocks each way: one figure that is gone is much of its field and little of the sheet. */
const field = 10
/** Share of different blocks in the worst field up to which two pictures are the same. */
export const tolerance = 0.2

/** Rows of blocks, each from 0 (black) to 31 (white). */
export type Grid = readonly (readonly number[])[]

/** Makes the page as tall as its content, so that all of it is drawn, and photographs it. */
export async function photograph(page: Page, width: number): Promise<Buffer> {
  await page.setViewportSize({ width, height: 900 })
  const height = await page.evaluate(() => document.documentElement.scrollHeight)
  await page.setViewportSize({ width, height })
  await page.waitForFunction(() =>
    [...document.querySelectorAll('.figure-paper')].every(
      (paper) => paper.querySelector('svg path, svg rect') !== null,
    ),
  )
  await page.evaluate(async () => {
    await document.fonts.ready
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)))
  })
  // What was drawn only now may be of another height than the room that was kept for it.
  await page.setViewportSize({ width, height: 900 })
  const drawn = await page.evaluate(() => document.documentElement.scrollHeight)
  await page.setViewportSize({ width, height: drawn })
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))))
  return page.screenshot({ fullPage: true, animations: 'disabled', caret: 'hide' })
}

/** Mean lightness of each block, worked out by a bare page of the same browser. */
export async function gridOf(bare: Page, png: Buffer): Promise<Grid> {
  return bare.evaluate(
    async ([text, edge]) => {
      const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0))
      const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }))
      const canvas = new OffscreenCanvas(image.width, image.height)
      const drawing = canvas.getContext('2d')
      if (drawing === null) throw new Error('the browser draws no canvas')
      drawing.drawImage(image, 0, 0)
      const lightness = (column: number, row: number) => {
        const { data } = drawing.getImageData(column * edge, row * edge, edge, edge)
        let sum = 0
        for (let at = 0; at < data.length; at += 4)
          sum += 0.2126 * (data[at] ?? 0) + 0.7152 * (data[at + 1] ?? 0) + 0.0722 * (data[at + 2] ?? 0)
        return Math.round((sum / (data.length / 4) / 255) * 31)
      }
      const columns = Math.floor(image.width / edge)
      return Array.from({ length: Math.floor(image.height / edge) }, (_, row) =>
        Array.from({ length: columns }, (_, column) => lightness(column, row)),
      )
    },
    [png.toString('base64'), block] as const,
  )
}

/** Share of different blocks in that field of the two pictures which differs most; where one picture ends, all blocks are different. */
export function difference(one: Grid, two: Grid): number {
  const [a, b] = [smooth(one), smooth(two)]
  const rows = Math.max(a.length, b.length)
  const columns = Math.max(a[0]?.length ?? 0, b[0]?.length ?? 0)
  const differs = (row: number, column: number) => {
    const [here, there] = [a[row]?.[column], b[row]?.[column]]
    if (here === undefined && there === undefined) return false
    return here === undefined || there === undefined || Math.abs(here - there) > visible
  }
  let worst = 0
  for (let top = 0; top < rows; top += field)
    for (let left = 0; left < columns; left += field) worst = Math.max(worst, shareIn(top, left, differs))
  return worst
}

function shareIn(top: number, left: number, differs: (row: number, column: number) => boolean): number {
  let different = 0
  for (let row = top; row < top + field; row += 1)
    for (let column = left; column < left + field; column += 1) if (differs(row, column)) different += 1
  return different / field ** 2
}

/** The mean of each block and its neighbours: a letter more or less in a block is not seen. */
function smooth(grid: Grid): Grid {
  return grid.map((line, row) =>
    line.map((_, column) => {
      const near = [-1, 0, 1]
        .flatMap((down) => [-1, 0, 1].map((right) => grid[row + down]?.[column + right]))
        .filter((lightness) => lightness !== undefined)
      return near.reduce((sum, lightness) => sum + lightness, 0) / near.length
    }),
  )
}

/** The picture kept under a name, `undefined` when there is none. */
export async function keptPicture(name: string): Promise<Grid | undefined> {
  const path = join(folder, `${name}.txt`)
  if (!existsSync(path)) return undefined
  const lines = (await readFile(path, 'utf8')).trimEnd().split('\n')
  return lines.map((line) => [...line].map((digit) => Number.parseInt(digit, 32)))
}

/**
 * Says what is wrong with a picture, or `null`. A changed one is laid where it can be looked at; with HOVERFOLIO_ACCEPT_PICTURES set it
 * takes the place of the kept one.
 */
export async function compareWithKept(name: string, png: Buffer, grid: Grid): Promise<string | null> {
  const kept = await keptPicture(name)
  const changed = join(changedFolder, `${name}.png`)
  const share = kept === undefined ? 1 : difference(kept, grid)
  await rm(changed, { force: true })
  if (share <= tolerance) return null
  if (process.env.HOVERFOLIO_ACCEPT_PICTURES !== undefined) {
    const text = grid.map((line) => line.map((lightness) => lightness.toString(32)).join('')).join('\n')
    await writeFile(join(folder, `${name}.txt`), `${text}\n`)
    return null
  }
  await mkdir(changedFolder, { recursive: true })
  await writeFile(changed, png)
  const how =
    kept === undefined ? 'There is no kept picture' : `${(100 * share).toFixed(1)} % of the blocks of one field differ`
  return `${how}; at most ${100 * tolerance} % may. Look at ${changed}. If it is as it should be, accept it: HOVERFOLIO_ACCEPT_PICTURES=1 npm test -- browser`
}

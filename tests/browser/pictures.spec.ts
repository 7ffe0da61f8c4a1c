/** How the pages look, wide, narrow, dark and on paper, against pictures that a person has looked at. */
import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Bench, openBench } from './bench.js'
import { compareWithKept, difference, gridOf, keptPicture, photograph, tolerance } from './picture.js'
import { untilSaved, untilState } from './sheet-steps.js'

let bench: Bench
let sheet: Page
let list: Page
let bare: Page
beforeAll(async () => {
  bench = await openBench()
  const journey = await bench.visit('/notebooks/worked-sizing')
  sheet = journey.page
  bare = await journey.context.newPage()
  await untilSaved(sheet)
  await untilState(sheet, 'mass-figure', 'current')
  ;({ page: list } = await bench.visit('/'))
  await list.evaluate(() => {
    // Only what is always there: notebooks come and go with the program, and days pass.
    for (const row of document.querySelectorAll('.notebooks > li'))
      if (row.querySelector('a[href="/notebooks/worked-sizing"]') === null) row.remove()
  })
}, 240_000)
afterAll(() => bench.close())

const wide = 1400
const narrow = 400
/** What A4 leaves between the margins of the sheet [px]. */
const a4 = 701

const looks = [
  { name: 'sheet-wide', of: () => sheet, width: wide, media: {} },
  { name: 'sheet-narrow', of: () => sheet, width: narrow, media: {} },
  { name: 'sheet-dark', of: () => sheet, width: wide, media: { colorScheme: 'dark' } },
  { name: 'sheet-print', of: () => sheet, width: a4, media: { media: 'print' } },
  { name: 'list-wide', of: () => list, width: wide, media: {} },
  { name: 'list-narrow', of: () => list, width: narrow, media: {} },
  { name: 'list-dark', of: () => list, width: wide, media: { colorScheme: 'dark' } },
] as const

describe('the look of the pages', { timeout: 120_000 }, () => {
  it.each(looks)('of $name is that of the kept picture', async ({ name, of, width, media }) => {
    await of().emulateMedia({ media: 'screen', colorScheme: 'light', ...media })
    const png = await photograph(of(), width)
    expect(await compareWithKept(name, png, await gridOf(bare, png))).toBeNull()
  })

  it.each([
    ['without its title block', '.title-block', 'display', 'none'],
    ['with a wider reference column', '.sheet', '--reference-column', '300px'],
    ['with its figures gone', '.figures', 'visibility', 'hidden'],
  ])('of a sheet %s is another one', async (_, selector, property, value) => {
    await sheet.emulateMedia({ media: 'screen', colorScheme: 'light' })
    const change = (to: string) =>
      sheet.locator(selector).evaluateAll(
        (elements, [name, text]) => {
          for (const element of elements) (element as HTMLElement).style.setProperty(name, text)
        },
        [property, to] as const,
      )
    await change(value)
    const broken = await gridOf(bare, await photograph(sheet, wide))
    await change('')
    const kept = (await keptPicture('sheet-wide')) ?? []
    expect(difference(kept, broken)).toBeGreaterThan(tolerance)
  })
})

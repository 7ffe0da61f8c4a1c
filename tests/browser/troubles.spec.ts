/** What can go wrong in a cell: a clear message on the right cell and line, and the rest keeps working. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { type Bench, type Journey, openBench } from './bench.js'
import { cellAt, rewrite, untilSaved, untilState, untilValue } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterEach(() => bench.leaveAll())
afterAll(() => bench.close())

const healthy = 'const mass = 100 * u.kg'

async function open(cells: Readonly<Record<string, string>>): Promise<Journey> {
  const journey = await bench.visit(await bench.notebook('Troubles', { other: healthy, ...cells }))
  await untilSaved(journey.page)
  return journey
}

/** Words that a cell says about its trouble, in findings and errors. */
const said = ({ page }: Journey, id: string) => cellAt(page, id).locator('.findings, .error').allTextContents()

/** The other cell is edited and computes: the notebook is not held up. */
async function restWorks({ page }: Journey): Promise<void> {
  await rewrite(page, 'other', 'const mass = 123 * u.kg')
  await untilValue(page, 'other', 'mass', '123')
}

describe('a cell in trouble', () => {
  it('that cannot be read says the line', async () => {
    const journey = await open({ a: 'const fine = 1\nconst = 2' })
    await untilState(journey.page, 'a', 'failed')
    expect((await said(journey, 'a')).join(' ')).toContain('line 2')
    await restWorks(journey)
  })

  it('with a wrong type says the line and still computes', async () => {
    const journey = await open({ a: 'const first = 1\nconst text: string = 2' })
    await cellAt(journey.page, 'a').locator('.finding', { hasText: 'line 2' }).waitFor({ timeout: 30_000 })
    await untilState(journey.page, 'a', 'current')
  })

  it('with a wrong unit says what came and what would be accepted', async () => {
    const journey = await open({ a: 'const wrong = 1 * u.m + 2 * u.kg' })
    const finding = cellAt(journey.page, 'a').locator('.finding')
    await finding.first().waitFor({ timeout: 30_000 })
    expect(await finding.first().textContent()).toMatch(/kg/)
  })

  it('that declares a name twice is told so in both cells', async () => {
    const journey = await open({ a: 'const twice = 1', b: 'const twice = 2', c: 'const reads = twice' })
    await untilState(journey.page, 'a', 'failed')
    await untilState(journey.page, 'b', 'failed')
    await untilState(journey.page, 'c', 'held back')
    expect((await said(journey, 'a')).join(' ')).toContain('cell 3')
    await restWorks(journey)
  })

  it('in a circle is told the circle', async () => {
    const journey = await open({ a: 'const a = b + 1', b: 'const b = a + 1' })
    await untilState(journey.page, 'a', 'failed')
    await untilState(journey.page, 'b', 'failed')
    expect((await said(journey, 'b')).join(' ')).toContain('circle')
    await restWorks(journey)
  })

  it('that throws says what was thrown and where, and holds back what reads it', async () => {
    const journey = await open({ a: "const x = 1\nthrow new Error('no wing')\n", b: 'const y = x' })
    await untilState(journey.page, 'a', 'failed')
    await untilState(journey.page, 'b', 'held back')
    expect((await said(journey, 'a')).join(' ')).toMatch(/line 2.*no wing/s)
    await restWorks(journey)
  })

  it('that does not end is stopped by Escape at once; the last good values stay, and the rest works', async () => {
    const journey = await open({ a: 'const turns = 1' })
    const { page } = journey
    await untilState(page, 'a', 'current')
    await rewrite(page, 'a', 'const turns = 2\nwhile (turns === 2) {}')
    await page.locator('.bar .stop').waitFor({ timeout: 30_000 })
    await untilState(page, 'a', 'computing')
    await page.keyboard.press('Escape')
    await untilState(page, 'a', 'out of date')
    await untilValue(page, 'a', 'turns', '1')
    await page.locator('.bar .stop').waitFor({ state: 'hidden' })
    await restWorks(journey)
  })

  it('that does not end does not keep an edit elsewhere waiting', async () => {
    const journey = await open({ a: 'let turns = 0\nwhile (turns < 1) turns = turns * 0.5' })
    await journey.page.locator('.bar .stop').waitFor({ timeout: 30_000 })
    await restWorks(journey)
  })

  it('with too much to show says how much came and how much is kept', async () => {
    const lines = Array.from({ length: 150 }, (_, index) => `const text${index} = 'x'.repeat(20_000)`)
    const journey = await open({ a: lines.join('\n') })
    await untilState(journey.page, 'a', 'failed')
    expect((await said(journey, 'a')).join(' ')).toMatch(/bytes; at most \d+ are kept/)
    await restWorks(journey)
  })
})

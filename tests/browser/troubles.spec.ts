/** What can go wrong in a cell: a clear message on the right cell and line, and the rest keeps working. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { type Bench, type Journey, openBench } from './bench.js'
import { cellAt, rewrite, untilSaved, untilState, untilValue } from './sheet-steps.js'

let bench: Bench
beforeAll(async () => {
  bench = await openBench()
})
afterAll(() => bench.close())

async function open(cells: Readonly<Record<string, string>>): Promise<Journey> {
  const journey = await bench.visit(await bench.notebook('Troubles', cells))
  await untilSaved(journey.page)
  return journey
}

/** A cell without trouble is edited and computes: the notebook is not held up. */
async function restWorks({ page }: Journey): Promise<void> {
  const before = Number(/\d+/.exec((await cellAt(page, 'other').locator('.value dd').textContent()) ?? '100')?.[0])
  await rewrite(page, 'other', `const mass = ${before + 23} * u.kg`)
  await untilValue(page, 'other', 'mass', String(before + 23))
}

/** One sheet with every trouble that ends by itself: none may hide another. */
describe('a cell in trouble', () => {
  let journey: Journey
  afterAll(() => bench.leaveAll())
  beforeAll(async () => {
    journey = await open({
      other: 'const mass = 100 * u.kg',
      unreadable: 'const fine = 1\nconst = 2',
      'wrong-type': 'const first = 1\nconst text: string = 2',
      'wrong-unit': 'const wrong = 1 * u.m + 2 * u.kg',
      twice: 'const twice = 1',
      again: 'const twice = 2',
      'reads-twice': 'const reads = twice',
      'circle-a': 'const a = b + 1',
      'circle-b': 'const b = a + 1',
      throws: "const x = 1\nthrow new Error('no wing')\n",
      'reads-thrown': 'const y = x',
      'too-much': Array.from({ length: 150 }, (_, n) => `const text${n} = 'x'.repeat(20_000)`).join('\n'),
    })
  }, 120_000)

  /** Words that a cell says about its trouble, in findings and errors. */
  const said = async (id: string) =>
    (await cellAt(journey.page, id).locator('.findings, .error').allTextContents()).join(' ')

  it('that cannot be read says the line', async () => {
    await untilState(journey.page, 'unreadable', 'failed')
    expect(await said('unreadable')).toContain('line 2')
  })

  it('with a wrong type says the line and still computes', async () => {
    await cellAt(journey.page, 'wrong-type').locator('.finding', { hasText: 'line 2' }).waitFor({ timeout: 30_000 })
    await untilState(journey.page, 'wrong-type', 'current')
  })

  it('with a wrong unit says what came and what would be accepted', async () => {
    const finding = cellAt(journey.page, 'wrong-unit').locator('.finding')
    await finding.first().waitFor({ timeout: 30_000 })
    expect(await finding.first().textContent()).toMatch(/kg/)
  })

  it('that declares a name twice is told so in both cells', async () => {
    await untilState(journey.page, 'twice', 'failed')
    await untilState(journey.page, 'again', 'failed')
    await untilState(journey.page, 'reads-twice', 'held back')
    expect(await said('twice')).toContain('cell 6')
    expect(await said('again')).toContain('cell 5')
  })

  it('in a circle is told the circle', async () => {
    await untilState(journey.page, 'circle-a', 'failed')
    await untilState(journey.page, 'circle-b', 'failed')
    expect(await said('circle-b')).toContain('circle')
  })

  it('that throws says what was thrown and where, and holds back what reads it', async () => {
    await untilState(journey.page, 'throws', 'failed')
    await untilState(journey.page, 'reads-thrown', 'held back')
    expect(await said('throws')).toMatch(/line 2.*no wing/s)
  })

  it('with too much to show says how much came and how much is kept', async () => {
    await untilState(journey.page, 'too-much', 'failed')
    expect(await said('too-much')).toMatch(/bytes; at most \d+ are kept/)
  })

  it('leaves the others to compute, and is mended by an edit', async () => {
    await restWorks(journey)
    await rewrite(journey.page, 'unreadable', 'const fine = 1\nconst mended = 2')
    await untilValue(journey.page, 'unreadable', 'mended', '2')
  })
})

describe('a cell that does not end', () => {
  afterEach(() => bench.leaveAll())

  it('is stopped by Escape at once; the last good values stay, and the rest works', async () => {
    const journey = await open({ other: 'const mass = 100 * u.kg', a: 'const turns = 1' })
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

  it('does not keep an edit elsewhere waiting', async () => {
    const journey = await open({
      other: 'const mass = 100 * u.kg',
      a: 'let turns = 0\nwhile (turns < 1) turns = turns * 0.5',
    })
    await journey.page.locator('.bar .stop').waitFor({ timeout: 30_000 })
    await restWorks(journey)
  })
})

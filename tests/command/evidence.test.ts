/** `drivers` and `spread` of the built command, against differences and closed forms that are worked out here. */
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Reading } from '../../kernel/cells/index.js'
import { placeOfNumber } from '../../server/command/asked-number.js'
import { drivers } from '../../server/command/drivers.js'
import { showProgress } from '../../server/command/progress.js'
import { spread } from '../../server/command/spread.js'
import { WrongCall } from '../../server/command/subcommand.js'
import {
  cautionLine,
  type Driver,
  type Drivers,
  headlineShare,
  percentileOf,
  type RequirementRecord,
  type Shares,
  type Spread,
  type Summary,
} from '../../shared/contracts/index.js'
import { cellView, resultOf, sheetView } from '../unit/rendering/support.js'
import { sizePlainly, worked } from '../worked/plain-sizing.js'
import { runHoverfolio } from './run-command.js'

let folder = ''
let file = ''

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hoverfolio-evidence-'))
  file = join(folder, 'models.json')
  const sources = [
    [
      "const a = assumption('a', 10 * u.kg, { distribution: { normal: 2 * u.kg } })",
      "const b = assumption('b', 5 * u.kg, { distribution: { normal: 1 * u.kg } })",
      "const c = assumption('c', 3, { distribution: { lognormal: 1.2 } })",
      "const d = assumption('d', 4, { distribution: { lognormal: 1.1 } })",
      "const limit = assumption('limit', 30 * u.kg, { unit: 'kg', range: [20 * u.kg, 60 * u.kg] })",
      "const offset = assumption('offset', 0 * u.kg)",
    ],
    [
      "const linear = result('linear', 2 * a + 3 * b + offset, { unit: 'kg' })",
      'const product = c * d',
      'const stepped = Math.max(linear, limit)',
      'const closed = battery.massForEnergy({ energy: (limit - 25 * u.kg) * 3600 * u.J / u.kg, specificEnergy: 200 * u.Wh / u.kg, usableShare: 0.8 }).mass',
      "requirement('light', { actual: linear, atMost: 40 * u.kg, unit: 'kg' })",
    ],
  ]
  const cells = sources.map((source, at) => ({ id: `c${at}`, kind: 'sizing', source }))
  await writeFile(file, JSON.stringify({ format: 'hoverfolio notebook', version: 1, title: 'Models', cells }))
})
afterAll(() => rm(folder, { recursive: true }))

/** A process that loads TypeScript and isolates; more on a busy machine. */
const patience = { timeout: 120_000 }

const plain = (text: string) => text.replaceAll(/[\u202f\u00a0]/g, ' ')

describe('hoverfolio drivers', patience, () => {
  test('drivers of the worked problem are the differences of a plain solver that shares no code with it', async () => {
    const { code, out } = await runHoverfolio('drivers', 'notebooks/worked-sizing.json', 'grossMass', '--json')
    expect(code).toBe(0)
    const found = JSON.parse(out) as Drivers & { caution: string }
    expect(found).toMatchObject({ caution: cautionLine, target: 'grossMass', dimension: 'kg', left: [], without: [] })
    expect(found.drivers.map(({ name }) => name).sort()).toEqual(Object.keys(worked).sort())
    const mass = (name: string, value: number) => sizePlainly({ ...worked, [name]: value })?.grossMass ?? Number.NaN
    const base = mass('payload', worked.payload)
    for (const { name, value, low, high, elasticity } of found.drivers) {
      expect(low.change, name).toBeCloseTo(mass(name, low.at) - base, 3)
      expect(high.change, name).toBeCloseTo(mass(name, high.at) - base, 3)
      const slope = (mass(name, 1.01 * value) - mass(name, 0.99 * value)) / base / 0.02
      expect(elasticity, name).toBeCloseTo(slope, 4)
    }
  })

  test('drivers are what compute --set gives at the ends', async () => {
    const asked = await runHoverfolio('drivers', file, 'stepped', '--json')
    const computed = await runHoverfolio('compute', file, '--json', '--set', 'limit=60 kg')
    const found = JSON.parse(asked.out) as Drivers
    const limit = found.drivers.find(({ name }) => name === 'limit') as Driver
    expect(limit).toMatchObject({ high: { at: 60, value: JSON.parse(computed.out).results.stepped.si } })
    expect(limit).toMatchObject({ elasticity: 0, smooth: false, unsteady: 'threshold' })
    expect(found.unvaried).toEqual([{ name: 'offset', reason: 'zero without a range' }])
    // Neither c nor d can reach it.
    expect(found.drivers.map(({ name }) => name).sort()).toEqual(['a', 'b', 'limit'])
  })

  test('drivers prints the sentence, a row for each assumption, and what fails at an end', async () => {
    const { code, out, err } = await runHoverfolio('drivers', file, 'closed', '--set', 'limit=29 kg', '--units', 'SI')
    expect([code, err]).toEqual([0, ''])
    const text = plain(out)
    expect(text).toContain(
      `Models\n${cautionLine} Cautions in full: hoverfolio help.\nTrial values, not in the document: limit.\n`,
    )
    expect(text).toMatch(
      /closed, 25 g, is moved most by limit: \+193\.8 g at 60 kg\. At the low end of limit, 20 kg, it does not compute: /,
    )
    expect(text).toMatch(
      /^limit +29 kg +20 kg +does not compute +60 kg +\+193\.8 g +\+7\.25 % +ends of its stated range$/m,
    )
    expect(text).toMatch(/^At the low end of limit, 20 kg, closed does not compute: /m)
    expect(text).toContain(
      '1 assumption can reach closed; each was varied alone, all else as in the document or on trial: 7 runs.',
    )
  })

  test('drivers of a margin are minus what moves the actual, and plus what moves its bound', async () => {
    // 40 kg - (2 a + 3 b); the ends of a normal distribution are 1.645 deviations off.
    const z95 = 1.6448536269514722
    const { out } = await runHoverfolio('drivers', file, 'margin', 'of', 'light', '--json')
    const found = JSON.parse(out) as Drivers
    expect(found).toMatchObject({ target: 'margin of light', base: 5, dimension: 'kg', unit: 'kg', left: [] })
    expect(found.drivers.map(({ name }) => name)).toEqual(['a', 'b'])
    const [a, b] = found.drivers as [Driver, Driver]
    expect(a.high.change).toBeCloseTo(-2 * 2 * z95, 6)
    expect(b.low.change).toBeCloseTo(3 * z95, 6)
    expect(a.elasticity).toBeCloseTo((-2 * 10) / 5, 6)
    const text = plain((await runHoverfolio('drivers', file, 'margin of light')).out)
    expect(text).toContain('margin of light, 5 kg, is moved most by a: ')
  })

  test('drivers of a margin that no requirement has names those that can be asked', async () => {
    const { code, err } = await runHoverfolio('drivers', file, 'margin of lihgt')
    expect(code).toBe(2)
    expect(err).toContain('This notebook has no number "margin of lihgt"; did you mean "margin of light"?')
    expect(err).toContain('; margins that can be asked: margin of light.')
    expect(err).toContain('Usage: hoverfolio drivers FILE NAME|"margin of REQUIREMENT" ')
  })

  test('placeOfNumber() does not guess which of two requirements of one name is meant', () => {
    const twice: RequirementRecord = { name: 'twice', actual: 1, atMost: 2, margin: 1, met: true }
    const view = sheetView([cellView('a', { result: resultOf('a', { requirements: [twice, twice] }) })])
    const sheet = { view, reading: { graph: { owner: new Map() } } as unknown as Reading, overrides: {} }
    expect(() => placeOfNumber(sheet, 'margin of twice')).toThrow(
      '2 requirements of this notebook have the name "twice", so there is no telling whose margin is meant.',
    )
    expect(() => placeOfNumber(sheet, 'mass')).toThrow('None of its cells has worked out a number.')
  })

  test('drivers of a number that does not compute says why and exits 1', async () => {
    const { code, out, err } = await runHoverfolio('drivers', file, 'closed', '--set', 'limit=21 kg')
    expect([code, out]).toEqual([1, ''])
    expect(err).toContain('"closed" has no value to change from')
  })

  test.each([
    [drivers, ['a.json'], 'drivers takes a notebook file and the name of one number'],
    [
      drivers,
      ['a.json', 'mass', '--jsn'],
      'There is no option --jsn; did you mean "--json"? Options are --json, --set, --units.',
    ],
    [spread, ['a.json', 'mass', '--samples', '3'], '--samples wants a whole number from 16 to 65536; it got "3".'],
    [spread, ['a.json', 'mass', '--seed', 'new'], '--seed wants a whole number from 0 to 4294967295; it got "new".'],
    [spread, ['a.json', 'mass', '--samples'], '--samples'],
  ])('$0.name with $1 is a wrong call', async (subcommand, args, sentence) => {
    await expect(subcommand.run(args)).rejects.toThrow(sentence)
    await expect(subcommand.run(args)).rejects.toBeInstanceOf(WrongCall)
  })
})

/** Quantiles of the standard normal distribution; scipy 1.17.1. */
const z90 = 1.2815515655446004
const probability40 = 0.8413447460685429

describe('hoverfolio spread', patience, () => {
  test('spread of a linear model has the mean, deviation, percentiles, probability and shares of the closed form', async () => {
    const { code, out } = await runHoverfolio('spread', file, 'linear', '--shares', '--json', '--seed', '7')
    expect(code).toBe(0)
    const found = JSON.parse(out) as Spread & { shares: Shares }
    expect(found).toMatchObject({ seed: 7, done: 2048, sampled: ['a', 'b', 'c', 'd'], failures: [], stopped: false })
    // 2 a + 3 b: mean 2 10 + 3 5, variance 4 4 + 9 1.
    const summary = found.summary as Summary
    expect(summary.mean).toBeCloseTo(35, 1)
    expect(summary.deviation).toBeCloseTo(5, 1)
    for (const [share, z] of [
      [0.1, -z90],
      [0.5, 0],
      [0.9, z90],
    ] as const)
      expect(Math.abs(percentileOf(summary, share) - (35 + 5 * z))).toBeLessThan(0.1)
    // At most 40: one deviation above the mean.
    expect(Math.abs((found.requirements[0]?.probability ?? 0) - probability40)).toBeLessThan(0.005)
    const share = (name: string) => found.shares.shares.find((one) => one.name === name)
    for (const [name, wanted] of [
      ['a', 16 / 25],
      ['b', 9 / 25],
    ] as const) {
      const { low, high } = headlineShare(share(name) as Shares['shares'][number])
      expect(low, name).toBeLessThanOrEqual(wanted)
      expect(high, name).toBeGreaterThanOrEqual(wanted)
    }
    expect(share('c')).toMatchObject({ withOthers: { value: 0 } })
  })

  test('spread of a margin is the spread of what is left of the bound', async () => {
    const { out } = await runHoverfolio('spread', file, 'margin of light', '--json')
    const { summary } = JSON.parse(out) as { summary: Summary }
    expect(summary.mean).toBeCloseTo(5, 1)
    expect(summary.deviation).toBeCloseTo(5, 1)
  })

  test('spread of a product of lognormal factors is lognormal', async () => {
    const { out } = await runHoverfolio('spread', file, 'product', '--samples', '4096', '--json')
    const { summary } = JSON.parse(out) as { summary: Summary }
    // ln(c d) is normal: its median adds up, its deviation as squares do.
    const deviation = Math.hypot(Math.log(1.2), Math.log(1.1))
    for (const [share, z] of [
      [0.1, -z90],
      [0.5, 0],
      [0.9, z90],
    ] as const)
      expect(percentileOf(summary, share) / (12 * Math.exp(z * deviation))).toBeCloseTo(1, 2)
    expect(summary.mean / (12 * Math.exp(deviation ** 2 / 2))).toBeCloseTo(1, 2)
  })

  test('spread prints percentiles, requirements and what the variance comes from', async () => {
    const { code, out, err } = await runHoverfolio('spread', file, 'linear', '--samples', '256', '--shares')
    expect([code, err]).toEqual([0, ''])
    const text = plain(out)
    expect(text).toContain(cautionLine)
    expect(text).toMatch(/^P90 +41\.\d\d kg +\d\d\.\d\d kg to \d\d\.\d\d kg$/m)
    expect(text).toMatch(/^requirement light: met in 8\d\.?\d? % \(95 % interval /m)
    expect(text).toMatch(/^What the variance comes from, Sobol indices of \d+ rows, \d+ runs/m)
    expect(text).toMatch(/^a +6\d\.?\d? % /m)
    expect(text).toContain('Held at their value, because they state a range and no distribution: limit.')
    expect(text).toContain('256 samples of 4 assumptions together, independent; scrambled Sobol points, seed 1.')
  })

  test('spread counts samples that fail, and refuses a single value of what is sampled', async () => {
    const wide = join(folder, 'wide.json')
    const text = (await readFile(file, 'utf8')).replace('limit - 25 * u.kg', 'a - 10 * u.kg')
    await writeFile(wide, text)
    const [failing, refused] = await Promise.all([
      runHoverfolio('spread', wide, 'closed', '--samples', '64'),
      runHoverfolio('spread', file, 'linear', '--set', 'a=12 kg'),
    ])
    expect(plain(failing.out)).toMatch(
      /Samples that did not compute, counted and not dropped:\n {2}\d\d times in cell 2: /,
    )
    expect(refused).toMatchObject({
      code: 2,
      err: expect.stringContaining('--set a: it states a distribution and is sampled'),
    })
  })

  test('spread of a notebook without distributions says how one is stated', async () => {
    const bare = join(folder, 'bare.json')
    const cells = [{ id: 'x', kind: 'sizing', source: ["const x = assumption('x', 1, { range: [0, 2] })"] }]
    await writeFile(bare, JSON.stringify({ format: 'hoverfolio notebook', version: 1, title: 'Bare', cells }))
    const { code, out } = await runHoverfolio('spread', bare, 'x')
    expect(code).toBe(0)
    expect(out).toContain('there is nothing to sample. One is stated as: distribution: { triangular')
    expect(out).toContain('Held at their value, because they state a range and no distribution: x.')
  })
})

test('showProgress(name, terminal) writes one line on a terminal, wipes it at the end, and stays silent elsewhere', () => {
  const written: string[] = []
  const terminal = (isTTY: boolean) => ({ isTTY, write: (text: string) => written.push(text) })
  const show = showProgress('Sampling', terminal(true))
  show(64, 128)
  show(128, 128)
  showProgress('Sampling', terminal(false))(1, 2)
  expect(written).toEqual(['\rSampling: 64 of 128', `\r${' '.repeat('Sampling: 128 of 128'.length)}\r`])
})

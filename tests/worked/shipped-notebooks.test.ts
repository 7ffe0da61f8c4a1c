/**
 * Every notebook that comes with the program, as a reader finds it: nothing to remark, every cell current, every requirement met; and
 * what the sheets claim holds of their own numbers.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { SizingCell } from '../../kernel/cells/program/index.js'
import { openToolchain, type Toolchain } from '../../server/toolchain.js'
import { CellId, type CellResult, type Notebook, type ResultValue, readNotebook } from '../../shared/contracts/index.js'

const folder = new URL('../../notebooks/', import.meta.url)
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.slice(0, -'.json'.length))

function notebookOf(name: string): Notebook {
  const reading = readNotebook(readFileSync(new URL(`${name}.json`, folder), 'utf8'))
  if (!reading.ok) throw new Error(reading.reason)
  return reading.notebook
}

const sizingCells = ({ cells }: Notebook): SizingCell[] =>
  cells.filter((cell) => cell.kind === 'sizing').map((cell) => ({ id: cell.id, source: cell.source.join('\n') }))

let toolchain: Toolchain
const computed = new Map<string, Promise<readonly CellResult[]>>()

/** Results of a shipped notebook, computed once for all tests of this file. */
function resultsOf(name: string, overrides: Readonly<Record<string, number>> = {}): Promise<readonly CellResult[]> {
  const key = JSON.stringify([name, overrides])
  const held = computed.get(key)
  if (held !== undefined) return held
  const made = toolchain.pipeline
    .compute(sizingCells(notebookOf(name)), overrides, 'all')
    .then(({ results }) => results)
  computed.set(key, made)
  return made
}

const namedValue = (results: readonly CellResult[], name: string): ResultValue | undefined =>
  results.flatMap((result) => result.values).find((value) => value.name === name)?.value

function numberOf(results: readonly CellResult[], name: string): number {
  const value = namedValue(results, name)
  return value?.kind === 'number' ? Number(value.si) : Number.NaN
}

type Row = Readonly<Record<string, string | number | undefined>>

function rowsOf(results: readonly CellResult[], name: string): readonly Row[] {
  const value = namedValue(results, name)
  if (value?.kind !== 'list') throw new Error(`${name} is no table`)
  return value.items.map((item) =>
    item.kind === 'record'
      ? Object.fromEntries(
          item.entries.map(([field, entry]) => [
            field,
            entry.kind === 'number' ? Number(entry.si) : entry.kind === 'text' ? entry.text : undefined,
          ]),
        )
      : {},
  )
}

const rowNamed = (rows: readonly Row[], way: string): Row => rows.find((row) => row.way === way) ?? {}

beforeAll(async () => {
  toolchain = await openToolchain({ folder: new URL('../../.build/kernel/', import.meta.url).pathname })
  // The checker reads TypeScript's own library first: seconds, and no part of any test.
  await toolchain.pipeline.check([{ id: CellId.parse('a'), source: 'const length = 1 * u.m' }])
}, 120_000)
afterAll(() => toolchain.close())

describe.each(names)('notebooks/%s.json', (name) => {
  test('has a heading for every cell, and its own name as id', () => {
    const notebook = notebookOf(name)
    expect(notebook.id).toBe(name)
    for (const { id, kind, source } of notebook.cells)
      expect(source[0], id).toMatch(kind === 'sizing' ? /^\/\/ \S/ : /^## \S/)
  })

  test('leaves the checker nothing to remark', async () => {
    const { findings } = await toolchain.pipeline.check(sizingCells(notebookOf(name)))
    expect(findings).toEqual([])
  })

  test('computes every cell and meets every requirement', async () => {
    const results = await resultsOf(name)
    expect(results.filter((result) => result.outcome !== 'computed')).toEqual([])
    expect(results.flatMap((result) => result.requirements).filter((requirement) => !requirement.met)).toEqual([])
  })
})

describe('notebooks/starter.json', () => {
  test('closes: its parts add up to its gross mass, and the battery is the greater of energy and power', async () => {
    const results = await resultsOf('starter')
    const bars = results.flatMap((result) => result.figures).find(({ caption }) => caption === 'Where the mass goes')
    const mark = bars?.marks.find((one) => one.mark === 'bar')
    const sum = mark?.mark === 'bar' ? mark.value.reduce((total, mass) => total + mass, 0) : Number.NaN
    expect(sum / numberOf(results, 'grossMass')).toBeCloseTo(1, 10)
    const battery = rowsOf(results, 'sizedRows').find((row) => row.component === 'battery')
    expect(battery?.size).toBeCloseTo(numberOf(results, 'batteryMass'), 6)
    expect(Number(battery?.size)).toBeGreaterThanOrEqual(Number(battery?.nextSize))
  })

  test('carries a mechanism of the mass at which it says that hiding stops paying, at the same gross mass', async () => {
    const results = await resultsOf('starter')
    const stowage = rowsOf(results, 'stowageTable')
    const mass = numberOf(results, 'grossMass')
    for (const row of stowage.filter((one) => Number(one.mayWeigh) > 0 && one.verdict !== 'chosen')) {
      const light = Number(row.mechanism) < Number(row.mayWeigh)
      expect(Number(row.best) < mass, String(row.way)).toBe(light)
    }
    expect(numberOf(results, 'retractedStopsPaying')).toBe(rowNamed(stowage, 'retracted into the body').mayWeigh)
  })

  test('says undecided wherever the ends of the bands overlap', async () => {
    const stowage = rowsOf(await resultsOf('starter'), 'stowageTable')
    const here = stowage.find((row) => row.verdict === 'chosen')
    for (const row of stowage) {
      const pays = Number(row.unfavourable) < Number(here?.favourable)
      const fails = row.favourable === undefined || Number(row.favourable) > Number(here?.unfavourable)
      if (row !== here) expect(row.verdict, String(row.way)).toBe(pays ? 'pays' : fails ? 'does not pay' : 'undecided')
    }
    expect(new Set(stowage.map((row) => row.verdict))).toContain('undecided')
  })

  test('closes again when a need is changed, as its five steps promise', async () => {
    const [before, after] = await Promise.all([resultsOf('starter'), resultsOf('starter', { payload: 320 })])
    expect(numberOf(after, 'grossMass')).toBeLessThan(numberOf(before, 'grossMass') - 80)
    expect(after.every((result) => result.outcome === 'computed')).toBe(true)
  })
})

describe('notebooks/tern-watch.json', () => {
  test('gives all mass that is not something else to the battery, and ends where its mechanism eats the gain', async () => {
    const results = await resultsOf('tern-watch')
    expect(numberOf(results, 'batteryMass') + numberOf(results, 'fixedMass')).toBeCloseTo(
      numberOf(results, 'grossMass'),
      10,
    )
    const curve = results
      .flatMap((result) => result.figures)
      .find(({ caption }) => caption.includes('over the mass of the mechanism'))
    const [hidden, plain] = (curve?.marks ?? []).flatMap((mark) => (mark.mark === 'line' ? [mark] : []))
    const at = numberOf(results, 'breakEvenMechanism')
    const slope = (Number(hidden?.y[1]) - Number(hidden?.y[0])) / (Number(hidden?.x[1]) - Number(hidden?.x[0]))
    expect(Number(hidden?.y[0]) + slope * at).toBeCloseTo(Number(plain?.y[0]), 3)
  })

  test('gains less endurance than range with its speed free (common practice, no source)', async () => {
    const results = await resultsOf('tern-watch')
    expect(numberOf(results, 'freeEnduranceGain')).toBeGreaterThan(0)
    expect(numberOf(results, 'freeRangeGain')).toBeGreaterThan(numberOf(results, 'freeEnduranceGain'))
    expect(numberOf(results, 'rangeBreakEven')).toBeGreaterThan(numberOf(results, 'enduranceBreakEven'))
  })
})

describe('notebooks/how-many-rotors.json', () => {
  test('loses a smaller share with every pair of rotors, and is more likely to have some unit fail', async () => {
    const rows = rowsOf(await resultsOf('how-many-rotors'), 'tradeTable').filter(
      (row) => row.arrangement === 'booms' && Number(row.count) >= 8,
    )
    for (const [place, row] of rows.entries())
      if (place > 0) {
        expect(Number(row.peak)).toBeLessThan(Number(rows[place - 1]?.peak))
        expect(Number(row.someUnitFails)).toBeGreaterThan(Number(rows[place - 1]?.someUnitFails))
      }
  })

  test('never offers as lightest a count that cannot hold every loss', async () => {
    const results = await resultsOf('how-many-rotors')
    const count = numberOf(results, 'lightestCount')
    const rows = rowsOf(results, 'tradeTable').filter((row) => row.count === count)
    expect(rows.some((row) => row.lossesHeld === `${count} of ${count}`)).toBe(true)
  })
})

describe('notebooks/units.json', () => {
  const cells = sizingCells(notebookOf('units'))
  const said = async (edit: (source: string) => string) => {
    const edited = cells.map((cell) => (cell.id === 'hover' ? { ...cell, source: edit(cell.source) } : cell))
    return (await toolchain.pipeline.check(edited)).findings
  }
  const text = (id: string) => notebookOf('units').cells.find((cell) => cell.id === id)?.source ?? []
  const quoted = text('wrong-words').flatMap((line) => [...line.matchAll(/^\| `(.+)` \| (.+) \|$/g)])

  test('quotes what the checker says of each wrong line, word for word', async () => {
    expect(quoted).toHaveLength(4)
    for (const [, line, words] of quoted) {
      const findings = await said((source) => `${source}\n${line}`)
      expect(findings.map(({ message }) => message)).toEqual([words])
    }
  })

  test('marks what its exercises say: a slip of dimension, and not a slip of size', async () => {
    const withoutGravity = await said((source) => source.replace('grossMass * u.g0', 'grossMass'))
    expect(withoutGravity[0]?.message).toContain("The unit 'kW'")
    expect(new Set(withoutGravity.map(({ cell }) => cell)).size).toBe(3)
    expect(await said((source) => source.replace('rotorRadius ** 2', 'rotorRadius'))).not.toEqual([])
    expect(await said((source) => source.replace('rotorRadius ** 2', '2 * rotorRadius ** 2'))).toEqual([])
  })

  test('says why the dimension of a value from outside is not known', async () => {
    const { names } = await toolchain.pipeline.check(cells)
    const reading = names.find(({ name }) => name === 'reading')
    expect([reading?.dimension, reading?.why]).toEqual([null, 'nothing says what JSON.parse gives'])
    expect(names.find(({ name }) => name === 'camera')?.dimension).toBe('kg')
  })
})

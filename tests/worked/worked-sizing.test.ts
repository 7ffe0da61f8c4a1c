/**
 * The worked problem through the whole path of the command, against the plain solver beside this file and the values it was first solved
 * with (house example, solved independently; base values at 1e-5 relative).
 */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { SizingCell } from '../../kernel/cells/program/index.js'
import { openToolchain, type Toolchain } from '../../server/toolchain.js'
import { type CellResult, readNotebook } from '../../shared/contracts/index.js'
import { sizePlainly, type WorkedInput, worked } from './plain-sizing.js'

const reading = readNotebook(readFileSync(new URL('../../notebooks/worked-sizing.json', import.meta.url), 'utf8'))
if (!reading.ok) throw new Error(reading.reason)
const cells: SizingCell[] = reading.notebook.cells
  .filter((cell) => cell.kind === 'sizing')
  .map((cell) => ({ id: cell.id, source: cell.source.join('\n') }))

const base: Record<string, number> = {
  grossMass: 1636.9422,
  density: 1.0980332,
  diskLoading: 397.83578,
  hoverPower: 315_883.61,
  cruisePower: 79_930.624,
  liftToDrag: 11.648468,
  stallSpeed: 36.048982,
  reserveSpeed: 46.863677,
  reservePower: 56_021.899,
  energy: 77.302737 * 3.6e6,
  batteryMass: 411.18477,
  motorMass: 110.82763,
}

let toolchain: Toolchain
beforeAll(async () => {
  toolchain = await openToolchain({ folder: new URL('../../.build/kernel/', import.meta.url).pathname })
})
afterAll(() => toolchain.close())

async function answers(of: readonly SizingCell[], overrides: Partial<WorkedInput> = {}) {
  const { results } = await toolchain.pipeline.compute(of, overrides, 'all')
  return { values: valuesOf(results), error: results.find((result) => result.error !== undefined)?.error }
}

function valuesOf(results: readonly CellResult[]): Record<string, number> {
  const named = results.flatMap((result) => (result.outcome === 'computed' ? result.values : []))
  return Object.fromEntries(
    named.flatMap((entry) => (entry.value.kind === 'number' ? [[entry.name, Number(entry.value.si)]] : [])),
  )
}

function relative(actual: number | undefined, wanted: number): number {
  return Math.abs((actual ?? Number.NaN) / wanted - 1)
}

describe('notebooks/worked-sizing.json', () => {
  test('gives the base values at 1e-5', async () => {
    const { values } = await answers(cells)
    for (const [name, wanted] of Object.entries(base)) expect(relative(values[name], wanted), name).toBeLessThan(1e-5)
  })

  test('agrees with the plain solver to 1e-9 at seeded random variations, or both find no mass', {
    timeout: 60_000,
  }, async () => {
    const vary = (name: keyof WorkedInput, low: number, high: number) =>
      fc.double({ min: low, max: high, noNaN: true }).map((factor) => [name, worked[name] * factor] as const)
    const variation = fc.tuple(
      vary('payload', 0.2, 1.5),
      vary('range', 0.2, 1.9),
      vary('rotorRadius', 0.8, 1.2),
      vary('packSpecificEnergy', 0.8, 1.5),
      vary('structureShare', 0.8, 1.1),
      vary('stallMargin', 0.7, 1.2),
      fc.constantFrom(4, 6, 8, 12).map((count) => ['rotorCount', count] as const),
    )
    await fc.assert(
      fc.asyncProperty(variation, async (pairs) => {
        const overrides = Object.fromEntries(pairs) as Partial<WorkedInput>
        const plain = sizePlainly({ ...worked, ...overrides })
        const { values, error } = await answers(cells, overrides)
        if (plain === undefined) expect(error?.code).toBe('DOES_NOT_CLOSE')
        else expect(relative(values.grossMass, plain.grossMass)).toBeLessThan(1e-9)
      }),
      { seed: 20260114, numRuns: 120 },
    )
  })

  test('closes at 164.9 km and not at 165.2 km, and says where the fold is', async () => {
    const before = await answers(cells, { range: 164_900 })
    expect(relative(before.values.grossMass, sizePlainly({ ...worked, range: 164_900 })?.grossMass ?? 0)).toBeLessThan(
      1e-5,
    )
    const beyond = await answers(cells, { range: 165_200 })
    expect(beyond.values.grossMass).toBeUndefined()
    expect(beyond.error?.code).toBe('DOES_NOT_CLOSE')
    expect(beyond.error?.message).toMatch(/165\.0 km/)
  })

  test('gives the same answer with its cells shuffled, renamed and split', async () => {
    const shuffled = [...cells].reverse()
    const renamed = cells.map((cell, index) => ({ ...cell, id: `renamed-${index}` as SizingCell['id'] }))
    const split = cells.flatMap((cell) => splitIntoLines(cell))
    for (const edited of [shuffled, renamed, split]) {
      const { values } = await answers(edited)
      for (const [name, wanted] of Object.entries(base)) expect(relative(values[name], wanted), name).toBeLessThan(1e-5)
    }
  })
})

/** One cell per statement where every statement begins at the margin. */
function splitIntoLines(cell: SizingCell): SizingCell[] {
  const statements = cell.source.split(/\n(?=const )/)
  return statements.map((source, index) => ({ id: `${cell.id}-${index}` as SizingCell['id'], source }))
}

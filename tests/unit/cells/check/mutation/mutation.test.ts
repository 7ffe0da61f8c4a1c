/**
 * Slips that change a dimension are reported: at least 95 of 100. A few of one notebook run with every test; those of all with
 * `HOVERFOLIO_MUTANTS=500 npx vitest run --config tests/tooling/vitest.config.ts tests/unit/cells/check/mutation`, which lists the misses.
 */
import { readdirSync, readFileSync } from 'node:fs'
import typescript from 'typescript'
import { describe, expect, test } from 'vitest'
import { inferCells } from '../../../../../kernel/cells/check/dimensions/infer-cells.js'
import { inDependencyOrder } from '../../../../../kernel/cells/check/order.js'
import { ProgramBuilder } from '../../../../../kernel/cells/check/types/cell-program.js'
import { seededChance } from '../../../../lab/seeded.js'
import { check, declarations, graphOf } from '../notebook.js'
import { type Mutant, mutantsOf } from './mutants.js'

const asked = process.env.HOVERFOLIO_MUTANTS
const wanted = Number(asked ?? 20)
const folder = new URL('../../../../../notebooks/', import.meta.url).pathname

type Sources = Readonly<Record<string, string>>

interface StoredCell {
  readonly id: string
  readonly kind: string
  readonly source: readonly string[]
}

function sizingCells(file: string): Sources {
  const { cells } = JSON.parse(readFileSync(`${folder}/${file}`, 'utf8')) as { cells: readonly StoredCell[] }
  const sizing = cells.filter((cell) => cell.kind === 'sizing')
  return Object.fromEntries(sizing.map((cell) => [cell.id, cell.source.join('\n')]))
}

async function slipsIn(sources: Sources): Promise<readonly Mutant[]> {
  const graph = await graphOf(sources)
  const program = new ProgramBuilder(typescript, declarations).build(graph.cells, graph.shadowed)
  const files = inDependencyOrder(graph).flatMap((cell) => {
    const file = program.fileOf(cell)
    return file === undefined ? [] : [{ cell: cell.id, file }]
  })
  const { shapeAt } = inferCells(
    typescript,
    program.checker,
    files.map(({ file }) => file),
    new Set(),
  )
  return files.flatMap(({ cell, file }) => mutantsOf(typescript, { cell, file, shapeAt }))
}

/** So many of them, each as likely as any other; the same ones every time. */
function some<T>(items: readonly T[], count: number, seed: number): readonly T[] {
  const { next } = seededChance(seed)
  return items
    .map((item) => ({ item, at: next() }))
    .sort((a, b) => a.at - b.at)
    .slice(0, count)
    .map(({ item }) => item)
}

describe('check(a shipped notebook with one slip)', () => {
  test('reports at least 95 of 100 slips that change a dimension', { timeout: 1_200_000 }, async () => {
    const shipped = readdirSync(folder).filter((name) => name.endsWith('.json'))
    const notebooks = asked === undefined ? ['worked-sizing.json'] : shipped
    const slips: { readonly sources: Sources; readonly slip: Mutant; readonly file: string }[] = []
    for (const file of notebooks) {
      const sources = sizingCells(file)
      for (const slip of await slipsIn(sources)) slips.push({ sources, slip, file })
    }
    const tried = [...some(slips, wanted, 20_261)].sort((a, b) => a.file.localeCompare(b.file))
    const missed: string[] = []
    for (const { sources, slip, file } of tried) {
      const { findings } = await check({ ...sources, [slip.cell]: slip.source })
      if (findings.length === 0) missed.push(`${file} ${slip.about}`)
    }
    const share = 1 - missed.length / tried.length
    if (asked !== undefined) {
      const lines = [
        `${tried.length} slips of ${slips.length}; reported ${(100 * share).toFixed(1)} of 100. Missed:`,
        ...missed,
      ]
      process.stdout.write(`${lines.join('\n  ')}\n`)
    }
    expect(tried.length).toBe(Math.min(wanted, slips.length))
    expect(share).toBeGreaterThanOrEqual(0.95)
  })
})

/** From cells to a graph: who declares what, who reads whom, and what is wrong with it. Page order plays no part. */
import type { CellError, CellId } from '../../../shared/contracts/index.js'
import { BoundedCache, type Eraser, type Graph, type Pause, type SizingCell } from '../program/index.js'
import { cycleProblems, declarationProblems, freeNameProblems } from './graph-rules.js'
import { type CellProblem, type Household, keepHousehold, type ReadCell } from './household.js'
import { toFinding } from './problem.js'
import { type CellReading, readCell } from './read-cell.js'

/** Readings by the eraser that made them and the text they were made from: an edit costs one cell. */
const readings = new WeakMap<Eraser, BoundedCache<string, CellReading>>()

/**
 * Reads all sizing cells of a notebook, in page order. Never throws for any source: what is wrong with a cell is a finding.
 *
 * @throws what `erase` throws when the compiler itself fails.
 */
export async function analyse(
  cells: readonly SizingCell[],
  erase: Eraser,
  kernelNames: ReadonlySet<string>,
  pause?: Pause,
): Promise<Graph> {
  const bySource = await readAll([...new Set(cells.map((cell) => cell.source))], erase, pause)
  const read = cells.flatMap(({ id, source }): ReadCell[] => {
    const reading = bySource.get(source)
    return reading === undefined ? [] : [{ id, source, reading }]
  })
  const household = keepHousehold(read, kernelNames)
  const page = pageOf(read)
  const problems = inPageOrder(
    [
      ...read.flatMap((cell) => cell.reading.problems.map((problem) => ({ cell: cell.id, problem }))),
      ...declarationProblems(household),
      ...freeNameProblems(household),
      ...cycleProblems(household),
    ],
    page,
  )
  return {
    cells: read.map(analysedCell),
    owner: household.owner,
    upstream: new Map(read.map((cell) => [cell.id, upstreamOf(cell, household, page)])),
    shadowed: [...household.declarers.keys()].filter((name) => kernelNames.has(name)),
    findings: problems.map(({ cell, problem }) => toFinding(cell, problem)),
    failed: firstErrors(problems),
  }
}

async function readAll(
  sources: readonly string[],
  erase: Eraser,
  pause?: Pause,
): Promise<ReadonlyMap<string, CellReading>> {
  const known = readings.get(erase) ?? new BoundedCache<string, CellReading>(4000)
  readings.set(erase, known)
  const bySource = new Map<string, CellReading>()
  const missing: string[] = []
  for (const source of sources) {
    const reading = known.get(source)
    if (reading === undefined) missing.push(source)
    else bySource.set(source, reading)
  }
  const erased = missing.length === 0 ? [] : await erase(missing)
  const reading = async (source: string, index: number) => {
    const one = erased[index]
    if (one === undefined) throw new Error(`the eraser gave ${erased.length} answers to ${missing.length} sources`)
    const read = await readCell(source, one, erase)
    known.set(source, read)
    bySource.set(source, read)
  }
  const begun: Promise<void>[] = []
  for (const [index, source] of missing.entries()) {
    const rest = index === 0 ? undefined : pause?.()
    if (rest !== undefined) await rest
    const one = reading(source, index)
    // Its failure is heard below, when all have begun.
    one.catch(() => undefined)
    begun.push(one)
  }
  await Promise.all(begun)
  return bySource
}

function analysedCell({ id, source, reading }: ReadCell): Graph['cells'][number] {
  return {
    id,
    source,
    ...(reading.code === undefined ? {} : { code: reading.code }),
    ...(reading.map === undefined ? {} : { map: reading.map }),
    declares: reading.declares,
    reads: reading.reads.map((use) => use.name),
    assumptions: reading.assumptions,
  }
}

/** Where each cell stands on the page. */
function pageOf(cells: readonly ReadCell[]): (id: CellId) => number {
  const page = new Map(cells.map((cell, index) => [cell.id, index]))
  return (id) => page.get(id) ?? 0
}

function upstreamOf(cell: ReadCell, { declarers }: Household, page: (id: CellId) => number): readonly CellId[] {
  const upstream = new Set(cell.reading.reads.flatMap((use) => (declarers.get(use.name) ?? []).map((one) => one.cell)))
  upstream.delete(cell.id)
  return [...upstream].sort((a, b) => page(a) - page(b))
}

function inPageOrder(problems: readonly CellProblem[], page: (id: CellId) => number): CellProblem[] {
  return [...problems].sort(
    (a, b) =>
      page(a.cell) - page(b.cell) ||
      a.problem.place.line - b.problem.place.line ||
      a.problem.place.column - b.problem.place.column,
  )
}

function firstErrors(problems: readonly CellProblem[]): ReadonlyMap<CellId, CellError> {
  const failed = new Map<CellId, CellError>()
  for (const { cell, problem } of problems) {
    if (problem.severity !== 'error' || failed.has(cell)) continue
    const { code, message, place } = problem
    failed.set(cell, { code, message, place: { cell, line: place.line, column: place.column } })
  }
  return failed
}

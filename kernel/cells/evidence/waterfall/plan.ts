/** From two states of a notebook to the steps between them, and to the notebook with some of the steps adopted. */
import type { CellId, CellResult, WaterfallPart, WaterfallStep } from '../../../../shared/contracts/index.js'
import type { AnalysedCell, Graph, Overrides, SizingCell } from '../../program/index.js'
import { Groups } from './groups.js'
import { skeletonOf } from './skeleton.js'

export interface WaterfallSide {
  /** In page order. */
  readonly cells: readonly SizingCell[]
  readonly graph: Graph
  /** Of the cells as they are, computed by the kernel at hand. */
  readonly results: readonly CellResult[]
}

export interface StepPlan {
  readonly steps: readonly WaterfallStep[]
  /** Changes from which no way leads to the result. */
  readonly without: readonly WaterfallPart[]
  /** The notebook with these steps adopted and the others not; overrides of assumptions that some cell of it declares. */
  notebookWith(adopted: ReadonlySet<number>): { readonly cells: readonly SizingCell[]; readonly overrides: Overrides }
}

/** `name` is the result that is to be explained: of its record only the part before the point counts. */
export function planSteps(from: WaterfallSide, to: WaterfallSide, name: string): StepPlan {
  const parts = [...assumptionParts(from, to), ...cellParts(from, to)]
  const upstream = cellsAbove(rootOf(name), [from.graph, to.graph])
  const matters = (part: WaterfallPart) => placesOf(part, [from.graph, to.graph]).some((cell) => upstream.has(cell))
  const all = grouped(parts, from.graph, to.graph)
  const steps = all.filter((step) => step.parts.some(matters))
  return {
    steps,
    without: all.filter((step) => !step.parts.some(matters)).flatMap((step) => step.parts),
    notebookWith: (adopted) => mixed(from, to, steps, adopted),
  }
}

const rootOf = (name: string) => name.split('.')[0] ?? name

/** Values written as plain numbers that differ. */
function assumptionParts(from: WaterfallSide, to: WaterfallSide): WaterfallPart[] {
  const [before, after] = [valuesOf(from.results), valuesOf(to.results)]
  const [writtenBefore, writtenAfter] = [plainValues(from.graph), plainValues(to.graph)]
  return [...before].flatMap(([name, old]): WaterfallPart[] => {
    const now = after.get(name)
    const [one, other] = [writtenBefore.get(name), writtenAfter.get(name)]
    if (now === undefined || now === old || one === undefined || other === undefined || one === other) return []
    return [{ kind: 'assumption', name, from: old, to: now }]
  })
}

function valuesOf(results: readonly CellResult[]): ReadonlyMap<string, number> {
  const all = results.flatMap(({ assumptions }) => assumptions)
  return new Map(all.flatMap(({ name, value }) => (typeof value === 'number' ? [[name, value] as const] : [])))
}

function plainValues({ cells }: Graph): ReadonlyMap<string, string> {
  return new Map(
    cells.flatMap(({ code, assumptions }) => (code === undefined ? [] : [...skeletonOf(code, assumptions).plain])),
  )
}

function cellParts(from: WaterfallSide, to: WaterfallSide): WaterfallPart[] {
  const [before, after] = [byId(from.graph), byId(to.graph)]
  const ids = new Set([...from.graph.cells, ...to.graph.cells].map(({ id }) => id))
  return [...ids].flatMap((cell): WaterfallPart[] => {
    const [old, now] = [before.get(cell), after.get(cell)]
    if (old === undefined) return [{ kind: 'cell', cell, change: 'added' }]
    if (now === undefined) return [{ kind: 'cell', cell, change: 'removed' }]
    return sameMeaning(old, now) ? [] : [{ kind: 'cell', cell, change: 'changed' }]
  })
}

function sameMeaning(old: AnalysedCell, now: AnalysedCell): boolean {
  if (old.source === now.source) return true
  if (old.code === undefined || now.code === undefined) return false
  return skeletonOf(old.code, old.assumptions).tokens === skeletonOf(now.code, now.assumptions).tokens
}

const byId = ({ cells }: Graph) => new Map(cells.map((cell) => [cell.id, cell]))

/** The cells in which a part lies, on either side. */
function placesOf(part: WaterfallPart, graphs: readonly Graph[]): CellId[] {
  if (part.kind === 'cell') return [part.cell]
  return graphs.flatMap(({ owner }) => owner.get(part.name) ?? [])
}

/** Cells from which a way leads to the name, over the edges of both sides: a mixture has no others. */
function cellsAbove(name: string, graphs: readonly Graph[]): ReadonlySet<CellId> {
  const above = new Set<CellId>()
  const waiting = graphs.flatMap(({ owner }) => owner.get(name) ?? [])
  for (let cell = waiting.pop(); cell !== undefined; cell = waiting.pop()) {
    if (above.has(cell)) continue
    above.add(cell)
    for (const { upstream } of graphs) waiting.push(...(upstream.get(cell) ?? []))
  }
  return above
}

/** Puts together what cannot be adopted one by one: who reads a new name goes with who declares it, and so with a name that goes. */
function grouped(parts: readonly WaterfallPart[], from: Graph, to: Graph): WaterfallStep[] {
  const groups = new Groups(parts.length)
  const partOf = new Map(parts.flatMap((part, index) => (part.kind === 'cell' ? [[part.cell, index] as const] : [])))
  const join = (one: CellId | undefined, other: CellId | undefined, why: string) => {
    const [a, b] = [one, other].map((cell) => (cell === undefined ? undefined : partOf.get(cell)))
    if (a !== undefined && b !== undefined) groups.join(a, b, why)
  }
  for (const name of new Set([...from.owner.keys(), ...to.owner.keys()])) {
    const [old, now] = [from.owner.get(name), to.owner.get(name)]
    if (old !== undefined && now !== undefined && old !== now) join(old, now, `${name} moved to another cell`)
    for (const reader of onlyReaders(name, to, from)) if (old === undefined) join(now, reader, `${name} is new`)
    for (const reader of onlyReaders(name, from, to)) if (now === undefined) join(old, reader, `${name} is gone`)
  }
  return groups.all.map(({ members, why }) => ({
    parts: members.flatMap((index) => parts[index] ?? []),
    ...(why.length === 0 ? {} : { together: why.join(', ') }),
  }))
}

/** Cells that read the name in one graph and not in the other. */
function onlyReaders(name: string, here: Graph, there: Graph): CellId[] {
  const reads = (graph: Graph, id: CellId) => graph.cells.some((cell) => cell.id === id && cell.reads.includes(name))
  return here.cells.filter(({ id, reads: own }) => own.includes(name) && !reads(there, id)).map(({ id }) => id)
}

function mixed(
  from: WaterfallSide,
  to: WaterfallSide,
  steps: readonly WaterfallStep[],
  adopted: ReadonlySet<number>,
): { cells: readonly SizingCell[]; overrides: Overrides } {
  const later = new Set<CellId>()
  const overrides: Record<string, number> = {}
  steps.forEach(({ parts }, index) => {
    for (const part of parts) {
      if (part.kind === 'assumption') overrides[part.name] = adopted.has(index) ? part.to : part.from
      else if (adopted.has(index)) later.add(part.cell)
    }
  })
  const before = new Map(from.cells.map((cell) => [cell.id, cell]))
  const after = new Map(to.cells.map((cell) => [cell.id, cell]))
  const ids = new Set([...to.cells, ...from.cells].map(({ id }) => id))
  const cells = [...ids].flatMap((id): SizingCell[] => {
    // What no step names stays as it was: it differs in nothing, in assumptions only, or in what does not matter here.
    const chosen = later.has(id) ? after.get(id) : before.get(id)
    return chosen === undefined ? [] : [chosen]
  })
  return { cells, overrides }
}

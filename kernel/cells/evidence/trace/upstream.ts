/** The names that a number is made from, read from the text: the same walk as that of the slice, name by name. */
import type { CellId } from '../../../../shared/contracts/index.js'
import { kernelUses, type Statement, sourcePlace, statesName } from '../../analyse/index.js'
import type { AnalysedCell, WantedNumbers } from '../../program/index.js'
import { type CellPart, neededParts, type ReadProgram } from '../slice/index.js'

export type NumberPlace = WantedNumbers['names'][number]

export interface UpstreamName {
  readonly name: string
  readonly cell: CellId
  /** Of the cell's own TypeScript, counted from 1. */
  readonly line: number
  readonly assumption: boolean
  /** Names that it is made from, in the order of the text. */
  readonly reads: readonly string[]
  /** Methods of the kernel called in what makes it. */
  readonly methods: readonly string[]
  /** The text leads to it no way that can be told name by name. */
  readonly apart: boolean
}

/** Each after what it reads, the target last; assumptions that the slice holds and the text leads to no other way come first. */
export function readUpstream(read: ReadProgram, target: NumberPlace): readonly UpstreamName[] {
  const parts = neededParts(read, { names: [target], requirements: [] })
  const cells = new Map(read.graph.cells.map((cell) => [cell.id, cell]))
  const places = placesOf(parts, target)
  const found = new Map<string, UpstreamName>()
  const met = new Set<string>()
  // A list of its own in place of recursion: how deep names go is the author's choice.
  const waiting: { readonly name: string; readonly made?: UpstreamName }[] = [{ name: target.name }]
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (next.made !== undefined) found.set(next.name, next.made)
    const part = places.get(next.name)
    const cell = part === undefined ? undefined : cells.get(part.cell.id)
    if (next.made !== undefined || met.has(next.name) || part === undefined || cell === undefined) continue
    met.add(next.name)
    const made = readName(next.name, part, cell, new Set(places.keys()), read)
    waiting.push({ name: next.name, made })
    for (const name of made.reads.toReversed()) if (!met.has(name)) waiting.push({ name })
  }
  const apart = parts.flatMap(({ cell }) => cell.assumptions).filter((name) => !found.has(name))
  return [
    ...apart.flatMap((name) => namesApart(name, cells.get(places.get(name)?.cell.id ?? target.cell))),
    ...found.values(),
  ]
}

/** An assumption by itself. */
export function namesApart(name: string, cell: AnalysedCell | undefined): readonly UpstreamName[] {
  if (cell === undefined) return []
  const line = cell.declares.find((one) => one.name === name)?.line ?? 1
  return [{ name, cell: cell.id, line, assumption: true, reads: [], methods: [], apart: true }]
}

/** Which part makes a name; the target may be a name that its cell only states. */
function placesOf(parts: readonly CellPart[], target: NumberPlace): ReadonlyMap<string, CellPart> {
  const places = new Map(parts.flatMap((part) => part.cell.declares.map((name) => [name, part] as const)))
  const own = parts.find(({ cell }) => cell.id === target.cell)
  if (own !== undefined) places.set(target.name, own)
  return places
}

function readName(
  name: string,
  part: CellPart,
  cell: AnalysedCell,
  known: ReadonlySet<string>,
  { graph }: ReadProgram,
): UpstreamName {
  const { code = '' } = cell
  const makers = makersOf(name, part.statements)
  const declaration = cell.declares.find((one) => one.name === name)
  const read = makers.flatMap((maker) =>
    declaration !== undefined && maker.declares.includes(name)
      ? declaration.reads
      : [...maker.reads, ...maker.changes, ...(declaration === undefined ? maker.declares : [])],
  )
  const kernel = cell.reads.filter((one) => !graph.owner.has(one))
  const methods = makers.flatMap(({ start, end }) => kernelUses(code.slice(start, end), kernel))
  return {
    name,
    cell: cell.id,
    line: declaration?.line ?? lineOf(makers[0], cell),
    assumption: part.cell.assumptions.includes(name),
    reads: [...new Set(read)].filter((one) => one !== name && known.has(one)),
    methods: [...new Set(methods)].filter((method) => method.includes('.')),
    apart: false,
  }
}

/**
 * Statements that declare, change or state the name, call a function that changes it, or may change it unseen because they read it for no
 * other end.
 */
function makersOf(name: string, statements: readonly Statement[]): readonly Statement[] {
  const changers = new Set(
    statements.flatMap(({ changesLater, changes, declares }) =>
      changesLater && changes.includes(name) ? declares : [],
    ),
  )
  return statements.filter(
    (statement) =>
      statement.declares.includes(name) ||
      statement.changes.includes(name) ||
      statesName(statement, name) ||
      statement.reads.some((one) => changers.has(one)) ||
      (statement.kind === 'other' && statement.changes.length === 0 && statement.reads.includes(name)),
  )
}

function lineOf(statement: Statement | undefined, { code = '', map }: AnalysedCell): number {
  if (statement === undefined || map === undefined) return 1
  const { start, line } = statement
  return sourcePlace(map, { line, column: start - code.lastIndexOf('\n', start - 1) }).line
}

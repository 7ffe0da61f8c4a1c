/** What changed in the text: the title block, and cell by cell. Cells are known by their ids, which outlive every edit. */
import { diffArrays } from 'diff'
import type { CellChange, FieldChange, FrozenText, LineChange } from '../../../../shared/contracts/index.js'
import { longestRising } from './longest-rising.js'

/** Equal lines shown around a change. */
const around = 2

type Cell = FrozenText['cells'][number]

export function compareFields(from: FrozenText, to: FrozenText): FieldChange[] {
  const fields = ['question', 'project', 'basis'] as const
  const all = [
    { field: 'title', from: from.title, to: to.title },
    ...fields.map((field) => ({ field, from: from.titleBlock[field] ?? '', to: to.titleBlock[field] ?? '' })),
  ]
  return all.filter((change) => change.from !== change.to)
}

/** Changes in the order of the later text; what was removed stands where it stood among its neighbours. */
export function compareCells(from: FrozenText, to: FrozenText): { changes: CellChange[]; same: number } {
  const before = new Map(from.cells.map((cell) => [cell.id, cell]))
  const after = new Map(to.cells.map((cell) => [cell.id, cell]))
  const moved = movedCells(from.cells, to.cells)
  const changes: CellChange[] = []
  let same = 0
  for (const cell of inReadingOrder(from.cells, to.cells)) {
    const [old, now] = [before.get(cell.id), after.get(cell.id)]
    const change = changeOf(old, now, moved.has(cell.id))
    if (change === null) same += 1
    else changes.push(change)
  }
  return { changes, same }
}

function changeOf(old: Cell | undefined, now: Cell | undefined, moved: boolean): CellChange | null {
  const shown = now ?? old
  if (shown === undefined) return null
  const lines = lineChanges(old?.source ?? [], now?.source ?? [])
  const same = old !== undefined && now !== undefined && lines.length === 0 && old.kind === now.kind
  if (same && !moved) return null
  return {
    cell: shown.id,
    kind: shown.kind,
    ...(old === undefined ? {} : { from: old.number }),
    ...(now === undefined ? {} : { to: now.number }),
    heading: headingOf(shown),
    change: old === undefined ? 'added' : now === undefined ? 'removed' : same ? 'moved' : 'changed',
    moved,
    lines,
  }
}

/** The first words of a cell: its comment, or its heading in prose. */
export function headingOf({ source }: Pick<Cell, 'source'>): string {
  const line = source.find((each) => each.trim() !== '') ?? ''
  return line.replace(/^\s*(\/\/+|#+)\s*/, '').trim()
}

/** Empty when the lines are the same; else all of them, with longer runs of equal lines left out. */
export function lineChanges(from: readonly string[], to: readonly string[]): LineChange[] {
  const parts = diffArrays([...from], [...to])
  if (parts.every((part) => !part.added && !part.removed)) return []
  return parts.flatMap((part, index): LineChange[] => {
    const kind = part.added ? 'added' : part.removed ? 'removed' : 'kept'
    const lines = part.value.map((text): LineChange => ({ kind, text }))
    if (kind !== 'kept') return lines
    const head = index === 0 ? 0 : around
    const tail = index === parts.length - 1 ? 0 : around
    const between = lines.length - head - tail
    if (between < 2) return lines
    return [
      ...lines.slice(0, head),
      { kind: 'left out', lines: between },
      ...(tail === 0 ? [] : lines.slice(lines.length - tail)),
    ]
  })
}

/** Cells on both sides that are not among the most that keep their order. */
function movedCells(from: readonly Cell[], to: readonly Cell[]): ReadonlySet<string> {
  const places = new Map(from.map((cell, place) => [cell.id as string, place]))
  const common = to.map((cell) => cell.id as string).filter((id) => places.has(id))
  const kept = new Set(longestRising(common.map((id) => places.get(id) ?? 0)))
  return new Set(common.filter((id) => !kept.has(places.get(id) ?? 0)))
}

/** Cells of the later text, with those removed after the one that stood before them. */
function inReadingOrder(from: readonly Cell[], to: readonly Cell[]): Cell[] {
  const later = new Set(to.map((cell) => cell.id))
  const order = [...to]
  let last: Cell | undefined
  for (const cell of from) {
    if (!later.has(cell.id)) order.splice(last === undefined ? 0 : order.indexOf(last) + 1, 0, cell)
    last = later.has(cell.id) ? order.find((each) => each.id === cell.id) : cell
  }
  return order
}

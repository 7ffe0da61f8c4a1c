/** Three-way merge of text by lines: my changes to a base are carried over to their version of it. */
import { diffArrays } from 'diff'

interface LineChange {
  /** First line of the base that is replaced. */
  readonly at: number
  readonly removed: number
  readonly inserted: readonly string[]
}

/**
 * Carries the changes `base` to `mine` over to `theirs`. A change that they made as well is not made twice; where both changed
 * the same lines differently both versions stay, theirs first, so that nobody's words are lost.
 */
export function mergeLines(base: string, mine: string, theirs: string): string {
  if (mine === base || mine === theirs) return theirs
  if (theirs === base) return mine
  const baseLines = base.split('\n')
  const own = changesOf(baseLines, mine.split('\n'))
  const other = changesOf(baseLines, theirs.split('\n'))
  const merged: string[] = []
  let line = 0
  while (own.length > 0 || other.length > 0) {
    const start = Math.min(own[0]?.at ?? Number.POSITIVE_INFINITY, other[0]?.at ?? Number.POSITIVE_INFINITY)
    const group = takeOverlapping(own, other, start)
    merged.push(...baseLines.slice(line, start), ...settle(group.own, group.other, baseLines, start, group.end))
    line = group.end
  }
  merged.push(...baseLines.slice(line))
  return merged.join('\n')
}

function changesOf(base: readonly string[], after: readonly string[]): LineChange[] {
  const changes: LineChange[] = []
  let line = 0
  let open: { at: number; removed: number; inserted: string[] } | undefined
  for (const part of diffArrays([...base], [...after])) {
    if (!part.added && !part.removed) {
      line += part.value.length
      open = undefined
      continue
    }
    if (open === undefined) {
      open = { at: line, removed: 0, inserted: [] }
      changes.push(open)
    }
    if (part.added) open.inserted.push(...part.value)
    else {
      open.removed += part.value.length
      line += part.value.length
    }
  }
  return changes
}

/** Takes from both lists the changes that touch each other, beginning with the one at `start`. */
function takeOverlapping(own: LineChange[], other: LineChange[], start: number) {
  const group = { own: [] as LineChange[], other: [] as LineChange[], end: start }
  const touches = (change: LineChange | undefined): change is LineChange =>
    change !== undefined && (change.at < group.end || change.at === start)
  let grew = true
  while (grew) {
    grew = false
    for (const [from, into] of [
      [own, group.own],
      [other, group.other],
    ] as const) {
      const next = from[0]
      if (!touches(next)) continue
      from.shift()
      into.push(next)
      group.end = Math.max(group.end, next.at + next.removed)
      grew = true
    }
  }
  return group
}

function settle(
  own: readonly LineChange[],
  other: readonly LineChange[],
  base: readonly string[],
  start: number,
  end: number,
): readonly string[] {
  const mine = applied(own, base, start, end)
  const theirs = applied(other, base, start, end)
  if (own.length === 0 || mine.join('\n') === theirs.join('\n')) return theirs
  if (other.length === 0) return mine
  const kept = new Set(theirs)
  return [
    ...theirs,
    ...own.flatMap((change) => change.inserted).filter((line) => line.trim() === '' || !kept.has(line)),
  ]
}

function applied(changes: readonly LineChange[], base: readonly string[], start: number, end: number): string[] {
  const lines: string[] = []
  let line = start
  for (const change of changes) {
    lines.push(...base.slice(line, change.at), ...change.inserted)
    line = change.at + change.removed
  }
  lines.push(...base.slice(line, end))
  return lines
}

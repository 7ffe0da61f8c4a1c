/**
 * Carries a change from one text to another by whole lines: a line is taken out only where it still stands as it was, a new one is put
 * behind the line it came after. Coarser than `mergeText`, so that two people's words in one line are never woven into each other.
 */
import { diffArrays } from 'diff'
import type * as Y from 'yjs'

/** Applies to `target` what was changed from `base` to `now`. */
export function carryLines(base: string, now: string, target: Y.Text): void {
  const lines = target.toString().split('\n')
  const baseLines = base.split('\n')
  const place = placesIn(lines, baseLines)
  const out = new Set<number>()
  /** New lines by the line of the target that they come after; -1 puts them at its start. */
  const into = new Map<number, string[]>()
  let at = 0
  for (const part of diffArrays(baseLines, now.split('\n'))) {
    if (part.added) {
      const after = place.slice(0, at).findLast((index) => index >= 0) ?? -1
      into.set(after, [...(into.get(after) ?? []), ...part.value])
      continue
    }
    if (part.removed) for (const index of place.slice(at, at + part.value.length)) if (index >= 0) out.add(index)
    at += part.value.length
  }
  apply(target, lines, out, into)
}

/** Where each line of base stands in the target; -1 for those that are no longer there. */
function placesIn(lines: readonly string[], baseLines: readonly string[]): readonly number[] {
  const place: number[] = []
  let at = 0
  for (const part of diffArrays([...baseLines], [...lines])) {
    if (part.removed) place.push(...part.value.map(() => -1))
    else {
      if (!part.added) place.push(...part.value.map((_, index) => at + index))
      at += part.value.length
    }
  }
  return place
}

/** From the last line to the first, so that earlier places stay right. */
function apply(
  target: Y.Text,
  lines: readonly string[],
  out: ReadonlySet<number>,
  into: ReadonlyMap<number, readonly string[]>,
): void {
  for (let index = lines.length - 1, end = target.length; index >= 0; index -= 1) {
    const length = lines[index]?.length ?? 0
    const start = end - length
    const fresh = into.get(index)
    if (fresh !== undefined) target.insert(end, `\n${fresh.join('\n')}`)
    if (out.has(index)) {
      const from = index > 0 ? start - 1 : start
      target.delete(from, Math.min(length + 1, target.length - from))
    }
    end = start - 1
  }
  const first = into.get(-1)
  if (first !== undefined) target.insert(0, target.length === 0 ? first.join('\n') : `${first.join('\n')}\n`)
}

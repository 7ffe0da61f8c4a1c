/** Assumptions that are read by the same names and do the same: beyond a few, they stand as one in a small graph. */
import type { TraceStep } from '../../contracts/index.js'

/** So many of a kind are folded into fewer. */
const mostAlike = 8
/** So many of them stay. */
const shownOfAlike = 6

/** What is folded, by the name of the step that stands for it; in the order of the steps. */
export type Folds = ReadonlyMap<string, readonly TraceStep[]>

/** `readsOf` gives what a step is made from, among the steps that are shown. */
export function foldsOf(
  steps: readonly TraceStep[],
  target: string,
  readsOf: (step: TraceStep) => ReadonlySet<string>,
): Folds {
  const readers = new Map<string, string[]>()
  for (const step of steps)
    for (const name of readsOf(step)) readers.set(name, [...(readers.get(name) ?? []), step.name])
  const alike = new Map<string, TraceStep[]>()
  for (const step of steps) {
    if (step.kind !== 'assumption' || step.name === target) continue
    const key = JSON.stringify([step.acts, readers.get(step.name) ?? []])
    alike.set(key, [...(alike.get(key) ?? []), step])
  }
  return new Map(
    [...alike.values()].flatMap((group) => {
      const folded = group.length > mostAlike ? group.slice(shownOfAlike) : []
      const [first] = folded
      return first === undefined ? [] : [[first.name, folded] as const]
    }),
  )
}

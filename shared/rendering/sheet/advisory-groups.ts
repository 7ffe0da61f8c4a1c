/**
 * Advisories of one kind said once: a sweep calls a method a hundred times, and its reader wants the worst case and the number of
 * the others. The data keeps every one of them.
 */
import type { Advisory } from '../../contracts/index.js'
import { numberOf } from '../quantity/index.js'

export interface AdvisoryGroup {
  /** The one farthest outside its range; the first where none says how far. */
  readonly worst: Advisory
  /** How many more there are of this kind. */
  readonly more: number
}

/** In the order in which the kinds first came. */
export function groupAdvisories(advisories: readonly Advisory[]): readonly AdvisoryGroup[] {
  const kinds = new Map<string, AdvisoryGroup>()
  for (const advisory of advisories) {
    const kind = kindOf(advisory)
    const group = kinds.get(kind)
    if (group === undefined) kinds.set(kind, { worst: advisory, more: 0 })
    else kinds.set(kind, { worst: worseOf(group.worst, advisory), more: group.more + 1 })
  }
  return [...kinds.values()]
}

/** The message of the worst case, and in words how many are like it. */
export function groupWords({ worst, more }: AdvisoryGroup): string {
  return more === 0 ? worst.message : `${worst.message} (The worst of ${more + 1} alike.)`
}

/** Places in a list (`segments[3].speed`) are no kinds of their own. */
function kindOf({ code, method, quantity }: Advisory): string {
  return JSON.stringify([code, method, quantity?.replaceAll(/\d+/g, '')])
}

function worseOf(held: Advisory, next: Advisory): Advisory {
  return excess(next) > excess(held) ? next : held
}

/** How far beyond the end of its range a value lies, as a share of that end. */
function excess({ value, range }: Advisory): number {
  if (value === undefined || range === undefined) return 0
  const [low, high] = range
  const at = numberOf(value)
  const beyond = Math.max(low === null ? 0 : low - at, high === null ? 0 : at - high, 0)
  const end = high !== null && at > high ? high : (low ?? 1)
  return beyond / Math.max(Math.abs(end), Number.MIN_VALUE)
}

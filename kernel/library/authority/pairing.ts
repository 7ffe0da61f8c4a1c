/** Which rotors should hang on one bus: the grouping whose worst loss of a bus hurts least. */
import { checkOptions, InvalidInput } from '../errors.js'
import type { Ratio } from '../quantity.js'
import { type Hover, type HoverOptions, knownHover, readHover, type Trim, trimOf } from './trim.js'

export interface PairingOptions extends HoverOptions {
  /** Rotors that share a bus; 2 when left out. */
  readonly rotorsPerBus?: Ratio
}

export interface Pairing {
  /** Places of the rotors of each bus. */
  readonly buses: readonly (readonly number[])[]
  /** The trim after the loss of each bus, in their order. */
  readonly cases: readonly Trim[]
  /** Losses of a bus that hold every axis, and those of them that can be steered. */
  readonly feasible: Ratio
  readonly controllable: Ratio
  /** Greatest peak over weight, what cannot be held given up. */
  readonly worstPeakShare: Ratio
  /** Over the mean of normal hover. */
  readonly worstPeakToHover: Ratio
  /** Groups of rotors that were trimmed. */
  readonly tried: Ratio
}

const method = 'authority.pairing'
const known = new Set([...knownHover, 'rotorsPerBus'])
const mostToPair = 16

/**
 * The grouping of rotors on buses that hurts least when any one bus is lost, of all groupings.
 *
 * @equation least in this order over all partitions: axes given up, losses that cannot be steered, the greatest peak, the sum of peaks
 * @param options - as `authority.losses`; `rotorsPerBus` (2), which divides the number of rotors
 * @returns `buses`: places of the rotors of each; `cases`: the trim after the loss of each; `feasible`, `controllable`, `worstPeakShare` (of the
 * weight), `worstPeakToHover`, and how many groups were `tried`
 * @throws InvalidInput as `authority.trim`, for more than 16 rotors, a number per bus that does not divide them or leaves one bus, and an unknown option
 * @method Each group is trimmed once; partitions are searched in full, leaving out those that begin no better than the best found.
 * @validity As `authority.trim`. The wiring's length and its way through the wing are not weighed.
 * @source House method; the search is elementary.
 * @example
 * const eight = [1, -1, 1, -1, 1, -1, 1, -1].map((spin, i) => ({
 *   x: 3 * Math.cos((i * Math.PI) / 4), y: 3 * Math.sin((i * Math.PI) / 4), spin, maxThrust: 6 * u.kN, torqueRatio: 0.1,
 * }))
 * authority.pairing({ rotors: eight, weight: 16 * u.kN }).feasible // 4
 */
export function pairing(options: PairingOptions): Pairing {
  checkOptions(method, options, known)
  const hover = readHover(method, options)
  const { rotorsPerBus = 2 } = options
  const count = hover.rotors.length
  if (count > mostToPair)
    throw new InvalidInput({
      method,
      argument: 'rotors',
      value: count,
      accepted: `at most ${mostToPair}`,
      remedy: 'The groupings of more are too many to try; give the buses to authority.electricalLosses.',
    })
  if (!Number.isInteger(rotorsPerBus) || rotorsPerBus < 1 || count % rotorsPerBus !== 0 || rotorsPerBus === count)
    throw new InvalidInput({
      method,
      argument: 'rotorsPerBus',
      value: rotorsPerBus,
      accepted: `a whole number that divides the ${count} rotors and leaves two buses or more`,
    })
  const groups = trimGroups(hover, rotorsPerBus)
  const best = searchPartitions(groups, count)
  const worst = Math.max(...best.map((group) => group.trim.degradedPeakShare))
  return {
    buses: best.map((group) => group.rotors),
    cases: best.map((group) => group.trim),
    feasible: best.filter((group) => group.trim.feasible).length,
    controllable: best.filter((group) => group.trim.controllable).length,
    worstPeakShare: worst,
    worstPeakToHover: worst * count,
    tried: groups.flat().length,
  }
}

interface Group {
  readonly rotors: readonly number[]
  readonly bits: number
  readonly trim: Trim
}

/** All groups, listed by their first rotor. */
function trimGroups(hover: Hover, size: number): Group[][] {
  const count = hover.rotors.length
  const groups: Group[][] = Array.from({ length: count }, () => [])
  const grow = (rotors: readonly number[], from: number): void => {
    if (rotors.length === size) {
      const bits = rotors.reduce((all, at) => all | (1 << at), 0)
      groups[rotors[0] as number]?.push({ rotors, bits, trim: trimOf(hover, new Set(rotors)) })
      return
    }
    for (let at = from; at < count; at += 1) grow([...rotors, at], at + 1)
  }
  grow([], 0)
  return groups
}

type Score = readonly [axes: number, unsteerable: number, peak: number, sum: number]

/** A hair's difference between mirror images does not make one better. */
const hair = 1e-7

function better(one: Score, other: Score): boolean {
  for (let at = 0; at < one.length; at += 1) {
    const [a, b] = [one[at] as number, other[at] as number]
    if (Math.abs(a - b) > hair * Math.max(1, Math.abs(b))) return a < b
  }
  return false
}

function searchPartitions(groups: readonly (readonly Group[])[], count: number): readonly Group[] {
  let best: readonly Group[] = []
  let least: Score | undefined
  const chosen: Group[] = []
  const descend = (taken: number, score: Score): void => {
    // Every part of a score only grows, so that a beginning no better than the best cannot end better.
    if (least !== undefined && !better(score, least)) return
    let first = 0
    while (first < count && (taken & (1 << first)) !== 0) first += 1
    if (first === count) {
      best = [...chosen]
      least = score
      return
    }
    for (const group of groups[first] as readonly Group[]) {
      if ((group.bits & taken) !== 0) continue
      chosen.push(group)
      descend(taken | group.bits, addTo(score, group.trim))
      chosen.pop()
    }
  }
  descend(0, [0, 0, 0, 0])
  return best
}

function addTo([axes, unsteerable, peak, sum]: Score, trim: Trim): Score {
  return [
    axes + trim.cannotHold.length,
    unsteerable + (trim.controllable ? 0 : 1),
    Math.max(peak, trim.degradedPeakShare),
    sum + trim.degradedPeakShare,
  ]
}

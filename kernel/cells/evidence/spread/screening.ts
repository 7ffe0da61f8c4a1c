/** Which way each range moves a number and the margins: one range at a time at its ends, all else as in the document. */
import type { EndValues, Interval, NumbersOutcome, Point } from '../../../../shared/contracts/index.js'
import { numberAt } from '../evaluation.js'

export interface Screened {
  readonly nominal: number | undefined
  /** Those that move the number most first; one that fails at an end before all. */
  readonly effects: readonly EndValues[]
  readonly lowering: Point
  readonly raising: Point
  readonly worst: readonly { readonly requirement: string; readonly ends: Point }[]
}

export async function screen(
  intervals: readonly Interval[],
  target: string,
  base: Point,
  evaluate: (points: readonly Point[]) => Promise<readonly NumbersOutcome[]>,
): Promise<Screened> {
  const points = intervals.flatMap(({ name, low, high }) => [
    { ...base, [name]: low },
    { ...base, [name]: high },
  ])
  const [nominal, ...ends] = await evaluate([base, ...points])
  const numberOf = (outcome: NumbersOutcome | undefined) => (outcome ? numberAt(outcome, target) : undefined)
  const effects = intervals.map((interval, at) => ({
    ...interval,
    atLow: numberOf(ends[2 * at]),
    atHigh: numberOf(ends[2 * at + 1]),
  }))
  const marginsOf = (name: string) =>
    intervals.map((interval, at) => ({
      ...interval,
      atLow: ends[2 * at]?.requirements[name]?.margin,
      atHigh: ends[2 * at + 1]?.requirements[name]?.margin,
    }))
  const names = Object.keys(nominal?.requirements ?? {}).sort()
  return {
    nominal: numberOf(nominal),
    effects: effects.toSorted((one, other) => reach(other) - reach(one)),
    lowering: endsThat('lower', effects),
    raising: endsThat('raise', effects),
    worst: names.flatMap((requirement) => {
      const worst = endsThat('lower', marginsOf(requirement))
      return Object.keys(worst).length === 0 ? [] : [{ requirement, ends: worst }]
    }),
  }
}

/** How far a range moves the number; a failing end comes before all that can be measured. */
function reach({ atLow, atHigh }: EndValues): number {
  return atLow === undefined || atHigh === undefined ? Number.MAX_VALUE : Math.abs(atHigh - atLow)
}

/** The ends that lower or raise a number; a range that does not move it, or fails at an end, stays where it is. */
function endsThat(way: 'lower' | 'raise', effects: readonly EndValues[]): Point {
  return Object.fromEntries(
    effects.flatMap(({ name, low, high, atLow, atHigh }) => {
      if (atLow === undefined || atHigh === undefined || atLow === atHigh) return []
      return [[name, atHigh > atLow === (way === 'raise') ? high : low]]
    }),
  )
}

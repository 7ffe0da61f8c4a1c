/**
 * The worst corner of each requirement: every assumption of which a range or a distribution is stated stands at the end that takes most from
 * the margin. Which end that is, is found one assumption at a time, all else as it is, and the corner is then evaluated as a whole: where
 * assumptions act together, another corner may be worse. Ends are those of drivers: the stated range, else what a distribution
 * exceeds in 95 % and 5 % of cases.
 *
 * Source: common practice of tolerance analysis ("worst case by one-at-a-time sensitivity"), from memory.
 */
import type { AssumptionRecord, NumbersOutcome, Point } from '../../../../shared/contracts/index.js'
import { readVaried, type Varied } from '../drivers/ends.js'
import { evaluateInBatches, type Tools } from '../evaluation.js'

export interface Corner {
  readonly requirement: string
  /** Assumptions that move the margin, at the ends that take most from it; SI. */
  readonly ends: Point
  /** At the corner, SI; absent where it does not compute. */
  readonly margin?: number
  /** At an end of these it does not compute, so that nobody knows whether it is the worse one: they stay as they are. */
  readonly failing: readonly string[]
}

/** In the order of their names; fewer when it was stopped. `base` holds trial values. */
export async function runCorners(
  assumptions: readonly AssumptionRecord[],
  base: Point,
  tools: Tools,
): Promise<readonly Corner[]> {
  const varied = readVaried(assumptions, base).varied.filter(({ from }) => from !== 'ten percent')
  const ends = varied.flatMap(({ name, low, high }) => [
    { ...base, [name]: low },
    { ...base, [name]: high },
  ])
  const [nominal, ...outcomes] = await evaluateAll([base, ...ends], tools)
  if (nominal === undefined || outcomes.length < ends.length) return []
  const names = Object.keys(nominal.requirements).sort()
  const corners = names.map((name) => cornerOf(name, varied, outcomes))
  const found = await evaluateAll(
    corners.map((corner) => ({ ...base, ...corner.ends })),
    tools,
  )
  return corners.slice(0, found.length).map((corner, at) => {
    const margin = found[at]?.requirements[corner.requirement]?.margin
    return margin === undefined || !Number.isFinite(margin) ? corner : { ...corner, margin }
  })
}

function cornerOf(requirement: string, varied: readonly Varied[], outcomes: readonly NumbersOutcome[]): Corner {
  const marginAt = (at: number) => outcomes[at]?.requirements[requirement]?.margin ?? Number.NaN
  const ends: [string, number][] = []
  const failing: string[] = []
  for (const [at, { name, low, high }] of varied.entries()) {
    const difference = marginAt(2 * at + 1) - marginAt(2 * at)
    if (!Number.isFinite(difference)) failing.push(name)
    else if (difference !== 0) ends.push([name, difference > 0 ? low : high])
  }
  return { requirement, ends: Object.fromEntries(ends), failing }
}

async function evaluateAll(points: readonly Point[], tools: Tools): Promise<readonly NumbersOutcome[]> {
  const found: NumbersOutcome[] = []
  await evaluateInBatches(points, tools, (_, outcomes) => {
    found.push(...outcomes)
    tools.onProgress?.(found.length, points.length)
  })
  return found
}

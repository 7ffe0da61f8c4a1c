import { requireNonNegative, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Angle, Ratio } from '../quantity.js'
import { isListening } from '../recorder.js'
import { adviseBladeElement } from '../rotor/blade-advisories.js'
import { type BladeFlowOptions, knownFlow, readBladeFlow } from '../rotor/blade-element.js'
import { bladeLoads } from '../rotor/blade-loads.js'
import { describePropeller, type PropellerLoads } from './blade-element.js'

export interface EfficiencyMapOptions extends BladeFlowOptions {
  /** J, rising, from 0 on. */
  readonly advanceRatios: readonly Ratio[]
  /** At 75 % radius, rising [rad]; one for a fixed pitch. */
  readonly bladeAngles: readonly Angle[]
}

/** The best of the map's blade angles at an advance ratio. */
export interface BestPitch {
  readonly advanceRatio: Ratio
  /** [rad] */
  readonly bladeAngle: Angle
  readonly efficiency: Ratio
  readonly thrustCoefficient: Ratio
  readonly powerCoefficient: Ratio
}

export interface EfficiencyMap {
  readonly advanceRatios: readonly Ratio[]
  /** [rad] */
  readonly bladeAngles: readonly Angle[]
  /** One row of advance ratios per blade angle, one after another. */
  readonly efficiency: readonly Ratio[]
  readonly thrustCoefficient: readonly Ratio[]
  readonly powerCoefficient: readonly Ratio[]
  /** Variable pitch: one entry per advance ratio. */
  readonly best: readonly BestPitch[]
}

const method = 'propeller.efficiencyMap'
const known = new Set([...knownFlow, 'advanceRatios', 'bladeAngles'])
const greatestPoints = 10_000

/**
 * Efficiency, thrust and power of a propeller over advance ratio and blade angle; and the best angle at each advance ratio.
 *
 * @equation as `propeller.bladeElement`
 * @param options - as `propeller.bladeElement` without `bladeAngle`, `speed` and `advanceRatio`; `advanceRatios` J (rising list),
 * `bladeAngles` at 75 % radius [rad] (rising list; one for a fixed pitch)
 * @returns `advanceRatios`, `bladeAngles` [rad], `efficiency`, `thrustCoefficient`, `powerCoefficient` (row by row, a row of advance ratios
 * per blade angle), `best` (per advance ratio: `bladeAngle` [rad], `efficiency`, `thrustCoefficient`, `powerCoefficient`)
 * @throws InvalidInput for lists that are empty or do not rise, more than 10000 points, and as `propeller.bladeElement`
 * @method One blade-element solution per point, at the tip speed given. Efficiency is 0 where the propeller gives no thrust.
 * @validity As `propeller.bladeElement`; advisories are those of the best point.
 * @source As `rotor.bladeElement`.
 * @example
 * const map = propeller.efficiencyMap({
 *   ...air.standard(0), radius: 0.9 * u.m, chord: 0.12 * u.m, blades: 3, tipSpeed: 190 * u.mps,
 *   twist: [[0.2, 62 * u.deg], [0.5, 36 * u.deg], [0.75, 27 * u.deg], [1, 21 * u.deg]],
 *   section: { liftSlope: 5.9, minimumDrag: 0.009, zeroLiftAngle: -3 * u.deg, dragRise: 0.01 }, advanceRatios: [0.5, 0.9, 1.3],
 *   bladeAngles: [20 * u.deg, 28 * u.deg, 36 * u.deg],
 * })
 * map.efficiency.length // 9
 */
export function efficiencyMap(options: EfficiencyMapOptions): EfficiencyMap {
  checkOptions(method, options, known)
  const { advanceRatios, bladeAngles, tipSpeed } = options
  requireRising('advanceRatios', advanceRatios, (value, at) => requireNonNegative(method, at, value, '1'))
  requireRising('bladeAngles', bladeAngles, (value, at) =>
    requireWithin(method, at, value, 'rad', -Math.PI / 2, Math.PI / 2),
  )
  if (advanceRatios.length * bladeAngles.length > greatestPoints)
    throw new InvalidInput({
      method,
      argument: 'advanceRatios and bladeAngles',
      value: `${advanceRatios.length} by ${bladeAngles.length}`,
      accepted: `at most ${greatestPoints} points together`,
    })
  const flow = readBladeFlow(method, options)
  const conditionsAt = (bladeAngle: number, advanceRatio: number) => ({
    ...flow,
    pitch: bladeAngle - flow.blade.twistAtThreeQuarters,
    axialSpeed: (advanceRatio * tipSpeed) / Math.PI,
  })
  const points = bladeAngles.flatMap((bladeAngle) =>
    advanceRatios.map((advanceRatio) => {
      const conditions = conditionsAt(bladeAngle, advanceRatio)
      return describePropeller(method, conditions, bladeLoads(conditions))
    }),
  )
  if (isListening()) {
    const top = points.reduce((best, one) => (one.efficiency > best.efficiency ? one : best))
    adviseBladeElement(method, top, conditionsAt(top.bladeAngle, top.advanceRatio))
  }
  return {
    advanceRatios: [...advanceRatios],
    bladeAngles: [...bladeAngles],
    efficiency: points.map((one) => one.efficiency),
    thrustCoefficient: points.map((one) => one.thrustCoefficient),
    powerCoefficient: points.map((one) => one.powerCoefficient),
    best: advanceRatios.map((advanceRatio, column) => bestOf(points, advanceRatios.length, column, advanceRatio)),
  }
}

function bestOf(points: readonly PropellerLoads[], columns: number, column: number, advanceRatio: number): BestPitch {
  let best = points[column] as PropellerLoads
  for (let i = column + columns; i < points.length; i += columns) {
    const one = points[i] as PropellerLoads
    if (one.efficiency > best.efficiency) best = one
  }
  const { bladeAngle, efficiency, thrustCoefficient, powerCoefficient } = best
  return { advanceRatio, bladeAngle, efficiency, thrustCoefficient, powerCoefficient }
}

function requireRising(
  argument: string,
  values: readonly number[],
  requireValue: (value: number, at: string) => void,
): void {
  if (!Array.isArray(values) || values.length === 0)
    throw new InvalidInput({
      method,
      argument,
      value: describeValue(values),
      accepted: 'a list of at least one number',
    })
  values.forEach((value, index) => {
    requireValue(value, `${argument}[${index}]`)
    const before = values[index - 1]
    if (before !== undefined && !(value > before))
      throw new InvalidInput({
        method,
        argument: `${argument}[${index}]`,
        value,
        accepted: `above the one before it, ${before}`,
      })
  })
}

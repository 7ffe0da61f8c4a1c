import { requireFinite, requirePositive } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { brentRoot } from '../numerics/index.js'
import type { Angle, Force, Speed } from '../quantity.js'
import { isListening } from '../recorder.js'
import { adviseBladeElement } from './blade-advisories.js'
import {
  type BladeElement,
  type BladeFlow,
  type BladeFlowOptions,
  describeRotor,
  knownFlow,
  readBladeFlow,
} from './blade-element.js'
import { bladeLoads } from './blade-loads.js'

export interface CollectiveForThrustOptions extends BladeFlowOptions {
  /** Of one rotor [N]. */
  readonly thrust: Force
  /** Climb along the axis [m/s], negative in a descent; 0 when left out. */
  readonly axialSpeed?: Speed
}

export interface CollectiveForThrust extends BladeElement {
  /** [rad] */
  readonly collective: Angle
}

const method = 'rotor.collectiveForThrust'
const known = new Set([...knownFlow, 'thrust', 'axialSpeed'])
/** Steps of pitch in which the thrust is bracketed [rad]. */
const step = 0.03
const greatestSteps = 40

/**
 * The collective at which a rotor gives a thrust, and the rotor's loads there.
 *
 * @equation T(collective) = thrust, `rotor.bladeElement`
 * @param options - as `rotor.bladeElement` without `collective`, and `thrust` [N] of one rotor
 * @returns what `rotor.bladeElement` returns, and `collective` [rad]
 * @throws InvalidInput for a thrust beyond what the rotor gives at any collective, naming the most it gives, and as `rotor.bladeElement`
 * @method Steps of 1.7 degrees from the pitch of no lift at 75 % radius to a bracket, then Brent's root; the lowest collective that gives
 * the thrust, below stall.
 * @validity As `rotor.bladeElement`.
 * @source As `rotor.bladeElement`; root: Brent, R. P., Algorithms for Minimization without Derivatives, Prentice-Hall, 1973.
 * @example
 * const trimmed = rotor.collectiveForThrust({
 *   ...air.standard(0), radius: 1.3 * u.m, chord: 0.14 * u.m, blades: 4, tipSpeed: 165 * u.mps, thrust: 2 * u.kN,
 *   section: { liftSlope: 5.9, minimumDrag: 0.01 },
 * })
 * trimmed.thrust // 2000
 */
export function collectiveForThrust(options: CollectiveForThrustOptions): CollectiveForThrust {
  checkOptions(method, options, known)
  const { thrust, axialSpeed = 0 } = options
  const flow = readBladeFlow(method, options)
  requirePositive(method, 'thrust', thrust, 'N')
  requireFinite(method, 'axialSpeed', axialSpeed, 'm/s')
  const collective = findCollective(flow, thrust, axialSpeed)
  const conditions = { ...flow, pitch: collective, axialSpeed }
  const answer = { ...describeRotor(method, conditions, bladeLoads(conditions)), collective }
  if (isListening()) adviseBladeElement(method, answer, conditions)
  return answer
}

function findCollective(flow: BladeFlow, thrust: number, axialSpeed: number): number {
  const excess = (pitch: number): number => bladeLoads({ ...flow, pitch, axialSpeed }).thrust / thrust - 1
  let low = Math.atan2(axialSpeed, 0.75 * flow.tipSpeed) - flow.blade.twistAtThreeQuarters
  let valueLow = excess(low)
  // A cambered blade may lift more than is asked for at this pitch.
  for (let i = 0; i < greatestSteps && valueLow > 0; i += 1) {
    low -= step
    valueLow = excess(low)
  }
  let most = valueLow
  for (let i = 0; i < greatestSteps; i += 1) {
    const high = low + step
    const valueHigh = excess(high)
    if (valueHigh >= 0 && valueLow <= 0) return brentRoot(excess, low, high, valueLow, valueHigh, 1e-12).x
    most = Math.max(most, valueHigh)
    low = high
    valueLow = valueHigh
  }
  throw new InvalidInput({
    method,
    argument: 'thrust',
    value: thrust,
    unit: 'N',
    accepted: `at most about ${(thrust * (1 + most)).toPrecision(3)} N, which is all this rotor gives at this tip speed`,
  })
}

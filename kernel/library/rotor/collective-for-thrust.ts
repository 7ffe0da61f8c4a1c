import { requireFinite, requirePositive } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Angle, Force, Speed } from '../quantity.js'
import { isListening } from '../recorder.js'
import { adviseBladeElement } from './blade-advisories.js'
import { type BladeElement, type BladeFlowOptions, describeRotor, knownFlow, readBladeFlow } from './blade-element.js'
import { bladeLoads } from './blade-loads.js'
import { pitchForThrust } from './pitch-for-thrust.js'

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
 * @source As `rotor.bladeElement`; root: Brent, R. P., Algorithms for Minimization without Derivatives, Prentice-Hall, 1973 (from memory).
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
  const collective = pitchForThrust(method, flow, thrust, axialSpeed)
  const conditions = { ...flow, pitch: collective, axialSpeed }
  const answer = { ...describeRotor(method, conditions, bladeLoads(conditions)), collective }
  if (isListening()) adviseBladeElement(method, answer, conditions)
  return answer
}

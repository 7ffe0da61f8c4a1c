import { requirePositive } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Force, Ratio, Speed } from '../quantity.js'
import { isListening } from '../recorder.js'
import { adviseBladeElement } from '../rotor/blade-advisories.js'
import { type BladeFlowOptions, knownFlow, readBladeFlow } from '../rotor/blade-element.js'
import { bladeLoads } from '../rotor/blade-loads.js'
import { pitchForThrust } from '../rotor/pitch-for-thrust.js'
import { describePropeller, type PropellerLoads, readSpeed } from './blade-element.js'

export interface BladeAngleForThrustOptions extends BladeFlowOptions {
  /** [N] */
  readonly thrust: Force
  /** Of flight [m/s]; either this or `advanceRatio`. */
  readonly speed?: Speed
  /** J = V/(n D); either this or `speed`. */
  readonly advanceRatio?: Ratio
}

const method = 'propeller.bladeAngleForThrust'
const known = new Set([...knownFlow, 'thrust', 'speed', 'advanceRatio'])

/**
 * Variable pitch: the blade angle at which a propeller gives a thrust at its tip speed, and its loads there.
 *
 * @equation T(bladeAngle) = thrust, `propeller.bladeElement`
 * @param options - as `propeller.bladeElement` without `bladeAngle`, and `thrust` [N]
 * @returns what `propeller.bladeElement` returns; `bladeAngle` [rad] is the angle found
 * @throws InvalidInput for a thrust beyond what the blades give at any angle, naming the most they give, and as `propeller.bladeElement`
 * @method As `rotor.collectiveForThrust`: the lowest angle that gives the thrust, below stall.
 * @validity As `rotor.bladeElement`.
 * @source As `rotor.bladeElement`; root: Brent, R. P., Algorithms for Minimization without Derivatives, Prentice-Hall, 1973 (from memory).
 * @example
 * const governed = propeller.bladeAngleForThrust({
 *   ...air.standard(0), radius: 0.9 * u.m, chord: 0.12 * u.m, blades: 3, tipSpeed: 190 * u.mps, speed: 58 * u.mps, thrust: 1.2 * u.kN,
 *   twist: [[0.2, 62 * u.deg], [0.5, 36 * u.deg], [0.75, 27 * u.deg], [1, 21 * u.deg]], section: { liftSlope: 5.9, minimumDrag: 0.009 },
 * })
 * governed.thrust // 1200
 */
export function bladeAngleForThrust(options: BladeAngleForThrustOptions): PropellerLoads {
  checkOptions(method, options, known)
  const flow = readBladeFlow(method, options)
  requirePositive(method, 'thrust', options.thrust, 'N')
  const axialSpeed = readSpeed(method, options)
  const conditions = { ...flow, pitch: pitchForThrust(method, flow, options.thrust, axialSpeed), axialSpeed }
  const answer = describePropeller(method, conditions, bladeLoads(conditions))
  if (isListening()) adviseBladeElement(method, answer, conditions)
  return answer
}

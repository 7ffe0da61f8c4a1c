import { requireNonNegative, requirePositive } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { brentRoot } from '../numerics/index.js'
import type { Angle, Force, Speed } from '../quantity.js'
import { isListening } from '../recorder.js'
import { adviseBladeElement } from '../rotor/blade-advisories.js'
import { type BladeFlow, type BladeFlowOptions, knownFlow, readBladeFlow } from '../rotor/blade-element.js'
import { bladeLoads } from '../rotor/blade-loads.js'
import { describePropeller, type PropellerLoads, pitchOf } from './blade-element.js'

export interface TipSpeedForThrustOptions extends Omit<BladeFlowOptions, 'tipSpeed'> {
  /** [N] */
  readonly thrust: Force
  /** Of flight [m/s]. */
  readonly speed: Speed
  /** Pitch at 75 % radius [rad]; may be left out where `twist` is a table of the blade's own angles. */
  readonly bladeAngle?: Angle
}

export interface TipSpeedForThrust extends PropellerLoads {
  /** By rotation [m/s]. */
  readonly tipSpeed: Speed
}

const method = 'propeller.tipSpeedForThrust'
const known = new Set([...knownFlow.filter((name) => name !== 'tipSpeed'), 'thrust', 'speed', 'bladeAngle'])
/** Steps in which the thrust is bracketed, up from a tenth of the speed of sound to all of it. */
const leastMach = 0.1
const growth = 1.1

/**
 * Fixed pitch: the tip speed at which a propeller gives a thrust at a flight speed, and its loads there.
 *
 * @equation T(tipSpeed) = thrust, `propeller.bladeElement`
 * @param options - as `propeller.bladeElement` without `tipSpeed` and `advanceRatio`, and `thrust` [N]
 * @returns what `propeller.bladeElement` returns, and `tipSpeed` [m/s] by rotation
 * @throws InvalidInput for a thrust that is not reached below the speed of sound, naming what is, and as `propeller.bladeElement`
 * @method Steps of a tenth from a tip speed of a tenth of the speed of sound to a bracket, then Brent's root; the lowest tip speed that
 * gives the thrust.
 * @validity As `rotor.bladeElement`.
 * @source As `rotor.bladeElement`; root: Brent, R. P., Algorithms for Minimization without Derivatives, Prentice-Hall, 1973 (from memory).
 * @example
 * const geared = propeller.tipSpeedForThrust({
 *   ...air.standard(0), radius: 0.9 * u.m, chord: 0.12 * u.m, blades: 3, speed: 58 * u.mps, thrust: 1.2 * u.kN,
 *   twist: [[0.2, 62 * u.deg], [0.5, 36 * u.deg], [0.75, 27 * u.deg], [1, 21 * u.deg]], section: { liftSlope: 5.9, minimumDrag: 0.009 },
 * })
 * geared.thrust // 1200
 */
export function tipSpeedForThrust(options: TipSpeedForThrustOptions): TipSpeedForThrust {
  checkOptions(method, options, known)
  const { thrust, speed, bladeAngle, twist, speedOfSound } = options
  // The tip speed is sought, so any will do to read the rest; this one is checked as the speed of sound it is.
  requirePositive(method, 'speedOfSound', speedOfSound, 'm/s')
  const flow = readBladeFlow(method, { ...options, tipSpeed: speedOfSound })
  requirePositive(method, 'thrust', thrust, 'N')
  requireNonNegative(method, 'speed', speed, 'm/s')
  const pitch = pitchOf(method, flow, twist, bladeAngle)
  const tipSpeed = findTipSpeed(flow, pitch, speed, thrust)
  const conditions = { ...flow, tipSpeed, pitch, axialSpeed: speed }
  const answer = { ...describePropeller(method, conditions, bladeLoads(conditions)), tipSpeed }
  if (isListening()) adviseBladeElement(method, answer, conditions)
  return answer
}

function findTipSpeed(flow: BladeFlow, pitch: number, axialSpeed: number, thrust: number): number {
  const excess = (tipSpeed: number): number => bladeLoads({ ...flow, tipSpeed, pitch, axialSpeed }).thrust / thrust - 1
  let low = leastMach * flow.speedOfSound
  let valueLow = excess(low)
  // A light thrust may be given by slower blades yet.
  for (let i = 0; i < 100 && valueLow > 0; i += 1) {
    low /= growth
    valueLow = excess(low)
  }
  let most = valueLow
  while (low < flow.speedOfSound) {
    const high = Math.min(low * growth, flow.speedOfSound)
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
    accepted: `at most about ${Math.max(thrust * (1 + most), 0).toPrecision(3)} N, which is all that this pitch gives with tips below the speed of sound`,
  })
}

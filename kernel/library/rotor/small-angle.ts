import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Angle, Ratio } from '../quantity.js'

export interface SmallAngleOptions {
  readonly solidity: Ratio
  /** [1/rad] */
  readonly liftSlope: Ratio
  /** Pitch [rad]: everywhere for an untwisted blade, at the tip for ideal twist. */
  readonly pitch: Angle
  /** `'none'` (when left out) or `'ideal'`, pitch over r/R. */
  readonly twist?: 'none' | 'ideal'
  /** `'local'` (when left out): each annulus by itself; `'uniform'`: one inflow for the disk. */
  readonly inflow?: 'local' | 'uniform'
  /** r/R at which the inflow is returned, 0.75 when left out. */
  readonly station?: Ratio
}

export interface SmallAngle {
  readonly thrustCoefficient: Ratio
  /** Flow through the disk at the station over tip speed. */
  readonly inflowRatio: Ratio
  /** Induced power over that of uniform inflow with the same thrust. */
  readonly inducedFactor: Ratio
}

const method = 'rotor.smallAngleHover'
const known = new Set(['solidity', 'liftSlope', 'pitch', 'twist', 'inflow', 'station'])

/**
 * Thrust of a hovering rotor from its pitch in closed form: rectangular blades, small angles, no losses.
 *
 * @equation untwisted: lambda(x) = (sigma a/16) (sqrt(1 + 32 theta x/(sigma a)) - 1), C_T = integral of 4 lambda^2 x dx; uniform inflow:
 * C_T = (sigma a/2) (theta/3 - sqrt(C_T/2)/2); ideal twist: C_T = (sigma a/4) (theta_tip - sqrt(C_T/2))
 * @param options - `solidity` sigma, `liftSlope` a [1/rad], `pitch` theta [rad]; optional `twist` ('none' or 'ideal'), `inflow` ('local' or
 * 'uniform'), `station` x (0.75)
 * @returns `thrustCoefficient` C_T, `inflowRatio` lambda at the station, `inducedFactor` kappa
 * @throws InvalidInput for a solidity outside 0.0001 to 1, a lift slope outside 0.5 to 12, a pitch outside 0 to 1 rad, a station outside 0
 * to 1, an unknown twist or inflow, and an unknown option
 * @method The untwisted integrals are evaluated in closed form; no tip loss, no root cut-out, lift without stall. A check on
 * `rotor.bladeElement` and a first guess for its pitch.
 * @validity Pitch up to about 12 degrees, below stall.
 * @source Leishman, J. G., Principles of Helicopter Aerodynamics, 2nd edition, 2006, chapter 3 (from memory); Gessow and Myers,
 * Aerodynamics of the Helicopter, 1952 (from memory).
 * @example
 * const guess = rotor.smallAngleHover({ solidity: 0.1, liftSlope: 5.73, pitch: 8 * u.deg })
 * guess.thrustCoefficient // 0.0058594
 */
export function smallAngleHover(options: SmallAngleOptions): SmallAngle {
  checkOptions(method, options, known)
  const { solidity, liftSlope, pitch, twist = 'none', inflow = 'local', station = 0.75 } = options
  requireWithin(method, 'solidity', solidity, '1', 1e-4, 1)
  requireWithin(method, 'liftSlope', liftSlope, '1', 0.5, 12)
  requirePositive(method, 'pitch', pitch, 'rad')
  requireWithin(method, 'pitch', pitch, 'rad', 0, 1)
  requireWithin(method, 'station', station, '1', 0, 1)
  requireOneOf('twist', twist, ['none', 'ideal'])
  requireOneOf('inflow', inflow, ['local', 'uniform'])
  const slope = solidity * liftSlope
  const local = twist === 'none' && inflow === 'local'
  const answer = local ? untwisted(slope, pitch, station) : uniform(slope, twist === 'ideal' ? pitch : pitch / 1.5)
  requireRepresentable(method, answer.thrustCoefficient + answer.inflowRatio + answer.inducedFactor)
  return answer
}

/** C_T = (sigma a/4) (theta - sqrt(C_T/2)) with the pitch that counts: the tip's, or two thirds of an untwisted blade's. */
function uniform(slope: number, pitch: number): SmallAngle {
  // A quadratic in the inflow: 2 lambda^2 + (sigma a/4) lambda - (sigma a/4) theta = 0.
  const quarter = slope / 4
  const inflowRatio = (2 * quarter * pitch) / (quarter + Math.sqrt(quarter * quarter + 8 * quarter * pitch))
  return { thrustCoefficient: 2 * inflowRatio * inflowRatio, inflowRatio, inducedFactor: 1 }
}

function untwisted(slope: number, pitch: number, station: number): SmallAngle {
  const scale = slope / 16
  const steep = (32 * pitch) / slope
  const inflowAt = (x: number): number => scale * (Math.sqrt(1 + steep * x) - 1)
  // With s = sqrt(1 + steep x): x = (s^2 - 1)/steep, dx = 2 s ds/steep; polynomials in s from 1 to sqrt(1 + steep).
  const thrustCoefficient = ((8 * scale ** 2) / steep ** 2) * powerIntegral(Math.sqrt(1 + steep), 2)
  const inducedPower = ((8 * scale ** 3) / steep ** 2) * powerIntegral(Math.sqrt(1 + steep), 3)
  return {
    thrustCoefficient,
    inflowRatio: inflowAt(station),
    inducedFactor: inducedPower / (thrustCoefficient * Math.sqrt(thrustCoefficient / 2)),
  }
}

/** Integral of (s - 1)^n (s^2 - 1) s ds from 1; with t = s - 1 it is that of t^(n+1) (t + 2) (t + 1) dt from 0. */
function powerIntegral(end: number, n: number): number {
  const t = end - 1
  return t ** (n + 2) * (2 / (n + 2) + t * (3 / (n + 3) + t / (n + 4)))
}

function requireOneOf(argument: string, value: string, accepted: readonly string[]): void {
  if (accepted.includes(value)) return
  throw new InvalidInput({
    method,
    argument,
    value: describeValue(value),
    accepted: accepted.map((one) => `'${one}'`).join(' or '),
  })
}

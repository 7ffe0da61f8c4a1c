import { requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Angle, Density, Force, Length, Ratio, Speed, Torque } from '../quantity.js'
import { silently } from '../recorder.js'
import { edgewise } from '../rotor/edgewise.js'

export interface HubMomentOptions {
  /** Of one rotor [N]. */
  readonly thrust: Force
  /** Flight speed [m/s]. */
  readonly speed: Speed
  /** [m] */
  readonly radius: Length
  /** [kg/m^3] */
  readonly density: Density
  /** Blade tip speed by rotation [m/s]. */
  readonly tipSpeed: Speed
  /** Blade area over disk area. */
  readonly solidity: Ratio
  /** Of the section [1/rad]; 5.7 when left out. */
  readonly liftSlope?: Ratio
  /** +1 turns anticlockwise seen from above, -1 the other way; +1 when left out. */
  readonly spin?: Ratio
  /** First flapping frequency over rotor speed, above 1; blades that do not bend when left out. */
  readonly flapFrequency?: Ratio
  /** Lock number of a blade; needed with `flapFrequency`. */
  readonly lockNumber?: Ratio
}

export interface HubMoment {
  /** About the stream, right side down positive [N m]: twists a boom that lies along it. */
  readonly roll: Torque
  /** Across the stream, nose up positive [N m]: bends that boom. */
  readonly pitch: Torque
  /** Of both together [N m]. */
  readonly moment: Torque
  /** Distance from the hub at which the thrust would make that moment [m]. */
  readonly offset: Length
  readonly advanceRatio: Ratio
  /** Collective pitch that gives the thrust [rad]. */
  readonly collective: Angle
}

const method = 'layout.hubMoment'
const known = new Set([
  'thrust',
  'speed',
  'radius',
  'density',
  'tipSpeed',
  'solidity',
  'liftSlope',
  'spin',
  'flapFrequency',
  'lockNumber',
])

/**
 * Moment at the hub of a stiff lift rotor without cyclic pitch that flies edgewise in transition: its boom has to bear it.
 *
 * @equation C_roll = -s (sigma a mu/4) (2 th/3 - lambda/2); C_pitch = sigma a k lambda_i/16, k = tan(X/2), tan X = mu/lambda; C_T = (sigma a/2) ((th/3) (1 + 1.5 mu^2) - lambda/2); M = C rho A V_tip^2 R. Blades that flap: the
 * first harmonic times (nu^2 - 1)/((nu^2 - 1) + i Lock/8)
 * @param options - `thrust` [N] of one rotor, `speed`, `tipSpeed` [m/s], `radius` R [m], `density` [kg/m^3], `solidity` sigma; optional `liftSlope` a (5.7 per radian), `spin` s (+1), `flapFrequency` nu with `lockNumber` (stiff)
 * @returns `roll`, `pitch`, `moment` [N m], `offset` = moment/thrust [m], `advanceRatio` mu, `collective` th [rad]
 * @throws InvalidInput for a value that is not positive, a solidity outside 0.0001 to 1, a spin that is neither 1 nor -1, a flapping frequency that is not above 1, one of it and the Lock number alone, and an unknown option
 * @method Blade element, blades untwisted and unbent, disk level, inflow of `rotor.edgewise` with the linear gradient of Coleman, Feingold and Stempin: the advancing side lifts more and rolls the aircraft towards the
 * retreating one, and air that is slower in front pitches it up. A blade that flaps gives way to part of it, late by a phase. Pairs that turn opposite ways cancel the roll for the aircraft, not for their booms.
 * @validity Small inflow, no stall or reversed flow: advance ratio up to 0.3, beyond it an advisory. Twist takes a few percent off.
 * @source House derivation from textbook blade elements (Johnson, W., Helicopter Theory, 1980, hingeless rotors, from memory); inflow gradient: Coleman, Feingold and Stempin, NACA ARR L5E10, 1945 (from memory).
 * @example
 * const stiff = layout.hubMoment({ thrust: 2 * u.kN, speed: 30, radius: 1.3, density: 1.1, tipSpeed: 165, solidity: 0.14 })
 * stiff.advanceRatio // 0.1818
 */
export function hubMoment(options: HubMomentOptions): HubMoment {
  const { thrust, speed, radius, density, tipSpeed, solidity, liftSlope, spin, give } = readHub(options)
  const { inducedVelocity } = silently(() =>
    edgewise({ thrust, speed, radius, density, tipSpeed, solidity, inducedFactor: 1, profileDrag: 0.01 }),
  )
  const mu = speed / tipSpeed
  const inflow = inducedVelocity / tipSpeed
  const force = density * Math.PI * radius * radius * tipSpeed * tipSpeed
  const half = (solidity * liftSlope) / 2
  const collective = (3 * (thrust / (force * half) + inflow / 2)) / (1 + 1.5 * mu * mu)
  const gradient = Math.tan(Math.atan2(mu, inflow) / 2)
  // First harmonic of the blade's moment at its root, as coefficients: towards the advancing side, and towards the front.
  const advancing = ((solidity * liftSlope * mu) / 4) * ((2 * collective) / 3 - inflow / 2)
  const front = (solidity * liftSlope * gradient * inflow) / 16
  const size = force * radius
  // Azimuth runs from the back over the advancing side to the front, so that "front" is minus the cosine part.
  const cosine = -front * give.direct - advancing * give.late
  const sine = advancing * give.direct - front * give.late
  const roll = -spin * sine * size
  const pitch = -cosine * size
  const moment = Math.hypot(roll, pitch)
  requireRepresentable(method, moment + collective + moment / thrust + mu)
  adviseOutside(mu, {
    code: 'ADVANCE_RATIO',
    method,
    quantity: 'advanceRatio',
    high: 0.3,
    because: 'above 0.3 the retreating side stalls and meets reversed flow, which is left out',
  })
  return { roll, pitch, moment, offset: moment / thrust, advanceRatio: mu, collective }
}

function readHub(options: HubMomentOptions) {
  checkOptions(method, options, known)
  const { thrust, speed, radius, density, tipSpeed, solidity, liftSlope = 5.7, spin = 1 } = options
  requirePositive(method, 'thrust', thrust, 'N')
  requireNonNegative(method, 'speed', speed, 'm/s')
  requirePositive(method, 'radius', radius, 'm')
  requirePositive(method, 'density', density, 'kg/m^3')
  requirePositive(method, 'tipSpeed', tipSpeed, 'm/s')
  requireWithin(method, 'solidity', solidity, '1', 1e-4, 1)
  requireWithin(method, 'liftSlope', liftSlope, '1', 0.1, 10)
  if (spin !== 1 && spin !== -1)
    throw new InvalidInput({ method, argument: 'spin', value: describeValue(spin), accepted: '1 or -1' })
  const { flapFrequency, lockNumber } = options
  return {
    thrust,
    speed,
    radius,
    density,
    tipSpeed,
    solidity,
    liftSlope,
    spin,
    give: giveOf(flapFrequency, lockNumber),
  }
}

/** Share of the moment that reaches the hub in phase, and a quarter turn late: 1 and 0 of blades that do not bend. */
function giveOf(flapFrequency: number | undefined, lockNumber: number | undefined) {
  if (flapFrequency === undefined && lockNumber === undefined) return { direct: 1, late: 0 }
  if (flapFrequency === undefined || lockNumber === undefined)
    throw new InvalidInput({
      method,
      argument: flapFrequency === undefined ? 'flapFrequency' : 'lockNumber',
      value: 'missing',
      accepted: 'given with the other, or both left out for blades that do not bend',
    })
  requireWithin(method, 'flapFrequency', flapFrequency, '1', 1 + 1e-6, 100)
  requireWithin(method, 'lockNumber', lockNumber, '1', 1e-3, 100)
  const stiff = flapFrequency * flapFrequency - 1
  const damp = lockNumber / 8
  const size = stiff * stiff + damp * damp
  return { direct: (stiff * stiff) / size, late: (stiff * damp) / size }
}

import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Acceleration, Energy, Force, Length, Power, Ratio, Speed, Time } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { type ConditionsOptions, knownConditions, readConditions } from './conditions.js'
import type { Moment } from './moment.js'
import { buildSlice, setSlice, speedAt } from './transition-slice.js'
import { stopRotors } from './trim.js'
import { buildTrimPoint, setTrim } from './trim-point.js'

export interface TransitionOptions extends ConditionsOptions {
  /** From hover to the wing-borne end (when left out), or back. */
  readonly direction?: 'outward' | 'return'
  /** The greatest along the path [m/s^2]; 1.5 outward and 1 on return when left out. */
  readonly acceleration?: Acceleration
  /** Wing-borne end [m/s]; the floor when left out. */
  readonly speed?: Speed
  /** Outward only: given up at this speed, and back to hover [m/s]. */
  readonly abortAt?: Speed
  /** On the way back from it [m/s^2]; 1 when left out. */
  readonly braking?: Acceleration
  /** Lift rotors that do not turn: 1 for one that will not start, 2 where its opposite is stopped for trim; 0 when left out. */
  readonly stoppedRotors?: Ratio
}

export interface TransitionPath {
  /** [s] */
  readonly time: readonly Time[]
  /** [m/s] */
  readonly speed: readonly Speed[]
  /** Of the weight, on the rotors. */
  readonly rotorShare: readonly Ratio[]
  /** At the terminals [W]. */
  readonly power: readonly Power[]
}

export interface Transition {
  /** [s] */
  readonly time: Time
  /** Through the air [m]. */
  readonly distance: Length
  /** At the terminals [J]. */
  readonly energy: Energy
  /** At the terminals [W]. */
  readonly peakPower: Power
  /** At the shafts of all lift rotors [W]. */
  readonly peakRotorPower: Power
  /** At the shaft of the propeller, as flown [W]. */
  readonly peakPropellerPower: Power
  /** Rating of the cruise motor that the whole acceleration takes [W]. */
  readonly ratingNeeded: Power
  /** Peak less rating of the lift rotors [W], positive is lacking; absent without a rating. */
  readonly liftDeficit?: Power
  /** Thrust lacking even for a tenth of the acceleration [N]; 0 where the aircraft comes through. */
  readonly thrustDeficit: Force
  /** [m/s] */
  readonly conversionSpeed: Speed
  /** [m/s] */
  readonly endSpeed: Speed
  readonly path: TransitionPath
}

const method = 'mission.transition'
const known = new Set([...knownConditions, 'direction', 'acceleration', 'speed', 'abortAt', 'braking', 'stoppedRotors'])
/** Slices of one way: energy within 5e-5 of a quadrature of 20 000 points. */
const slices = 24

/**
 * A transition between hover and wing-borne flight: time, distance, energy, peaks, and the rating that the acceleration asks of the cruise motor. Also one given up on the way, and one
 * with a lift rotor that does not turn.
 *
 * @equation dt = dV/a; a = min(a_wanted, (T_available - D)/m); E = integral P(V) dV/a; P(V) as `mission.trim`
 * @param options - `aircraft`; optional `direction` (`'outward'` or `'return'`), `acceleration` [m/s^2] (1.5 outward, 1 on return), `speed` of the wing-borne end [m/s] (the floor), `abortAt` [m/s], `braking`
 * [m/s^2] (1), `stoppedRotors` (0), `altitude` [m], `temperatureOffset` [K], `mass` [kg]
 * @returns `time` [s], `distance` [m], `energy` [J] and `peakPower` [W] at the terminals, `peakRotorPower`, `peakPropellerPower`, `ratingNeeded` [W] at the shafts, `liftDeficit` [W], `thrustDeficit` [N], `conversionSpeed`,
 * `endSpeed` [m/s], `path` with lists of `time`, `speed`, `rotorShare`, `power`
 * @throws InvalidInput for an acceleration or speed that is not positive, a transition given up beyond its end, as many stopped rotors as there are, and an unknown option
 * @method Quasi-static in level flight; Gauss's rule over slices of speed, split where the wing takes over. Where the propeller lacks thrust the aircraft accelerates more slowly; below a tenth of the
 * wish it counts as stuck, `thrustDeficit` says by how much, and the numbers are those of that tenth.
 * @validity As `mission.trim`. Starting and stopping of the rotors takes time and energy that are not in it (some seconds; a per mille of the flight). Spin-up is assumed ready before the return. A propeller that lacks the
 * thrust carries an advisory.
 * @source House model on `mission.trim`; kinematics: textbook.
 * @example
 * const craft = mission.aircraft({
 *   mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
 *   lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, efficiency: 0.9 },
 *   cruise: { propellerEfficiency: 0.84, efficiency: 0.91 },
 * })
 * mission.transition({ aircraft: craft, acceleration: 1.5 }).time // 31.87
 */
export function transition(options: TransitionOptions): Transition {
  checkOptions(method, options, known)
  const { direction = 'outward', stoppedRotors = 0 } = options
  requireChoice(method, 'direction', direction, ['outward', 'return'])
  const moment = readConditions(method, options)
  stopRotors(method, moment, stoppedRotors)
  const { speed = moment.floor, acceleration = direction === 'outward' ? 1.5 : 1, braking = 1 } = options
  requirePositive(method, 'speed', speed, 'm/s')
  requirePositive(method, 'acceleration', acceleration, 'm/s^2')
  requirePositive(method, 'braking', braking, 'm/s^2')
  const walk = new Walk(moment)
  if (direction === 'return') walk.go(speed, acceleration, false)
  else if (options.abortAt === undefined) walk.go(speed, acceleration, true)
  else {
    requireWithin(method, 'abortAt', options.abortAt, 'm/s', 0.01 * speed, speed)
    walk.go(options.abortAt, acceleration, true)
    walk.go(options.abortAt, braking, false)
  }
  const answer = walk.report(speed)
  if (isListening() && answer.thrustDeficit > 0) adviseStuck(answer)
  return answer
}

/** Adds slices up. */
class Walk {
  readonly #moment: Moment
  readonly #slice = buildSlice()
  readonly #point = buildTrimPoint()
  readonly #path = { time: [] as number[], speed: [] as number[], rotorShare: [] as number[], power: [] as number[] }
  readonly #sum = buildSlice()

  constructor(moment: Moment) {
    this.#moment = moment
  }

  /** Between rest and a speed, outward or back. */
  go(end: number, acceleration: number, outward: boolean): void {
    const { conversion } = this.#moment
    for (let index = 0; index < slices; index += 1) {
      const at = outward ? index : slices - index
      const from = speedAt(at, slices, conversion, end)
      const to = speedAt(outward ? at + 1 : at - 1, slices, conversion, end)
      if (index === 0) this.#begin(from, acceleration, outward)
      setSlice(this.#slice, this.#point, this.#moment, from, to, acceleration)
      this.#add()
      this.#remember(to)
    }
  }

  /** A slice of no width sets the trim of its place; braking has no limit of thrust to mind. */
  #begin(speed: number, acceleration: number, outward: boolean): void {
    if (outward) setSlice(this.#slice, this.#point, this.#moment, speed, speed, acceleration)
    else setTrim(this.#point, this.#moment, speed, -acceleration, this.#moment.sharingLift)
    this.#remember(speed)
  }

  #add(): void {
    const { time, distance, energy, peakPower, peakRotorPower, peakPropellerPower, ratingNeeded, thrustShort } =
      this.#slice
    const sum = this.#sum
    sum.time += time
    sum.distance += distance
    sum.energy += energy
    sum.peakPower = Math.max(sum.peakPower, peakPower)
    sum.peakRotorPower = Math.max(sum.peakRotorPower, peakRotorPower)
    sum.peakPropellerPower = Math.max(sum.peakPropellerPower, peakPropellerPower)
    sum.ratingNeeded = Math.max(sum.ratingNeeded, ratingNeeded)
    sum.thrustShort = Math.max(sum.thrustShort, thrustShort)
  }

  #remember(speed: number): void {
    this.#path.time.push(this.#sum.time)
    this.#path.speed.push(speed)
    this.#path.rotorShare.push(this.#point.rotorLift / this.#moment.weight)
    this.#path.power.push(this.#point.power)
  }

  report(endSpeed: number): Transition {
    const { time, distance, energy, peakPower, peakRotorPower, peakPropellerPower, ratingNeeded, thrustShort } =
      this.#sum
    const { powerLimit } = this.#moment.craft.lift
    requireRepresentable(method, time + distance + energy + peakPower + ratingNeeded + thrustShort)
    return {
      time,
      distance,
      energy,
      peakPower,
      peakRotorPower,
      peakPropellerPower,
      ratingNeeded,
      ...(powerLimit === undefined ? {} : { liftDeficit: peakRotorPower - powerLimit }),
      thrustDeficit: thrustShort,
      conversionSpeed: this.#moment.conversion,
      endSpeed,
      path: this.#path,
    }
  }
}

function adviseStuck({ thrustDeficit }: Transition): void {
  advise({
    code: 'TRANSITION_STUCK',
    method,
    quantity: 'thrustDeficit',
    value: thrustDeficit,
    range: [null, 0],
    message: `The propeller lacks ${thrustDeficit.toFixed(0)} N to accelerate through the transition at a tenth of the acceleration asked for.`,
  })
}

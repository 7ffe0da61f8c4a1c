/** Conditions in which a hover has to be held: places of the centre of gravity, moments from outside, rotors lost. */
import { requireNonNegative, requirePositive, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Acceleration, MomentOfInertia, Quantity, Ratio } from '../quantity.js'
import { type Axis, readHold, usualHold } from './axes.js'
import { buildRows, type PlanPoint, readPoint } from './effectiveness.js'
import { readRotors } from './lift-rotor.js'
import { lossSets } from './losses.js'
import { type Disturbance, demandOf, type Hover, type HoverOptions, readDisturbance } from './trim.js'

/** [rad/s^2] */
export type AngularAcceleration = Quantity<'s^-2'>

/** One number for each axis of attitude. */
export interface ForAttitude<T> {
  readonly roll: T
  readonly pitch: T
  readonly yaw: T
}

/** Acceleration and inertia about the body's axes. */
export type Inertia = ForAttitude<MomentOfInertia>
export type AccelerationDemand = Partial<ForAttitude<AngularAcceleration>>

export interface ConditionsOptions extends Omit<HoverOptions, 'centreOfGravity' | 'disturbance'> {
  /** Corners of the travel of the centre of gravity; the origin alone when left out. */
  readonly centresOfGravity?: readonly PlanPoint[]
  /** Moments from outside, each in turn: `authority.windMoments` gives them by direction; calm air alone when left out. */
  readonly disturbances?: readonly Disturbance[]
  /** Rotors lost: 0, 1 or 2; 1 when left out. The intact aircraft is always looked at. */
  readonly simultaneous?: Ratio
}

export type { Acceleration }

export const attitude: readonly (keyof ForAttitude<number>)[] = ['roll', 'pitch', 'yaw']
export const knownConditions = ['rotors', 'weight', 'hold', 'centresOfGravity', 'disturbances', 'simultaneous']
const knownAttitude = new Set<string>(attitude)

export interface Conditions {
  readonly hovers: readonly { readonly hover: Hover; readonly centre: PlanPoint; readonly disturbance: Disturbance }[]
  readonly sets: readonly (readonly number[])[]
  readonly hold: readonly Axis[]
  readonly count: number
}

/** Every combination; a demand is the worst at a corner, because what can be given is concave in what is asked for. */
export function readConditions(called: string, options: ConditionsOptions): Conditions {
  const rotors = readRotors(called, options.rotors)
  requirePositive(called, 'weight', options.weight, 'N')
  requireWithin(called, 'weight', options.weight, 'N', 1e-3, 1e9)
  const hold = readHold(called, options.hold ?? usualHold)
  const centres = readList(called, 'centresOfGravity', options.centresOfGravity, (at, point) =>
    readPoint(called, at, point),
  ) ?? [{ x: 0, y: 0 }]
  const winds = readList(called, 'disturbances', options.disturbances, (at, one) =>
    readDisturbance(called, at, one),
  ) ?? [{}]
  const { simultaneous = 1 } = options
  if (![0, 1, 2].includes(simultaneous))
    throw new InvalidInput({
      method: called,
      argument: 'simultaneous',
      value: describeValue(simultaneous),
      accepted: '0, 1 or 2',
    })
  const limits = Float64Array.from(rotors, (rotor) => rotor.maxThrust)
  return {
    hold,
    count: rotors.length,
    sets: [[], ...(simultaneous === 0 ? [] : lossSets(called, rotors.length, simultaneous))],
    hovers: centres.flatMap((centre) => {
      const rows = buildRows(rotors, centre)
      return winds.map((disturbance) => ({
        centre,
        disturbance,
        hover: { rotors, rows, limits, weight: options.weight, hold, demand: demandOf(options.weight, disturbance) },
      }))
    }),
  }
}

function readList<T>(
  called: string,
  argument: string,
  list: readonly T[] | undefined,
  read: (at: string, one: T) => T,
): readonly T[] | undefined {
  if (list === undefined) return undefined
  if (!Array.isArray(list) || list.length === 0 || list.length > 100)
    throw new InvalidInput({ method: called, argument, value: describeValue(list), accepted: 'a list of 1 to 100' })
  return list.map((one, index) => read(`${argument}[${index}]`, one))
}

export function readInertia(called: string, inertia: Inertia): Inertia {
  checkOptions(`${called} inertia`, inertia, knownAttitude)
  for (const axis of attitude) {
    requirePositive(called, `inertia.${axis}`, inertia[axis], 'kg m^2')
    requireWithin(called, `inertia.${axis}`, inertia[axis], 'kg m^2', 1e-9, 1e12)
  }
  return inertia
}

/** The accelerations asked for; zero about an axis that is not named. */
export function readAcceleration(
  called: string,
  argument: string,
  acceleration: AccelerationDemand | undefined,
): ForAttitude<number> {
  checkOptions(`${called} ${argument}`, acceleration ?? {}, knownAttitude)
  const of = (axis: keyof ForAttitude<number>) => {
    const value = acceleration?.[axis] ?? 0
    requireNonNegative(called, `${argument}.${axis}`, value, 'rad/s^2')
    requireWithin(called, `${argument}.${axis}`, value, 'rad/s^2', 0, 1e6)
    return value
  }
  return { roll: of('roll'), pitch: of('pitch'), yaw: of('yaw') }
}

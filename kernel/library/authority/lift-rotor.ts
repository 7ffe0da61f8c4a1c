/** A lift rotor as far as trim is concerned: where it is, which way it turns and leans, and what it can give. */
import { requireFinite, requireNonNegative, requirePositive, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Angle, Force, Length, Ratio } from '../quantity.js'

/** Lean of a rotor's thrust from the vertical. */
export interface Cant {
  /** Towards the right [rad]; 0 when left out. */
  readonly lateral?: Angle
  /** Forward [rad]; 0 when left out. */
  readonly longitudinal?: Angle
}

export interface LiftRotor {
  /** Forward [m]. */
  readonly x: Length
  /** Right [m]. */
  readonly y: Length
  /** Down [m]; 0 when left out. Matters only with cant. */
  readonly z?: Length
  /** +1 turns anticlockwise seen from above, so that its torque yaws the aircraft nose right; -1 the other way. */
  readonly spin: Ratio
  /** Greatest thrust [N]. */
  readonly maxThrust: Force
  /** Torque over thrust [m]. */
  readonly torqueRatio: Length
  /** Lean of the thrust: a number leans it to the right [rad]. */
  readonly cant?: Angle | Cant
  /** For power and for drawings [m]. */
  readonly radius?: Length
  readonly name?: string
  readonly role?: string
}

/** A rotor read: its cant as the direction of its thrust, x forward, y right, z down. */
export interface ReadRotor {
  readonly x: number
  readonly y: number
  readonly z: number
  readonly spin: number
  readonly maxThrust: number
  readonly torqueRatio: number
  readonly direction: readonly [number, number, number]
}

/** Combinations of lost rotors and of faces of the attainable set grow quickly; no aircraft of this kind has more. */
export const mostRotors = 24
const largestCant = 1.2
const known = new Set(['x', 'y', 'z', 'spin', 'maxThrust', 'torqueRatio', 'cant', 'radius', 'name', 'role'])
const knownCant = new Set(['lateral', 'longitudinal'])

export function readRotors(method: string, rotors: readonly LiftRotor[]): ReadRotor[] {
  if (!Array.isArray(rotors) || rotors.length === 0 || rotors.length > mostRotors)
    throw new InvalidInput({
      method,
      argument: 'rotors',
      value: describeValue(rotors),
      accepted: `a list of 1 to ${mostRotors} rotors { x, y, spin, maxThrust, torqueRatio }`,
    })
  return rotors.map((rotor, index) => readRotor(method, `rotors[${index}]`, rotor))
}

function readRotor(method: string, at: string, rotor: LiftRotor): ReadRotor {
  checkOptions(`${method} ${at}`, rotor, known)
  const { x, y, z = 0, spin, maxThrust, torqueRatio, cant = 0, radius } = rotor
  for (const [name, place] of [
    ['x', x],
    ['y', y],
    ['z', z],
  ] as const) {
    requireFinite(method, `${at}.${name}`, place, 'm')
    requireWithin(method, `${at}.${name}`, place, 'm', -1e4, 1e4)
  }
  if (spin !== 1 && spin !== -1)
    throw new InvalidInput({
      method,
      argument: `${at}.spin`,
      value: describeValue(spin),
      accepted: '1 (anticlockwise seen from above) or -1',
    })
  requireNonNegative(method, `${at}.maxThrust`, maxThrust, 'N')
  requireWithin(method, `${at}.maxThrust`, maxThrust, 'N', 0, 1e9)
  requireNonNegative(method, `${at}.torqueRatio`, torqueRatio, 'm')
  requireWithin(method, `${at}.torqueRatio`, torqueRatio, 'm', 0, 1e4)
  if (radius !== undefined) requirePositive(method, `${at}.radius`, radius, 'm')
  return { x, y, z, spin, maxThrust, torqueRatio, direction: readCant(method, `${at}.cant`, cant) }
}

function readCant(method: string, at: string, cant: Angle | Cant): readonly [number, number, number] {
  if (typeof cant === 'number') return lean(method, at, cant, 0)
  checkOptions(`${method} ${at}`, cant, knownCant)
  return lean(method, at, cant.lateral ?? 0, cant.longitudinal ?? 0)
}

function lean(method: string, at: string, lateral: number, longitudinal: number): readonly [number, number, number] {
  requireWithin(method, `${at} to the right`, lateral, 'rad', -largestCant, largestCant)
  requireWithin(method, `${at} forward`, longitudinal, 'rad', -largestCant, largestCant)
  const upright = Math.cos(longitudinal)
  return [Math.sin(longitudinal), Math.sin(lateral) * upright, -Math.cos(lateral) * upright]
}

/**
 * The one record that every layout is: where rotors, booms, wing, tail, body and propellers are.
 *
 * Axes as in `mass.properties`: x forward, y right, z down. Multirotor, lift plus cruise, vectored thrust and what mixes them
 * differ in their numbers and in the role of each rotor, not in their type.
 */
import type { Angle, Length, Ratio } from '../quantity.js'

/** How far a rotor's thrust leans away from straight up. */
export interface Cant {
  /** Towards the right, +y [rad]. */
  readonly lateral: Angle
  /** Forward, +x [rad]. */
  readonly longitudinal: Angle
}

/** `'lift'` stands still in cruise, `'tilt'` turns forward to push. */
export type RotorRole = 'lift' | 'tilt'

export interface LayoutRotor {
  /** Hub, forward [m]. */
  readonly x: Length
  /** Hub, right [m]. */
  readonly y: Length
  /** Hub, down [m]. */
  readonly z: Length
  /** [m] */
  readonly radius: Length
  /** +1 turns anticlockwise seen from above, so that its torque yaws the aircraft nose right; -1 the other way. */
  readonly spin: Ratio
  readonly cant: Cant
  readonly role: RotorRole
}

export interface Place {
  readonly x: Length
  readonly y: Length
  readonly z: Length
}

/** A straight round boom or arm. */
export interface LayoutBoom {
  /** Its front end, or the end at the body [m]. */
  readonly from: Place
  /** [m] */
  readonly to: Place
  /** [m] */
  readonly diameter: Length
}

/** A wing, tail or fin: one trapezium a side, or a single upright one. */
export interface Surface {
  /** Leading edge of the root [m]. */
  readonly x: Length
  readonly y: Length
  readonly z: Length
  /** Tip to tip, or the height of an upright surface [m]. */
  readonly span: Length
  /** [m] */
  readonly rootChord: Length
  /** [m] */
  readonly tipChord: Length
  /** Of the leading edge, backwards [rad]. */
  readonly sweep: Angle
  /** Of the tips above the root [rad]; none for an upright surface. */
  readonly dihedral: Angle
  readonly thicknessRatio: Ratio
}

export interface LayoutBody {
  /** Nose [m]. */
  readonly x: Length
  /** Of its middle line [m]. */
  readonly z: Length
  /** [m] */
  readonly length: Length
  /** [m] */
  readonly width: Length
  /** [m] */
  readonly height: Length
}

export interface LayoutPropeller extends Place {
  /** [m] */
  readonly radius: Length
  /** +1 turns anticlockwise seen from ahead, -1 the other way. */
  readonly spin: Ratio
}

/** Where everything is. */
export interface Layout {
  /** In words: what kind of aircraft it is. */
  readonly kind: string
  readonly rotors: readonly LayoutRotor[]
  readonly booms: readonly LayoutBoom[]
  readonly wing?: Surface
  readonly tail?: Surface
  /** Upright surfaces. */
  readonly fins: readonly Surface[]
  readonly body?: LayoutBody
  /** For cruise. */
  readonly propellers: readonly LayoutPropeller[]
  /** The ground when the aircraft stands on it, down [m]. */
  readonly ground: Length
}

/** Unit vector along a rotor's thrust: (0, 0, -1) without cant. */
export function thrustDirection({ lateral, longitudinal }: Cant): readonly [number, number, number] {
  const upright = Math.cos(longitudinal)
  return [Math.sin(longitudinal), Math.sin(lateral) * upright, -Math.cos(lateral) * upright]
}

import type { Area, Length } from '../quantity.js'
import { type Circle, smallestAround } from './enclosing-circle.js'
import { cornersOf } from './outlines.js'
import type { Layout } from './parts.js'
import { requireLayout } from './record.js'

export interface Pad {
  /** Smallest circle around the turning rotors: its diameter [m]. */
  readonly diameter: Length
  /** Its middle [m]. */
  readonly x: Length
  readonly y: Length
  /** Diameter of the smallest circle around the whole aircraft, rotors turning [m]. */
  readonly overall: Length
  /** The circle around the whole aircraft. */
  readonly around: Circle
  /** From the foremost to the aftmost point, rotors turning [m]. */
  readonly length: Length
  /** From side to side, rotors turning [m]. */
  readonly width: Length
  /** Of all lift rotors' disks together [m^2]. */
  readonly diskArea: Area
}

const method = 'layout.pad'

/**
 * What ground the aircraft needs: the smallest circle around the turning rotors, the one around the whole aircraft, length and width.
 *
 * @equation min over (x, y) of max_i (distance to hub i + R_i); A = sum of pi R_i^2
 * @param layout - what a builder of layouts returns
 * @returns `diameter` and middle `x`, `y` of the circle around the rotors, `overall` and `around` for the whole aircraft, `length`, `width` [m], `diskArea` [m^2]
 * @throws InvalidInput for what is no layout
 * @method `layout.enclosingCircle` of the disks, and of disks and corners. Disks count at their full radius: a few degrees of cant shorten them by less than 1 %.
 * @validity The aircraft's own size; rules for landing sites add margins around it.
 * @source Definition: the smallest circle around the aircraft with rotors turning (the D of heliport design, ICAO Annex 14 volume II, from memory, is the largest overall dimension instead).
 * @example
 * const ground = layout.pad(layout.multirotor({ count: 4, rotorRadius: 1 * u.m, rotorGap: 0 * u.m }))
 * ground.diameter // 4.8284
 */
export function pad(layout: Layout): Pad {
  requireLayout(method, layout)
  const { rotors } = layout
  const corners = cornersOf(layout)
  const rotorCircle = smallestAround(rotors)
  const around = smallestAround([...rotors, ...corners.map(([x, y]) => ({ x, y, radius: 0 }))])
  const reach = (axis: 'x' | 'y', side: 1 | -1) =>
    Math.max(
      ...rotors.map((rotor) => side * rotor[axis] + rotor.radius),
      ...corners.map((corner) => side * corner[axis === 'x' ? 0 : 1]),
    )
  return {
    diameter: 2 * rotorCircle.radius,
    x: rotorCircle.x,
    y: rotorCircle.y,
    overall: 2 * around.radius,
    around: { x: around.x, y: around.y, radius: around.radius },
    length: reach('x', 1) + reach('x', -1),
    width: reach('y', 1) + reach('y', -1),
    diskArea: rotors.reduce((sum, { radius }) => sum + Math.PI * radius * radius, 0),
  }
}

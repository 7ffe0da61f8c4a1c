/** Least distance of a rotor's disk from a convex shape. */
import { brentMinimum } from '../numerics/index.js'
import type { Obstacle } from './obstacles.js'
import { type LayoutBoom, type LayoutRotor, type Place, thrustDirection } from './parts.js'

/** A flat disk: its middle, its radius, and two unit vectors in its plane. */
export interface Disk {
  readonly middle: readonly [number, number, number]
  readonly radius: number
  readonly along: readonly [number, number, number]
  readonly across: readonly [number, number, number]
}

/** The disk in hover, square to the thrust. */
export function hoverDisk({ x, y, z, radius, cant }: LayoutRotor): Disk {
  const [nx, ny, nz] = thrustDirection(cant)
  // Forward made square to the normal; a normal never points forward, since no cant goes beyond 1.2 rad.
  const size = Math.sqrt(1 - nx * nx)
  const along = [(1 - nx * nx) / size, (-nx * ny) / size, (-nx * nz) / size] as const
  const across = [ny * along[2] - nz * along[1], nz * along[0] - nx * along[2], nx * along[1] - ny * along[0]] as const
  return { middle: [x, y, z], radius, along, across }
}

/**
 * The disk of a rotor that has tilted forward. It turns about the boom under (or over) its hub: a mast that stood up then points ahead, one
 * that hung down points back. A hub without a boom turns about itself.
 */
export function cruiseDisk({ x, y, z, radius }: LayoutRotor, booms: readonly LayoutBoom[]): Disk {
  const pivots = booms.flatMap(({ from, to, diameter }) => {
    const [dx, dy] = [to.x - from.x, to.y - from.y]
    const square = dx * dx + dy * dy
    const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / square))
    const off = Math.hypot(x - from.x - share * dx, y - from.y - share * dy)
    return off <= diameter / 2 ? [from.z + share * (to.z - from.z)] : []
  })
  const pivot = pivots[0] ?? z
  return { middle: [x + pivot - z, y, pivot], radius, along: [0, 1, 0], across: [0, 0, 1] }
}

/** The lowest point of the disk. */
export function lowestOf(disk: Disk): Place {
  const { radius, along, across } = disk
  const slope = Math.hypot(along[2], across[2])
  if (slope === 0) return pointOn(disk, 0, 0)
  return pointOn(disk, (radius * along[2]) / slope, (radius * across[2]) / slope)
}

export interface Nearest {
  /** Least signed distance [m]. */
  readonly distance: number
  /** Point of the disk that has it. */
  readonly at: Place
}

/**
 * The point of the disk that is nearest to the obstacle, or deepest in it. The distance is convex and the disk is too, so that the least
 * over chords is convex from chord to chord: one search inside another finds it.
 */
export function nearestTo(disk: Disk, obstacle: Pick<Obstacle, 'distance'>): Nearest {
  const { middle, radius, along, across } = disk
  const chord = (p: number) => {
    const half = Math.sqrt(Math.max(0, radius * radius - p * p))
    const [x, y, z] = [middle[0] + p * along[0], middle[1] + p * along[1], middle[2] + p * along[2]]
    return leastOf((q) => obstacle.distance(x + q * across[0], y + q * across[1], z + q * across[2]), -half, half)
  }
  const { x: p, value } = leastOf((one) => chord(one).value, -radius, radius)
  return { distance: value, at: pointOn(disk, p, chord(p).x) }
}

/** Least of a convex function between two ends, the ends included. */
function leastOf(f: (x: number) => number, low: number, high: number): { readonly x: number; readonly value: number } {
  const inside = brentMinimum(f, low, high, 1e-7, undefined, 50)
  const atLow = f(low)
  const atHigh = f(high)
  if (atLow < inside.value && atLow <= atHigh) return { x: low, value: atLow }
  return atHigh < inside.value ? { x: high, value: atHigh } : inside
}

/** By its distances along the two unit vectors in the disk's plane. */
function pointOn({ middle, along, across }: Disk, p: number, q: number): Place {
  return {
    x: middle[0] + p * along[0] + q * across[0],
    y: middle[1] + p * along[1] + q * across[1],
    z: middle[2] + p * along[2] + q * across[2],
  }
}

/** No point of the disk is nearer than this [m]: distances never change faster than the point moves. */
export function atLeast(disk: Disk, obstacle: Obstacle): number {
  return obstacle.distance(...disk.middle) - disk.radius
}

/** A disk as something to keep clear of: the distance from it, never below 0. */
export function asObstacle({ middle, radius, along, across }: Disk): Obstacle['distance'] {
  return (x, y, z) => {
    const [dx, dy, dz] = [x - middle[0], y - middle[1], z - middle[2]]
    const p = dx * along[0] + dy * along[1] + dz * along[2]
    const q = dx * across[0] + dy * across[1] + dz * across[2]
    const square = Math.max(0, dx * dx + dy * dy + dz * dz - p * p - q * q)
    const over = Math.max(0, Math.hypot(p, q) - radius)
    return Math.sqrt(square + over * over)
  }
}

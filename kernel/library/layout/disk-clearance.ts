/** Least distance of a rotor's disk from a convex shape. */
import { brentMinimum } from '../numerics/index.js'
import type { Obstacle } from './obstacles.js'
import { type LayoutRotor, thrustDirection } from './parts.js'

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

/** The disk of a rotor that has tilted forward about its hub. */
export function cruiseDisk({ x, y, z, radius }: LayoutRotor): Disk {
  return { middle: [x, y, z], radius, along: [0, 1, 0], across: [0, 0, 1] }
}

/** Of the lowest point of the disk, down [m]. */
export function lowestOf({ middle, radius, along, across }: Disk): number {
  return middle[2] + radius * Math.hypot(along[2], across[2])
}

/**
 * Least signed distance of the disk's points from the obstacle [m]. The distance is convex and the disk is too, so that the least over
 * chords is convex from chord to chord: one search inside another finds it.
 */
export function clearanceOf(disk: Disk, obstacle: Obstacle): number {
  const { middle, radius, along, across } = disk
  const at = (p: number, q: number): number =>
    obstacle.distance(
      middle[0] + p * along[0] + q * across[0],
      middle[1] + p * along[1] + q * across[1],
      middle[2] + p * along[2] + q * across[2],
    )
  const chord = (p: number): number => {
    const half = Math.sqrt(Math.max(0, radius * radius - p * p))
    return Math.min(at(p, -half), at(p, half), brentMinimum((q) => at(p, q), -half, half, 1e-7, undefined, 50).value)
  }
  return Math.min(chord(-radius), chord(radius), brentMinimum(chord, -radius, radius, 1e-7, undefined, 50).value)
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

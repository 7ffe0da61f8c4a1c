/** Which parts of a layout are held against which, and how far each pair is apart. */
import { asObstacle, atLeast, cruiseDisk, type Disk, hoverDisk, lowestOf, nearestTo } from './disk-clearance.js'
import { obstaclesOf } from './obstacles.js'
import type { Layout, LayoutBoom, LayoutRotor, Place, Surface } from './parts.js'

/** What a disk keeps clear of. */
export type Clear = 'rotor' | 'boom' | 'wing' | 'tail' | 'fin' | 'body' | 'propeller' | 'ground'

export type LayoutCheck =
  | 'rotor to rotor'
  | 'rotor to boom'
  | 'rotor to wing'
  | 'rotor to tail'
  | 'rotor to fin'
  | 'rotor to body'
  | 'rotor to propeller'
  | 'rotor to ground'
  | 'hub on boom'
  | 'boom on wing'

export interface CheckedPair {
  readonly check: LayoutCheck
  readonly who: string
  readonly what: string
  /** [m] */
  readonly clearance: number
  /** [m] */
  readonly required: number
  /** Where they are nearest. */
  readonly at: Place
}

type Wanted = (clear: Clear, radius: number) => number

/** Every pair that is too close, and the closest pair of each check. */
export function pairsToCheck(layout: Layout, wanted: Wanted): readonly CheckedPair[] {
  const kept = new Kept()
  const disks = layout.rotors.map((rotor, index) => ({ rotor, who: `rotor ${index + 1}`, disk: hoverDisk(rotor) }))
  const tilted = disks.filter(({ rotor }) => rotor.role === 'tilt')
  const inCruise = tilted.map(({ rotor, who }) => ({
    rotor,
    who: `${who} tilted`,
    disk: cruiseDisk(rotor, layout.booms),
  }))
  betweenDisks(disks, wanted, kept)
  if (inCruise.length > 0)
    betweenDisks([...inCruise, ...disks.filter(({ rotor }) => rotor.role === 'lift')], wanted, kept)
  const obstacles = obstaclesOf(layout)
  for (const { rotor, who, disk } of [...disks, ...inCruise]) {
    for (const obstacle of obstacles) {
      const required = wanted(obstacle.kind, rotor.radius)
      const check = `rotor to ${obstacle.kind}` as const
      if (!kept.matters(check, atLeast(disk, obstacle) - required)) continue
      const { distance, at } = nearestTo(disk, obstacle)
      kept.add({ check, who, what: obstacle.name, clearance: distance, required, at })
    }
    const at = lowestOf(disk)
    const required = wanted('ground', rotor.radius)
    kept.add({ check: 'rotor to ground', who, what: 'the ground', clearance: layout.ground - at.z, required, at })
  }
  if (layout.booms.length > 0)
    for (const { rotor, who } of disks) kept.add({ check: 'hub on boom', who, ...onBoom(rotor, layout.booms) })
  if (layout.wing !== undefined) onWing(layout.booms, layout.wing, kept)
  return kept.pairs()
}

interface Placed {
  readonly rotor: LayoutRotor
  readonly who: string
  readonly disk: Disk
}

function betweenDisks(disks: readonly Placed[], wanted: Wanted, kept: Kept): void {
  disks.forEach((one, index) => {
    for (const other of disks.slice(0, index)) {
      const required = wanted('rotor', Math.max(one.rotor.radius, other.rotor.radius))
      const gap = distanceOf(one.disk, other.disk) - one.disk.radius - other.disk.radius
      if (!kept.matters('rotor to rotor', gap - required)) continue
      const { distance, at } = nearestTo(one.disk, { distance: asObstacle(other.disk) })
      const clearance = distance > 1e-6 ? distance : Math.min(gap, distance)
      kept.add({ check: 'rotor to rotor', who: other.who, what: one.who, clearance, required, at })
    }
  })
}

function distanceOf({ middle: a }: Disk, { middle: b }: Disk): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])
}

/** How far within the tips the booms meet the wing. */
function onWing(booms: readonly LayoutBoom[], { y, span, dihedral }: Surface, kept: Kept): void {
  booms.forEach(({ from, to, diameter }, index) => {
    const at = Math.abs(from.y - y) > Math.abs(to.y - y) ? from : to
    const clearance = (span / 2) * Math.cos(dihedral) - Math.abs(at.y - y) - diameter / 2
    kept.add({ check: 'boom on wing', who: `boom ${index + 1}`, what: 'the wing', clearance, required: 0, at })
  })
}

/** How far within the ends of the nearest boom the hub stands, in plan; below 0 by how far it stands off it. */
function onBoom({ x, y, z }: LayoutRotor, booms: readonly LayoutBoom[]) {
  const all = booms.map(({ from, to, diameter }, index) => {
    const [dx, dy] = [to.x - from.x, to.y - from.y]
    const length = Math.hypot(dx, dy)
    const along = length === 0 ? 0 : ((x - from.x) * dx + (y - from.y) * dy) / length
    const share = length === 0 ? 0 : Math.min(1, Math.max(0, along / length))
    const off = Math.hypot(x - from.x - share * dx, y - from.y - share * dy)
    const over = Math.min(along, length - along)
    const aside = off > diameter / 2 || (over < 0 && off > 1e-9)
    return { what: `boom ${index + 1}`, clearance: aside ? -off : Math.max(0, over), required: 0, at: { x, y, z } }
  })
  return all.reduce((best, one) => (one.clearance > best.clearance ? one : best))
}

/** Keeps what is too close, and else only the closest of each check. */
class Kept {
  readonly #tooClose: CheckedPair[] = []
  readonly #closest = new Map<LayoutCheck, CheckedPair>()

  /** Whether a pair with at least this margin [m] can still be worth its search. */
  matters(check: LayoutCheck, leastMargin: number): boolean {
    const closest = this.#closest.get(check)
    return leastMargin < 0 || closest === undefined || leastMargin < closest.clearance - closest.required
  }

  add(pair: CheckedPair): void {
    const margin = pair.clearance - pair.required
    if (margin < -1e-9) this.#tooClose.push(pair)
    const closest = this.#closest.get(pair.check)
    if (closest === undefined || margin < closest.clearance - closest.required) this.#closest.set(pair.check, pair)
  }

  pairs(): readonly CheckedPair[] {
    return [...new Set([...this.#tooClose, ...this.#closest.values()])]
  }
}

/** Search over spin patterns, stretches of the plan and cant for the least peak after a loss that can still be steered. */
import { requirePositive, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Angle, Ratio } from '../quantity.js'
import {
  type AccelerationDemand,
  attitude,
  type ConditionsOptions,
  type ForAttitude,
  type Inertia,
  knownConditions,
  readAcceleration,
  readConditions,
  readInertia,
} from './conditions.js'
import { type LiftRotor, readRotors } from './lift-rotor.js'
import { rateCases } from './rating.js'

/** Factors on the places of the rotors. */
export interface Stretch {
  readonly x: Ratio
  readonly y: Ratio
}

export interface SearchOptions extends ConditionsOptions {
  readonly acceleration?: AccelerationDemand
  /** [kg m^2] */
  readonly inertia?: Inertia
  /** Spins to try, a list per pattern; those with as many turning either way when left out. */
  readonly patterns?: readonly (readonly Ratio[])[]
  /** Stretches of the plan to try; as it stands when left out. */
  readonly stretches?: readonly Stretch[]
  /** Lateral cants to try, outward on either side [rad]; upright when left out. */
  readonly outwardCants?: readonly Angle[]
  /** Rows that are given back; 10 when left out. */
  readonly keep?: Ratio
}

export interface SearchRow {
  /** `+--+`, in the order of the rotors. */
  readonly pattern: string
  readonly spins: readonly Ratio[]
  readonly stretch: Stretch
  readonly outwardCant: Angle
  /** Losses that hold every axis with the accelerations asked for and steering left. */
  readonly held: Ratio
  /** Losses looked at. */
  readonly of: Ratio
  /** Whether the intact aircraft can be steered about every held axis. */
  readonly steerable: boolean
  /** Greatest peak over weight of the intact aircraft and the losses that are held. */
  readonly peakShare: Ratio
  /** Over the mean of normal hover. */
  readonly thrustToHover: Ratio
  readonly rotors: readonly LiftRotor[]
}

export interface Search {
  /** Best first. */
  readonly rows: readonly SearchRow[]
  /** The first that can be steered; absent where none can. */
  readonly best?: SearchRow
  readonly tried: Ratio
  /** Arrangements without authority about some held axis though intact: never offered as best. */
  readonly notSteerable: Ratio
}

const method = 'authority.search'
const known = new Set([...knownConditions, 'acceleration', 'inertia', 'patterns', 'stretches', 'outwardCants', 'keep'])
const mostTried = 20_000

/**
 * Spin patterns, stretches and cants of a plan tried against each other: most losses held, then the least peak, never one without steering.
 *
 * @equation order: losses held with the accelerations asked for (most first), greatest of their peaks as `authority.rating` (least first)
 * @param options - as `authority.rating` without `usableShare` and `control` (`maxThrust` and the rotors' own spin not used); `patterns`: lists of spins (all with as many turning
 * either way up to 8 rotors; beyond, those whose mirror images turn opposite), `stretches` `{ x, y }` (1, 1), `outwardCants` [rad] (0), `keep` rows (10)
 * @returns `rows`, best first: `pattern`, `spins`, `stretch`, `outwardCant`, `held` of `of` losses, `steerable`, `peakShare`, `thrustToHover`,
 * `rotors`; the `best` that is steerable; how many were `tried` and `notSteerable`
 * @throws InvalidInput as `authority.rating`, for an odd number of rotors or a plan without mirror images where patterns are left out, a
 * pattern of another length, more than 20000 arrangements, and an unknown option
 * @method Every arrangement is rated; one that cannot be steered about a held axis while intact is listed last and never best.
 * @validity As `authority.rating`. A stretch moves rotors only: discs that touch, booms and mass are the layout's matter.
 * @source House method; no published claim holds that a spin pattern is best for every plan.
 * @example
 * const plan = [[2, -2], [0, -2.5], [-2, -2], [2, 2], [0, 2.5], [-2, 2]].map(([x, y]) => ({ x, y, spin: 1, maxThrust: 1e4, torqueRatio: 0.1 }))
 * authority.search({ rotors: plan, weight: 16 * u.kN }).best.held // 4
 */
export function search(options: SearchOptions): Search {
  checkOptions(method, options, known)
  const { patterns, stretches, cants, moments, keep } = readSearch(options)
  const rows: SearchRow[] = []
  for (const stretch of stretches)
    for (const outwardCant of cants)
      for (const spins of patterns) rows.push(rateArrangement(options, { spins, stretch, outwardCant }, moments))
  rows.sort(compare)
  const best = rows.find((row) => row.steerable)
  return {
    rows: rows.slice(0, keep),
    ...(best === undefined ? {} : { best }),
    tried: rows.length,
    notSteerable: rows.filter((row) => !row.steerable).length,
  }
}

interface Arrangement {
  readonly spins: readonly number[]
  readonly stretch: Stretch
  readonly outwardCant: number
}

function readSearch(options: SearchOptions) {
  readRotors(method, options.rotors)
  const patterns = options.patterns === undefined ? usualPatterns(options.rotors) : options.patterns
  const { stretches = [{ x: 1, y: 1 }], outwardCants = [0], keep = 10 } = options
  for (const [name, list] of Object.entries({ patterns, stretches, outwardCants }))
    if (!Array.isArray(list) || list.length === 0)
      throw new InvalidInput({
        method,
        argument: name,
        value: describeValue(list),
        accepted: 'a list of at least one',
      })
  patterns.forEach((pattern, at) => {
    if (!Array.isArray(pattern) || pattern.length !== options.rotors.length)
      throw new InvalidInput({
        method,
        argument: `patterns[${at}]`,
        value: describeValue(pattern),
        accepted: `a list of ${options.rotors.length} spins`,
      })
  })
  stretches.forEach((stretch, at) => {
    checkOptions(`${method} stretches[${at}]`, stretch, new Set(['x', 'y']))
    requirePositive(method, `stretches[${at}].x`, stretch.x, '1')
    requirePositive(method, `stretches[${at}].y`, stretch.y, '1')
  })
  outwardCants.forEach((cant, at) => {
    requireWithin(method, `outwardCants[${at}]`, cant, 'rad', -1.2, 1.2)
  })
  requireWithin(method, 'keep', keep, '1', 1, mostTried)
  const all = patterns.length * stretches.length * outwardCants.length
  if (all > mostTried)
    throw new InvalidInput({ method, argument: 'arrangements to try', value: all, accepted: `at most ${mostTried}` })
  const acceleration = readAcceleration(method, 'acceleration', options.acceleration)
  const turning = attitude.some((axis) => acceleration[axis] > 0)
  const inertia = turning ? readInertia(method, options.inertia as Inertia) : { roll: 1, pitch: 1, yaw: 1 }
  const moments = {
    roll: acceleration.roll * inertia.roll,
    pitch: acceleration.pitch * inertia.pitch,
    yaw: acceleration.yaw * inertia.yaw,
  }
  return { patterns, stretches, cants: outwardCants, moments, keep }
}

function rateArrangement(options: SearchOptions, arrangement: Arrangement, moments: ForAttitude<number>): SearchRow {
  const { spins, stretch, outwardCant } = arrangement
  const rotors = options.rotors.map((rotor, at): LiftRotor => {
    const y = rotor.y * stretch.y
    const cant = outwardCant === 0 ? (rotor.cant ?? 0) : outwardCant * Math.sign(y)
    return { ...rotor, x: rotor.x * stretch.x, y, spin: spins[at] as number, cant }
  })
  const { centresOfGravity, disturbances, simultaneous, hold, weight } = options
  const conditions = readConditions(method, {
    rotors,
    weight,
    ...(hold === undefined ? {} : { hold }),
    ...(centresOfGravity === undefined ? {} : { centresOfGravity }),
    ...(disturbances === undefined ? {} : { disturbances }),
    ...(simultaneous === undefined ? {} : { simultaneous }),
  })
  const [intact, ...losses] = rateCases(conditions, moments)
  const held = losses.filter((one) => one.peakShare !== undefined && one.steerable)
  const peakShare = Math.max(intact?.peakShare ?? 0, ...held.map((one) => one.peakShare ?? 0))
  return {
    pattern: spins.map((spin) => (spin > 0 ? '+' : '-')).join(''),
    spins: [...spins],
    stretch,
    outwardCant,
    held: held.length,
    of: losses.length,
    steerable: intact?.peakShare !== undefined && intact.steerable,
    peakShare,
    thrustToHover: peakShare * rotors.length,
    rotors,
  }
}

/** Steerable first, then most losses held, then the least peak; among equals the order of trying. */
function compare(one: SearchRow, other: SearchRow): number {
  if (one.steerable !== other.steerable) return one.steerable ? -1 : 1
  if (one.held !== other.held) return other.held - one.held
  const apart = one.peakShare - other.peakShare
  return Math.abs(apart) < 1e-7 * one.peakShare ? 0 : apart
}

/** Half one way and half the other, the first rotor +1: turning all about changes nothing but the sign of yaw. */
export function usualPatterns(rotors: readonly LiftRotor[]): number[][] {
  const count = rotors.length
  if (count % 2 !== 0)
    throw new InvalidInput({
      method,
      argument: 'rotors',
      value: count,
      accepted: 'an even number where patterns are left out',
      remedy: 'Give the spins to try as patterns.',
    })
  const partners = count <= 8 ? undefined : mirrorImages(rotors)
  const free = partners === undefined ? count : partners.length
  const patterns: number[][] = []
  for (let bits = 0; bits < 2 ** (free - 1); bits += 1) {
    const sign = (at: number) => (at > 0 && (bits >> (at - 1)) % 2 === 1 ? -1 : 1)
    const spins = new Array<number>(count).fill(1)
    if (partners === undefined)
      spins.forEach((_, at) => {
        spins[at] = sign(at)
      })
    else
      partners.forEach(([left, right], at) => {
        spins[left] = sign(at)
        spins[right] = -sign(at)
      })
    if (spins.reduce((sum, spin) => sum + spin, 0) === 0) patterns.push(spins)
  }
  return patterns
}

/** Pairs of rotors that mirror each other across the middle. */
function mirrorImages(rotors: readonly LiftRotor[]): [number, number][] {
  const pairs: [number, number][] = []
  const taken = new Set<number>()
  rotors.forEach((rotor, at) => {
    if (taken.has(at)) return
    const image = rotors.findIndex(
      (other, place) =>
        place > at && !taken.has(place) && Math.abs(other.x - rotor.x) < 1e-6 && Math.abs(other.y + rotor.y) < 1e-6,
    )
    if (image < 0)
      throw new InvalidInput({
        method,
        argument: `rotors[${at}]`,
        value: 'without a mirror image',
        accepted: 'one of two rotors at x and +-y, where there are more than 8 and patterns are left out',
        remedy: 'Give the spins to try as patterns.',
      })
    taken.add(at).add(image)
    pairs.push([at, image])
  })
  return pairs
}

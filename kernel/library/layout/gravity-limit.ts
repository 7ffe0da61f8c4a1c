/** A limit of the centre of gravity along the aircraft, over mass or for all masses. */
import { requireText, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Length, Mass } from '../quantity.js'

export interface GravityLimit {
  readonly label: string
  /** Masses at which the ends are given, rising; one end for all masses when left out [kg]. */
  readonly mass?: readonly Mass[]
  /** The centre of gravity must not lie ahead of it [m]; open when left out. */
  readonly forward?: Length | readonly Length[]
  /** Nor behind it [m]; open when left out. */
  readonly aft?: Length | readonly Length[]
}

/** Every limit as lists over mass; more fields than these are let pass, so that what methods return can be handed on. */
export interface ReadLimit {
  readonly label: string
  readonly mass: readonly number[] | undefined
  readonly forward: readonly number[] | undefined
  readonly aft: readonly number[] | undefined
}

const largest = 1e6

export function readGravityLimits(method: string, limits: readonly GravityLimit[]): readonly ReadLimit[] {
  if (!Array.isArray(limits) || limits.length === 0 || limits.length > 20)
    throw new InvalidInput({
      method,
      argument: 'limits',
      value: describeValue(limits),
      accepted: 'a list of 1 to 20 { label, forward, aft, mass }',
    })
  return limits.map((limit, index) => readLimit(method, `limits[${index}]`, limit))
}

function readLimit(method: string, at: string, limit: GravityLimit): ReadLimit {
  if (typeof limit !== 'object' || limit === null) checkOptions(`${method} ${at}`, limit, new Set(['label', 'mass']))
  const { label, mass, forward, aft } = limit
  requireText(method, `${at}.label`, label)
  if (mass !== undefined) requireRisingMasses(method, `${at}.mass`, mass)
  const count = mass?.length ?? 1
  const end = (name: 'forward' | 'aft', value: number | readonly number[] | undefined) => {
    if (value === undefined) return undefined
    const list = Array.isArray(value) ? (value as readonly number[]) : [value as number]
    if (list.length !== count)
      throw new InvalidInput({
        method,
        argument: `${at}.${name}`,
        value: describeValue(value),
        accepted:
          mass === undefined ? 'one length, or a list with masses beside it' : `a list of ${count}, one per mass`,
      })
    for (const length of list) requireWithin(method, `${at}.${name}`, length, 'm', -largest, largest)
    return list
  }
  return { label, mass, forward: end('forward', forward), aft: end('aft', aft) }
}

function requireRisingMasses(method: string, argument: string, masses: readonly number[]): void {
  const rising =
    Array.isArray(masses) &&
    masses.every((mass, index) => mass > 0 && mass <= 1e9 && (index === 0 || mass > (masses[index - 1] as number)))
  if (!rising)
    throw new InvalidInput({ method, argument, value: describeValue(masses), accepted: 'a list of masses that rise' })
}

/** The limit's end at a mass; the first one's below the first, null above the last. */
export function endAt({ mass }: ReadLimit, ends: readonly number[], at: number): number | null {
  if (mass === undefined) return ends[0] as number
  const last = mass.length - 1
  if (last < 0 || at > (mass[last] as number) * (1 + 1e-9)) return null
  const next = mass.findIndex((one) => one >= at)
  if (next === 0) return ends[0] as number
  if (next < 0) return ends[last] as number
  const [low, high] = [mass[next - 1] as number, mass[next] as number]
  const share = (at - low) / (high - low)
  return (ends[next - 1] as number) * (1 - share) + (ends[next] as number) * share
}

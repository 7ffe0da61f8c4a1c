/** Along a route: can a landing site be reached from everywhere after the cruise propulsor is lost? */
import {
  requireFinite,
  requireNonNegative,
  requirePositive,
  requireRepresentable,
  requireText,
  requireWithin,
} from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { brentRoot } from '../numerics/index.js'
import type { Energy, Length, Power, Ratio, Speed } from '../quantity.js'
import { silently } from '../recorder.js'
import { requireList } from '../shapes.js'

export interface LandingSite {
  readonly name: string
  /** Distance along the route [m]. */
  readonly along: Length
  /** To the side of the route [m]; 0 when left out. */
  readonly off?: Length
  /** Long enough to land on the wing, so that no hover is needed. */
  readonly runway?: boolean
}

/** What the lift rotors can do once they are started. */
export interface RotorBorne {
  /** From the pack, at the speed of its flight to a site [W]. */
  readonly power: Power
  /** Over the ground [m/s]. */
  readonly speed: Speed
  /** From the pack, for starting the rotors, the transition and the landing hover [J]. */
  readonly landingEnergy: Energy
}

export interface RouteReachOptions {
  /** [m] */
  readonly length: Length
  readonly sites: readonly LandingSite[]
  /** Above the ground to be reached [m]: a number, or a function of the distance flown [m]. */
  readonly height: Length | ((along: Length) => Length)
  /** Kept for the start of the rotors and the landing [m]; 0 when left out. */
  readonly keptHeight?: Length
  /** Of the glide, as `limits.glide` gives it. */
  readonly liftToDrag: Ratio
  /** Left in the pack at a distance flown [J]: a number, or a function of the distance [m]. Needed where there is `rotorBorne`. */
  readonly energyLeft?: Energy | ((along: Length) => Energy)
  /** Without it the glide is all there is, and every site must be a runway. */
  readonly rotorBorne?: RotorBorne
  /** 2 to 2000; 201 when left out. */
  readonly points?: Ratio
}

export interface ReachPoint {
  /** Flown so far [m]. */
  readonly along: Length
  /** By the glide [m]. */
  readonly glide: Length
  /** By the glide and on the rotors after it [m]. */
  readonly reach: Length
  /** That has most to spare, or lacks least. */
  readonly site: string
  /** To that site [m]. */
  readonly distance: Length
  /** Reach less distance [m]: negative is lacking. */
  readonly margin: Length
}

export interface ReachGap {
  /** Of the route [m]. */
  readonly from: Length
  /** [m] */
  readonly to: Length
  /** At the worst point of it [m]. */
  readonly lacking: Length
}

export interface RouteReach {
  /** Whether a site is within reach from everywhere. */
  readonly covered: boolean
  /** Share of the route from which one is. */
  readonly coveredShare: Ratio
  /** From which none is. */
  readonly gaps: readonly ReachGap[]
  readonly worst: ReachPoint
  readonly points: readonly ReachPoint[]
}

const method = 'limits.routeReach'
const known = new Set(['length', 'sites', 'height', 'keptHeight', 'liftToDrag', 'energyLeft', 'rotorBorne', 'points'])
const knownSite = new Set(['name', 'along', 'off', 'runway'])
const knownRotors = new Set(['power', 'speed', 'landingEnergy'])

/**
 * Reach along a route after the loss of the cruise propulsor: the glide, then the rotors with the energy left, against the nearest landing sites.
 *
 * @equation reach = (h - h_kept) L/D + V (E_left - E_landing)/P; a site without a runway takes E_left >= E_landing; margin = reach - distance to the site
 * @param options - `length` [m], `sites`: list of `{ name, along [m], off [m], runway }`, `height` h [m] (number, or function of the distance flown), `liftToDrag`; optional `keptHeight` [m] (0), `energyLeft` [J] (number, or
 * function of the distance flown), `rotorBorne` `{ power P [W], speed V [m/s], landingEnergy [J] }`, `points` (201)
 * @returns `covered`, `coveredShare`, `gaps` with `from`, `to`, `lacking` [m], the `worst` point, and `points` with `along`, `glide`, `reach`, `site`, `distance`, `margin`
 * @throws InvalidInput for no sites, a rotor-borne flight without `energyLeft`, values that are not positive, functions that do not answer numbers, and an unknown option
 * @method Straight lines from the route to the sites; gap ends by Brent's root between points. A site that can only be landed on in hover is out of reach where the energy for that hover is gone.
 * @validity Still air, no terrain between. A gap narrower than the points are apart may be missed.
 * @source Glide: Anderson, J. D., Aircraft Performance and Design, 1999, section 5.9 (from memory). The rest: house derivation.
 * @example
 * const over = limits.routeReach({
 *   length: 40 * u.km, height: 450 * u.m, liftToDrag: 12, sites: [{ name: 'south strip', along: 0, runway: true }, { name: 'north strip', along: 40 * u.km, runway: true }],
 * })
 * over.coveredShare // 0.27
 */
export function routeReach(options: RouteReachOptions): RouteReach {
  const setting = readSetting(options)
  const { length, count } = setting
  const ask = (along: number) => silently(() => pointAt(options, setting, along))
  const points = Array.from({ length: count }, (_, index) => ask((length * index) / (count - 1)))
  const gaps = gapsOf(points, (along) => ask(along).margin)
  const worst = points.reduce((least, point) => (point.margin < least.margin ? point : least))
  const open = gaps.reduce((sum, gap) => sum + gap.to - gap.from, 0)
  requireRepresentable(
    method,
    points.reduce((sum, point) => sum + point.margin + point.reach, open),
  )
  return { covered: gaps.length === 0, coveredShare: 1 - open / length, gaps, worst, points }
}

interface Setting {
  readonly length: number
  readonly keptHeight: number
  readonly liftToDrag: number
  readonly count: number
}

function readSetting(options: RouteReachOptions): Setting {
  checkOptions(method, options, known)
  const { length, sites, liftToDrag, keptHeight = 0, points = 201, rotorBorne } = options
  requirePositive(method, 'length', length, 'm')
  requirePositive(method, 'liftToDrag', liftToDrag, '1')
  requireNonNegative(method, 'keptHeight', keptHeight, 'm')
  requireWithin(method, 'points', points, '1', 2, 2000)
  requireList(method, 'sites', sites, '{ name, along }')
  sites.forEach((site, index) => {
    requireSite(site, `sites[${index}]`)
  })
  if (rotorBorne !== undefined) {
    checkOptions(`${method} rotorBorne`, rotorBorne, knownRotors)
    requirePositive(method, 'rotorBorne.power', rotorBorne.power, 'W')
    requirePositive(method, 'rotorBorne.speed', rotorBorne.speed, 'm/s')
    requireNonNegative(method, 'rotorBorne.landingEnergy', rotorBorne.landingEnergy, 'J')
    if (options.energyLeft === undefined)
      throw new InvalidInput({ method, argument: 'energyLeft', value: 'missing', accepted: 'given with rotorBorne' })
  }
  return { length, keptHeight, liftToDrag, count: Math.round(points) }
}

function requireSite(site: LandingSite, at: string): void {
  checkOptions(`${method} ${at}`, site, knownSite)
  requireText(method, `${at}.name`, site.name)
  requireFinite(method, `${at}.along`, site.along, 'm')
  requireFinite(method, `${at}.off`, site.off ?? 0, 'm')
  if (site.runway !== undefined && typeof site.runway !== 'boolean')
    throw new InvalidInput({
      method,
      argument: `${at}.runway`,
      value: describeValue(site.runway),
      accepted: 'true or false',
    })
}

function pointAt(options: RouteReachOptions, setting: Setting, along: number): ReachPoint {
  const height = valueAt('height', options.height, along)
  const glide = Math.max(height - setting.keptHeight, 0) * setting.liftToDrag
  const { rotorBorne } = options
  const left =
    rotorBorne === undefined ? -1 : valueAt('energyLeft', options.energyLeft ?? 0, along) - rotorBorne.landingEnergy
  const onRotors = rotorBorne === undefined ? 0 : (Math.max(left, 0) / rotorBorne.power) * rotorBorne.speed
  const reach = glide + onRotors
  // Without energy for the hover a site without a runway is no site: it lacks the whole way.
  const best = options.sites.reduce(
    (most: { site: string; distance: number; margin: number }, { name, along: at, off = 0, runway = false }) => {
      const distance = Math.hypot(at - along, off)
      const margin = runway || left >= 0 ? reach - distance : -distance - shortfall
      return margin > most.margin ? { site: name, distance, margin } : most
    },
    { site: '', distance: 0, margin: Number.NEGATIVE_INFINITY },
  )
  return { along, glide, reach, ...best }
}

/** A site that cannot be landed on lacks at least this much [m], so that standing over it is no comfort. */
const shortfall = 1

function valueAt(argument: string, given: number | ((along: number) => number), along: number): number {
  const value = typeof given === 'function' ? given(along) : given
  requireNonNegative(method, argument, value, argument === 'height' ? 'm' : 'J')
  return value
}

function gapsOf(points: readonly ReachPoint[], margin: (along: number) => number): ReachGap[] {
  const gaps: { from: number; to: number; lacking: number }[] = []
  points.forEach((here, index) => {
    const before = points[index - 1]
    const open = gaps.at(-1)
    const inside = here.margin < 0
    const wasInside = before !== undefined && before.margin < 0
    if (inside && !wasInside)
      gaps.push({ from: before === undefined ? here.along : edge(before, here, margin), to: here.along, lacking: 0 })
    const gap = gaps.at(-1)
    if (inside && gap !== undefined) {
      gap.to = here.along
      gap.lacking = Math.max(gap.lacking, -here.margin)
    } else if (wasInside && open !== undefined && before !== undefined) open.to = edge(before, here, margin)
  })
  return gaps
}

function edge(before: ReachPoint, here: ReachPoint, margin: (along: number) => number): number {
  return brentRoot(margin, before.along, here.along, before.margin, here.margin, 1e-9).x
}

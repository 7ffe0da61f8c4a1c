import { gravity } from '../air/constants.js'
import { requireFinite, requireNonNegative, requirePositive, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Force, Length, Mass, Ratio } from '../quantity.js'
import type { GravityLimit } from './gravity-limit.js'
import { thrustDirection } from './parts.js'
import type { LayoutUnit } from './units.js'

export interface HoverLimitsOptions {
  /** What `layout.units` returns. */
  readonly units: readonly LayoutUnit[]
  /** Masses at which the limits are wanted, rising [kg]. */
  readonly masses: readonly Mass[]
  /** Thrust over weight, for the download on wing and body; 1 when left out. */
  readonly thrustFactor?: Ratio
  /** Share of each rotor's greatest thrust that trim may take; 1 when left out. The rest is for control. */
  readonly usableShare?: Ratio
  /** Where the centre of gravity lies across [m]; 0 when left out. */
  readonly across?: Length
}

export interface HoverLimits extends GravityLimit {
  readonly label: string
  /** Masses that the rotors can lift at all; less of them than asked for where they cannot [kg]. */
  readonly mass: readonly Mass[]
  /** [m] */
  readonly forward: readonly Length[]
  /** [m] */
  readonly aft: readonly Length[]
  /** Where the centre of gravity may lie at the greatest of these masses: corners of the region in plan [m]. */
  readonly region: readonly { readonly x: Length; readonly y: Length }[]
  /** Thrust left over at the greatest mass asked for [N]; below 0 the rotors do not lift it. */
  readonly spareThrust: Force
}

const method = 'layout.hoverLimits'
const known = new Set(['units', 'masses', 'thrustFactor', 'usableShare', 'across'])

/**
 * Where the centre of gravity may lie in hover: all rotors turning, lift, roll and pitch in balance.
 *
 * @equation x_cg = sum f_i x_i/sum f_i with sum f_i = k m g, 0 <= f_i <= s T_max,i; the region over all f, cut at y = y_cg
 * @param options - `units`: what `layout.units` returns, `masses`: rising list [kg]; optional `thrustFactor` k (1), `usableShare` s of each rotor's greatest thrust (1), `across` y_cg [m] (0)
 * @returns a limit that `layout.gravityMargins` and `figure.loadingEnvelope` take: `label`, `mass` [kg], `forward`, `aft` [m]; with `region` in plan at the greatest mass lifted and `spareThrust` [N]
 * @throws InvalidInput for no units, masses that do not rise, a usable share outside 0 to 1, a thrust factor outside 1 to 2, and an unknown option
 * @method Exact. The region is the convex hull of the rotors weighted by their limits: in every direction the rotors farthest out are filled first. Each turn of direction at which their order changes gives a corner.
 * @validity Thrust in proportion to lift (the cosine of the cant is counted, its moments are not) and yaw left out: `layout.lossLimits` holds it, and knows lost rotors.
 * @source Mechanics: statics of parallel forces, a continuous knapsack (Dantzig, 1957, from memory).
 * @example
 * const four = layout.units(layout.multirotor({ count: 4, rotorRadius: 1 * u.m }), { maxThrust: 5 * u.kN, torqueRatio: 0.1 * u.m })
 * const trim = layout.hoverLimits({ units: four, masses: [1000 * u.kg, 1500 * u.kg] })
 * trim.forward[0] // 1.050
 */
export function hoverLimits(options: HoverLimitsOptions): HoverLimits {
  checkOptions(method, options, known)
  const { units, masses, thrustFactor, usableShare, across } = readHoverLimits(method, options)
  const rotors = units.map(({ x, y, cant, maxThrust }) => ({
    x,
    y,
    limit: maxThrust * usableShare * -thrustDirection(cant)[2],
  }))
  const total = rotors.reduce((sum, { limit }) => sum + limit, 0)
  const liftable = masses.filter((mass) => mass * gravity * thrustFactor <= total)
  const rows = liftable.flatMap((mass) => {
    const cut = cutAt(regionOf(rotors, mass * gravity * thrustFactor), across)
    return cut === null ? [] : [{ mass, ...cut }]
  })
  const heaviest = liftable.at(-1)
  return {
    label: 'hover trim',
    mass: rows.map((row) => row.mass),
    forward: rows.map((row) => row.forward),
    aft: rows.map((row) => row.aft),
    region: heaviest === undefined ? [] : regionOf(rotors, heaviest * gravity * thrustFactor),
    spareThrust: total - (masses.at(-1) as number) * gravity * thrustFactor,
  }
}

/** Checks what the limits of hover and those after a loss share. */
export function readHoverLimits(method: string, options: HoverLimitsOptions) {
  const { units, masses, thrustFactor = 1, usableShare = 1, across = 0 } = options
  if (!Array.isArray(units) || units.length === 0 || units.length > 64)
    throw new InvalidInput({
      method,
      argument: 'units',
      value: describeValue(units),
      accepted: 'what layout.units returns: 1 to 64 rotors',
    })
  units.forEach((unit: LayoutUnit, index) => {
    requireWithin(method, `units[${index}].x`, unit?.x, 'm', -1e4, 1e4)
    requireWithin(method, `units[${index}].y`, unit.y, 'm', -1e4, 1e4)
    requireNonNegative(method, `units[${index}].maxThrust`, unit.maxThrust, 'N')
    requireWithin(method, `units[${index}].maxThrust`, unit.maxThrust, 'N', 0, 1e9)
    const { lateral, longitudinal } = unit.cant ?? {}
    requireWithin(method, `units[${index}].cant.lateral`, lateral, 'rad', -1.2, 1.2)
    requireWithin(method, `units[${index}].cant.longitudinal`, longitudinal, 'rad', -1.2, 1.2)
  })
  if (!Array.isArray(masses) || masses.length === 0)
    throw new InvalidInput({ method, argument: 'masses', value: describeValue(masses), accepted: 'a list of masses' })
  masses.forEach((mass, index) => {
    requirePositive(method, `masses[${index}]`, mass, 'kg')
    requireWithin(method, `masses[${index}]`, mass, 'kg', index === 0 ? 0 : (masses[index - 1] as number), 1e9)
  })
  requireWithin(method, 'thrustFactor', thrustFactor, '1', 1, 2)
  requireWithin(method, 'usableShare', usableShare, '1', 0, 1)
  requireFinite(method, 'across', across, 'm')
  return { units, masses, thrustFactor, usableShare, across }
}

interface Lifter {
  readonly x: number
  readonly y: number
  readonly limit: number
}

/** Corners of the region in which the centre of gravity may lie, in order around it. */
function regionOf(rotors: readonly Lifter[], lift: number): readonly { readonly x: number; readonly y: number }[] {
  const turns = new Set<number>([0])
  rotors.forEach((a, i) => {
    for (const b of rotors.slice(0, i)) {
      // Square to the line between two hubs their order changes.
      const angle = Math.atan2(b.x - a.x, a.y - b.y)
      turns.add(angle)
      turns.add(angle > 0 ? angle - Math.PI : angle + Math.PI)
    }
  })
  const sorted = [...turns].sort((a, b) => a - b)
  const corners: { x: number; y: number }[] = []
  sorted.forEach((angle, index) => {
    const next = sorted[index + 1] ?? (sorted[0] as number) + 2 * Math.PI
    if (next - angle < 1e-9) return
    const corner = farthestTrim(rotors, lift, (angle + next) / 2)
    const last = corners.at(-1)
    if (last === undefined || Math.hypot(corner.x - last.x, corner.y - last.y) > 1e-9) corners.push(corner)
  })
  return corners
}

/** The trim farthest in a direction: rotors filled from the one farthest that way until they lift enough. */
function farthestTrim(rotors: readonly Lifter[], lift: number, angle: number) {
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)]
  const order = [...rotors].sort((a, b) => (b.x - a.x) * cosine + (b.y - a.y) * sine)
  let left = lift
  let [x, y] = [0, 0]
  for (const rotor of order) {
    const taken = Math.min(left, rotor.limit)
    x += taken * rotor.x
    y += taken * rotor.y
    left -= taken
  }
  return { x: x / lift, y: y / lift }
}

/** Foremost and aftmost point of a convex region at a distance from the middle; null where it does not reach there. */
function cutAt(region: readonly { readonly x: number; readonly y: number }[], across: number) {
  const found: number[] = []
  region.forEach((a, index) => {
    const b = region[(index + 1) % region.length] as { readonly x: number; readonly y: number }
    if (Math.abs(a.y - across) <= 1e-9) found.push(a.x)
    if ((a.y - across) * (b.y - across) < 0) found.push(a.x + ((b.x - a.x) * (across - a.y)) / (b.y - a.y))
  })
  return found.length === 0 ? null : { forward: Math.max(...found), aft: Math.min(...found) }
}

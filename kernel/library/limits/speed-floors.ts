import { requirePositive, requireRepresentable, requireText } from '../check.js'
import { checkOptions } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Area, Density, Force, Ratio, Speed } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { requireList } from '../shapes.js'
import { stallSpeed } from '../wing/stall-speed.js'

/** A speed that is to be flown, and what carries the aircraft there. */
export interface FlownSpeed {
  /** Of the phase: cruise, loiter, reserve, conversion. */
  readonly name: string
  /** True airspeed [m/s]. */
  readonly speed: Speed
  /** `'wing-borne'` when left out; a conversion begins or ends with the rotors at hand. */
  readonly kind?: 'wing-borne' | 'conversion'
  /** Over the stall speed, in place of 1.3 wing-borne and 1.2 at the conversion. */
  readonly margin?: Ratio
  /** In a turn or gust; 1 when left out. */
  readonly loadFactor?: Ratio
  /** Where it differs from that of the others [kg/m^3]. */
  readonly density?: Density
}

export interface SpeedFloorsOptions {
  /** [N] */
  readonly weight: Force
  /** [kg/m^3] */
  readonly density: Density
  /** [m^2] */
  readonly wingArea: Area
  /** With booms and stopped rotors: an assumption. */
  readonly maximumLift: Ratio
  readonly speeds: readonly FlownSpeed[]
}

export interface SpeedFloor {
  readonly phase: string
  /** [m/s] */
  readonly speed: Speed
  /** [m/s] */
  readonly stallSpeed: Speed
  /** Slowest allowed [m/s]. */
  readonly floor: Speed
  /** Speed over floor, less 1: negative is too slow. */
  readonly margin: Ratio
  readonly met: boolean
}

const method = 'limits.speedFloors'
const known = new Set(['weight', 'density', 'wingArea', 'maximumLift', 'speeds'])
const knownSpeed = new Set(['name', 'speed', 'kind', 'margin', 'loadFactor', 'density'])
const margins = { 'wing-borne': 1.3, conversion: 1.2 } as const

/**
 * Every wing-borne speed against its floor over the stall: cruise, loiter and reserve, and the conversion.
 *
 * @equation floor = k V_s sqrt(n), V_s = sqrt(2 W/(rho S C_L,max)); k = 1.3 wing-borne, 1.2 at the conversion
 * @param options - `weight` W [N], `density` rho [kg/m^3], `wingArea` S [m^2], `maximumLift` C_L,max, `speeds`: list of `{ name, speed [m/s], kind: 'wing-borne' | 'conversion', margin, loadFactor, density }`
 * @returns a row per speed, the tightest first: `phase`, `speed`, `stallSpeed`, `floor` [m/s], `margin`, `met`
 * @throws InvalidInput for no speeds, values that are not positive, a kind it does not know, and an unknown option
 * @method Closed form. A speed below its floor is an answer with a negative margin and an advisory, so that a sizing can raise the speed or the wing area.
 * @validity As good as `maximumLift`: booms, stopped rotors and Reynolds number take from it.
 * @source 1.3 times the stall speed as the approach speed of aeroplanes: CS-23 (from memory). 1.2 at the conversion: common practice, no source.
 * @example
 * const floors = limits.speedFloors({
 *   weight: 1637 * u.kg * u.g0, density: 1.098, wingArea: 15 * u.m2, maximumLift: 1.5,
 *   speeds: [{ name: 'cruise', speed: 58 * u.mps }, { name: 'reserve', speed: 45 * u.mps }],
 * })
 * floors[0].margin // -0.0398
 */
export function speedFloors(options: SpeedFloorsOptions): SpeedFloor[] {
  checkOptions(method, options, known)
  const { weight, density, wingArea, maximumLift, speeds } = options
  requirePositive(method, 'weight', weight, 'N')
  requirePositive(method, 'density', density, 'kg/m^3')
  requirePositive(method, 'wingArea', wingArea, 'm^2')
  requirePositive(method, 'maximumLift', maximumLift, '1')
  requireList(method, 'speeds', speeds, '{ name, speed }')
  const rows = speeds
    .map((one, index) => rowOf({ weight, density, wingArea, maximumLift }, one, `speeds[${index}]`))
    .sort((a, b) => a.margin - b.margin)
  requireRepresentable(
    method,
    rows.reduce((sum, row) => sum + row.floor + row.margin, 0),
  )
  if (isListening()) for (const row of rows) if (!row.met) adviseSlow(row)
  return rows
}

function rowOf(wing: Parameters<typeof stallSpeed>[0], flown: FlownSpeed, at: string): SpeedFloor {
  checkOptions(`${method} ${at}`, flown, knownSpeed)
  const { name, speed, kind = 'wing-borne', loadFactor = 1, density = wing.density } = flown
  requireText(method, `${at}.name`, name)
  requirePositive(method, `${at}.speed`, speed, 'm/s')
  requireChoice(method, `${at}.kind`, kind, ['wing-borne', 'conversion'])
  const { margin: factor = margins[kind] } = flown
  requirePositive(method, `${at}.margin`, factor, '1')
  requirePositive(method, `${at}.loadFactor`, loadFactor, '1')
  requirePositive(method, `${at}.density`, density, 'kg/m^3')
  const stall = stallSpeed({ ...wing, density, weight: wing.weight * loadFactor })
  const floor = factor * stall
  return { phase: name, speed, stallSpeed: stall, floor, margin: speed / floor - 1, met: speed >= floor }
}

function adviseSlow(row: SpeedFloor): void {
  advise({
    code: 'SPEED_FLOOR',
    method,
    quantity: row.phase,
    value: row.speed,
    range: [row.floor, null],
    message: `${row.phase} at ${row.speed.toPrecision(3)} m/s is below its floor of ${row.floor.toPrecision(3)} m/s.`,
  })
}

/** How much thrust a square metre of lift rotor may carry: the bounds of disk loading from both sides. */
import { requirePositive, requireRepresentable, requireShare, requireText, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Area, Density, DiskLoading, Mass, Ratio, SpecificPower, Speed } from '../quantity.js'
import { requireList } from '../shapes.js'

interface Named {
  /** Its kind when left out. */
  readonly name?: string
}

/** The shaft power that hover may take per gross mass. */
export interface HoverPowerBound extends Named {
  readonly kind: 'hover power'
  /** [W/kg] */
  readonly specificPower: SpecificPower
  readonly figureOfMerit: Ratio
}

/** The greatest disk area that fits on the pad: a bound from below. */
export interface FootprintBound extends Named {
  readonly kind: 'footprint'
  /** [kg] */
  readonly grossMass: Mass
  /** Of all disks together [m^2]. */
  readonly diskArea: Area
}

/** Speed of the far wake under the rotors. */
export interface OutwashBound extends Named {
  readonly kind: 'outwash'
  /** [m/s] */
  readonly speed: Speed
}

/** Tip speed, as a stand-in for noise, with the blade loading that blades bear without stalling. */
export interface TipSpeedBound extends Named {
  readonly kind: 'tip speed'
  /** [m/s] */
  readonly speed: Speed
  /** Blade area over disk area. */
  readonly solidity: Ratio
  /** C_T/sigma; 0.12 when left out. */
  readonly bladeLoading?: Ratio
}

export type DiskLoadingBound = HoverPowerBound | FootprintBound | OutwashBound | TipSpeedBound

export interface DiskLoadingWindowOptions {
  /** At the field [kg/m^3]. */
  readonly density: Density
  readonly bounds: readonly DiskLoadingBound[]
  /** Share of thrust lost on wing and body; 0 when left out. */
  readonly download?: Ratio
  /** Of the design [N/m^2]. */
  readonly design?: DiskLoading
}

export interface DiskLoadingRow {
  readonly name: string
  readonly side: 'at most' | 'at least'
  /** [N/m^2] */
  readonly diskLoading: DiskLoading
  /** Of the design, as a share of the bound; negative is not met. Absent without a design. */
  readonly margin?: Ratio
}

export interface DiskLoadingWindow {
  /** [N/m^2]; 0 where nothing bounds it from below. */
  readonly least: DiskLoading
  /** [N/m^2]; absent where nothing bounds it from above. */
  readonly most?: DiskLoading
  /** Whether any disk loading meets all bounds. */
  readonly open: boolean
  /** The bounds, those from below first and then the tightest. */
  readonly rows: readonly DiskLoadingRow[]
  /** As it was given [N/m^2]. */
  readonly design?: DiskLoading
  /** The bound that the design meets with least to spare; absent without a design. */
  readonly binds?: string
}

const method = 'sizing.diskLoadingWindow'
const known = new Set(['density', 'bounds', 'download', 'design'])
const kinds = ['hover power', 'footprint', 'outwash', 'tip speed'] as const
const fields: Readonly<Record<DiskLoadingBound['kind'], ReadonlySet<string>>> = {
  'hover power': new Set(['kind', 'name', 'specificPower', 'figureOfMerit']),
  footprint: new Set(['kind', 'name', 'grossMass', 'diskArea']),
  outwash: new Set(['kind', 'name', 'speed']),
  'tip speed': new Set(['kind', 'name', 'speed', 'solidity', 'bladeLoading']),
}
const standardGravity = 9.80665
const usualBladeLoading = 0.12

/**
 * Window of disk loading: what hover power, footprint, outwash and tip speed leave of it, and which bound a design meets first.
 *
 * @equation hover power: T/A <= 2 rho (FM p (1 - d)/g)^2; footprint: T/A >= m g/((1 - d) A); outwash: T/A <= rho V^2/2, V = 2 v_i; tip speed: T/A <= rho V_t^2 sigma (C_T/sigma)
 * @param options - `density` rho [kg/m^3], `bounds`: list of `{ kind: 'hover power', specificPower p [W/kg], figureOfMerit FM }`, `{ kind: 'footprint', grossMass m [kg], diskArea A [m^2] }`,
 * `{ kind: 'outwash', speed V [m/s] }`, `{ kind: 'tip speed', speed V_t [m/s], solidity sigma, bladeLoading }`, each with a `name` if wanted; optional `download` d (0), `design` [N/m^2]
 * @returns `least`, `most` [N/m^2], `open`, `rows` with `name`, `side`, `diskLoading`, `margin`, the `design` and what `binds` it
 * @throws InvalidInput for no bounds, an unknown kind, values that are not positive, a download outside 0 to 0.5, and an unknown option
 * @method Closed forms of momentum theory. Disk loading is rotor thrust over disk area, download included.
 * @validity Hover out of ground effect. The tip speed stands in for noise: rotational and broadband noise of a rotor rise steeply with it, and how loud it is takes a noise method.
 * @source Momentum theory: Leishman, J. G., Principles of Helicopter Aerodynamics, 2nd edition, 2006, chapter 2 (from memory). Blade loading of 0.12: common practice, no source. Tip speed for noise: house model.
 * @example
 * const room = sizing.diskLoadingWindow({
 *   density: 1.098, download: 0.05, design: 398 * u.Pa,
 *   bounds: [
 *     { kind: 'hover power', specificPower: (220 * u.W) / u.kg, figureOfMerit: 0.72 }, { kind: 'outwash', speed: 28 * u.mps },
 *     { kind: 'footprint', grossMass: 1637 * u.kg, diskArea: 44 * u.m2 },
 *   ],
 * })
 * room.binds // footprint
 * room.most // 430.4
 */
export function diskLoadingWindow(options: DiskLoadingWindowOptions): DiskLoadingWindow {
  checkOptions(method, options, known)
  const { density, download = 0, design } = options
  requirePositive(method, 'density', density, 'kg/m^3')
  requireWithin(method, 'download', download, '1', 0, 0.5)
  if (design !== undefined) requirePositive(method, 'design', design, 'N/m^2')
  requireList(method, 'bounds', options.bounds, "{ kind: 'outwash', speed } or the like")
  const rows = options.bounds
    .map((bound, index) => rowOf(readBound(`bounds[${index}]`, bound), density, download, design))
    .sort(bySideAndTightness)
  const highest = rows.filter((row) => row.side === 'at most').map((row) => row.diskLoading)
  const least = Math.max(0, ...rows.filter((row) => row.side === 'at least').map((row) => row.diskLoading))
  const most = highest.length === 0 ? undefined : Math.min(...highest)
  requireRepresentable(
    method,
    rows.reduce((sum, row) => sum + row.diskLoading + (row.margin ?? 0), 0),
  )
  return {
    least,
    ...(most === undefined ? {} : { most }),
    open: most === undefined || most >= least,
    rows,
    ...(design === undefined ? {} : { design, binds: tightest(rows) }),
  }
}

function readBound(at: string, bound: DiskLoadingBound): DiskLoadingBound {
  checkOptions(`${method} ${at}`, bound, new Set(Object.values(fields).flatMap((set) => [...set])))
  requireChoice(method, `${at}.kind`, bound.kind, kinds)
  checkOptions(`${method} ${at}`, bound, fields[bound.kind])
  if (bound.name !== undefined) requireText(method, `${at}.name`, bound.name)
  if (bound.kind === 'hover power') {
    requirePositive(method, `${at}.specificPower`, bound.specificPower, 'W/kg')
    requireShare(method, `${at}.figureOfMerit`, bound.figureOfMerit)
  } else if (bound.kind === 'footprint') {
    requirePositive(method, `${at}.grossMass`, bound.grossMass, 'kg')
    requirePositive(method, `${at}.diskArea`, bound.diskArea, 'm^2')
  } else requirePositive(method, `${at}.speed`, bound.speed, 'm/s')
  if (bound.kind === 'tip speed') {
    requireShare(method, `${at}.solidity`, bound.solidity)
    requirePositive(method, `${at}.bladeLoading`, bound.bladeLoading ?? usualBladeLoading, '1')
  }
  return bound
}

function rowOf(bound: DiskLoadingBound, density: number, download: number, design: number | undefined): DiskLoadingRow {
  const diskLoading = diskLoadingOf(bound, density, download)
  const fromBelow = bound.kind === 'footprint'
  const over = design === undefined ? 0 : design / diskLoading - 1
  return {
    name: bound.name ?? bound.kind,
    side: fromBelow ? 'at least' : 'at most',
    diskLoading,
    ...(design === undefined ? {} : { margin: fromBelow ? over : -over }),
  }
}

function diskLoadingOf(bound: DiskLoadingBound, density: number, download: number): number {
  switch (bound.kind) {
    case 'hover power': {
      const speed = (bound.figureOfMerit * bound.specificPower * (1 - download)) / standardGravity
      return 2 * density * speed * speed
    }
    case 'footprint':
      return (bound.grossMass * standardGravity) / ((1 - download) * bound.diskArea)
    case 'outwash':
      return 0.5 * density * bound.speed * bound.speed
    case 'tip speed':
      return density * bound.speed * bound.speed * bound.solidity * (bound.bladeLoading ?? usualBladeLoading)
  }
}

function bySideAndTightness(a: DiskLoadingRow, b: DiskLoadingRow): number {
  if (a.side !== b.side) return a.side === 'at least' ? -1 : 1
  return a.side === 'at least' ? b.diskLoading - a.diskLoading : a.diskLoading - b.diskLoading
}

function tightest(rows: readonly DiskLoadingRow[]): string {
  return rows.reduce((least, row) => ((row.margin ?? 0) < (least.margin ?? 0) ? row : least)).name
}

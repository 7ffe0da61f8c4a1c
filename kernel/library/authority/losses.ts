/** Trim after any one or any two losses, and what that asks of each rotor. */
import { requirePositive, requireShare } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Density, Force, Power, Ratio, Torque } from '../quantity.js'
import type { LiftRotor } from './lift-rotor.js'
import { type Hover, type HoverOptions, knownHover, readHover, type Trim, trimOf } from './trim.js'

export interface LossesOptions extends HoverOptions {
  /** Rotors lost at once, 1 or 2; 1 when left out. */
  readonly simultaneous?: Ratio
  /** With `figureOfMerit` and a radius of every rotor: powers too [kg/m^3]. */
  readonly density?: Density
  readonly figureOfMerit?: Ratio
}

/** A trim with what was lost. */
export interface Loss extends Trim {
  readonly lost: readonly number[]
  /** Largest thrust over the mean thrust of normal hover, `cannotHold` given up. */
  readonly peakToHover: Ratio
  /** Power of each rotor [W]; absent without density, figure of merit and radii. */
  readonly powers?: readonly Power[]
}

export interface Losses {
  readonly intact: Loss
  /** In the order of the lost rotors. */
  readonly cases: readonly Loss[]
  /** Trims that hold every axis, and those among them that can also be steered. */
  readonly feasible: Ratio
  readonly controllable: Ratio
  /** The case with the most axes given up, and among equals the greatest peak. */
  readonly worst: Loss
  /** Mean thrust of a rotor in normal hover [N]. */
  readonly hoverThrust: Force
  /** Greatest over the intact hover and all cases, rotor by rotor. */
  readonly perRotor: readonly { readonly thrust: Force; readonly torque: Torque; readonly power?: Power }[]
}

const method = 'authority.losses'
const known = new Set([...knownHover, 'simultaneous', 'density', 'figureOfMerit'])

/**
 * Every loss of one rotor, or of two at once: feasible or not, by how much, which axis goes, and thrust, torque and power of all others.
 *
 * @equation as `authority.trim` for each loss; P_i = T_i^(3/2)/(FM sqrt(2 rho A_i))
 * @param options - as `authority.trim` without `lost`; `simultaneous` 1 or 2 (1); `density` [kg/m^3] and `figureOfMerit` for powers, which
 * need a `radius` of every rotor
 * @returns `intact` and the list `cases` (trims with `lost`, `peakToHover` and, where asked for, `powers` [W]), the numbers `feasible` and
 * `controllable` of them, the `worst` case, `hoverThrust` [N], and `perRotor` the greatest `thrust` [N], `torque` [N m] and `power` [W]
 * @throws InvalidInput as `authority.trim`; for a number at once other than 1 and 2, for more lost than there are, and for density or figure of merit without the other or without radii
 * @method One trim each. In a case that is not feasible the thrusts are those with `cannotHold` given up.
 * @validity As `authority.trim`. Powers at a fixed figure of merit: it falls as blades near their stall.
 * @source As `authority.trim`; power by momentum theory.
 * @example
 * const six = [1, 1, -1, -1, 1, -1].map((spin, i) => ({
 *   x: Math.cos((i * Math.PI) / 3), y: Math.sin((i * Math.PI) / 3), spin, maxThrust: 10 * u.kN, torqueRatio: 0.1,
 * }))
 * const seen = authority.losses({ rotors: six, weight: 12 * u.kN })
 * seen.cases[1].peakToHover // 1.8
 */
export function losses(options: LossesOptions): Losses {
  checkOptions(method, options, known)
  const hover = readHover(method, options)
  const { simultaneous = 1 } = options
  if (simultaneous !== 1 && simultaneous !== 2)
    throw new InvalidInput({ method, argument: 'simultaneous', value: describeValue(simultaneous), accepted: '1 or 2' })
  const sets = lossSets(method, hover.rotors.length, simultaneous)
  const powerOf = readPower(options)
  const look = (lost: readonly number[]) => describeLoss(hover, lost, powerOf)
  const intact = look([])
  const cases = sets.map(look)
  return {
    intact,
    cases,
    feasible: cases.filter((one) => one.feasible).length,
    controllable: cases.filter((one) => one.controllable).length,
    worst: cases.reduce(worse),
    hoverThrust: hover.weight / hover.rotors.length,
    perRotor: hover.rotors.map((_, at) => greatestOf([intact, ...cases], at)),
  }
}

/** All choices of one or two rotors. */
export function lossSets(called: string, count: number, simultaneous: number): number[][] {
  if (count <= simultaneous)
    throw new InvalidInput({
      method: called,
      argument: 'simultaneous',
      value: simultaneous,
      accepted: `fewer than the ${count} rotors there are`,
    })
  const one = Array.from({ length: count }, (_, at) => [at])
  if (simultaneous === 1) return one
  return one.flatMap(([first = 0]) =>
    Array.from({ length: count - first - 1 }, (_, after) => [first, first + 1 + after]),
  )
}

type PowerOf = ((thrusts: readonly number[]) => number[]) | undefined

function readPower(options: LossesOptions): PowerOf {
  const { density, figureOfMerit, rotors } = options
  if (density === undefined && figureOfMerit === undefined) return undefined
  requirePositive(method, 'density', density as number, 'kg/m^3')
  requireShare(method, 'figureOfMerit', figureOfMerit as number)
  return powersOf(method, rotors, density as number, figureOfMerit as number)
}

/** Power of each rotor at its thrust, by momentum theory at one figure of merit. */
export function powersOf(
  called: string,
  rotors: readonly LiftRotor[],
  density: number,
  figureOfMerit: number,
): (thrusts: readonly number[]) => number[] {
  const factors = rotors.map((rotor, at) => {
    requirePositive(called, `rotors[${at}].radius`, rotor.radius as number, 'm')
    const area = Math.PI * (rotor.radius as number) ** 2
    const factor = 1 / (figureOfMerit * Math.sqrt(2 * density * area))
    requirePositive(called, 'power that follows from density and radius', factor, 'W/N^1.5')
    return factor
  })
  return (thrusts) => thrusts.map((thrust, at) => (factors[at] as number) * thrust ** 1.5)
}

function describeLoss(hover: Hover, lost: readonly number[], powerOf: PowerOf): Loss {
  const found = trimOf(hover, new Set(lost))
  return {
    lost,
    ...found,
    peakToHover: found.degradedPeakShare * hover.rotors.length,
    ...(powerOf === undefined ? {} : { powers: powerOf(found.thrusts) }),
  }
}

/** The graver of two cases: more axes given up, then not steerable, then the greater peak. */
export function worse<T extends Pick<Trim, 'cannotHold' | 'controllable' | 'degradedPeakShare'>>(one: T, other: T): T {
  if (one.cannotHold.length !== other.cannotHold.length)
    return one.cannotHold.length > other.cannotHold.length ? one : other
  if (one.controllable !== other.controllable) return one.controllable ? other : one
  // A hair's difference is rounding between mirror images: the first of them is named.
  return other.degradedPeakShare > one.degradedPeakShare * (1 + 1e-7) ? other : one
}

function greatestOf(cases: readonly Loss[], at: number): Losses['perRotor'][number] {
  const most = (of: (one: Loss) => number) => Math.max(...cases.map(of))
  const withPower = cases.every((one) => one.powers !== undefined)
  return {
    thrust: most((one) => one.thrusts[at] as number),
    torque: most((one) => one.torques[at] as number),
    ...(withPower ? { power: most((one) => one.powers?.[at] ?? 0) } : {}),
  }
}

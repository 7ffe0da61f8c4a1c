/** Zero-lift drag as a sum over parts. */
import { requireCount, requirePositive, requireRepresentable, requireText, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Area, Density, DynamicViscosity, Length, Ratio, Speed } from '../quantity.js'
import type { FrictionMethod } from './friction-lines.js'
import { skinFriction } from './skin-friction.js'

/** A part whose drag area is known: from a method of this folder or a test. */
export interface KnownPart {
  readonly name: string
  /** Of one [m^2]. */
  readonly dragArea: Area
  /** How many alike, 1 when left out. */
  readonly count?: Ratio
}

/** A part with skin friction, form and interference. */
export interface WettedPart {
  readonly name: string
  /** Of one [m^2]. */
  readonly wettedArea: Area
  /** Given, or left out with a `length`, and then computed at the flight condition. */
  readonly skinFriction?: Ratio
  /** Along the stream [m]. */
  readonly length?: Length
  /** Share of the area that is laminar, 0 when left out. */
  readonly laminarShare?: Ratio
  /** 1 when left out. */
  readonly formFactor?: Ratio
  /** 1 when left out. */
  readonly interference?: Ratio
  /** How many alike, 1 when left out. */
  readonly count?: Ratio
}

export type DragPart = KnownPart | WettedPart

export interface BuildUpOptions {
  /** With it the zero-lift drag coefficient is returned [m^2]. */
  readonly wingArea?: Area
  /** Leakage and protuberances as a share of the sum, 0 when left out; 0.02 to 0.1 is usual. */
  readonly leakageShare?: Ratio
  /** True airspeed [m/s]; with density and viscosity it is needed for parts given by their length. */
  readonly speed?: Speed
  readonly density?: Density
  readonly dynamicViscosity?: DynamicViscosity
  /** [m/s], for the Mach number; incompressible when left out. */
  readonly speedOfSound?: Speed
  /** Line of the parts given by their length, Prandtl-Schlichting when left out. */
  readonly frictionMethod?: FrictionMethod
}

export interface PartDrag {
  readonly name: string
  /** All alike [m^2]. */
  readonly dragArea: Area
  /** Of the whole. */
  readonly share: Ratio
  /** Mean coefficient that was used; absent for parts of known drag area. */
  readonly skinFriction?: Ratio
}

export interface BuildUp {
  /** D/q of everything [m^2]. */
  readonly dragArea: Area
  /** By name [m^2], with `leakage` where it was asked for: for `figure.dragBreakdown`. */
  readonly dragAreas: Readonly<Record<string, Area>>
  readonly parts: readonly PartDrag[]
  /** C_D0 on `wingArea`, where that was given. */
  readonly zeroLiftDrag?: Ratio
}

const method = 'drag.buildUp'
const known = new Set([
  'wingArea',
  'leakageShare',
  'speed',
  'density',
  'dynamicViscosity',
  'speedOfSound',
  'frictionMethod',
])
const knownPart = new Set(['name', 'dragArea', 'count'])
const wettedPart = new Set([
  'name',
  'wettedArea',
  'skinFriction',
  'length',
  'laminarShare',
  'formFactor',
  'interference',
  'count',
])

/**
 * Zero-lift drag built up from parts.
 *
 * @equation D/q = (1 + leakage) sum n (C_f F Q S_wet, or what is known of the part); C_D0 = (D/q)/S
 * @param parts - list of { `name`, `dragArea` [m^2], `count` } or { `name`, `wettedArea` [m^2], `skinFriction` or `length` [m],
 * `laminarShare` (0), `formFactor` (1), `interference` (1), `count` (1) }
 * @param options - optional `wingArea` S [m^2], `leakageShare` (0); for parts given by their length `speed` [m/s], `density` [kg/m^3],
 * `dynamicViscosity` [Pa s], `speedOfSound` [m/s], `frictionMethod`
 * @returns `dragArea` [m^2], `dragAreas` by name, `parts` (each `name`, `dragArea`, `share`, `skinFriction`), and `zeroLiftDrag` with
 * `wingArea`
 * @throws InvalidInput for no parts, a name that is empty or used twice, values that are not positive, a part without friction or
 * length, a flight condition that is missing, and an unknown field
 * @method Component build-up. Leakage is a part of its own, so that the breakdown adds up.
 * @validity Attached flow below the drag rise. Skin friction lines advise outside their Reynolds numbers.
 * @source Raymer, D. P., Aircraft Design: A Conceptual Approach, section 12.5 (worked example read second-hand, reproduced in the tests).
 * @example
 * const clean = drag.buildUp([
 *   { name: 'wing', wettedArea: 28 * u.m2, length: 1.2 * u.m, formFactor: 1.35 },
 *   { name: 'gear', dragArea: 0.12 * u.m2 },
 * ], { wingArea: 14 * u.m2, leakageShare: 0.05, speed: 60, density: 1.225, dynamicViscosity: 1.79e-5 })
 * clean.zeroLiftDrag // 0.01857
 */
export function buildUp(parts: readonly DragPart[], options: BuildUpOptions = {}): BuildUp {
  if (!Array.isArray(parts) || parts.length === 0)
    throw new InvalidInput({
      method,
      argument: 'parts',
      value: describeValue(parts),
      accepted: 'a list of at least one part',
    })
  checkBuildUp(options)
  const { wingArea, leakageShare = 0 } = options
  const areas: Record<string, number> = {}
  const frictions: (number | undefined)[] = []
  let sum = 0
  parts.forEach((part: DragPart, index: number) => {
    const { name, dragArea, friction } = readPart(part, `parts[${index}]`, options)
    if (Object.hasOwn(areas, name) || name === 'leakage') throw usedTwice(index, name)
    areas[name] = dragArea
    frictions.push(friction)
    sum += dragArea
  })
  if (leakageShare > 0) areas.leakage = leakageShare * sum
  const dragArea = (1 + leakageShare) * sum
  requireRepresentable(method, dragArea + (wingArea === undefined ? 0 : dragArea / wingArea))
  return {
    dragArea,
    dragAreas: areas,
    parts: Object.entries(areas).map(([name, area], index) => {
      const friction = frictions[index]
      const part = { name, dragArea: area, share: dragArea > 0 ? area / dragArea : 0 }
      return friction === undefined ? part : { ...part, skinFriction: friction }
    }),
    ...(wingArea === undefined ? {} : { zeroLiftDrag: dragArea / wingArea }),
  }
}

function checkBuildUp(options: BuildUpOptions): void {
  checkOptions(method, options, known)
  const { wingArea, leakageShare, speed, density, dynamicViscosity, speedOfSound } = options
  if (wingArea !== undefined) requirePositive(method, 'wingArea', wingArea, 'm^2')
  if (leakageShare !== undefined) requireWithin(method, 'leakageShare', leakageShare, '1', 0, 1)
  if (speed !== undefined) requirePositive(method, 'speed', speed, 'm/s')
  if (density !== undefined) requirePositive(method, 'density', density, 'kg/m^3')
  if (dynamicViscosity !== undefined) requirePositive(method, 'dynamicViscosity', dynamicViscosity, 'Pa s')
  if (speedOfSound !== undefined) requirePositive(method, 'speedOfSound', speedOfSound, 'm/s')
}

function readPart(part: DragPart, at: string, options: BuildUpOptions) {
  if (typeof part !== 'object' || part === null)
    throw new InvalidInput({ method, argument: at, value: describeValue(part), accepted: 'a record of a part' })
  const isKnown = 'dragArea' in part
  checkOptions(`${method} ${at}`, part, isKnown ? knownPart : wettedPart)
  requireText(method, `${at}.name`, part.name)
  const { name, count = 1 } = part
  requireCount(method, `${at}.count`, count)
  if (isKnown) {
    requireWithin(method, `${at}.dragArea`, part.dragArea, 'm^2', 0, Number.MAX_VALUE)
    return { name, dragArea: count * part.dragArea, friction: undefined }
  }
  const { wettedArea, formFactor = 1, interference = 1 } = part
  requirePositive(method, `${at}.wettedArea`, wettedArea, 'm^2')
  requireWithin(method, `${at}.formFactor`, formFactor, '1', 0.5, 10)
  requireWithin(method, `${at}.interference`, interference, '1', 0.5, 5)
  const friction = part.skinFriction ?? frictionAt(part, at, options)
  requirePositive(method, `${at}.skinFriction`, friction, '1')
  return { name, dragArea: count * friction * formFactor * interference * wettedArea, friction }
}

function frictionAt(part: WettedPart, at: string, options: BuildUpOptions): number {
  const { length, laminarShare = 0 } = part
  const { speed, density, dynamicViscosity, speedOfSound, frictionMethod } = options
  if (length === undefined)
    throw new InvalidInput({
      method,
      argument: `${at}.skinFriction`,
      value: 'missing',
      accepted: 'given, or replaced by a length along the stream',
    })
  requirePositive(method, `${at}.length`, length, 'm')
  if (speed === undefined || density === undefined || dynamicViscosity === undefined)
    throw new InvalidInput({
      method,
      argument: 'the flight condition',
      value: 'incomplete',
      accepted: `speed, density and dynamicViscosity, because ${at} is given by its length`,
    })
  return skinFriction({
    reynolds: (density * speed * length) / dynamicViscosity,
    laminarShare,
    mach: speedOfSound === undefined ? 0 : speed / speedOfSound,
    ...(frictionMethod === undefined ? {} : { method: frictionMethod }),
  })
}

function usedTwice(index: number, name: string): InvalidInput {
  return new InvalidInput({
    method,
    argument: `parts[${index}].name`,
    value: `the text "${name}"`,
    accepted: 'a name of its own; "leakage" is taken',
  })
}

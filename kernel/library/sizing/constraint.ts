/** The requirements that bound wing loading and power: each one as data, and its formula. */
import { requireNonNegative, requirePositive, requireText } from '../check.js'
import type { ParabolicPolar } from '../drag/polar.js'
import { levelFlight } from '../drag/power-required.js'
import { checkOptions } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Density, Pressure, Ratio, SpecificPower, Speed } from '../quantity.js'

interface Named {
  /** What the figure and the answer call it; its kind when left out. */
  readonly name?: string
  /** [kg/m^3] */
  readonly density: Density
}

/** The wing alone must carry the weight at a speed: a stall, conversion or loiter speed. */
export interface StallConstraint extends Named {
  readonly kind: 'stall'
  /** Of the requirement [m/s]. */
  readonly speed: Speed
  readonly maximumLift: Ratio
  /** Speed over stall speed that must be kept; 1 when left out, 1.2 for a conversion, 1.3 for wing-borne flight. */
  readonly margin?: Ratio
}

/** Level flight at a speed. */
export interface CruiseConstraint extends Named {
  readonly kind: 'cruise'
  /** [m/s] */
  readonly speed: Speed
}

/** A rate of climb at a speed, or at the speed of least power where none is given: a ceiling is a climb of 0.5 m/s. */
export interface ClimbConstraint extends Named {
  readonly kind: 'climb' | 'ceiling'
  /** Vertical [m/s]; 0.508 (100 ft/min) when left out for a ceiling. */
  readonly climbSpeed?: Speed
  /** Along the path [m/s]; that of least power when left out. */
  readonly speed?: Speed
}

/** A steady level turn. */
export interface TurnConstraint extends Named {
  readonly kind: 'turn'
  /** [m/s] */
  readonly speed: Speed
  readonly loadFactor: Ratio
}

export type Constraint = StallConstraint | CruiseConstraint | ClimbConstraint | TurnConstraint

const kinds = ['stall', 'cruise', 'climb', 'ceiling', 'turn'] as const
const fields: Readonly<Record<Constraint['kind'], ReadonlySet<string>>> = {
  stall: new Set(['kind', 'name', 'density', 'speed', 'maximumLift', 'margin']),
  cruise: new Set(['kind', 'name', 'density', 'speed']),
  climb: new Set(['kind', 'name', 'density', 'climbSpeed', 'speed']),
  ceiling: new Set(['kind', 'name', 'density', 'climbSpeed', 'speed']),
  turn: new Set(['kind', 'name', 'density', 'speed', 'loadFactor']),
}
const standardGravity = 9.80665
/** 100 ft/min, the rate at which a service ceiling is defined. */
const serviceClimb = 0.508

/** Checks one requirement and gives it its name. */
export function readConstraint(caller: string, at: string, given: Constraint): Constraint & { name: string } {
  const method = `${caller} ${at}`
  checkOptions(method, given, new Set([...fields.stall, ...fields.climb, ...fields.turn]))
  requireChoice(caller, `${at}.kind`, given.kind, kinds)
  checkOptions(method, given, fields[given.kind])
  const { name = given.kind } = given
  requireText(caller, `${at}.name`, name)
  requirePositive(caller, `${at}.density`, given.density, 'kg/m^3')
  if (given.kind === 'climb' || given.kind === 'ceiling') {
    requireNonNegative(caller, `${at}.climbSpeed`, climbSpeedOf(given), 'm/s')
    if (given.speed !== undefined) requirePositive(caller, `${at}.speed`, given.speed, 'm/s')
    return { ...given, name }
  }
  requirePositive(caller, `${at}.speed`, given.speed as number, 'm/s')
  if (given.kind === 'turn') requirePositive(caller, `${at}.loadFactor`, given.loadFactor, '1')
  if (given.kind === 'stall') {
    requirePositive(caller, `${at}.maximumLift`, given.maximumLift, '1')
    requirePositive(caller, `${at}.margin`, given.margin ?? 1, '1')
  }
  return { ...given, name }
}

/** A climb must say how fast; a ceiling has its convention. */
function climbSpeedOf(constraint: ClimbConstraint): number {
  return constraint.climbSpeed ?? (constraint.kind === 'ceiling' ? serviceClimb : Number.NaN)
}

/** Greatest wing loading that a stall requirement allows [N/m^2]. */
export function greatestWingLoading(constraint: StallConstraint): Pressure {
  const stall = constraint.speed / (constraint.margin ?? 1)
  return 0.5 * constraint.density * stall * stall * constraint.maximumLift
}

/** Shaft power per gross mass that a requirement takes at a wing loading [W/kg]. */
export function specificPowerFor(
  method: string,
  constraint: Exclude<Constraint, StallConstraint>,
  polar: ParabolicPolar,
  wingLoading: Pressure,
  propellerEfficiency: Ratio,
): SpecificPower {
  const { density } = constraint
  const loadFactor = constraint.kind === 'turn' ? constraint.loadFactor : 1
  const speed = constraint.speed ?? leastPowerSpeed(polar, wingLoading, density)
  const flight = levelFlight(method, polar, loadFactor * wingLoading, 1, density, speed)
  const climb = constraint.kind === 'climb' || constraint.kind === 'ceiling' ? climbSpeedOf(constraint) : 0
  return (standardGravity * (flight.power / wingLoading + climb)) / propellerEfficiency
}

function leastPowerSpeed(polar: ParabolicPolar, wingLoading: number, density: number): number {
  return Math.sqrt((2 * wingLoading) / (density * Math.sqrt((3 * polar.zeroLiftDrag) / polar.inducedFactor)))
}

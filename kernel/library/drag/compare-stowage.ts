/** Which way of stowing the lift rotors pays, for range and for endurance, at both ends of what is known. */
import { requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Area, Density, Mass, Power, Ratio, Speed } from '../quantity.js'
import { silently } from '../recorder.js'
import { type ParabolicPolar, polar } from './polar.js'
import { levelFlight } from './power-required.js'
import { type Band, readBand, type StowageRecord } from './stowage-record.js'

export interface CompareStowageOptions {
  /** From `drag.stowageOptions` and `drag.stowageRecord`. */
  readonly records: readonly StowageRecord[]
  /** Name of the record that the others are held against, the first when left out. */
  readonly reference?: string
  /** Gross mass with the reference [kg]. */
  readonly mass: Mass
  /** D/q of the aircraft without lift rotors [m^2]. */
  readonly airframeDragArea: Area
  /** [m^2] */
  readonly wingArea: Area
  readonly aspectRatio: Ratio
  readonly spanEfficiency: Ratio
  /** [kg/m^3] */
  readonly density: Density
  /** Cruise speed at which power is told [m/s]. */
  readonly speed: Speed
  /** Gross mass gained per fixed mass added: `sizing.close` returns it; 1 when left out. */
  readonly growthFactor?: Ratio
}

export type Verdict = 'reference' | 'pays' | 'does not pay' | 'undecided'

/** The same question for range and for endurance. */
export interface ForBoth<T> {
  readonly range: T
  readonly endurance: T
}

export interface StowageComparison {
  readonly name: string
  /** Share of zero-lift drag saved against the reference. */
  readonly dragCut: Band<Ratio>
  /** Growth of gross mass against the reference, as a share. */
  readonly massGrowth: Band<Ratio>
  /** Growth at which the gain is gone. */
  readonly breakEvenGrowth: ForBoth<Band<Ratio>>
  /** Mass of the mechanism at which it stops paying, all rotors [kg]; below 0 it never pays. */
  readonly breakEvenMass: ForBoth<Band<Mass>>
  /** Longer range and endurance after the growth, as shares. */
  readonly gain: ForBoth<Band<Ratio>>
  /** Aerodynamic power at `speed`, growth included [W]. */
  readonly cruisePower: Band<Power>
  readonly verdict: ForBoth<Verdict>
  readonly complexity: Ratio
  readonly limits: readonly string[]
  readonly source: string
}

const method = 'drag.compareStowage'
const known = new Set([
  'records',
  'reference',
  'mass',
  'airframeDragArea',
  'wingArea',
  'aspectRatio',
  'spanEfficiency',
  'density',
  'speed',
  'growthFactor',
])
const standardGravity = 9.80665
/** Power of (1 - dragCut) that the allowed growth of mass goes with, and those of the gain in drag and mass. */
const rangePowers = { allowed: -1 / 2, drag: -1 / 2, mass: 1 }
const endurancePowers = { allowed: -1 / 6, drag: -1 / 4, mass: 3 / 2 }
type Powers = typeof rangePowers

/**
 * Stowage options held against each other: drag saved, mass added, power at cruise, gain in range and endurance, and whether it pays.
 *
 * @equation f = 1 - (f_air + f_i)/(f_air + f_ref); growth g = G (m_i - m_ref)/m; pays for range where g < (1 - f)^(-1/2) - 1, for
 * endurance where g < (1 - f)^(-1/6) - 1; gain (1 - f)^(-1/2)/(1 + g) - 1 and (1 - f)^(-1/4)/(1 + g)^(3/2) - 1
 * @param options - `records` (list), `mass` m [kg] with the reference, `airframeDragArea` f_air [m^2] without rotors, `wingArea` [m^2],
 * `aspectRatio`, `spanEfficiency`, `density` [kg/m^3], `speed` [m/s]; optional `reference` (name, the first), `growthFactor` G (1)
 * @returns a list in the order of the records: `name`, bands (`low`, `best`, `high`) of `dragCut`, `massGrowth`, `breakEvenGrowth`,
 * `breakEvenMass` [kg], `gain`, `cruisePower` [W], the `verdict` for `range` and `endurance`, `complexity`, `limits`, `source`
 * @throws InvalidInput for no records, a name twice, a reference that is not among them, a band out of order, values that are not
 * positive, a span efficiency above 1, a growth factor outside 0.1 to 100, a growth beyond 20 times the mass, and an unknown option
 * @method Closed forms at both ends: the favourable end takes least drag and mass of the option and most of the reference, the
 * unfavourable end the reverse. Where they disagree the verdict is "undecided". Records that share a house model err together, so
 * "undecided" is said too often rather than too seldom.
 * @validity Parabolic polar, best speeds free, equal battery mass; hover power and the battery for it follow through `growthFactor` only.
 * @source Closed forms of the parabolic polar; Anderson, J. D., Aircraft Performance and Design, 1999, chapter 5 (from memory). The rule of two ends
 * is the house's.
 * @example
 * const bare = drag.stowageRecord({ name: 'bare', dragArea: 0.3, mechanismMass: 0, source: 'example' })
 * const hidden = drag.stowageRecord({ name: 'hidden', dragArea: 0.05, mechanismMass: 40, source: 'example' })
 * const sides = drag.compareStowage({
 *   records: [bare, hidden], mass: 1600, airframeDragArea: 0.42, wingArea: 15, aspectRatio: 11, spanEfficiency: 0.8, density: 1.1, speed: 58,
 * })
 * sides[1].breakEvenGrowth.range.best // 0.238
 */
export function compareStowage(options: CompareStowageOptions): StowageComparison[] {
  const { records, reference } = readComparison(options)
  const { aspectRatio, spanEfficiency, wingArea } = options
  // The polar's own advisories belong to the cell that made it, not to each row of a comparison.
  const { inducedFactor } = silently(() =>
    polar({ zeroLiftDrag: options.airframeDragArea / wingArea, aspectRatio, spanEfficiency }),
  )
  const answers = records.map((record) => compareOne(record, reference, options, inducedFactor))
  requireRepresentable(
    method,
    answers.flatMap(bandsOf).reduce((sum, { low, best, high }) => sum + low + best + high, 0),
  )
  return answers
}

function compareOne(
  record: StowageRecord,
  reference: StowageRecord,
  options: CompareStowageOptions,
  inducedFactor: number,
): StowageComparison {
  const { mass, airframeDragArea, growthFactor = 1 } = options
  const same = record === reference
  const cut = (own: number, other: number) => 1 - (airframeDragArea + own) / (airframeDragArea + other)
  const grow = (own: number, other: number) => (growthFactor * (own - other)) / mass
  const [drag, from] = [record.dragArea, reference.dragArea]
  const [added, before] = [record.mechanismMass, reference.mechanismMass]
  // Against itself a record has no band: the same guess stands on both sides.
  const dragCut: Band = same
    ? none
    : { low: cut(drag.high, from.low), best: cut(drag.best, from.best), high: cut(drag.low, from.high) }
  const massGrowth: Band = same
    ? none
    : { low: grow(added.low, before.high), best: grow(added.best, before.best), high: grow(added.high, before.low) }
  requireWithin(method, `growth of mass with "${record.name}"`, massGrowth.low, '1', -0.9, 20)
  requireWithin(method, `growth of mass with "${record.name}"`, massGrowth.high, '1', -0.9, 20)
  const allowedRange = allowed(dragCut, rangePowers)
  const allowedEndurance = allowed(dragCut, endurancePowers)
  const power = (area: number, growth: number) => cruisePower(options, inducedFactor, area, growth)
  return {
    name: record.name,
    dragCut,
    massGrowth,
    breakEvenGrowth: { range: allowedRange, endurance: allowedEndurance },
    breakEvenMass: {
      range: asMass(allowedRange, before.best, mass / growthFactor),
      endurance: asMass(allowedEndurance, before.best, mass / growthFactor),
    },
    gain: { range: gain(dragCut, massGrowth, rangePowers), endurance: gain(dragCut, massGrowth, endurancePowers) },
    cruisePower: {
      low: power(drag.low, massGrowth.low),
      best: power(drag.best, massGrowth.best),
      high: power(drag.high, massGrowth.high),
    },
    verdict: {
      range: same ? 'reference' : verdict(allowedRange, massGrowth),
      endurance: same ? 'reference' : verdict(allowedEndurance, massGrowth),
    },
    complexity: record.complexity,
    limits: record.limits,
    source: record.source,
  }
}

function bandsOf(one: StowageComparison): readonly Band[] {
  const { dragCut, breakEvenGrowth, breakEvenMass, gain, cruisePower } = one
  return [dragCut, cruisePower, ...[breakEvenGrowth, breakEvenMass, gain].flatMap((by) => [by.range, by.endurance])]
}

const none: Band = Object.freeze({ low: 0, best: 0, high: 0 })

function allowed(cut: Band, { allowed: power }: Powers): Band {
  const of = (share: number) => (1 - share) ** power - 1
  return { low: of(cut.low), best: of(cut.best), high: of(cut.high) }
}

function asMass(growth: Band, before: number, perGrowth: number): Band {
  const of = (share: number) => before + share * perGrowth
  return { low: of(growth.low), best: of(growth.best), high: of(growth.high) }
}

function gain(cut: Band, growth: Band, { drag, mass }: Powers): Band {
  const of = (share: number, heavier: number) => (1 - share) ** drag / (1 + heavier) ** mass - 1
  return { low: of(cut.low, growth.high), best: of(cut.best, growth.best), high: of(cut.high, growth.low) }
}

/** The same answer at both ends, or none. */
function verdict(allowedGrowth: Band, growth: Band): Verdict {
  const favourable = growth.low < allowedGrowth.high
  const unfavourable = growth.high < allowedGrowth.low
  if (favourable && unfavourable) return 'pays'
  return favourable ? 'undecided' : 'does not pay'
}

function cruisePower(options: CompareStowageOptions, inducedFactor: number, rotorArea: number, growth: number): number {
  const { mass, airframeDragArea, wingArea, density, speed } = options
  const whole: ParabolicPolar = { zeroLiftDrag: (airframeDragArea + rotorArea) / wingArea, inducedFactor }
  return silently(
    () => levelFlight(method, whole, mass * (1 + growth) * standardGravity, wingArea, density, speed).power,
  )
}

function readComparison(options: CompareStowageOptions): {
  readonly records: readonly StowageRecord[]
  readonly reference: StowageRecord
} {
  checkOptions(method, options, known)
  const { records } = options
  requirePositive(method, 'mass', options.mass, 'kg')
  requirePositive(method, 'airframeDragArea', options.airframeDragArea, 'm^2')
  requirePositive(method, 'wingArea', options.wingArea, 'm^2')
  requirePositive(method, 'density', options.density, 'kg/m^3')
  requirePositive(method, 'speed', options.speed, 'm/s')
  if (options.growthFactor !== undefined) requireWithin(method, 'growthFactor', options.growthFactor, '1', 0.1, 100)
  if (!Array.isArray(records) || records.length === 0)
    throw new InvalidInput({
      method,
      argument: 'records',
      value: describeValue(records),
      accepted: 'a list of records of drag.stowageOptions or drag.stowageRecord',
    })
  const names: string[] = []
  records.forEach((record: StowageRecord, index: number) => {
    checkRecord(record, index)
    if (names.includes(record.name))
      throw new InvalidInput({
        method,
        argument: `records[${index}].name`,
        value: `the text "${record.name}"`,
        accepted: 'a name that no record before it has',
      })
    names.push(record.name)
  })
  const name = requireChoice(method, 'reference', options.reference ?? (names[0] as string), names)
  return { records, reference: records[names.indexOf(name)] as StowageRecord }
}

function checkRecord(record: StowageRecord, index: number): void {
  const at = `records[${index}]`
  if (typeof record !== 'object' || record === null || typeof record.name !== 'string')
    throw new InvalidInput({
      method,
      argument: at,
      value: describeValue(record),
      accepted: 'a record of drag.stowageOptions or drag.stowageRecord',
    })
  readBand(method, `${at}.dragArea`, record.dragArea, 'm^2', 0)
  readBand(method, `${at}.mechanismMass`, record.mechanismMass, 'kg', 0)
  requireNonNegative(method, `${at}.complexity`, record.complexity, '1')
}

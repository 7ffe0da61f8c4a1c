/** One way of stowing lift rotors, as a small record: the same for a house estimate and for a test report. */
import { requireFinite, requireNonNegative, requireText, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Area, Mass, Ratio } from '../quantity.js'

/** A number with the ends between which it is believed to lie. */
export interface Band<T extends number = number> {
  readonly low: T
  readonly best: T
  readonly high: T
}

export interface StowageRecord {
  readonly name: string
  /** D/q in cruise of all lift rotors together, stowed this way [m^2]. */
  readonly dragArea: Band<Area>
  /** What stowing adds, all rotors together [kg]. */
  readonly mechanismMass: Band<Mass>
  /** Mechanisms added per rotor that must work before it lifts again. */
  readonly complexity: Ratio
  /** Where it fits and what it asks for, in sentences. */
  readonly limits: readonly string[]
  /** Report or publication, or "house model". */
  readonly source: string
  /** True where the drag was measured. */
  readonly tested: boolean
}

export interface StowageRecordOptions {
  readonly name: string
  /** A band, or one number that gets a band of 40 % (10 % where tested) [m^2]. */
  readonly dragArea: Area | Band<Area>
  /** A band, or one number that gets a band of 40 % [kg]. */
  readonly mechanismMass: Mass | Band<Mass>
  /** 0 when left out. */
  readonly complexity?: Ratio
  readonly limits?: readonly string[]
  /** Report or publication. */
  readonly source: string
  /** False when left out. */
  readonly tested?: boolean
}

const method = 'drag.stowageRecord'
const known = new Set(['name', 'dragArea', 'mechanismMass', 'complexity', 'limits', 'source', 'tested'])
const knownBand = new Set(['low', 'best', 'high'])
const usualBand = 0.4
const testedBand = 0.1

/**
 * A stowage option of your own, from a test report or an estimate, in the shape of the built-in ones.
 *
 * @equation low = (1 - w) best, high = (1 + w) best, w = 0.4, or 0.1 for a tested drag area
 * @param options - `name`, `dragArea` [m^2] of all rotors (a number or { `low`, `best`, `high` }), `mechanismMass` [kg] (the same),
 * `source`; optional `complexity` (0), `limits` (list of sentences), `tested` (false)
 * @returns a frozen record { `name`, `dragArea`, `mechanismMass`, `complexity`, `limits`, `source`, `tested` } for `drag.compareStowage`
 * @throws InvalidInput for an empty name or source, negative numbers, a band whose ends do not enclose its best, a complexity that is
 * not 0 to 20, and an unknown option
 * @method Completes and checks. A measured model is not the aircraft: its Reynolds number, seams and support leave the 10 %.
 * @validity Whatever the report covers; say it in `limits`.
 * @source House convention, no publication.
 * @example
 * const own = drag.stowageRecord({
 *   name: 'stacked over the boom', dragArea: 0.11 * u.m2, mechanismMass: 14 * u.kg, source: 'wind tunnel report 7, run 12', tested: true,
 * })
 * own.dragArea.high // 0.121
 */
export function stowageRecord(options: StowageRecordOptions): StowageRecord {
  checkOptions(method, options, known)
  const { name, complexity = 0, limits = [], source, tested = false } = options
  requireText(method, 'name', name)
  requireText(method, 'source', source)
  requireWithin(method, 'complexity', complexity, '1', 0, 20)
  if (typeof tested !== 'boolean')
    throw new InvalidInput({ method, argument: 'tested', value: describeValue(tested), accepted: 'true or false' })
  if (!Array.isArray(limits) || limits.some((limit) => typeof limit !== 'string'))
    throw new InvalidInput({
      method,
      argument: 'limits',
      value: describeValue(limits),
      accepted: 'a list of sentences',
    })
  return Object.freeze({
    name,
    dragArea: readBand(method, 'dragArea', options.dragArea, 'm^2', tested ? testedBand : usualBand),
    mechanismMass: readBand(method, 'mechanismMass', options.mechanismMass, 'kg', usualBand),
    complexity,
    limits: Object.freeze([...limits]),
    source,
    tested,
  })
}

/** A number with a width, or a band whose ends enclose its best. */
export function readBand(caller: string, argument: string, given: number | Band, unit: string, width: number): Band {
  if (typeof given === 'number') {
    requireNonNegative(caller, argument, given, unit)
    return Object.freeze({
      low: (1 - width) * given,
      best: given,
      high: Math.min(Number.MAX_VALUE, (1 + width) * given),
    })
  }
  checkOptions(`${caller} ${argument}`, given, knownBand)
  const { low, best, high } = given
  requireNonNegative(caller, `${argument}.low`, low, unit)
  requireFinite(caller, `${argument}.best`, best, unit)
  requireFinite(caller, `${argument}.high`, high, unit)
  requireWithin(caller, `${argument}.best`, best, unit, low, high)
  return Object.freeze({ low, best, high })
}

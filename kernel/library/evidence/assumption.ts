import { requireFinite, requireText, requireUnit } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { writeQuantity } from '../number-text.js'
import { type AssumptionStatement, advise, assume } from '../recorder.js'
import { type DistributionOption, readCorrelations, readDistribution } from './distribution.js'

export interface AssumptionOptions {
  /** The least and the greatest value thought possible [SI, as the value]; gives a slider in the register. */
  readonly range?: readonly [low: number, high: number]
  /** Unit text in which it is shown: `"Wh/kg"`. */
  readonly unit?: string
  /** How sure it is, around the value: one of `{ normal: deviation }`, `{ uniform: [low, high] }`, `{ triangular: [low, high] }`, `{ lognormal: factor }`. */
  readonly distribution?: DistributionOption
  /** Rank correlation with other assumptions that have a distribution, by name: `{ packEnergy: 0.6 }`. */
  readonly correlated?: Readonly<Record<string, number>>
  /** Where the value comes from. */
  readonly source?: string
  readonly note?: string
  /** Who answers for the value. */
  readonly owner?: string
  /** TeX. */
  readonly symbol?: string
  readonly label?: string
}

const known = new Set(['range', 'unit', 'distribution', 'correlated', 'source', 'note', 'owner', 'symbol', 'label'])

/** The type of a value, without the literal: `8` is a number, `5 * u.kW` stays what it is. */
export type Widened<Q extends number> = number extends Q ? Q : number

/**
 * States a value that the document rests on and returns the value in force.
 *
 * @equation value in force = trial value if one is being tried, else the value given
 * @param name - the constant's own name, so that a trial value can be adopted into the source
 * @param value - the value [SI]
 * @param options - all optional: `range` [SI], `distribution` (deviation and bounds [SI], factor [1]), `correlated` [1], `unit` (text), `source`, `note`, `owner`, `symbol` (TeX), `label`
 * @returns the value in force, of the value's own type
 * @throws InvalidInput for a name that is empty, a value that is not finite, a range that does not ascend, a distribution that cannot be, a correlation of -1, 1 or beyond, unit text that cannot be read
 * @method Asks the recorder of the running cell; without one the value given is in force.
 * @validity Any finite number. A value in force outside the stated range carries an advisory.
 * @source House convention, no publication.
 * @example
 * const payload = assumption('payload', 400 * u.kg, { range: [300 * u.kg, 500 * u.kg], unit: 'kg' })
 */
export function assumption<Q extends number>(name: string, value: Q, options: AssumptionOptions = {}): Widened<Q> {
  const method = 'assumption'
  requireText(method, 'name', name)
  checkOptions(method, options, known)
  requireFinite(method, `"${name}"`, value, '1')
  if (options.unit !== undefined) requireUnit(method, `the unit of "${name}"`, options.unit)
  const { range, distribution, correlated, ...stated } = options
  const statement: AssumptionStatement = {
    name,
    value,
    ...stated,
    ...(range === undefined ? {} : readRange(method, name, range)),
    ...(distribution === undefined ? {} : { distribution: readDistribution(name, value, distribution) }),
    ...(correlated === undefined ? {} : { correlated: readCorrelations(name, correlated) }),
  }
  const inForce = assume(statement)
  adviseOutside(statement, inForce)
  return inForce as Widened<Q>
}

function readRange(method: string, name: string, range: readonly [number, number]): { low: number; high: number } {
  const [low, high] = Array.isArray(range) ? range : [Number.NaN, Number.NaN]
  if (Array.isArray(range) && range.length === 2 && Number.isFinite(low) && Number.isFinite(high) && low <= high)
    return { low, high }
  throw new InvalidInput({
    method,
    argument: `the range of "${name}"`,
    value: Array.isArray(range) ? `[${range.map(String).join(', ')}]` : describeValue(range),
    accepted: '[low, high], two finite numbers in ascending order',
  })
}

function adviseOutside(statement: AssumptionStatement, inForce: number): void {
  const { name, low, high, unit } = statement
  if (low === undefined || high === undefined || (inForce >= low && inForce <= high)) return
  advise({
    code: 'OUTSIDE_STATED_RANGE',
    method: 'assumption',
    quantity: name,
    value: inForce,
    range: [low, high],
    message: `${name} is ${writeQuantity(inForce, unit)}, outside its stated range of ${writeQuantity(low, unit)} to ${writeQuantity(high, unit)}.`,
  })
}

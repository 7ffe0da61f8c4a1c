import { requireFinite, requireRepresentable, requireText, requireUnit } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { type RequirementStatement, recordRequirement } from '../recorder.js'

export interface RequirementOptions {
  /** What the design does [SI]. */
  readonly actual: number
  /** Lower bound [SI]. */
  readonly atLeast?: number
  /** Upper bound [SI]. */
  readonly atMost?: number
  /** Both bounds [SI]. */
  readonly within?: readonly [low: number, high: number]
  /** Unit text in which it is shown. */
  readonly unit?: string
  readonly source?: string
  /** Paragraph of the rule it answers. */
  readonly paragraph?: string
  /** Means of compliance: `'analysis'`, `'test'`, `'inspection'`. */
  readonly means?: string
  /** Who answers for it. */
  readonly owner?: string
}

const texts = ['unit', 'source', 'paragraph', 'means', 'owner'] as const

const known = new Set<string>(['actual', 'atLeast', 'atMost', 'within', ...texts])

/**
 * States what the design must do, and how far it is from the bound.
 *
 * @equation margin = min(actual - atLeast, atMost - actual); met when margin >= 0
 * @param name - what the compliance table calls it
 * @param options - `actual` [SI], and `atLeast` [SI] or `atMost` [SI] (or both), or `within` [SI, SI]; `unit` (text), `source`, `paragraph`, `means`, `owner`
 * @returns the record: bounds, `margin` [SI, as `actual`] and `met`
 * @throws InvalidInput without any bound, for bounds that contradict each other, for numbers that are not finite or lie too far apart for a margin, for unit text that cannot be read
 * @method Compares as the numbers are; no tolerance is granted.
 * @validity Any finite numbers.
 * @source House convention, no publication.
 * @example
 * const record = requirement('footprint', { actual: 13.2 * u.m, atMost: 14 * u.m, unit: 'm' })
 * record.met // true
 */
export function requirement(name: string, options: RequirementOptions): RequirementStatement {
  const method = 'requirement'
  requireText(method, 'name', name)
  checkOptions(method, options, known)
  const { actual, unit } = options
  requireFinite(method, `actual of "${name}"`, actual, '1')
  if (unit !== undefined) requireUnit(method, `the unit of "${name}"`, unit)
  const { low, high } = readBounds(method, name, options)
  const margin = Math.min(
    low === undefined ? Number.POSITIVE_INFINITY : actual - low,
    high === undefined ? Number.POSITIVE_INFINITY : high - actual,
  )
  requireRepresentable(method, margin)
  const statement: RequirementStatement = Object.freeze({
    name,
    actual,
    ...(low === undefined ? {} : { atLeast: low }),
    ...(high === undefined ? {} : { atMost: high }),
    margin,
    met: margin >= 0,
    ...Object.fromEntries(texts.flatMap((key) => (options[key] === undefined ? [] : [[key, options[key]]]))),
  })
  recordRequirement(statement)
  return statement
}

function readBounds(method: string, name: string, options: RequirementOptions): { low?: number; high?: number } {
  const { atLeast, atMost, within } = options
  const refuse = (value: number | string, accepted: string): never => {
    throw new InvalidInput({ method, argument: `the bound of "${name}"`, value, accepted })
  }
  if (within !== undefined) {
    if (atLeast !== undefined || atMost !== undefined)
      refuse('given twice', 'within: [low, high] alone, or atLeast and atMost')
    if (!Array.isArray(within) || within.length !== 2) refuse(describeValue(within), 'within: [low, high]')
  }
  const low = within === undefined ? atLeast : within[0]
  const high = within === undefined ? atMost : within[1]
  if (low === undefined && high === undefined) refuse('missing', 'atLeast, atMost or within: [low, high]')
  if (low !== undefined) requireFinite(method, `the lower bound of "${name}"`, low, '1')
  if (high !== undefined) requireFinite(method, `the upper bound of "${name}"`, high, '1')
  if (low !== undefined && high !== undefined && low > high)
    refuse(`[${low}, ${high}]`, 'a lower bound that is not above the upper one')
  return { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) }
}

import type { Figure } from '../../../shared/contracts/figure.js'
import { requireFinite } from '../check.js'
import type { StowageComparison } from '../drag/compare-stowage.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import { bars } from './bars.js'
import { freezeFigure } from './freeze.js'

export interface StowageComparisonOptions {
  /** What `drag.compareStowage` returns. */
  readonly comparison: readonly StowageComparison[]
  /** `'range'` when left out. */
  readonly goal?: 'range' | 'endurance'
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.stowageComparison'
const known = new Set(['comparison', 'goal', 'caption', 'description'])

/**
 * Gain in range or endurance by way of stowing the lift rotors: one bar from the unfavourable to the favourable end of what is known.
 *
 * @equation gain as `drag.compareStowage` has it; the bar spans its band, the name carries the best estimate and the verdict
 * @param options - `comparison`, the list that `drag.compareStowage` returns; optional `goal` ('range'), `caption`, `description`
 * @returns a figure of horizontal bars in per cent with a rule at no gain
 * @throws InvalidInput for an empty list, entries that are no comparison, an unknown goal, and an unknown option
 * @method In the order of the records.
 * @validity As `drag.compareStowage`: a bar across the rule is undecided.
 * @source House convention, no publication.
 * @example
 * const ways = [
 *   drag.stowageRecord({ name: 'bare', dragArea: 0.3, mechanismMass: 0, source: 'example' }),
 *   drag.stowageRecord({ name: 'hidden', dragArea: 0.05, mechanismMass: 40, source: 'example' }),
 * ]
 * const comparison = drag.compareStowage({
 *   records: ways, mass: 1600, airframeDragArea: 0.42, wingArea: 15, aspectRatio: 11, spanEfficiency: 0.8, density: 1.1, speed: 58,
 * })
 * const gains = figure.stowageComparison({ comparison })
 */
export function stowageComparison(options: StowageComparisonOptions): Figure {
  checkOptions(method, options, known)
  const { comparison, goal = 'range', description } = options
  requireChoice(method, 'goal', goal, ['range', 'endurance'])
  const { caption = `Gain in ${goal} by way of stowing the lift rotors` } = options
  if (!Array.isArray(comparison) || comparison.length === 0)
    throw new InvalidInput({
      method,
      argument: 'comparison',
      value: describeValue(comparison),
      accepted: 'the list that drag.compareStowage returns',
    })
  const rows = comparison.map((one: StowageComparison, index: number) => readRow(one, index, goal))
  const drawn = bars({
    caption,
    ...(description === undefined ? {} : { description }),
    names: rows.map((row) => row.name),
    start: rows.map((row) => row.low),
    values: rows.map((row) => row.high),
    unit: '%',
    label: `gain in ${goal}`,
    ink: 'accent',
  })
  return freezeFigure({ ...drawn, marks: [...drawn.marks, { mark: 'rule', axis: 'x', at: 0, ink: 'ink' }] })
}

/** Estimate and verdict come first: a sheet shortens long names at their end. */
function readRow(one: StowageComparison, index: number, goal: 'range' | 'endurance') {
  const gain = one?.gain?.[goal]
  if (typeof gain !== 'object' || gain === null)
    throw new InvalidInput({
      method,
      argument: `comparison[${index}]`,
      value: describeValue(one),
      accepted: 'an entry of the list that drag.compareStowage returns',
    })
  for (const end of ['low', 'best', 'high'] as const)
    requireFinite(method, `comparison[${index}].gain.${goal}.${end}`, gain[end], '1')
  const percent = `${gain.best < 0 ? '-' : '+'}${Math.abs(100 * gain.best).toFixed(0)} %`
  return { name: `${percent}, ${one.verdict[goal]}: ${one.name}`, low: gain.low, high: gain.high }
}

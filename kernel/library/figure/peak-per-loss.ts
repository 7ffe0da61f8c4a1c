import type { Figure } from '../../../shared/contracts/figure.js'
import type { Losses } from '../authority/index.js'
import { requireFinite } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { bars } from './bars.js'
import { freezeFigure } from './freeze.js'

export interface PeakPerLossOptions {
  /** From `authority.losses`. */
  readonly losses: Losses
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.peakPerLoss'
const known = new Set(['losses', 'caption', 'description'])

/**
 * Largest thrust after each loss over the mean of normal hover, with what is given up: one bar per loss.
 *
 * @equation as `authority.losses`
 * @param options - `losses` of `authority.losses`; optional `caption`, `description`
 * @returns a figure of horizontal bars with a rule at the intact peak
 * @throws InvalidInput for what are no losses, and an unknown option
 * @method In the order of the lost rotors, numbered from 1 as `figure.planView` numbers them. "no steering" marks a trim on the edge of what can be attained.
 * @validity As `authority.losses`.
 * @source House convention, no publication.
 * @example
 * const six = [1, 1, -1, -1, 1, -1].map((spin, i) => ({
 *   x: Math.cos((i * Math.PI) / 3), y: Math.sin((i * Math.PI) / 3), spin, maxThrust: 10 * u.kN, torqueRatio: 0.1,
 * }))
 * const drawn = figure.peakPerLoss({ losses: authority.losses({ rotors: six, weight: 12 * u.kN }) })
 */
export function peakPerLoss(options: PeakPerLossOptions): Figure {
  checkOptions(method, options, known)
  const { losses, caption = 'Peak thrust after each loss', description } = options
  if (typeof losses !== 'object' || losses === null || !Array.isArray(losses.cases) || losses.cases.length === 0)
    throw new InvalidInput({
      method,
      argument: 'losses',
      value: describeValue(losses),
      accepted: 'what authority.losses returns',
    })
  const rows = losses.cases.map((one: Losses['intact'], at: number) => {
    requireFinite(method, `losses.cases[${at}].peakToHover`, one?.peakToHover, '1')
    return { name: nameOf(one), value: one.peakToHover }
  })
  const drawn = bars({
    caption,
    ...(description === undefined ? {} : { description }),
    names: rows.map((row) => row.name),
    values: rows.map((row) => row.value),
    label: 'largest thrust over mean of hover',
    ink: 'accent',
  })
  const intact = losses.intact.peakToHover
  requireFinite(method, 'losses.intact.peakToHover', intact, '1')
  return freezeFigure({
    ...drawn,
    marks: [...drawn.marks, { mark: 'rule', axis: 'x', at: intact, label: 'intact', ink: 'ink' }],
  })
}

function nameOf(one: Losses['intact']): string {
  const lost = `rotor ${one.lost.map((at) => at + 1).join(' and ')}`
  if (!one.feasible) return `${lost} (no ${one.cannotHold.join(', ')})`
  return one.controllable ? lost : `${lost} (no steering)`
}

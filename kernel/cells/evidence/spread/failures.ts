/** Points that did not compute, by reason: counted and shown, never dropped in silence. */
import type { FailureReason, NumbersOutcome, Point } from '../../../../shared/contracts/index.js'
import { numberAt } from '../evaluation.js'

/** Most frequent first. */
export function failuresOf(
  points: readonly Point[],
  outcomes: readonly NumbersOutcome[],
  target: string,
): readonly FailureReason[] {
  const reasons = new Map<string, FailureReason>()
  outcomes.forEach((outcome, at) => {
    const lost = numberAt(outcome, target) === undefined
    if (outcome.ok && !lost) return
    const reason = reasonOf(outcome, target)
    const key = `${reason.code} ${reason.cell ?? ''}`
    const known = reasons.get(key) ?? { ...reason, count: 0, lost: 0, example: points[at] as Point }
    reasons.set(key, { ...known, count: known.count + 1, lost: known.lost + (lost ? 1 : 0) })
  })
  return [...reasons.values()].sort((one, other) => other.count - one.count)
}

function reasonOf(outcome: NumbersOutcome, target: string): Pick<FailureReason, 'code' | 'message' | 'cell'> {
  if (outcome.ok) return { code: 'NO_NUMBER', message: `"${target}" is no finite number here.` }
  const { code, message, cell } = outcome
  return { code, message, ...(cell === undefined ? {} : { cell }) }
}

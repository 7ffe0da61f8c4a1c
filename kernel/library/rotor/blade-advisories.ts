/** What a reader should know about a blade-element result outside the range of its theory. */
import { advise } from '../recorder.js'
import { adviseMach, adviseReynolds } from '../section/coefficients.js'
import { adviseVortexRing } from './axial.js'
import type { BladeConditions } from './blade-loads.js'

/** Stalled part of the span that is no longer a matter of the root. */
const greatestStalledShare = 0.1

interface Watched {
  readonly thrust: number
  readonly tipMach: number
  readonly reynolds: number
  readonly stalledShare: number
}

export function adviseBladeElement(method: string, answer: Watched, conditions: BladeConditions): void {
  const { thrust, tipMach, reynolds, stalledShare } = answer
  const { axialSpeed, density, blade } = conditions
  adviseMach(method, tipMach)
  adviseReynolds(method, conditions.polar, reynolds)
  if (axialSpeed < 0 && thrust > 0)
    adviseVortexRing(method, axialSpeed / Math.sqrt(thrust / (2 * density * Math.PI * blade.radius * blade.radius)))
  if (stalledShare > greatestStalledShare)
    advise({
      code: 'STALL',
      method,
      quantity: 'stalledShare',
      value: stalledShare,
      range: [0, greatestStalledShare],
      message: `${(100 * stalledShare).toFixed(0)} % of the blade's span is past its section's stall: loads there are a flat plate's, and rough.`,
    })
}

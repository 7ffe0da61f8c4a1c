/** How probable it is that each requirement is met. */
import type { NumbersOutcome, RequirementSpread } from '../../../../shared/contracts/index.js'
import { probabilityInterval, quantileOf } from './statistics.js'

/** In the order of their names. */
export function requirementSpreads(outcomes: readonly NumbersOutcome[]): readonly RequirementSpread[] {
  const margins = new Map<string, number[]>()
  for (const { requirements } of outcomes)
    for (const [name, { margin }] of Object.entries(requirements))
      if (Number.isFinite(margin)) {
        const known = margins.get(name)
        if (known === undefined) margins.set(name, [margin])
        else known.push(margin)
      }
  return [...margins.keys()].sort().map((name) => spreadOf(name, margins.get(name) ?? [], outcomes.length))
}

function spreadOf(name: string, margins: readonly number[], all: number): RequirementSpread {
  const sorted = Float64Array.from(margins).sort()
  const computed = sorted.length
  const met = sorted.length - sorted.findLastIndex((margin) => margin < 0) - 1
  return {
    name,
    met,
    computed,
    failed: all - computed,
    probability: met / computed,
    between: probabilityInterval(met, computed),
    bounds: [met / all, (met + all - computed) / all],
    marginKept90: quantileOf(sorted, 0.1),
    marginP50: quantileOf(sorted, 0.5),
  }
}

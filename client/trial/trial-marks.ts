/** What of a result differs from the document's own: that is marked on the sheet, the rest is the same either way. */
import type { CellResult } from '../../shared/contracts/index.js'
import type { TrialMarks } from '../../shared/rendering/view.js'

/** One per pair of results: a sheet is drawn many times. */
const known = new WeakMap<CellResult, { readonly said: CellResult | undefined; readonly marks: TrialMarks }>()

/** `said` is the document's result, absent while it is not known: then all may differ. */
export function trialMarks(tried: CellResult, said: CellResult | undefined): TrialMarks {
  const before = known.get(tried)
  if (before !== undefined && before.said === said) return before.marks
  const marks = compare(tried, said)
  known.set(tried, { said, marks })
  return marks
}

function compare(tried: CellResult, said: CellResult | undefined): TrialMarks {
  const values = new Map(said?.values.map((value) => [value.name, value]))
  const requirements = new Map(said?.requirements.map((requirement) => [requirement.name, requirement]))
  return {
    values: tried.values.flatMap((value) => {
      const own = values.get(value.name)
      if (own !== undefined && same(own.value, value.value)) return []
      return [own === undefined ? { name: value.name } : { name: value.name, said: own.value }]
    }),
    requirements: tried.requirements.flatMap((requirement) =>
      same(requirements.get(requirement.name), requirement) ? [] : [requirement.name],
    ),
    figures: !same(tried.figures, said?.figures ?? []),
  }
}

const same = (one: unknown, other: unknown) => one === other || JSON.stringify(one) === JSON.stringify(other)

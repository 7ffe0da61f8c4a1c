/** The whole comparison of an earlier and a later state. */
import type { RevisionComparison, RevisionContent } from '../../../../shared/contracts/index.js'
import { compareAdvisories, compareAssumptions, compareFigures, compareRequirements } from './compare-evidence.js'
import { compareNumbers } from './compare-numbers.js'
import { compareCells, compareFields } from './compare-text.js'

export interface ComparedSide {
  /** As a reader calls it: `A`, `live text`, a file's name. */
  readonly label: string
  readonly content: RevisionContent
}

export function compareSides(from: ComparedSide, to: ComparedSide): RevisionComparison {
  const [before, after] = [from.content, to.content]
  const cells = compareCells(before.text, after.text)
  const assumptions = compareAssumptions(before, after)
  const numbers = compareNumbers(before.results, after.results)
  const requirements = compareRequirements(before.results, after.results)
  const figures = compareFigures(before, after)
  return {
    from: from.label,
    to: to.label,
    fields: compareFields(before.text, after.text),
    cells: cells.changes,
    assumptions: assumptions.changes,
    numbers: numbers.changes,
    requirements: requirements.changes,
    advisories: compareAdvisories(before, after),
    figures: figures.changes,
    same: {
      cells: cells.same,
      assumptions: assumptions.same,
      numbers: numbers.same,
      requirements: requirements.same,
      figures: figures.same,
    },
    kernelChanged: before.kernelHash !== after.kernelHash,
    methods: {
      added: after.methods.filter((name) => !before.methods.includes(name)),
      removed: before.methods.filter((name) => !after.methods.includes(name)),
    },
  }
}

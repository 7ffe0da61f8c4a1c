/** The state of the notebook that an answer belongs to. */
import type { AssumptionRecord, Point } from '../../shared/contracts/index.js'
import type { SheetView } from '../../shared/rendering/page.js'

/** Changes whenever an answer might: sources by fingerprint, and trial values. */
export function editionOf(view: SheetView): string {
  const prints = view.cells.map(({ result }) => result?.fingerprint ?? '')
  return JSON.stringify([prints, assumptionsOf(view).map(({ name, trial }) => [name, trial])])
}

export function assumptionsOf(view: SheetView): readonly AssumptionRecord[] {
  return view.cells.flatMap(({ result }) => result?.assumptions ?? [])
}

/** Trial values in force. */
export function trialsOf(assumptions: readonly AssumptionRecord[]): Point {
  return Object.fromEntries(
    assumptions.flatMap(({ name, trial }) => (typeof trial === 'number' ? [[name, trial]] : [])),
  )
}

/** Trial values written into the source of the document, as one step of this person. */

import { type AssumptionRow, formatQuantity, numberOf } from '../../shared/rendering/page.js'
import type { AskLive } from '../register/write-assumption.js'
import { type Writing, writeAssumptions } from '../register/write-assumption.js'
import { alike, type TrialValues } from './trial-values.js'

export interface Adoption {
  readonly adopted: readonly string[]
  /** Sentences on what was not written; its trial goes on. */
  readonly refusals: readonly string[]
}

/**
 * What was adopted stays on trial until the document's own result says the same (`TrialValues.settle`), so that the sheet does not go back
 * to the old values for a moment. What somebody changed meanwhile is adopted at the second asking only.
 */
export async function adoptTrials(
  values: TrialValues,
  names: readonly string[],
  rows: readonly AssumptionRow[],
  live: AskLive,
): Promise<Adoption> {
  const refusals: string[] = []
  const writings: Writing[] = []
  for (const name of names) {
    const value = values.get(name)?.value
    if (value === undefined) continue
    const row = rows.find((each) => each.name === name)
    const refusal = row === undefined ? removed(name) : changedMeanwhile(values, row)
    if (refusal !== null) refusals.push(refusal)
    else if (row !== undefined) writings.push({ cell: row.cell, name, change: { value } })
  }
  const answers = writings.length === 0 ? [] : await writeAssumptions(live, writings, stepName(writings))
  return {
    adopted: writings.filter((_, index) => answers[index] === null).map(({ name }) => name),
    refusals: [...refusals, ...new Set(answers.filter((answer) => answer !== null))],
  }
}

const removed = (name: string) =>
  `No cell that can be computed states "${name}" at present, so its trial value is not adopted; it stays on trial.`

function changedMeanwhile(values: TrialValues, { name, record, dimension }: AssumptionRow): string | null {
  const held = values.get(name)
  const said = numberOf(record.value)
  if (held?.said === undefined || alike(held.said, said)) return null
  const shown = (si: number) => formatQuantity(si, dimension, record.unit).text
  values.seen(name, said)
  return `"${name}" was changed meanwhile: the document says ${shown(said)}, and said ${shown(held.said)} when the trial began. Adopt again to write ${shown(held.value)}.`
}

function stepName(writings: readonly Writing[]): string {
  const [first] = writings
  return writings.length === 1 ? `the trial value of ${first?.name ?? ''}` : `${writings.length} trial values`
}

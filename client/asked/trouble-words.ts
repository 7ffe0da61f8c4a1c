/** Why an answer did not come: what a question itself refuses stands alone; anything else is said to have ended the work. */
import { EvidenceTrouble } from '../../kernel/cells/evidence/index.js'

/** `work` says what was done: `Sampling`. */
export function troubleWords(fault: unknown, work: string): string {
  const said = fault instanceof Error ? fault.message : String(fault)
  return fault instanceof EvidenceTrouble ? said : `${work} ended: ${said}`
}

/** Steps adopted in one order. Where one gives no answer, its effect is told together with the next that does. */
import type { WaterfallRow } from '../../../../shared/contracts/index.js'
import type { Answers } from './answers.js'

/** The effects add up to the whole difference, whatever fails on the way; nothing when both ends are not there. */
export async function rowsOf(answers: Answers, order: readonly number[]): Promise<WaterfallRow[]> {
  const rows: WaterfallRow[] = []
  const adopted: number[] = []
  let last = await answers.of([])
  let waiting: number[] = []
  let failures: string[] = []
  for (const step of order) {
    adopted.push(step)
    waiting.push(step)
    const next = await answers.of(adopted)
    if (!next.ok) {
      failures.push(next.reason)
      continue
    }
    if (last.ok) rows.push({ steps: waiting, effect: next.value - last.value, failures })
    last = next
    waiting = []
    failures = []
  }
  return rows
}

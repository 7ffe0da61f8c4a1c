/** Changes that give no answer alone are taken together with the first other that they give one with. */
import type { Answers } from './answers.js'
import { Groups } from './groups.js'

export interface MergedSteps {
  readonly steps: readonly (readonly number[])[]
  /** Why a step is more than one change. */
  readonly together: readonly (string | undefined)[]
}

/** Beyond so many changes pairs are not tried: their number grows with the square. */
const mostPaired = 16

export async function mergeUnanswered(answers: Answers, count: number): Promise<MergedSteps> {
  const groups = new Groups(count)
  for (let one = 0; one < count && count > 1; one += 1) {
    const alone = await answers.of([one])
    if (alone.ok || count > mostPaired) continue
    const helper = await helperOf(answers, one, count)
    if (helper !== undefined) groups.join(one, helper, `without the other: ${alone.reason}`)
  }
  return {
    steps: groups.all.map(({ members }) => members),
    together: groups.all.map(({ why }) => (why.length === 0 ? undefined : why.join(' '))),
  }
}

async function helperOf(answers: Answers, one: number, count: number): Promise<number | undefined> {
  for (let other = 0; other < count; other += 1) {
    if (other === one) continue
    if ((await answers.of([one, other])).ok) return other
  }
  return undefined
}

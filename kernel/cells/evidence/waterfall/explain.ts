/**
 * The difference between two answers shared out among the changes that lie between: adopted one at a time in two orders, and as
 * Shapley shares. Everything that is asked is the answer with some of the changes adopted, so any model of it can be explained.
 */
import type { WaterfallRow, WaterfallShares } from '../../../../shared/contracts/index.js'
import { Answers } from './answers.js'
import { mergeUnanswered } from './merge.js'
import { rowsOf } from './rows.js'
import { exactShares, sampledShares } from './shares.js'

/** The answer with some changes adopted, or why there is none. */
export type Attempt = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly reason: string }

export interface Change {
  /** How many changes there are. */
  readonly count: number
  /** The answer with the changes of these places adopted and the others not. */
  attempt(adopted: ReadonlySet<number>): Promise<Attempt>
}

export interface ExplainOptions {
  /** Of the orders drawn by chance. */
  readonly seed?: number
  /** How many orders are drawn, each together with its reverse. */
  readonly pairs?: number
  readonly isStopped?: () => boolean
  /** Evaluations done, and how many there will be as far as is known. */
  readonly onProgress?: (done: number, of: number) => void
}

export interface Explained {
  readonly from: number
  readonly to: number
  /** Places of the changes that make up each step: most alone, some together. */
  readonly steps: readonly (readonly number[])[]
  /** Why a step is more than one change: what happened with the first of them alone. */
  readonly together: readonly (string | undefined)[]
  readonly forward: readonly WaterfallRow[]
  readonly reverse: readonly WaterfallRow[]
  readonly shares: WaterfallShares
  readonly evaluations: number
}

/** Up to so many steps every set of them is tried: 256 evaluations. */
export const mostExact = 8

/** @throws Error with the reason when there is no answer before or after. */
export async function explainChange(change: Change, options: ExplainOptions = {}): Promise<Explained> {
  const answers = new Answers(change, options)
  const from = await answers.must([])
  const to = await answers.must(Array.from({ length: change.count }, (_, index) => index))
  const { steps, together } = await mergeUnanswered(answers, change.count)
  const grouped = answers.over(steps)
  const order = steps.map((_, index) => index)
  const forward = await rowsOf(grouped, order)
  const reverse = await rowsOf(grouped, [...order].reverse())
  const shares = await sharesOf(grouped, options)
  return { from, to, steps, together, forward, reverse, shares, evaluations: answers.asked }
}

async function sharesOf(answers: Answers, options: ExplainOptions): Promise<WaterfallShares> {
  if (answers.count <= mostExact) {
    const exact = await exactShares(answers)
    if (exact.kind === 'exact' || options.isStopped?.() === true) return exact
  }
  return sampledShares(answers, options)
}

/** Whether more samples would change the answer: the answer at doubling counts. */
import type { Spread } from '../../contracts/index.js'
import { element } from '../dom.js'
import { headRow } from './spread-summary.js'
import { type AskedSubject, showValue } from './subject.js'

export function convergenceSentence({ convergence: { settledAt } }: Spread): string {
  return settledAt === undefined
    ? 'Not settled yet: a doubling of the samples still moved mean, P10, P50 or P90 by more than a fiftieth of the way from P10 to P90.'
    : `Settled at ${settledAt} samples: the last two doublings before, and all after, moved mean, P10, P50 and P90 by less than a fiftieth of the way from P10 to P90.`
}

/** Null below two rows, which show nothing. */
export function renderConvergence(document: Document, subject: AskedSubject, spread: Spread): HTMLElement | null {
  const { rows } = spread.convergence
  if (rows.length < 2) return null
  const show = (value: number) => element(document, 'td', { class: 'spread-number' }, showValue(subject, value))
  return element(
    document,
    'table',
    { class: 'spread-table' },
    element(document, 'caption', {}, 'The answer after so many samples'),
    element(document, 'thead', {}, headRow(document, ['samples', 'mean', 'P50', 'P90'])),
    element(
      document,
      'tbody',
      {},
      rows.map(({ count, mean, p50, p90 }) =>
        element(
          document,
          'tr',
          {},
          element(document, 'th', { scope: 'row' }, String(count)),
          show(mean),
          show(p50),
          show(p90),
        ),
      ),
    ),
  )
}

/** Samples that did not compute, by reason, each with a point to try. */
import type { FailureReason, Point, Spread } from '../../contracts/index.js'
import { element } from '../dom.js'
import { formatQuantity } from '../quantity/format-quantity.js'
import { countOf, humaniseName } from '../quantity/words.js'
import type { SheetContext } from '../view.js'
import { percentText } from './percent.js'

/** Null where everything computed. The button of each example carries its place in `data-example`. */
export function renderFailures(document: Document, spread: Spread, context: SheetContext): HTMLElement | null {
  const { failures, done } = spread
  if (failures.length === 0) return null
  const lost = failures.reduce((sum, reason) => sum + reason.lost, 0)
  return element(
    document,
    'div',
    { class: 'spread-failures' },
    element(
      document,
      'p',
      {},
      lost === 0
        ? 'The number itself was computed at every sample; beside it these failed.'
        : `${countOf(lost, 'sample')} of ${done} (${percentText(lost / done)}) gave no number. Percentiles are those of the others: read them with care if failing is itself a bad outcome.`,
    ),
    element(
      document,
      'ul',
      {},
      failures.map((reason, at) => reasonLine(document, reason, at, spread, context)),
    ),
  )
}

function reasonLine(
  document: Document,
  reason: FailureReason,
  at: number,
  spread: Spread,
  context: SheetContext,
): HTMLElement {
  const row = reason.cell === undefined ? undefined : context.numberOf(reason.cell)
  return element(
    document,
    'li',
    {},
    element(document, 'strong', {}, countOf(reason.count, 'time')),
    row === undefined ? '' : [' in ', element(document, 'a', { href: `#cell-${reason.cell}` }, `row ${row}`)],
    ': ',
    element(document, 'span', { class: 'spread-message' }, reason.message),
    ' ',
    element(document, 'button', { type: 'button', class: 'link-button', 'data-example': at }, 'Try this point'),
    element(
      document,
      'details',
      {},
      element(document, 'summary', {}, 'Values of the first of them'),
      element(document, 'p', { class: 'spread-soft' }, pointWords(reason.example, spread.sampled, context)),
    ),
  )
}

/** `pack energy 215 Wh/kg, payload 431 kg`: of the names that were sampled. */
export function pointWords(point: Point, names: readonly string[], context: SheetContext): string {
  return names
    .flatMap((name) => {
      const value = point[name]
      if (value === undefined) return []
      const known = context.known(name)?.value
      return [`${humaniseName(name)} ${formatQuantity(value, known?.dimension ?? null, known?.unit).text}`]
    })
    .join(', ')
}

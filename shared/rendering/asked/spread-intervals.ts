/** Bare ranges, apart from the probabilities: what they do to the number and to its spread. */
import { type Envelope, type IntervalEffect, percentileOf, type SpreadAtEnds } from '../../contracts/index.js'
import { element } from '../dom.js'
import { countOf, humaniseName } from '../quantity/words.js'
import type { SheetContext } from '../view.js'
import { percentText } from './percent.js'
import { pointWords } from './spread-failures.js'
import { headRow } from './spread-summary.js'
import { type AskedSubject, showValue } from './subject.js'

export function renderEnvelope(
  document: Document,
  subject: AskedSubject,
  envelope: Envelope,
  context: SheetContext,
): HTMLElement {
  const moving = envelope.effects.filter(({ atLow, atHigh }) => atLow !== atHigh || atLow === undefined)
  const idle = envelope.effects.filter((effect) => !moving.includes(effect))
  return element(
    document,
    'div',
    {},
    boxWords(document, subject, envelope, context),
    moving.length === 0 ? null : effectTable(document, subject, moving),
    idle.length === 0
      ? null
      : element(
          document,
          'p',
          { class: 'spread-soft' },
          `Without effect: ${idle.map(({ name }) => humaniseName(name)).join(', ')}.`,
        ),
    failingEnds(document, moving),
    worstList(document, envelope, context),
    element(
      document,
      'p',
      { class: 'spread-note' },
      `Only the ends of each range were looked at, ${countOf(envelope.runs, 'run')}, ${countOf(envelope.count, 'sample')} for each spread: where the number turns round inside a range the true limits lie farther apart.${envelope.stopped ? ' Stopped early: some are missing.' : ''}`,
    ),
  )
}

function boxWords(
  document: Document,
  subject: AskedSubject,
  { held, lowest, highest }: Envelope,
  context: SheetContext,
): HTMLElement | null {
  const [low, middle, high] = [lowest?.summary, held?.summary, highest?.summary]
  if (lowest === undefined || highest === undefined || low === undefined || middle === undefined || high === undefined)
    return null
  const show = (value: number) => showValue(subject, value)
  const words =
    low.count === 1
      ? `With all ranges at the ends that lower it ${subject.label} is ${show(low.mean)}; at those that raise it, ${show(high.mean)}.`
      : `With all ranges at the ends that lower it P50 is ${show(percentileOf(low, 0.5))} and P90 ${show(percentileOf(low, 0.9))}; as in the document ${show(percentileOf(middle, 0.5))} and ${show(percentileOf(middle, 0.9))}; at the ends that raise it ${show(percentileOf(high, 0.5))} and ${show(percentileOf(high, 0.9))}. Whatever the ranges turn out to be, the distribution lies between: the broken curves above.`
  const names = Object.keys(highest.ends)
  return element(
    document,
    'div',
    {},
    element(document, 'p', {}, words),
    names.length === 0
      ? null
      : element(
          document,
          'details',
          {},
          element(document, 'summary', {}, 'Which ends these are'),
          element(document, 'p', { class: 'spread-soft' }, `Lowering: ${pointWords(lowest.ends, names, context)}.`),
          element(document, 'p', { class: 'spread-soft' }, `Raising: ${pointWords(highest.ends, names, context)}.`),
        ),
  )
}

function effectTable(document: Document, subject: AskedSubject, effects: readonly IntervalEffect[]): HTMLElement {
  const spread = effects.some((effect) => (effect.spreads?.low.summary?.count ?? 0) > 1)
  return element(
    document,
    'table',
    { class: 'spread-table' },
    element(document, 'caption', {}, `${subject.label} at the ends of each range, all else as in the document`),
    element(
      document,
      'thead',
      {},
      headRow(document, ['', 'low end', 'high end', ...(spread ? ['P90, low to high end'] : [])]),
    ),
    element(
      document,
      'tbody',
      {},
      effects.map(({ name, atLow, atHigh, spreads }) =>
        element(
          document,
          'tr',
          {},
          element(document, 'th', { scope: 'row' }, humaniseName(name)),
          [atLow, atHigh].map((value) =>
            element(
              document,
              'td',
              { class: 'spread-number' },
              value === undefined ? 'does not compute' : showValue(subject, value),
            ),
          ),
          spread
            ? element(document, 'td', { class: 'spread-soft' }, spreads === undefined ? '' : p90Words(subject, spreads))
            : null,
        ),
      ),
    ),
  )
}

function failingEnds(document: Document, effects: readonly IntervalEffect[]): HTMLElement | null {
  const failing = effects.filter(({ atLow, atHigh }) => atLow === undefined || atHigh === undefined)
  if (failing.length === 0) return null
  const names = failing.map(({ name }) => humaniseName(name)).join(', ')
  return element(
    document,
    'p',
    {},
    `Held at the document's value where all are varied, because an end does not compute: ${names}.`,
  )
}

function p90Words(subject: AskedSubject, { low, high }: { low: SpreadAtEnds; high: SpreadAtEnds }): string {
  return [low, high]
    .map(({ summary }) => (summary === undefined ? 'none' : showValue(subject, percentileOf(summary, 0.9))))
    .join(' to ')
}

function worstList(document: Document, { worst }: Envelope, context: SheetContext): HTMLElement | null {
  if (worst.length === 0) return null
  return element(
    document,
    'div',
    {},
    element(document, 'p', {}, 'With all ranges at the ends that are worst for it, each requirement is met in:'),
    element(
      document,
      'ul',
      { class: 'spread-worst' },
      worst.map(({ requirement, probability, ends }) =>
        element(
          document,
          'li',
          {},
          element(document, 'span', { class: 'spread-name' }, requirement),
          ' ',
          element(document, 'strong', {}, percentText(probability)),
          ' ',
          element(document, 'span', { class: 'spread-soft' }, `(${pointWords(ends, Object.keys(ends), context)})`),
        ),
      ),
    ),
  )
}

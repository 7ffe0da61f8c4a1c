/** A number under spread in a sentence and a table of percentiles. */
import { type Percentile, percentileOf, type Spread, type Summary } from '../../contracts/index.js'
import { element } from '../dom.js'
import { countOf } from '../quantity/words.js'
import { percentText } from './percent.js'
import { type AskedSubject, showValue } from './subject.js'

/** `9 of 10 samples lie at or below 1 742 kg; 8 of 10 between ...`: what a reader takes along. */
export function spreadSentence(subject: AskedSubject, { summary }: Spread): string {
  if (summary === undefined) return `${subject.label} was computed at none of the samples.`
  const at = (share: 0.1 | 0.5 | 0.9) => showValue(subject, percentileOf(summary, share))
  if (summary.least === summary.greatest)
    return `${subject.label} is ${at(0.5)} at every sample: nothing that is sampled moves it.`
  return `Half of the samples lie at or below ${at(0.5)}, nine of ten at or below ${at(0.9)}; eight of ten between ${at(0.1)} and ${at(0.9)}. The document has ${showValue(subject, subject.value)}.`
}

export function renderPercentiles(document: Document, subject: AskedSubject, summary: Summary): HTMLElement {
  const row = (name: string, value: string, more: string | null) =>
    element(
      document,
      'tr',
      {},
      element(document, 'th', { scope: 'row' }, name),
      element(document, 'td', { class: 'spread-number' }, value),
      element(document, 'td', { class: 'spread-soft' }, more ?? ''),
    )
  const show = (value: number) => showValue(subject, value)
  const nominal = shareBelow(summary, subject.value)
  return element(
    document,
    'div',
    {},
    element(
      document,
      'table',
      { class: 'spread-table' },
      element(document, 'caption', {}, `Percentiles of ${subject.label}`),
      element(document, 'thead', {}, headRow(document, ['', 'value', '95 % within'])),
      element(
        document,
        'tbody',
        {},
        summary.percentiles.map((one) => row(percentileName(one), show(one.value), betweenText(subject, one))),
        row('mean', show(summary.mean), null),
        row('standard deviation', show(summary.deviation), null),
        row('in the document', show(subject.value), `${percentText(nominal)} at or below`),
      ),
    ),
    element(
      document,
      'p',
      { class: 'spread-note' },
      'P90 is the value that 90 % of the samples do not exceed; P50 is the middle one. The last column says how far a percentile may be off because there are only so many samples; it holds for samples drawn by chance, and these are spread more evenly.',
    ),
  )
}

export function headRow(document: Document, names: readonly string[]): HTMLElement {
  return element(
    document,
    'tr',
    {},
    names.map((name) => element(document, name === '' ? 'td' : 'th', name === '' ? {} : { scope: 'col' }, name)),
  )
}

function percentileName({ share }: Percentile): string {
  return `P${share * 100}`
}

function betweenText(subject: AskedSubject, { between: [low, high] }: Percentile): string {
  return `${showValue(subject, low)} to ${showValue(subject, high)}`
}

/** Share of the samples at or below a value, read off the curve. */
function shareBelow({ curve }: Summary, value: number): number {
  const above = curve.findIndex((at) => at > value)
  if (above === 0) return 0
  if (above < 0) return 1
  const [before, after] = [curve[above - 1] as number, curve[above] as number]
  return (above - 1 + (value - before) / (after - before)) / (curve.length - 1)
}

/** What was sampled and how: it stands beside every number that came of it. */
export function spreadBasis(spread: Spread): string {
  const { done, asked, seed, sampled, correlated, stopped } = spread
  const names = countOf(sampled.length, 'assumption')
  const end = done < asked ? ` of ${asked}${stopped ? ', stopped' : ''}` : ''
  return `${countOf(done, 'sample')}${end} of ${names} together${correlated ? ', correlated as stated' : ', independent'}; scrambled Sobol points, seed ${seed}. The same seed gives the same numbers.`
}

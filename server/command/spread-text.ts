/** Spread as a page of text: the sentence, percentiles, requirements, what failed, and what the variance comes from. */
import { headlineShare, type Shares, type Spread } from '../../shared/contracts/index.js'
import {
  type AskedSubject,
  convergenceSentence,
  countOf,
  percentRange,
  percentText,
  type SheetView,
  sheetContext,
  showValue,
  spreadBasis,
  spreadSentence,
} from '../../shared/rendering/index.js'
import { headLines, subjectInCode } from './asked-text.js'
import { alignColumns } from './columns.js'

export interface SpreadAnswered {
  readonly view: SheetView
  readonly spread: Spread
  readonly shares: Shares | undefined
  readonly trials: readonly string[]
}

export function describeSpread({ view, spread, shares, trials }: SpreadAnswered): string {
  const subject = subjectInCode(view, spread.target)
  const lines = headLines(view, trials)
  if (spread.sampled.length === 0) lines.push(nothingToSample, ...intervalLines(spread))
  else
    lines.push(
      spreadSentence(subject, spread),
      ...percentileLines(subject, spread),
      ...requirementLines(spread),
      ...failureLines(spread, view),
      ...(shares === undefined ? [] : shareLines(shares)),
      '',
      ...intervalLines(spread),
      convergenceSentence(spread),
      spreadBasis(spread),
    )
  return `${lines.join('\n')}\n`
}

const nothingToSample =
  'No assumption of this notebook states a distribution, so there is nothing to sample. One is stated as: distribution: { triangular: [350 * u.kg, 450 * u.kg] }.'

function percentileLines(subject: AskedSubject, { summary }: Spread): string[] {
  if (summary === undefined) return []
  const show = (value: number) => showValue(subject, value)
  const rows = [
    ['', 'value', '95 % within'],
    ...summary.percentiles.map(({ share, value, between: [low, high] }) => [
      `P${share * 100}`,
      show(value),
      `${show(low)} to ${show(high)}`,
    ]),
    ['mean', show(summary.mean), ''],
    ['standard deviation', show(summary.deviation), ''],
    ['in the document', show(subject.value), ''],
  ]
  return ['', ...alignColumns(rows, new Set([1]))]
}

function requirementLines({ requirements }: Spread): string[] {
  if (requirements.length === 0) return []
  return [
    '',
    ...requirements.map(({ name, probability, between, failed, bounds }) => {
      const lost =
        failed === 0
          ? ''
          : `; ${countOf(failed, 'sample')} did not compute: ${percentRange(bounds)}, according to whether they count as not met or as met`
      return `requirement ${name}: met in ${percentText(probability)} (95 % interval ${percentRange(between)})${lost}`
    }),
  ]
}

function failureLines({ failures }: Spread, view: SheetView): string[] {
  if (failures.length === 0) return []
  const context = sheetContext(view)
  return [
    '',
    'Samples that did not compute, counted and not dropped:',
    ...failures.map(({ count, lost, cell, message }) => {
      const number = cell === undefined ? undefined : context.numberOf(cell)
      const place = number === undefined ? '' : ` in cell ${number}`
      const beside = lost === 0 ? ', the number itself computed' : ''
      return `  ${countOf(count, 'time')}${place}${beside}: ${message}`
    }),
  ]
}

function shareLines({ method, shares, rows, runs, missing, settled }: Shares): string[] {
  const around = ({ low, high }: { readonly low: number; readonly high: number }) =>
    percentRange([Math.max(low, 0), Math.min(high, 1)])
  const table = shares.map((share) => {
    const whole = headlineShare(share)
    return [
      share.name,
      percentText(Math.max(whole.value, 0)),
      around(whole),
      ...(share.alone === undefined ? [] : [percentText(Math.max(share.alone.value, 0))]),
    ]
  })
  const alone = method === 'Sobol indices'
  const lost = missing === 0 ? '' : `, of which ${missing} gave no number`
  return [
    '',
    `What the variance comes from, ${method} of ${rows} rows, ${runs} runs${lost}${settled ? '' : '; the intervals are still wide'}:`,
    ...alignColumns(
      [['assumption', alone ? 'total' : 'share', '95 % within', ...(alone ? ['alone'] : [])], ...table],
      new Set([1, 2, 3]),
    ),
  ]
}

function intervalLines({ intervals }: Spread): string[] {
  if (intervals.length === 0) return []
  return [
    `Held at their value, because they state a range and no distribution: ${intervals.map(({ name }) => name).join(', ')}. What they do: hoverfolio drivers.`,
  ]
}

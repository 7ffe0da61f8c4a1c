/** The distribution of a number as a figure: how many of the samples lie at or below each value. */
import type { Envelope, Figure, Mark, Spread, Summary } from '../../contracts/index.js'
import { percentileOf } from '../../contracts/index.js'
import { type AskedSubject, showValue } from './subject.js'

/** Undefined where nothing computed. */
export function spreadCurve(subject: AskedSubject, spread: Spread, envelope?: Envelope): Figure | undefined {
  const { summary } = spread
  if (summary === undefined) return undefined
  const { dimension, unit, label } = subject
  const shown = { dimension: dimension ?? '1', ...(unit === undefined || dimension === null ? {} : { unit }) }
  return {
    figure: 'plot',
    caption: `Distribution of ${label}, ${summary.count} samples`,
    description: describeCurve(subject, summary),
    x: { label, ...shown },
    y: { label: 'samples at or below, %', dimension: '1', from: 0, to: 100 },
    marks: [...boxMarks(envelope), curveMark(summary), ...percentileMarks(summary), ...limitMarks(subject)],
  }
}

function curveMark({ curve }: Summary): Mark {
  return { mark: 'line', x: [...curve], y: curve.map((_, step) => step), ink: 'accent' }
}

/** A rule with its name across the field and a dot where the curve meets it: a name beside the dot has no room among curves. */
function percentileMarks(summary: Summary): readonly Mark[] {
  return ([0.1, 0.5, 0.9] as const).flatMap((share): readonly Mark[] => [
    { mark: 'rule', axis: 'y', at: share * 100, ink: 'faint', label: `P${share * 100}` },
    { mark: 'dot', x: [percentileOf(summary, share)], y: [share * 100], ink: 'ink' },
  ])
}

function limitMarks({ limits }: AskedSubject): readonly Mark[] {
  return limits.map(({ bound, value }) => ({ mark: 'rule', axis: 'x', at: value, ink: 'warning', label: bound }))
}

/** Where the curve goes when all bare ranges are at the ends that lower or raise the number. */
function boxMarks(envelope: Envelope | undefined): readonly Mark[] {
  return [envelope?.lowest?.summary, envelope?.highest?.summary].flatMap((summary): readonly Mark[] =>
    summary === undefined
      ? []
      : [{ mark: 'line', x: [...summary.curve], y: summary.curve.map((_, step) => step), broken: true, ink: 'second' }],
  )
}

function describeCurve(subject: AskedSubject, summary: Summary): string {
  const at = (share: 0.1 | 0.5 | 0.9) => showValue(subject, percentileOf(summary, share))
  const limits = subject.limits.map(
    ({ requirement, bound, value }) =>
      ` The requirement "${requirement}" asks for ${bound} ${showValue(subject, value)}.`,
  )
  return `Rises from 0 % at ${showValue(subject, summary.least)} to 100 % at ${showValue(subject, summary.greatest)}. P10 is ${at(0.1)}, P50 ${at(0.5)}, P90 ${at(0.9)}.${limits.join('')}`
}

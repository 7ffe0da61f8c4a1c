/** A trace as a page of text: the number first, below each name what it is made from, indented. */
import type { Method } from '../../shared/contracts/index.js'
import {
  groundWords,
  humaniseName,
  lineWords,
  type OutlineItem,
  TraceSubject,
  traceBasis,
  traceOutline,
  traceSentence,
} from '../../shared/rendering/index.js'
import { commandCaution } from './caution.js'
import type { Traced } from './trace-data.js'

export function describeTrace({ trace, view, overrides, methods }: Traced): string {
  const subject = new TraceSubject(trace, view)
  const { target, apart } = traceOutline(trace, view)
  const trials = Object.keys(overrides)
  const lines = [
    view.title,
    commandCaution,
    ...(trials.length === 0 ? [] : [`Trial values, not in the document: ${trials.join(', ')}.`]),
    '',
    traceSentence(subject),
    '',
    ...(target === undefined ? [] : itemLines(target, 0, subject)),
    ...(apart.length === 0
      ? []
      : ['', 'By a way that the text does not show:', ...apart.flatMap((item) => itemLines(item, 1, subject))]),
    ...methodLines(
      trace.steps.flatMap((step) => step.methods),
      methods,
    ),
    '',
    traceBasis(trace),
  ]
  return `${lines.join('\n')}\n`
}

function itemLines({ step, again, advisories, items }: OutlineItem, depth: number, subject: TraceSubject): string[] {
  const indent = '  '.repeat(depth)
  const value = subject.value(step)
  const effect = subject.effect(step)
  const label = subject.label(step.name)
  const name = label === humaniseName(step.name) ? step.name : `${step.name} (${label})`
  const equals = step.value === undefined ? `, ${value}` : ` = ${value}`
  const head = `${indent}${name}${value === '' ? '' : equals}${effect === '' ? '' : `: ${effect}`}`
  if (again) return [`${head} (as above)`]
  const record = subject.record(step.name)
  const line = subject.line(step)
  const detail = (text: string) => `${indent}    ${text}`
  return [
    head,
    detail(
      `${subject.place(step)}, line ${step.line}${record === undefined ? '' : `, assumption; ${groundWords(record)}`}`,
    ),
    ...(line === undefined ? [] : [detail(lineWords(line))]),
    ...(step.methods.length === 0 ? [] : [detail(`by ${step.methods.join(', ')}`)]),
    ...advisories.map(({ message }) => detail(`advisory: ${message}`)),
    ...items.flatMap((item) => itemLines(item, depth + 1, subject)),
  ]
}

/** Each method once, in the order in which the calculation comes to it. */
function methodLines(used: readonly string[], methods: readonly Method[]): string[] {
  const known = [...new Set(used)].flatMap((name) => methods.find((method) => method.name === name) ?? [])
  if (known.length === 0) return []
  return [
    '',
    'Methods',
    ...known.flatMap(({ name, forms: [form] }) => [
      `  ${name}: ${form?.equation ?? ''}`,
      `      valid for: ${form?.validity ?? ''}`,
      `      source: ${form?.source ?? ''}`,
    ]),
  ]
}

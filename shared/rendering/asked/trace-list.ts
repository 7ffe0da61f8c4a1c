/** A trace as an outline that opens and closes: every step leads to its line on the sheet, every method to the catalogue. */
import type { Method } from '../../contracts/method.js'
import { methodAddress } from '../../contracts/method-address.js'
import { type Child, element } from '../dom.js'
import { renderLine } from '../formula/index.js'
import { proseNodes } from '../method/prose-nodes.js'
import { renderEquation } from '../method/render-equation.js'
import { groupAdvisories, groupWords } from '../sheet/advisory-groups.js'
import { type OutlineItem, traceOutline } from './trace-outline.js'
import { groundWords, type TraceSubject } from './trace-words.js'

/** Undefined while the catalogue is on its way. */
export type FindMethod = (name: string) => Method | undefined

/** Levels that are open at first: a number is often a field of a record that a function gave, so that fewer would show no assumption. */
const openAtFirst = 3

export function renderTraceList(document: Document, subject: TraceSubject, methodOf: FindMethod): HTMLElement {
  const { target, apart } = traceOutline(subject.trace, subject.view)
  const draw = (item: OutlineItem, depth: number) => renderItem(document, item, depth, { subject, methodOf })
  return element(
    document,
    'div',
    { class: 'trace-outline' },
    target === undefined ? null : element(document, 'ul', { class: 'trace-list' }, draw(target, 0)),
    apart.length === 0
      ? null
      : [
          element(document, 'p', {}, 'These move it by a way that the text does not show:'),
          element(
            document,
            'ul',
            { class: 'trace-list' },
            apart.map((item) => draw(item, 1)),
          ),
        ],
  )
}

interface Surroundings {
  readonly subject: TraceSubject
  readonly methodOf: FindMethod
}

function renderItem(document: Document, item: OutlineItem, depth: number, around: Surroundings): HTMLElement {
  const { step, again, items } = item
  const attributes = { class: 'trace-item', 'data-name': step.name, 'data-acts': step.acts, 'data-kind': step.kind }
  const head = headOf(document, item, around)
  if (again) return element(document, 'li', attributes, element(document, 'p', { class: 'trace-head' }, head))
  const line = element(document, 'p', { class: 'trace-head' }, head)
  const detail = detailOf(document, item, around)
  if (items.length === 0) return element(document, 'li', attributes, line, detail)
  const made = [...new Set(items.map((one) => around.subject.label(one.step.name)))]
  return element(
    document,
    'li',
    attributes,
    line,
    element(
      document,
      'details',
      { open: depth < openAtFirst && step.acts !== 'inactive', 'data-name': step.name },
      element(document, 'summary', { class: 'trace-from' }, `from ${made.join(', ')}`),
      detail,
      element(
        document,
        'ul',
        { class: 'trace-list' },
        items.map((one) => renderItem(document, one, depth + 1, around)),
      ),
    ),
  )
}

/** The name leads to its line. */
function headOf(document: Document, { step, again }: OutlineItem, { subject }: Surroundings): Child[] {
  const value = subject.value(step)
  const effect = subject.effect(step)
  return [
    element(
      document,
      'a',
      { class: 'trace-name', href: `#cell-${step.cell}-line-${step.line}` },
      subject.label(step.name),
    ),
    value === ''
      ? null
      : [' ', element(document, 'span', { class: step.value === undefined ? 'trace-sort' : 'trace-value' }, value)],
    effect === '' ? null : [' ', element(document, 'span', { class: 'trace-effect' }, effect)],
    ' ',
    element(
      document,
      'span',
      { class: 'trace-place' },
      again ? 'as above' : `${subject.place(step)}, line ${step.line}`,
    ),
  ]
}

function detailOf(document: Document, item: OutlineItem, { subject, methodOf }: Surroundings): Child[] {
  const { step, advisories } = item
  const record = subject.record(step.name)
  const line = subject.line(step)
  const ground = record === undefined ? undefined : groundWords(record)
  return [
    ground === undefined ? null : element(document, 'p', { class: 'trace-ground' }, `assumption; ${ground}`),
    line === undefined ? null : element(document, 'ul', { class: 'lines trace-line' }, renderLine(document, line)),
    step.methods.map((name) => methodDetail(document, name, methodOf(name))),
    groupAdvisories(advisories).map((group) =>
      element(
        document,
        'p',
        { class: 'advisory', 'data-code': group.worst.code },
        element(document, 'strong', {}, 'Advisory'),
        ` (${group.worst.method}): `,
        groupWords(group),
      ),
    ),
  ]
}

/** Equation, source and validity of the first form; the rest stands in the catalogue. */
function methodDetail(document: Document, name: string, method: Method | undefined): HTMLElement {
  const form = method?.forms[0]
  const facts =
    form === undefined
      ? []
      : ([
          ['Valid for', form.validity],
          ['Source', form.source],
        ] as const)
  return element(
    document,
    'div',
    { class: 'trace-method', 'data-method': name },
    element(
      document,
      'p',
      {},
      'by ',
      element(document, 'a', { href: methodAddress(name) }, element(document, 'code', {}, name)),
    ),
    form === undefined ? null : renderEquation(document, form.equation),
    facts.map(([title, text]) =>
      text === ''
        ? null
        : element(
            document,
            'p',
            { class: 'trace-fact' },
            element(document, 'span', {}, `${title}: `),
            proseNodes(document, text),
          ),
    ),
  )
}

/** A method of the catalogue: what it answers, how it is called, its equation, what it rests on, and an example with its numbers. */
import type { Method, MethodArgument, MethodForm, MethodQuantity } from '../../contracts/method.js'
import { type Child, element } from '../dom.js'
import { siUnit, typesetNodes, typesetUnitText } from '../quantity/index.js'
import { renderAdvisories } from '../sheet/notes.js'
import { renderValues } from '../sheet/values.js'
import { proseNodes } from './prose-nodes.js'
import { renderEquation } from './render-equation.js'

export interface MethodOptions {
  /** Address that a form below each example posts to, to begin a notebook with it; there is none when absent. */
  readonly tryAt?: string
}

/** All forms of a method; its name is left to whoever shows it. */
export function renderMethod(document: Document, method: Method, options: MethodOptions = {}): HTMLElement {
  return element(
    document,
    'div',
    { class: 'method-forms' },
    method.forms.map((form, index) => {
      const below = options.tryAt === undefined ? null : tryForm(document, options.tryAt, method.name, index)
      return renderForm(document, method.name, form, below)
    }),
  )
}

function renderForm(document: Document, name: string, form: MethodForm, below: HTMLElement | null): HTMLElement {
  const facts: readonly (readonly [title: string, text: string])[] = [
    ['Method', form.method],
    ['Valid for', form.validity],
    ['Refuses', form.throws.join('; ').replace(/^InvalidInput (?:for )?/, '')],
    ['Source', form.source],
  ]
  return element(
    document,
    'section',
    { class: 'method-form' },
    element(document, 'p', { class: 'method-summary' }, proseNodes(document, form.summary)),
    renderEquation(document, form.equation),
    element(document, 'p', { class: 'method-call' }, element(document, 'code', {}, callWords(name, form.takes))),
    takes(document, form),
    gives(document, form),
    element(
      document,
      'dl',
      { class: 'method-facts' },
      facts.map(([title, text]) => fact(document, title, text)),
    ),
    renderExample(document, form, below),
  )
}

function fact(document: Document, title: string, text: string): HTMLElement | null {
  if (text === '') return null
  return element(
    document,
    'div',
    { 'data-fact': title.toLowerCase() },
    element(document, 'dt', {}, title),
    element(document, 'dd', {}, proseNodes(document, text)),
  )
}

/** `rotor.hover({ thrust [N], density [kg/m³], figureOfMerit, interference? })`: the call with the unit of each number. */
export function callWords(name: string, takes: readonly MethodArgument[]): string {
  return `${name}(${takes.map((argument) => argumentWords(argument)).join(', ')})`
}

function argumentWords(argument: MethodArgument): string {
  if (argument.fields === undefined) return quantityWords(argument)
  const fields = argument.fields.map(quantityWords).join(', ')
  return argument.kind === 'options' ? `{ ${fields} }${argument.optional ? '?' : ''}` : quantityWords(argument)
}

function quantityWords({ name, dimension, optional }: MethodQuantity): string {
  const unit = unitOf(dimension)
  return `${name}${optional ? '?' : ''}${unit === '' ? '' : ` [${unit}]`}`
}

/** `m²`; empty for pure numbers and what is no number. */
function unitOf(dimension: string | null): string {
  return dimension === null ? '' : typesetUnitText(siUnit(dimension))
}

function takes(document: Document, form: MethodForm): HTMLElement {
  const rows = form.takes.flatMap((argument) => argument.fields ?? [argument])
  return element(
    document,
    'details',
    { class: 'method-table' },
    element(document, 'summary', {}, 'Takes'),
    form.arguments.map((text) => element(document, 'p', {}, proseNodes(document, text.replace(/^options?: /, '')))),
    quantityTable(document, rows),
  )
}

function gives(document: Document, { gives: answer }: MethodForm): HTMLElement {
  return element(
    document,
    'details',
    { class: 'method-table' },
    element(document, 'summary', {}, 'Gives'),
    element(document, 'p', {}, proseNodes(document, answer.text)),
    answer.fields === undefined ? null : quantityTable(document, answer.fields),
  )
}

function quantityTable(document: Document, rows: readonly MethodQuantity[]): HTMLElement {
  const head = ['Name', 'Unit', 'What'].map((text) => element(document, 'th', { scope: 'col' }, text))
  return element(
    document,
    'table',
    {},
    element(document, 'thead', {}, element(document, 'tr', {}, head)),
    element(
      document,
      'tbody',
      {},
      rows.map((row) => quantityRow(document, row)),
    ),
  )
}

function quantityRow(document: Document, row: MethodQuantity): HTMLElement {
  const unit = unitOf(row.dimension)
  const what: Child[] = [
    row.optional ? element(document, 'em', {}, 'may be left out') : null,
    row.optional && (row.text !== '' || row.kind !== '') ? '; ' : null,
    row.text === '' ? row.kind : proseNodes(document, row.text),
  ]
  return element(
    document,
    'tr',
    {},
    element(document, 'td', {}, element(document, 'code', {}, row.name)),
    element(document, 'td', {}, unit === '' ? (row.dimension === null ? '' : 'number') : typesetNodes(document, unit)),
    element(document, 'td', {}, what),
  )
}

/** Cells and the catalogue compute it alike: the numbers beside it are the kernel's. */
function renderExample(document: Document, { example }: MethodForm, below: HTMLElement | null): HTMLElement {
  return element(
    document,
    'div',
    { class: 'method-example' },
    element(
      document,
      'pre',
      { tabindex: 0, role: 'group', 'aria-label': 'Example' },
      element(document, 'code', {}, example.cell),
    ),
    element(
      document,
      'div',
      { class: 'method-answers' },
      renderValues(document, example.values, new Set()),
      renderAdvisories(document, example.advisories),
      below,
    ),
  )
}

function tryForm(document: Document, action: string, name: string, form: number): HTMLElement {
  const hidden = (key: string, value: string | number) =>
    element(document, 'input', { type: 'hidden', name: key, value })
  return element(
    document,
    'form',
    { class: 'method-try', method: 'post', action, enctype: 'multipart/form-data' },
    hidden('method', name),
    hidden('form', form),
    element(document, 'button', { 'aria-label': `Try ${name} in a new notebook` }, 'Try it in a new notebook'),
  )
}

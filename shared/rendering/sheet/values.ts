/** The named values of a result: label, number in tabular figures, unit; the rest in words. */
import type { NamedValue, ResultValue } from '../../contracts/index.js'
import { element } from '../dom.js'
import { countOf, formatQuantity, humaniseName, typesetNodes } from '../quantity/index.js'
import type { TrialMarks } from '../view.js'
import { valueWords } from './value-words.js'

/** Without stated results a cell shows this many values and folds the others away. */
const shownUnstated = 12
const foldFew = 2

export interface SplitValues {
  readonly shown: readonly NamedValue[]
  readonly folded: readonly NamedValue[]
}

/**
 * Stated results come first and alone; when a cell states none, what it worked out comes before its assumptions.
 * Functions and figures have nothing to read here and always fold.
 */
export function splitValues(values: readonly NamedValue[], assumed: ReadonlySet<string>): SplitValues {
  const silent = (value: NamedValue) => value.value.kind === 'function' || value.value.kind === 'figure'
  const stated = values.filter((value) => value.stated === true)
  if (stated.length > 0) return { shown: stated, folded: values.filter((value) => value.stated !== true) }
  const readable = values.filter((value) => !silent(value))
  const ordered = [
    ...readable.filter((value) => !assumed.has(value.name)),
    ...readable.filter((value) => assumed.has(value.name)),
  ]
  const cut = ordered.length <= shownUnstated + foldFew ? ordered.length : shownUnstated
  return { shown: ordered.slice(0, cut), folded: [...ordered.slice(cut), ...values.filter(silent)] }
}

export function renderValues(
  document: Document,
  values: readonly NamedValue[],
  assumed: ReadonlySet<string>,
  trial?: TrialMarks,
): HTMLElement[] {
  const { shown, folded } = splitValues(values, assumed)
  const parts: HTMLElement[] = []
  if (shown.length > 0) parts.push(valueList(document, shown, trial))
  if (folded.length > 0)
    parts.push(
      element(
        document,
        'details',
        { class: 'more-values' },
        element(document, 'summary', {}, `${countOf(folded.length, 'more value')}`),
        valueList(document, folded, trial),
      ),
    )
  return parts
}

function valueList(document: Document, values: readonly NamedValue[], trial?: TrialMarks): HTMLElement {
  return element(
    document,
    'dl',
    { class: 'values' },
    values.map((value) => valueRow(document, value, trialWords(value, trial))),
  )
}

function valueRow(document: Document, named: NamedValue, tried: string | null): HTMLElement {
  const label = named.label ?? humaniseName(named.name)
  const term = element(
    document,
    'dt',
    { title: named.name },
    typesetNodes(document, label),
    tried === null ? null : [' ', element(document, 'span', { class: 'tried' }, typesetNodes(document, tried))],
  )
  const row = element(
    document,
    'div',
    {
      class: 'value',
      'data-name': named.name,
      'data-value-kind': named.value.kind,
      'data-trial': tried !== null,
    },
    term,
  )
  if (named.value.kind !== 'number') {
    row.append(element(document, 'dd', { class: 'value-words' }, wordsOrRecord(document, named)))
    return row
  }
  const shown = formatQuantity(named.value.si, named.dimension, named.unit)
  const unknown = named.dimension === null && named.unit === undefined
  row.append(
    element(
      document,
      'dd',
      { title: unknown ? 'in SI; its unit could not be worked out' : null },
      element(document, 'span', { class: 'value-number' }, typesetNodes(document, shown.number)),
      shown.unit === '' ? null : ' ',
      element(document, 'span', { class: 'value-unit' }, typesetNodes(document, shown.unit)),
    ),
  )
  return row
}

/** What is said beside a value that a trial has changed: the document's own, where it is one that can be said in few words. */
function trialWords({ name, value, dimension, unit }: NamedValue, trial: TrialMarks | undefined): string | null {
  const mark = trial?.values.find((each) => each.name === name)
  if (mark === undefined) return null
  if (value.kind !== 'number' || mark.said?.kind !== 'number') return 'trial'
  return `trial; document ${formatQuantity(mark.said.si, dimension, unit).text}`
}

/** Where the dimensions of fields are known their numbers carry units, and the others are pure or in SI. */
function footOf(more: number, known: boolean): string | null {
  const inSi = known ? 'without a unit: in SI' : 'in SI'
  if (more === 0) return inSi
  return known ? `${more} more` : `${more} more; all in SI`
}

function wordsOrRecord(document: Document, named: NamedValue): Node {
  const { value, columns = {}, units = {} } = named
  const words = valueWords(value)
  if (value.kind !== 'record' || value.entries.length === 0) return document.createTextNode(words)
  const inUnit = (name: string, entry: ResultValue) =>
    entry.kind === 'number' && Object.hasOwn(columns, name)
      ? formatQuantity(entry.si, columns[name] ?? null, Object.hasOwn(units, name) ? units[name] : undefined).text
      : valueWords(entry)
  const entries = value.entries.map(([name, entry]) =>
    element(
      document,
      'div',
      {},
      element(document, 'dt', {}, humaniseName(name)),
      ' ',
      element(document, 'dd', {}, typesetNodes(document, inUnit(name, entry))),
    ),
  )
  return element(
    document,
    'details',
    { class: 'record' },
    element(document, 'summary', {}, words),
    element(document, 'dl', {}, entries),
    element(document, 'p', {}, footOf(value.more, named.columns !== undefined)),
  )
}

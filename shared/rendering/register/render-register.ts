/** The register as a table: what the document rests on, how sure it is, where it is read. */
import type { ResultNumber } from '../../contracts/index.js'
import { element } from '../dom.js'
import { countOf, formatQuantity } from '../quantity/index.js'
import { type AssumptionRow, hasSource } from './assumption-rows.js'
import { distributionWords } from './distribution-words.js'
import { pageOrder, type RegisterColumn, type RegisterOrder, registerColumns } from './register-order.js'
import { rowLink, scrollingTable } from './table-parts.js'

export const editableFields = ['value', 'source', 'range', 'distribution', 'note', 'owner', 'unit'] as const
export type EditableField = (typeof editableFields)[number]

const heads: Readonly<Record<RegisterColumn, string>> = {
  name: 'Assumption',
  value: 'Value',
  trial: 'Trial',
  source: 'Source',
  sureness: 'How sure',
  note: 'Note',
  owner: 'Owner',
  unit: 'Unit',
  row: 'Row',
  used: 'Used in',
}

/** The table alone; `rows` as they are to be shown, with the document's values. What is on trial is for the view to put into its place. */
export function renderRegister(
  document: Document,
  rows: readonly AssumptionRow[],
  order: RegisterOrder = pageOrder,
): HTMLElement {
  const drawn = rows.map((row) => assumptionRow(document, row))
  return scrollingTable(document, 'Register', sortedHead(document, order), drawn)
}

/** What an empty register is for, and how it is filled. */
export const registerTeaching =
  "The register lists what the sheet rests on. Write assumption('name', value, { source }) in a sizing cell, and it stands here once the cell is computed."

/** `12 assumptions, 3 without a source; 2 shown.` */
export function registerCount(rows: readonly AssumptionRow[], shown: number): string {
  const unsourced = withoutSource(rows)
  const missing = unsourced === 0 ? 'every one with a source' : `${unsourced} without a source`
  const part = shown === rows.length ? '' : `; ${shown === 0 ? 'none' : shown} shown`
  return `${countOf(rows.length, 'assumption')}, ${missing}${part}.`
}

export function withoutSource(rows: readonly AssumptionRow[]): number {
  return rows.filter(({ record }) => !hasSource(record)).length
}

/** Names one assumption. */
export function rowKey({ cell, name }: AssumptionRow): string {
  return JSON.stringify([cell, name])
}

/** Names one field of one assumption. */
export function fieldKey({ cell, name }: AssumptionRow, field: EditableField): string {
  return JSON.stringify([cell, name, field])
}

function sortedHead(document: Document, order: RegisterOrder): HTMLElement {
  const cells = registerColumns.map((column) => {
    const sorted = order.column !== column ? null : order.descending ? 'descending' : 'ascending'
    const sign = sorted === null ? '' : sorted === 'ascending' ? ' ↑' : ' ↓'
    const button = element(document, 'button', { type: 'button', 'data-sort': column }, heads[column])
    button.append(element(document, 'span', { 'aria-hidden': 'true' }, sign))
    return element(document, 'th', { scope: 'col', 'aria-sort': sorted }, button)
  })
  return element(document, 'tr', {}, cells)
}

function assumptionRow(document: Document, row: AssumptionRow): HTMLElement {
  const { record, dimension, state } = row
  const shown = (si: ResultNumber) => formatQuantity(si, dimension, record.unit).text
  const field = (of: EditableField, words: string, attributes = {}) =>
    element(document, 'td', attributes, editButton(document, row, of, words))
  const cells = [
    field('value', shown(record.value), { class: 'numeric' }),
    element(document, 'td', { class: 'trial-place', 'data-trial-of': rowKey(row) }),
    field('source', record.source ?? '', { class: 'wide' }),
    element(document, 'td', { class: 'sureness' }, sureness(document, row, shown)),
    field('note', record.note ?? '', { class: 'wide' }),
    field('owner', record.owner ?? ''),
    field('unit', (row.stated ?? record).unit ?? ''),
    element(document, 'td', {}, rowLink(document, row), state === 'current' ? '' : ` ${state}`),
    element(
      document,
      'td',
      {},
      row.usedIn.flatMap((place, at) => [at === 0 ? '' : ', ', rowLink(document, place)]),
    ),
  ]
  const name = element(document, 'a', { href: `#cell-${row.cell}` }, row.name)
  return element(document, 'tr', {}, element(document, 'th', { scope: 'row' }, name), cells)
}

/** Opens a field to write in, which is the view's to answer. Its words, or what is missing in words; named for those who hear it. */
function editButton(document: Document, row: AssumptionRow, field: EditableField, words: string): HTMLElement {
  const missing = words.trim() === ''
  const said = !missing ? words : field === 'source' ? 'no source' : `add ${field}`
  const button = {
    type: 'button',
    'data-field': fieldKey(row, field),
    'aria-label': `${field} of ${row.name}: ${said}; change it`,
  }
  return element(document, 'button', button, missing ? element(document, 'em', {}, said) : said)
}

/** A range and a distribution are told apart: a range says nothing of how likely its values are. */
function sureness(document: Document, row: AssumptionRow, shown: (si: ResultNumber) => string): HTMLElement[] {
  const { low, high, distribution } = row.record
  const range = low === undefined || high === undefined ? '' : `range ${shown(low)} to ${shown(high)}`
  const words = distribution === undefined ? '' : distributionWords(distribution, shown)
  return [editButton(document, row, 'range', range), editButton(document, row, 'distribution', words)]
}

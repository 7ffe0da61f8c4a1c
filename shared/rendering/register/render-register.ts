/** The register as a table: what the document rests on, how sure it is, where it is read. */
import type { AssumptionRecord, ResultNumber } from '../../contracts/index.js'
import { element } from '../dom.js'
import { countOf, formatQuantity } from '../quantity/index.js'
import type { AssumptionRow } from './assumption-rows.js'
import { headRow, rowLink } from './table-parts.js'

const heads = ['Assumption', 'Value', 'How sure', 'Source', 'Owner', 'Row', 'Used in']

export function renderRegister(document: Document, rows: readonly AssumptionRow[]): HTMLElement {
  if (rows.length === 0)
    return element(
      document,
      'p',
      {},
      "The register lists what the sheet rests on. Write assumption('name', value, { source }) in a sizing cell, and it stands here once the cell is computed.",
    )
  const unsourced = rows.filter(({ record }) => !hasSource(record)).length
  const missing = unsourced === 0 ? 'every one with a source' : `${unsourced} without a source`
  return element(
    document,
    'div',
    { class: 'record-table' },
    element(document, 'p', {}, `${countOf(rows.length, 'assumption')}, ${missing}.`),
    element(
      document,
      'div',
      // Wider than a narrow drawer: reached and scrolled by keyboard too.
      { class: 'record-table-field', tabindex: 0, role: 'region', 'aria-label': 'Register' },
      element(
        document,
        'table',
        {},
        headRow(document, heads),
        element(
          document,
          'tbody',
          {},
          rows.map((row) => assumptionRow(document, row)),
        ),
      ),
    ),
  )
}

function assumptionRow(document: Document, row: AssumptionRow): HTMLElement {
  const { record, dimension, state } = row
  const shown = (si: ResultNumber) => formatQuantity(si, dimension, record.unit).text
  const trial = record.trial === undefined ? '' : ` (trial ${shown(record.trial)})`
  const cells = [
    element(document, 'td', { class: 'numeric' }, `${shown(record.value)}${trial}`),
    element(document, 'td', {}, sureness(record, shown)),
    element(document, 'td', {}, hasSource(record) ? (record.source ?? '') : element(document, 'em', {}, 'no source')),
    element(document, 'td', {}, record.owner ?? ''),
    element(document, 'td', {}, rowLink(document, row), state === 'current' ? '' : ` ${state}`),
    element(
      document,
      'td',
      {},
      row.usedIn.flatMap((place, at) => [at === 0 ? '' : ', ', rowLink(document, place)]),
    ),
  ]
  return element(document, 'tr', {}, element(document, 'th', { scope: 'row' }, row.name), cells)
}

function hasSource({ source }: AssumptionRecord): boolean {
  return source !== undefined && source.trim() !== ''
}

/** A range and a distribution are told apart: a range says nothing of how likely its values are. */
function sureness({ low, high, distribution }: AssumptionRecord, shown: (si: ResultNumber) => string): string {
  switch (distribution?.kind) {
    case 'normal':
      return `normal, deviation ${shown(distribution.deviation)}`
    case 'lognormal':
      return `lognormal, factor ${distribution.factor}`
    case 'uniform':
    case 'triangular':
      return `${distribution.kind}, ${shown(distribution.low)} to ${shown(distribution.high)}`
    case undefined:
      return low === undefined || high === undefined ? 'not stated' : `range ${shown(low)} to ${shown(high)}`
  }
}

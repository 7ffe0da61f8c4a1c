/** Lists of records drawn as tables, across calculation and result. */
import type { NamedValue } from '../../contracts/index.js'
import { element } from '../dom.js'
import { typesetNodes } from '../quantity/index.js'
import type { TrialMarks } from '../view.js'
import { type RecordTable, recordTable } from './record-table.js'

/** Stated tables stand open; others do where the cell states nothing and every cell can be read as it stands. */
export function renderRecordTables(
  document: Document,
  values: readonly NamedValue[],
  trial?: TrialMarks,
): HTMLElement[] {
  const tried = new Set(trial?.values.map(({ name }) => name))
  const anyStated = values.some((value) => value.stated === true)
  return values
    .map(recordTable)
    .filter((table) => table !== null)
    .map((table) =>
      renderRecordTable(document, table, table.stated || (!anyStated && table.plain), tried.has(table.name)),
    )
}

function renderRecordTable(document: Document, table: RecordTable, open: boolean, tried: boolean): HTMLElement {
  const classOf = (column: number) => (table.heads[column]?.numeric === true ? 'numeric' : null)
  const heads = table.heads.map(({ text }, column) =>
    element(document, 'th', { scope: 'col', class: classOf(column) }, typesetNodes(document, text)),
  )
  const rows = table.rows.map((cells) =>
    element(
      document,
      'tr',
      {},
      cells.map((text, column) => element(document, 'td', { class: classOf(column) }, typesetNodes(document, text))),
    ),
  )
  return element(
    document,
    'details',
    { class: 'record-table', 'data-name': table.name, 'data-trial': tried, open },
    element(
      document,
      'summary',
      {},
      element(document, 'span', { class: 'record-table-label' }, typesetNodes(document, table.label)),
      element(document, 'span', { class: 'record-table-count' }, ` (${table.remark})`),
      tried ? [' ', element(document, 'span', { class: 'tried' }, 'trial')] : null,
    ),
    element(
      document,
      'div',
      { class: 'record-table-field', tabindex: '0', role: 'region', 'aria-label': table.label },
      element(
        document,
        'table',
        {},
        element(document, 'thead', {}, element(document, 'tr', {}, heads)),
        element(document, 'tbody', {}, rows),
      ),
    ),
  )
}

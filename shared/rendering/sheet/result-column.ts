/** The Result column: values, requirements, advisories, errors, log, state. */
import { element } from '../dom.js'
import type { CellView, SheetContext } from '../view.js'
import { aloneContext } from './context.js'
import { renderNoResult } from './empty.js'
import { renderAdvisories, renderError, renderLog, renderState } from './notes.js'
import { renderRequirements } from './requirements.js'
import { renderValues } from './values.js'

export function renderResult(
  document: Document,
  cell: CellView,
  context: SheetContext = aloneContext(cell),
): HTMLElement {
  const column = element(document, 'div', { class: 'result' })
  if (cell.kind === 'rationale') return column
  const result = cell.result
  if (result !== undefined) {
    const assumed = new Set(result.assumptions.map((record) => record.name))
    const parts = [
      result.error === undefined ? null : renderError(document, cell, result.error, context),
      ...renderValues(document, result.values, assumed, cell.trial),
      renderRequirements(document, result.requirements, cell.trial),
      ...renderAdvisories(document, result.advisories),
      renderLog(document, result.log),
    ]
    for (const part of parts) if (part !== null) column.append(part)
  }
  const nothing = column.childElementCount === 0 ? renderNoResult(document, cell) : null
  if (nothing !== null) column.append(nothing)
  column.append(renderState(document, cell, context))
  return column
}

/** The Calculation column: prose of a rationale cell, or heading and source of a sizing cell with its findings. */
import type { Finding } from '../../contracts/index.js'
import { readHeading, renderCode } from '../code/index.js'
import { element } from '../dom.js'
import { renderLines } from '../formula/index.js'
import { renderProse } from '../prose/index.js'
import type { CellView, SheetContext } from '../view.js'
import { aloneContext } from './context.js'
import { renderNoProse, renderNoSource } from './empty.js'

export function renderCalculation(
  document: Document,
  cell: CellView,
  context: SheetContext = aloneContext(cell),
): HTMLElement {
  const column = element(document, 'div', { class: 'calculation' })
  if (cell.kind === 'rationale' && cell.source.trim() === '') column.append(renderNoProse(document))
  else if (cell.kind === 'rationale')
    column.append(element(document, 'div', { class: 'prose' }, renderProse(document, cell.source)))
  else column.append(...sizingParts(document, cell))
  const lines = cell.kind === 'sizing' ? renderLines(document, cell, context) : null
  if (lines !== null) column.append(lines)
  const findings = renderFindings(document, cell)
  if (findings !== null) column.append(findings)
  return column
}

/** The fold is a plain `<details>`, so it opens without a script. */
function sizingParts(document: Document, cell: CellView): HTMLElement[] {
  const heading = readHeading(cell.source)
  const parts: HTMLElement[] = []
  if (heading.title !== '') parts.push(element(document, 'h2', { class: 'heading' }, heading.title))
  if (heading.remark !== '') parts.push(element(document, 'p', { class: 'heading-remark' }, heading.remark))
  if (cell.source.trim() === '') {
    parts.push(renderNoSource(document))
    return parts
  }
  parts.push(
    element(
      document,
      'details',
      { class: 'source-fold', open: !cell.folded },
      element(document, 'summary', {}, heading.lines),
      renderCode(document, cell),
    ),
  )
  return parts
}

/** What the checker found, each at its line; null when there is nothing. */
export function renderFindings(document: Document, cell: CellView): HTMLElement | null {
  if (cell.findings.length === 0) return null
  return element(
    document,
    'ul',
    { class: 'findings', 'aria-label': 'Findings of the check' },
    cell.findings.map((finding) => findingItem(document, cell, finding)),
  )
}

function findingItem(document: Document, cell: CellView, finding: Finding): HTMLElement {
  return element(
    document,
    'li',
    { class: 'finding', 'data-severity': finding.severity, 'data-line': finding.line },
    element(document, 'strong', {}, finding.severity === 'error' ? 'Error' : 'Warning'),
    ', ',
    element(document, 'a', { href: `#cell-${cell.id}-line-${finding.line}` }, `line ${finding.line}`),
    ': ',
    finding.message,
  )
}

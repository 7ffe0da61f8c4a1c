/** Advisories, errors, log and state: what a result says besides its numbers. */
import type { Advisory, CellError } from '../../contracts/index.js'
import { element } from '../dom.js'
import type { CellView, SheetContext } from '../view.js'
import { groupAdvisories, groupWords } from './advisory-groups.js'
import { cellLink } from './context.js'

/** A bordered note per kind of advisory; the word says what it is, so that no colour has to. */
export function renderAdvisories(document: Document, advisories: readonly Advisory[]): HTMLElement[] {
  return groupAdvisories(advisories).map((group) =>
    element(
      document,
      'p',
      { class: 'advisory', 'data-code': group.worst.code },
      element(document, 'strong', {}, 'Advisory'),
      ` (${group.worst.method}): `,
      groupWords(group),
    ),
  )
}

/** `Cell 3, line 4: message`, with the calls in other cells that led there. */
export function renderError(document: Document, cell: CellView, error: CellError, context: SheetContext): HTMLElement {
  const place = error.place
  const calls = (error.calledFrom ?? []).map((call, index) => [
    index === 0 ? ' Called from ' : ', from ',
    cellLink(document, context, call.cell, call.line),
  ])
  return element(
    document,
    'div',
    { class: 'error', 'data-code': error.code },
    element(
      document,
      'p',
      {},
      element(document, 'strong', {}, 'Error'),
      ' in ',
      cellLink(document, context, place?.cell ?? cell.id, place?.line),
      ': ',
      error.message,
      calls.length > 0 ? [calls, '.'] : null,
    ),
  )
}

export function renderLog(document: Document, log: readonly string[]): HTMLElement | null {
  if (log.length === 0) return null
  return element(
    document,
    'ul',
    { class: 'log', 'aria-label': 'Log' },
    log.map((line) => element(document, 'li', {}, line)),
  )
}

const stateNotes: Readonly<Record<CellView['state'], string>> = {
  current: '',
  'out of date': ': these are the last values; the text has changed since',
  computing: '',
  failed: '',
  'held back': '',
  'not computed': '',
}

/** The state in words; `held back` names the cell that failed. */
export function renderState(document: Document, cell: CellView, context: SheetContext): HTMLElement {
  const by = cell.state === 'held back' ? cell.result?.heldBackBy : undefined
  const detail = cell.state === 'out of date' && cell.result === undefined ? '' : stateNotes[cell.state]
  return element(
    document,
    'p',
    { class: 'state', 'data-state': cell.state },
    element(document, 'span', { class: 'state-word' }, cell.state),
    cell.trial === undefined ? null : ', with trial values',
    detail,
    by === undefined ? null : [': ', cellLink(document, context, by), ' failed'],
  )
}

/** The title block of a calculation sheet, with the caution in one line. */
import { cautionLine } from '../../contracts/index.js'
import { element } from '../dom.js'
import { renderRecord } from '../revisions/record-line.js'
import type { SheetView } from '../view.js'

/** What an empty field says; a field that may wait for a person says so. */
const awaiting = 'awaiting'
const none = 'none given'
const unsigned = 'typed, not signed'

export function renderTitleBlock(document: Document, view: SheetView): HTMLElement {
  const block = view.titleBlock
  const fields: readonly (readonly [key: string, name: string, value: string | undefined, empty: string])[] = [
    ['project', 'Project', block.project, none],
    ['prepared', 'Prepared', block.prepared, awaiting],
    ['checked', 'Checked', block.checked, awaiting],
    ['revision', 'Revision', block.revision, 'draft'],
    ['basis', 'Basis', block.basis, none],
    ['approved', 'Approved', block.approved, awaiting],
    ['date', 'Date', block.date, none],
    ['fingerprint', 'Fingerprint', view.fingerprint, 'not known'],
  ]
  return element(
    document,
    'header',
    { class: 'title-block' },
    renderSubject(document, view),
    element(
      document,
      'dl',
      { class: 'title-fields' },
      fields.map(([key, name, value, empty]) =>
        field(
          document,
          key,
          name,
          value,
          empty,
          renderRecord(document, key, view.revision) ?? typedOnly(document, key, value),
        ),
      ),
    ),
  )
}

function renderSubject(document: Document, view: SheetView): HTMLElement {
  const question = view.titleBlock.question ?? ''
  return element(
    document,
    'div',
    { class: 'subject' },
    element(document, 'p', { class: 'field-name' }, 'Subject'),
    element(document, 'h1', { class: 'title' }, view.title),
    question === '' ? null : element(document, 'p', { class: 'question' }, question),
  )
}

/** Typed words must not pass for an issued revision or a signature, so where there is no record they say what they are. */
function typedOnly(document: Document, key: string, value: string | undefined): HTMLElement | null {
  const said = { revision: 'typed, not issued', prepared: unsigned, checked: unsigned, approved: unsigned }[key]
  if (said === undefined || value === undefined || value.trim() === '') return null
  return element(document, 'dd', { class: 'record' }, said)
}

/** Words that were typed stand first; what the records of revisions say stands below and cannot be typed. */
function field(
  document: Document,
  key: string,
  name: string,
  value: string | undefined,
  empty: string,
  record: HTMLElement | null,
): HTMLElement {
  const missing = value === undefined || value.trim() === ''
  const words = record === null ? empty : ''
  return element(
    document,
    'div',
    { class: 'field', 'data-field': key },
    element(document, 'dt', { class: 'field-name' }, name),
    element(document, 'dd', { class: missing ? 'missing' : null }, missing ? words : value),
    record,
  )
}

export function renderCaution(document: Document): HTMLElement {
  return element(
    document,
    'p',
    { class: 'caution', role: 'note' },
    cautionLine,
    ' ',
    element(document, 'a', { href: '/cautions' }, 'Full cautions'),
  )
}

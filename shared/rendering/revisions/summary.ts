/** One revision in words: what it is, what it was issued with, who signed it. */
import {
  type RevisionSummary,
  type SignatureSummary,
  signatureRoles,
  type UnsettledCell,
} from '../../contracts/index.js'
import { element } from '../dom.js'
import { momentOf, shortFingerprint, signatureAs } from './standing.js'

export function renderSummary(document: Document, revision: RevisionSummary): HTMLElement[] {
  const { fingerprint, issued, purpose, unsettled, altered, signatures } = revision
  return [
    element(
      document,
      'p',
      { class: 'revision-facts' },
      element(
        document,
        'span',
        { class: 'fingerprint', title: `fingerprint ${fingerprint}` },
        shortFingerprint(fingerprint),
      ),
      ' ',
      element(document, 'time', { datetime: issued }, `issued ${momentOf(issued)}`),
    ),
    ...(purpose === undefined
      ? []
      : [element(document, 'p', { class: 'revision-purpose' }, isolated(document, purpose))]),
    ...(altered === undefined
      ? []
      : [
          element(
            document,
            'p',
            { class: 'revision-altered', role: 'alert' },
            element(document, 'strong', {}, 'Altered.'),
            ` ${sentence(altered)} No signature of it counts.`,
          ),
        ]),
    ...(unsettled.length === 0
      ? []
      : [element(document, 'p', { class: 'revision-unsettled' }, `Issued with ${unsettledWords(unsettled)}.`)]),
    ...(altered === undefined ? [renderSignatures(document, signatures)] : []),
  ]
}

/** All three, also those that nobody has given yet. */
export function renderSignatures(document: Document, signatures: readonly SignatureSummary[]): HTMLElement {
  return element(
    document,
    'dl',
    { class: 'signatures' },
    signatureRoles.map((role) => {
      const signature = signatureAs(role, signatures)
      return element(
        document,
        'div',
        { class: 'signature', 'data-role': role },
        element(document, 'dt', {}, role),
        signature === undefined
          ? element(document, 'dd', { class: 'missing' }, 'awaiting')
          : element(document, 'dd', {}, signatureParts(document, signature)),
      )
    }),
  )
}

function signatureParts(document: Document, { name, date, remark, handCheck }: SignatureSummary): HTMLElement[] {
  const parts = [
    element(
      document,
      'p',
      {},
      element(document, 'strong', {}, isolated(document, name)),
      ', ',
      element(document, 'time', { datetime: date }, momentOf(date)),
    ),
  ]
  if (remark !== undefined) parts.push(element(document, 'p', { class: 'remark' }, isolated(document, remark)))
  if (handCheck !== undefined) {
    const { what, expected, found, within } = handCheck
    parts.push(
      element(
        document,
        'p',
        { class: 'hand-check' },
        'Checked by hand: ',
        isolated(document, what),
        '; expected ',
        isolated(document, expected),
        ', in the document ',
        isolated(document, found),
        ', within ',
        isolated(document, within),
        '.',
      ),
    )
  }
  return parts
}

/** Words that people wrote keep their direction to themselves. */
export function isolated(document: Document, words: string): HTMLElement {
  return element(document, 'bdi', {}, words)
}

/** `cell 4 failed, cells 5 and 6 held back` */
export function unsettledWords(cells: readonly UnsettledCell[]): string {
  return cells.map(({ number, state }) => `cell ${number} ${state}`).join(', ')
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}

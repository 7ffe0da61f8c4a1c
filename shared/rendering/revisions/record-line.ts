/** What the records of revisions say in a field of the title block. */
import { SignatureRole } from '../../contracts/index.js'
import { element } from '../dom.js'
import { dayOf, type RevisionStanding, shortFingerprint, signatureAs, standingWords } from './standing.js'
import { isolated } from './summary.js'

/** `B 3f9a12cd, changed since`; `B: A. Bell, 2026-11-25`; nothing where the records say nothing of the field. */
export function renderRecord(
  document: Document,
  field: string,
  standing: RevisionStanding | undefined,
): HTMLElement | null {
  if (standing === undefined) return null
  const { name, fingerprint, issued, signatures } = standing.mark
  if (field === 'revision') {
    const print = element(
      document,
      'span',
      { class: 'fingerprint', title: `fingerprint ${fingerprint}` },
      shortFingerprint(fingerprint),
    )
    return line(document, standing, `${name} `, print, `, ${standingWords(standing)}`)
  }
  if (standing.state === 'altered') return null
  if (field === 'date') return line(document, standing, `${name} issued ${dayOf(issued)}`)
  const role = SignatureRole.safeParse(field)
  const signature = role.success ? signatureAs(role.data, signatures) : undefined
  if (signature === undefined) return role.success ? line(document, standing, `${name}: awaiting`) : null
  return line(document, standing, `${name}: `, isolated(document, signature.name), `, ${dayOf(signature.date)}`)
}

function line(document: Document, { state }: RevisionStanding, ...parts: (string | HTMLElement)[]): HTMLElement {
  return element(document, 'dd', { class: 'record', 'data-state': state }, parts)
}

/** Who may sign what and in which order. Names are stated, nobody proves them here; so the rules are about what is stated. */
import {
  type RevisionName,
  type RevisionSummary,
  type SignatureRole,
  type SignRevision,
  signatureRoles,
  Trouble,
} from '../../shared/contracts/index.js'

/** @throws Trouble REVISION_ALTERED or SIGNATURE_REFUSED */
export function checkSignature(revision: RevisionSummary, { role, name, fingerprint }: SignRevision): void {
  if (revision.altered !== undefined)
    throw new Trouble('REVISION_ALTERED', { name: revision.name, reason: revision.altered })
  if (samePerson(name) === '') refuse('it has no name; write the name of the person who signs.')
  if (fingerprint !== revision.fingerprint)
    refuse(
      `it names the fingerprint ${fingerprint.slice(0, 8)}, and revision ${revision.name} has ${revision.fingerprint.slice(0, 8)}; open the revision again.`,
    )
  const given = new Map(revision.signatures.map((signature) => [signature.role, signature.name]))
  checkOrder(revision.name, role, given)
  const preparer = given.get('prepared')
  if (preparer !== undefined && samePerson(preparer) === samePerson(name))
    refuse(`${preparer} prepared revision ${revision.name}, and it must be ${role} by somebody else.`)
}

function checkOrder(revision: RevisionName, role: SignatureRole, given: ReadonlyMap<SignatureRole, string>): void {
  const already = given.get(role)
  if (already !== undefined)
    refuse(`revision ${revision} was signed as ${role} by ${already}; it is signed once as each.`)
  const missing = signatureRoles.slice(0, signatureRoles.indexOf(role)).find((earlier) => !given.has(earlier))
  if (missing !== undefined)
    refuse(`${role} comes after ${missing}, and nobody has signed revision ${revision} as ${missing} yet.`)
}

/** How a name is compared: neither case nor spaces count, nor marks that nobody sees. */
export function samePerson(name: string): string {
  return name
    .normalize('NFKC')
    .replace(/[\s\p{Cf}\p{Cc}]+/gu, '')
    .toLowerCase()
}

function refuse(reason: string): never {
  throw new Trouble('SIGNATURE_REFUSED', { reason })
}

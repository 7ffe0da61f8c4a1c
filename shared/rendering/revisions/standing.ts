/** How the text on the sheet stands to the latest revision. */
import type { RevisionMark, SignatureRole, SignatureSummary } from '../../contracts/index.js'

/** As it is printed: eight characters tell revisions of one notebook apart. */
export { shortFingerprint } from '../../contracts/provenance.js'

export interface RevisionStanding {
  readonly mark: RevisionMark
  /** It is the revision itself that is shown; or the text, or only the kernel that computes it, is another one than was issued; or the revision is not what was written. */
  readonly state: 'this one' | 'as issued' | 'changed since' | 'other kernel' | 'altered'
}

/** `textFingerprint` is of the text shown, `kernelHash` of the kernel at hand. */
export function revisionStanding(mark: RevisionMark, textFingerprint: string, kernelHash: string): RevisionStanding {
  if (mark.altered !== undefined) return { mark, state: 'altered' }
  if (mark.textFingerprint !== textFingerprint) return { mark, state: 'changed since' }
  return { mark, state: mark.kernelHash === kernelHash ? 'as issued' : 'other kernel' }
}

const words: Readonly<Record<RevisionStanding['state'], string>> = {
  'this one': 'as issued',
  'as issued': 'as issued',
  'changed since': 'changed since',
  'other kernel': 'as issued, the kernel changed since',
  altered: 'altered on disk, not to be relied on',
}

export const standingWords = ({ state }: RevisionStanding) => words[state]

/** 2026-11-25, of the server's clock. */
export const dayOf = (moment: string) => moment.slice(0, 10)
/** 2026-11-25 07:12 UTC */
export const momentOf = (moment: string) => `${moment.slice(0, 10)} ${moment.slice(11, 16)} UTC`

export function signatureAs(
  role: SignatureRole,
  signatures: readonly SignatureSummary[],
): SignatureSummary | undefined {
  return signatures.find((signature) => signature.role === role)
}

/** What may be said of the revisions of a notebook, from records that were verified. */
import { textFingerprint } from '../../kernel/cells/revision/index.js'
import {
  placeOfRevision,
  type RevisionList,
  type RevisionMark,
  type RevisionName,
  type RevisionRecord,
  type RevisionSummary,
  revisionNameAt,
  type SignatureRecord,
  type SignatureSummary,
} from '../../shared/contracts/index.js'
import type { ChainLink } from './chain.js'

export function summaries(links: readonly ChainLink[]): RevisionList {
  const revisions = links.flatMap((link) => summaryOf(link, links))
  return { revisions, troubles: troublesOf(links), next: nextName(links) }
}

/** What the title block says of the latest one. */
export function markOf({ revisions }: RevisionList): RevisionMark | undefined {
  const latest = revisions.at(-1)
  if (latest === undefined) return undefined
  const { purpose: _, unsettled: __, ...mark } = latest
  return mark
}

export function revisionLink(links: readonly ChainLink[], name: RevisionName): ChainLink | undefined {
  return links.find((link) => link.record?.kind === 'revision' && link.record.name === name)
}

function summaryOf(link: ChainLink, links: readonly ChainLink[]): RevisionSummary[] {
  const { record, altered } = link
  if (record?.kind !== 'revision') return []
  const { name, issued, purpose, fingerprint, content } = record
  return [
    {
      name,
      issued,
      ...(purpose === undefined ? {} : { purpose }),
      fingerprint,
      textFingerprint: textFingerprint(content.text),
      kernelHash: content.kernelHash,
      unsettled: content.unsettled,
      ...(altered === undefined ? {} : { altered }),
      signatures: signaturesOf(link, record, links),
    },
  ]
}

/** None of a revision that does not hold itself: nobody signed what is there now. */
function signaturesOf(link: ChainLink, record: RevisionRecord, links: readonly ChainLink[]): SignatureSummary[] {
  if (link.altered !== undefined) return []
  return links.flatMap((each) => {
    if (each.record?.kind !== 'signature' || each.altered !== undefined || !signs(each.record, link, record)) return []
    const { role, name, date, remark, handCheck, fingerprint } = each.record
    return [
      {
        role,
        name,
        date,
        ...(remark === undefined ? {} : { remark }),
        ...(handCheck === undefined ? {} : { handCheck }),
        fingerprint,
      },
    ]
  })
}

function signs(signature: SignatureRecord, link: ChainLink, revision: RevisionRecord): boolean {
  return (
    signature.revision === revision.name &&
    signature.signs === link.seal &&
    signature.fingerprint === revision.fingerprint
  )
}

function troublesOf(links: readonly ChainLink[]): string[] {
  return links.flatMap(({ record, claims, altered }, index) => {
    if (record === undefined) {
      const what = claims === undefined ? `Record ${index + 1}` : `Revision ${claims}`
      return [`${what} of this notebook cannot be read: ${altered ?? ''}`]
    }
    if (record.kind === 'revision') return []
    const what = `The signature "${record.role}" of revision ${record.revision}, ${record.name}, does not count:`
    if (altered !== undefined) return [`${what} ${altered}`]
    const link = revisionLink(links, record.revision)
    if (link?.record?.kind !== 'revision') return [`${what} that revision is not here.`]
    if (link.altered !== undefined) return [`${what} the revision is not what was signed.`]
    return signs(record, link, link.record) ? [] : [`${what} it was given for another content.`]
  })
}

/** One after the last, also where a record that cannot be read may have been a revision: no letter is given twice. */
function nextName(links: readonly ChainLink[]): RevisionName {
  const named = links.flatMap(({ record, claims = [] }) => {
    if (record === undefined) return claims
    return record.kind === 'revision' ? record.name : record.revision
  })
  const unreadable = links.filter(({ record, claims }) => record === undefined && claims === undefined).length
  const last = Math.max(0, ...named.map(placeOfRevision))
  return revisionNameAt(Math.max(last, new Set(named).size + unreadable) + 1)
}

/**
 * Reading the records of a notebook and verifying them: each against its own seal, each revision against its fingerprint, and each
 * against the one before it. Whoever alters a record, swaps two or takes one from between breaks one of these.
 */
import { contentFingerprint, hashOf, sealOf } from '../../kernel/cells/revision/index.js'
import { ChainedRecord, type Fingerprint, RevisionName } from '../../shared/contracts/index.js'

export interface ChainLink {
  /** Absent when it cannot be read as a record at all. */
  readonly record?: ChainedRecord
  /** Of a record that cannot be read: the revision it says it is, as far as that can be told. */
  readonly claims?: RevisionName
  /** What the record after this one must name. */
  readonly seal: Fingerprint
  /** In a sentence, why it is not what was written; absent when it holds. */
  readonly altered?: string
}

export interface KeptText {
  /** Of the text as it was read just now. */
  readonly hash: string
  readonly text: string
}

export interface LinkMemory {
  get(hash: string): ChainLink | undefined
  set(hash: string, link: ChainLink): void
}

/** The records in the order in which they were added. `known` holds what was read before, by the hash of its text. */
export function readChain(texts: readonly KeptText[], known: LinkMemory = new Map()): readonly ChainLink[] {
  const links = texts.map(({ hash, text }) => {
    const link = known.get(hash) ?? readLink(text)
    known.set(hash, link)
    return link
  })
  return links.map((link, index) => {
    const next = links[index + 1]
    if (link.altered !== undefined) return link
    if (next?.altered === undefined && next?.record !== undefined && next.record.previous !== link.seal)
      return {
        ...link,
        altered: 'the record after it names another one; it, or what followed it, was altered or removed.',
      }
    if (index === 0 && link.record?.previous !== null)
      return { ...link, altered: 'it is not the first record, and the one before it was removed.' }
    return link
  })
}

function readLink(text: string): ChainLink {
  const value = parsed(text)
  const raw = value === undefined ? {} : value
  const claimed = RevisionName.safeParse(raw.kind === 'revision' ? raw.name : undefined)
  const claims = claimed.success ? { claims: claimed.data } : {}
  const seal = value === undefined ? hashOf(text) : sealOf(raw)
  const record = ChainedRecord.safeParse(value)
  if (!record.success) return { ...claims, seal, altered: 'its file cannot be read as it was written.' }
  if (record.data.seal !== seal)
    return { ...claims, record: record.data, seal, altered: 'its file was altered after it was written.' }
  if (record.data.kind === 'revision' && contentFingerprint(record.data.content) !== record.data.fingerprint)
    return {
      ...claims,
      record: record.data,
      seal,
      altered: 'its content does not have the fingerprint that it states.',
    }
  return { ...claims, record: record.data, seal }
}

function parsed(text: string): Readonly<Record<string, unknown>> | undefined {
  try {
    const value: unknown = JSON.parse(text)
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Record<string, unknown>)
      : undefined
  } catch {
    return undefined
  }
}

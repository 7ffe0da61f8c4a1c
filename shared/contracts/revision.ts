/**
 * Revisions and their signatures: records that are written once, each sealed with a hash over itself and naming the seal of the
 * record before it. What a record says is believed only after its seal, its fingerprint and its place in the chain were verified.
 */
import { z } from 'zod'
import { longestCellNumber } from './cell-number.js'
import { CellId, Fingerprint } from './identifiers.js'
import { limits } from './limits.js'
import { CellKind, TitleBlock } from './notebook.js'
import { CellResult } from './results.js'

export const revisionFormat = 'hoverfolio revision'
export const revisionVersion = 1

/** A, B, C ... Z, AA, AB ... */
export const RevisionName = z
  .string()
  .regex(/^[A-Z]{1,4}$/, 'a revision is named by capital letters: A, B, C ... Z, AA')
  .brand('RevisionName')
export type RevisionName = z.infer<typeof RevisionName>

/** The name of the revision at a place counted from 1. */
export function revisionNameAt(place: number): RevisionName {
  let name = ''
  for (let rest = place; rest > 0; rest = Math.floor((rest - 1) / 26))
    name = String.fromCharCode(65 + ((rest - 1) % 26)) + name
  return RevisionName.parse(name)
}

/** The place of a name, counted from 1. */
export function placeOfRevision(name: RevisionName): number {
  return [...name].reduce((place, letter) => place * 26 + letter.charCodeAt(0) - 64, 0)
}

/** Fields of the title block that say what the sheet is about. The others say how far it has got, and signing must not change the text. */
export const FrozenTitleBlock = TitleBlock.pick({ question: true, project: true, basis: true })

/** The text that a revision freezes: cells in page order, without keys that only order them. */
export const FrozenText = z.strictObject({
  title: z.string().max(limits.titleCharacters),
  titleBlock: FrozenTitleBlock,
  cells: z
    .array(
      z.strictObject({
        id: CellId,
        kind: CellKind,
        number: z.string().max(longestCellNumber),
        source: z.array(z.string().max(limits.sourceCharacters)),
      }),
    )
    .max(limits.cells),
})
export type FrozenText = z.infer<typeof FrozenText>

/** A sizing cell without a current, computed result. */
export const UnsettledCell = z.strictObject({
  cell: CellId,
  number: z.string().max(longestCellNumber),
  state: z.enum(['out of date', 'computing', 'failed', 'held back', 'not computed']),
})
export type UnsettledCell = z.infer<typeof UnsettledCell>

/** What is fingerprinted and signed. */
export const RevisionContent = z.strictObject({
  text: FrozenText,
  /** In page order; a cell that was out of date has none. Advisories are part of them. */
  results: z.array(CellResult).max(limits.cells),
  kernelHash: z.string().max(128),
  /** Names of the kernel that the cells use, `rotor.hover`, in alphabetical order. */
  methods: z.array(z.string().max(200)).max(5000),
  /** Cells with which it was issued although they had no current values. */
  unsettled: z.array(UnsettledCell).max(limits.cells),
})
export type RevisionContent = z.infer<typeof RevisionContent>

const chained = {
  format: z.literal(revisionFormat),
  version: z.literal(revisionVersion),
  /** Seal of the record before this one; null for the first. */
  previous: Fingerprint.nullable(),
  /** Hash over everything else in the record. */
  seal: Fingerprint,
}

const purpose = z.string().max(limits.titleCharacters)
const moment = z.iso.datetime()

export const RevisionRecord = z.strictObject({
  ...chained,
  kind: z.literal('revision'),
  name: RevisionName,
  /** By the server's clock. */
  issued: moment,
  /** What the revision is for, in one line. */
  purpose: purpose.optional(),
  /** Hash over `content`: what is shown, signed and printed. */
  fingerprint: Fingerprint,
  content: RevisionContent,
})
export type RevisionRecord = z.infer<typeof RevisionRecord>

/** In the order in which they are given. */
export const signatureRoles = ['prepared', 'checked', 'approved'] as const
export const SignatureRole = z.enum(signatureRoles)
export type SignatureRole = z.infer<typeof SignatureRole>

const short = z.string().trim().min(1).max(100)

/** Something worked out by hand and found in the document. */
export const HandCheck = z.strictObject({
  what: z.string().trim().min(1).max(500),
  expected: short,
  found: short,
  within: short,
})
export type HandCheck = z.infer<typeof HandCheck>

const stated = {
  role: SignatureRole,
  name: short,
  remark: z.string().max(1000).optional(),
  handCheck: HandCheck.optional(),
  /** Of the revision as the person saw it. */
  fingerprint: Fingerprint,
}

export const SignatureRecord = z.strictObject({
  ...chained,
  kind: z.literal('signature'),
  revision: RevisionName,
  /** Seal of the revision's record. */
  signs: Fingerprint,
  ...stated,
  /** By the server's clock. */
  date: moment,
})
export type SignatureRecord = z.infer<typeof SignatureRecord>

export const ChainedRecord = z.discriminatedUnion('kind', [RevisionRecord, SignatureRecord])
export type ChainedRecord = z.infer<typeof ChainedRecord>

/* ---- Requests and answers ---- */

/** POST /api/notebooks/:id/revisions -> RevisionSummary. Refused with REVISION_UNSETTLED unless `withUnsettled`. */
export const IssueRevision = z.strictObject({
  purpose: purpose.optional(),
  withUnsettled: z.boolean().optional(),
})
export type IssueRevision = z.infer<typeof IssueRevision>

/** POST /api/notebooks/:id/revisions/:name/signatures -> RevisionSummary */
export const SignRevision = z.strictObject(stated)
export type SignRevision = z.infer<typeof SignRevision>

export const SignatureSummary = SignatureRecord.pick({
  role: true,
  name: true,
  date: true,
  remark: true,
  handCheck: true,
  fingerprint: true,
})
export type SignatureSummary = z.infer<typeof SignatureSummary>

export const RevisionSummary = z.strictObject({
  name: RevisionName,
  issued: z.string(),
  purpose: z.string().optional(),
  fingerprint: Fingerprint,
  /** Of the text alone, so that a page can tell whether its own differs. */
  textFingerprint: Fingerprint,
  kernelHash: z.string(),
  unsettled: z.array(UnsettledCell),
  /** Why it cannot be relied on: its file, or one beside it, is not what was written. Then no signature of it is given. */
  altered: z.string().optional(),
  /** Those that hold. */
  signatures: z.array(SignatureSummary),
})
export type RevisionSummary = z.infer<typeof RevisionSummary>

/** GET /api/notebooks/:id/revisions -> RevisionList, oldest first. */
export const RevisionList = z.strictObject({
  revisions: z.array(RevisionSummary),
  /** Records that cannot be read, or that sign nothing that stands. */
  troubles: z.array(z.string()),
  /** What issuing now would be called. */
  next: RevisionName,
})
export type RevisionList = z.infer<typeof RevisionList>

/** What the title block says of the latest revision; absent from a notebook that has none. */
export const RevisionMark = RevisionSummary.pick({
  name: true,
  issued: true,
  fingerprint: true,
  textFingerprint: true,
  kernelHash: true,
  altered: true,
  signatures: true,
})
export type RevisionMark = z.infer<typeof RevisionMark>

/** GET /api/notebooks/:id/revisions/:name -> RevisionReading: the record with what was found on verifying it. */
export const RevisionReading = z.strictObject({ summary: RevisionSummary, content: RevisionContent })
export type RevisionReading = z.infer<typeof RevisionReading>

/**
 * JSON in one spelling: keys of every object in order of their code units, no white space, line breaks within text as line feeds. What a hash
 * is taken over, so that neither the order of keys nor line endings count, and every character does.
 */
export function canonicalJson(value: unknown): string {
  if (typeof value === 'string') return JSON.stringify(value.replace(/\r\n?/g, '\n'))
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item ?? null)).join(',')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null'
  const entries = Object.entries(value).filter(([, entry]) => entry !== undefined)
  entries.sort(([a], [b]) => (a < b ? -1 : 1))
  return `{${entries.map(([key, entry]) => `${JSON.stringify(key)}:${canonicalJson(entry)}`).join(',')}}`
}

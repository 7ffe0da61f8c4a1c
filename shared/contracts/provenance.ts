/** What every export says of where it comes from, beside the caution: document, revision, fingerprint. */
import { z } from 'zod'
import { Fingerprint } from './identifiers.js'
import type { TitleBlock } from './notebook.js'
import type { RevisionMark } from './revision.js'

export const Provenance = z.strictObject({
  title: z.string(),
  /** `B, issued`; `after B, changed since`; `A, worked example (not issued)`; `draft (not issued)`. */
  revision: z.string(),
  /** Of text, results, kernel and methods as exported: the one that a revision issued at that moment would have. */
  fingerprint: Fingerprint,
})
export type Provenance = z.infer<typeof Provenance>

/** `4c1f 90ae`: enough to compare by eye. */
export function shortFingerprint(fingerprint: string): string {
  return `${fingerprint.slice(0, 4)} ${fingerprint.slice(4, 8)}`
}

/** The revision that an export is of: the latest issued one, as long as nothing changed since; else what its author wrote. */
export function revisionWords(
  titleBlock: Pick<TitleBlock, 'revision'> | undefined,
  mark: Pick<RevisionMark, 'name' | 'fingerprint' | 'altered'> | undefined,
  fingerprint: Fingerprint,
): string {
  if (mark !== undefined && mark.altered === undefined && mark.fingerprint === fingerprint)
    return `${mark.name}, issued`
  if (mark !== undefined) return `after ${mark.name}, changed since`
  const written = titleBlock?.revision?.trim() ?? ''
  return `${written === '' ? 'draft' : written} (not issued)`
}

/** One line for the foot of a figure, the head of a table, the end of a file. */
export function provenanceLine({ title, revision, fingerprint }: Provenance): string {
  return `${title.trim() === '' ? 'Untitled' : title.trim()} · revision ${revision} · fingerprint ${shortFingerprint(fingerprint)}`
}

/** What a revision becomes outside its notebook: a file to keep, and the beginning of another notebook. */
import { cautionLine, limits, type Notebook, notebookFormat, notebookVersion } from '../../shared/contracts/index.js'
import type { ReadRevision } from './revisions.js'

/** The records as they lie on disk, with what was found on verifying them. */
export function revisionFile({ summary, record, signatures }: ReadRevision): string {
  const { fingerprint, altered } = summary
  const file = {
    caution: cautionLine,
    fingerprint,
    ...(altered === undefined ? {} : { altered }),
    revision: record,
    signatures,
  }
  return `${JSON.stringify(file, null, 2)}\n`
}

/** Text and margin numbers as they were frozen; who prepared and checked them is left behind. */
export function beginFrom({ record }: ReadRevision): Notebook {
  const { text } = record.content
  const from = ` (from revision ${record.name})`
  return {
    format: notebookFormat,
    version: notebookVersion,
    title: `${text.title.slice(0, limits.titleCharacters - from.length)}${from}`,
    ...(Object.keys(text.titleBlock).length === 0 ? {} : { titleBlock: text.titleBlock }),
    cells: text.cells.map(({ id, kind, number, source }) => ({ id, kind, number, source })),
  }
}

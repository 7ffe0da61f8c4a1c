/** What the server put into the page for its script. */
import type { PageData } from '../../shared/contracts/index.js'
import type { DocumentSnapshot } from '../live/document.js'

/**
 * The data of the page. It is the server's own and was checked there; here only its presence is asked for, so that the first
 * view does not wait for a second validation.
 */
export function readPageData(document: Document): PageData {
  const text = document.getElementById('page-data')?.textContent
  if (text === undefined || text === null) throw new Error('The page came without its data; load it again.')
  return JSON.parse(text) as PageData
}

/** The notebook in the page as the live document would show it. */
export function snapshotOfPage({ notebook }: PageData): DocumentSnapshot {
  return {
    title: notebook.title,
    cells: notebook.cells.map((cell) => ({
      id: cell.id,
      kind: cell.kind,
      source: cell.source.join('\n'),
      order: cell.order ?? '',
      ...(cell.number === undefined || cell.number === '' ? {} : { number: cell.number }),
    })),
    retired: [],
  }
}

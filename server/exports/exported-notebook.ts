/** A notebook of the server as its exports show it: the live text with the results that belong to it. */
import { textFingerprint } from '../../kernel/cells/revision/index.js'
import type { NotebookId, Provenance } from '../../shared/contracts/index.js'
import { type Readers, revisionStanding, type SheetView } from '../../shared/rendering/index.js'
import type { ServerKernel } from '../kernel.js'
import type { LiveDocuments } from '../live/index.js'
import { sheetView } from '../pages/index.js'
import { type ResultShelf, sizingCells } from '../results/index.js'
import type { Revisions } from '../revisions/index.js'
import { provenanceOf } from './provenance.js'

export interface ExportedNotebook {
  readonly view: SheetView
  readonly provenance: Provenance
  readonly readers: Readers
}

export interface ExportParts {
  readonly documents: LiveDocuments
  readonly shelf: ResultShelf
  readonly revisions: Revisions
  readonly kernel: ServerKernel
}

export async function exportedNotebook(
  id: NotebookId,
  { documents, shelf, revisions, kernel }: ExportParts,
): Promise<ExportedNotebook> {
  const document = await documents.get(id)
  const [shelved, mark, frozen] = await Promise.all([shelf.read(document), revisions.mark(id), revisions.live(id)])
  const { notebook } = document
  const cells = sizingCells(document)
  const formulas = (await kernel.formulas?.(cells)) ?? new Map()
  const readers = (await kernel.readers?.(cells)) ?? (() => [])
  const view = sheetView(id, notebook, shelved, formulas)
  const standing = mark && revisionStanding(mark, textFingerprint(frozen.text), kernel.hash)
  return {
    view: standing === undefined ? view : { ...view, revision: standing },
    provenance: provenanceOf(frozen, notebook.titleBlock, mark),
    readers,
  }
}

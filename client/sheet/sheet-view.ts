/** From the live document and the standings of its cells to what the renderer is given. DOM-free. */
import type { CellId, Finding, TitleBlock } from '../../shared/contracts/index.js'
import type { CellView, SheetView } from '../../shared/rendering/index.js'
import type { Standing } from '../compute/result-book.js'
import type { DocumentSnapshot } from '../live/document.js'

export interface SheetSources {
  readonly id: string
  readonly titleBlock: TitleBlock
  /** Numbers that cells keep ("3a"); the place on the page for the others. */
  readonly numbers: ReadonlyMap<CellId, string>
  isFolded(id: CellId): boolean
  standing(id: CellId): Standing
  findings(id: CellId): readonly Finding[]
}

export function sheetViewOf(snapshot: DocumentSnapshot, sources: SheetSources): SheetView {
  let figures = 1
  const cells = snapshot.cells.map((cell, index): CellView => {
    const standing: Standing = cell.kind === 'sizing' ? sources.standing(cell.id) : { state: 'current' }
    const firstFigure = figures
    figures += standing.result?.figures.length ?? 0
    return {
      id: cell.id,
      kind: cell.kind,
      number: sources.numbers.get(cell.id) ?? String(index + 1),
      source: cell.source,
      findings: cell.kind === 'sizing' ? sources.findings(cell.id) : [],
      folded: sources.isFolded(cell.id),
      firstFigure,
      ...standing,
    }
  })
  return { id: sources.id, title: snapshot.title, titleBlock: sources.titleBlock, cells }
}

export type PartName = 'number' | 'reference' | 'calculation' | 'result' | 'figures'

/** The parts of a cell that a change from one view to the next touches. */
export function changedParts(before: CellView, after: CellView, renumbered: boolean): readonly PartName[] {
  const parts: PartName[] = []
  if (before.number !== after.number) parts.push('number')
  const sameResult = sameData(before.result, after.result)
  if (!sameResult) parts.push('reference')
  if (before.source !== after.source || before.folded !== after.folded || !sameData(before.findings, after.findings))
    parts.push('calculation')
  if (!sameResult || before.state !== after.state || renumbered) parts.push('result')
  if (before.firstFigure !== after.firstFigure || !sameData(before.result?.figures, after.result?.figures))
    parts.push('figures')
  return parts
}

function sameData(a: unknown, b: unknown): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}

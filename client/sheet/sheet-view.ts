/** From the live document and the standings of its cells to what the renderer is given. DOM-free. */
import type { CellId, CellResult, Finding, Formula, TitleBlock } from '../../shared/contracts/index.js'
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
  formulas(id: CellId): readonly Formula[] | undefined
}

export function sheetViewOf(snapshot: DocumentSnapshot, sources: SheetSources): SheetView {
  const numbers = new Map(
    snapshot.cells.map((cell, index) => [cell.id, sources.numbers.get(cell.id) ?? String(index + 1)]),
  )
  const numbered = (text: string) => withCellNumbers(text, numbers)
  let figures = 1
  const cells = snapshot.cells.map((cell): CellView => {
    const standing: Standing =
      cell.kind === 'sizing' ? numberedStanding(sources.standing(cell.id), numbered) : { state: 'current' }
    const formulas = cell.kind === 'sizing' ? sources.formulas(cell.id) : undefined
    const firstFigure = figures
    figures += standing.result?.figures.length ?? 0
    return {
      id: cell.id,
      kind: cell.kind,
      number: numbers.get(cell.id) ?? '',
      source: cell.source,
      findings: (cell.kind === 'sizing' ? sources.findings(cell.id) : []).map((finding) => ({
        ...finding,
        message: numbered(finding.message),
      })),
      folded: sources.isFolded(cell.id),
      firstFigure,
      ...(formulas === undefined ? {} : { formulas }),
      ...standing,
    }
  })
  return { id: sources.id, title: snapshot.title, titleBlock: sources.titleBlock, cells }
}

/** Messages name cells by id; readers know them by the number in the margin. */
export function withCellNumbers(text: string, numbers: ReadonlyMap<string, string>): string {
  return text.replace(/\bcell "([A-Za-z0-9_-]{1,64})"/g, (whole, id: string) => {
    const number = numbers.get(id)
    return number === undefined ? whole : `cell ${number}`
  })
}

function numberedStanding(standing: Standing, numbered: (text: string) => string): Standing {
  const { result } = standing
  if (result?.error === undefined) return standing
  const message = numbered(result.error.message)
  if (message === result.error.message) return standing
  const shown: CellResult = { ...result, error: { ...result.error, message } }
  return { ...standing, result: shown }
}

export type PartName = 'number' | 'reference' | 'calculation' | 'lines' | 'result' | 'figures'

/** The parts of a cell that a change from one view to the next touches. */
export function changedParts(before: CellView, after: CellView, renumbered: boolean): readonly PartName[] {
  const parts: PartName[] = []
  if (before.number !== after.number) parts.push('number')
  const sameResult = sameData(before.result, after.result)
  if (!sameResult) parts.push('reference')
  if (before.source !== after.source || before.folded !== after.folded || !sameData(before.findings, after.findings))
    parts.push('calculation')
  else if (!sameResult || before.state !== after.state || !sameFormulas(before, after)) parts.push('lines')
  if (!sameResult || before.state !== after.state || renumbered) parts.push('result')
  if (before.firstFigure !== after.firstFigure || !sameData(before.result?.figures, after.result?.figures))
    parts.push('figures')
  return parts
}

/** What the server drew shows the formulas of its text, though the page is not told them. */
function sameFormulas(before: CellView, after: CellView): boolean {
  return before.formulas === after.formulas || (before.formulas === undefined && before.source === after.source)
}

function sameData(a: unknown, b: unknown): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}

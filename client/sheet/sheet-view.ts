/** From the live document and the standings of its cells to what the renderer is given. DOM-free. */
import {
  type CellId,
  type Finding,
  type Formula,
  marginNumbers,
  type TitleBlock,
} from '../../shared/contracts/index.js'
import {
  type CellView,
  numberedFinding,
  numberedResult,
  type SheetView,
  usedMethods,
} from '../../shared/rendering/page.js'
import type { Standing } from '../compute/result-book.js'
import type { DocumentSnapshot } from '../live/document.js'

export interface SheetSources {
  readonly id: string
  readonly titleBlock: TitleBlock
  isFolded(id: CellId): boolean
  standing(id: CellId): Standing
  findings(id: CellId): readonly Finding[]
  formulas(id: CellId): readonly Formula[] | undefined
}

export function sheetViewOf(snapshot: DocumentSnapshot, sources: SheetSources): SheetView {
  const numbers = marginNumbers(snapshot.cells)
  let figures = 1
  const cells = snapshot.cells.map((cell): CellView => {
    const standing: Standing =
      cell.kind === 'sizing' ? numberedStanding(sources.standing(cell.id), numbers) : { state: 'current' }
    const formulas = cell.kind === 'sizing' ? sources.formulas(cell.id) : undefined
    const firstFigure = figures
    figures += standing.result?.figures.length ?? 0
    return {
      id: cell.id,
      kind: cell.kind,
      number: numbers.get(cell.id) ?? '',
      source: cell.source,
      findings: (cell.kind === 'sizing' ? sources.findings(cell.id) : []).map((finding) =>
        numberedFinding(finding, numbers),
      ),
      folded: sources.isFolded(cell.id),
      firstFigure,
      ...(formulas === undefined ? {} : { formulas }),
      ...standing,
    }
  })
  return { id: sources.id, title: snapshot.title, titleBlock: sources.titleBlock, cells }
}

function numberedStanding(standing: Standing, numbers: ReadonlyMap<string, string>): Standing {
  return standing.result === undefined ? standing : { ...standing, result: numberedResult(standing.result, numbers) }
}

export type PartName = 'number' | 'reference' | 'calculation' | 'lines' | 'result' | 'figures'

/** The parts of a cell that a change from one view to the next touches. */
export function changedParts(before: CellView, after: CellView, renumbered: boolean): readonly PartName[] {
  const parts: PartName[] = []
  if (before.number !== after.number) parts.push('number')
  const sameResult = sameData(before.result, after.result)
  const sameTrial = sameData(before.trial, after.trial)
  if (!sameResult || !sameData(usedIn(before, after), usedIn(after, before))) parts.push('reference')
  if (before.source !== after.source || before.folded !== after.folded || !sameData(before.findings, after.findings))
    parts.push('calculation')
  else if (!sameResult || before.state !== after.state || !sameFormulas(before, after)) parts.push('lines')
  if (!sameResult || !sameTrial || before.state !== after.state || renumbered) parts.push('result')
  if (
    before.firstFigure !== after.firstFigure ||
    before.trial?.figures !== after.trial?.figures ||
    !sameData(before.result?.figures, after.result?.figures) ||
    !sameData(tables(before), tables(after)) ||
    (!sameTrial && tables(after).length > 0)
  )
    parts.push('figures')
  return parts
}

/** The methods that a text calls; of one and the same text nobody asks. */
function usedIn(view: CellView, other: CellView): readonly string[] {
  return view.source === other.source ? [] : usedMethods(view.source)
}

/** What is drawn as tables beside the figures: lists, and whether anything is stated that folds them. */
function tables(view: CellView) {
  const values = view.result?.values ?? []
  const lists = values.filter((value) => value.value.kind === 'list')
  return lists.length === 0 ? [] : [...lists, values.some((value) => value.stated === true)]
}

/** What the server drew shows the formulas of its text, though the page is not told them. */
function sameFormulas(before: CellView, after: CellView): boolean {
  return before.formulas === after.formulas || (before.formulas === undefined && before.source === after.source)
}

function sameData(a: unknown, b: unknown): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}

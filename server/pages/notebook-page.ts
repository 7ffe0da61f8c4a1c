/** The sheet, drawn on the server from stored results by the same renderer as in the browser: readable before any script runs. */
import { parseHTML } from 'linkedom'
import { freezeText, textFingerprint } from '../../kernel/cells/revision/index.js'
import {
  type CellId,
  type CellResult,
  type Formula,
  marginNumbers,
  type Notebook,
  type PageData,
  type Provenance,
  type RevisionMark,
  shortFingerprint,
} from '../../shared/contracts/index.js'
import {
  type CellState,
  type CellView,
  numberedResult,
  renderSheetAround,
  revisionStanding,
  type SheetView,
  sheetContext,
} from '../../shared/rendering/index.js'
import type { Shelved } from '../results/index.js'
import type { CellMarkup, NewDocument } from './cell-markup.js'
import type { ClientBuild } from './client-build.js'
import { Html, html, jsonForScript } from './html.js'
import { layout } from './layout.js'

export interface NotebookPage {
  readonly id: PageData['id']
  readonly notebook: Notebook
  readonly shelved: Shelved
  readonly kernelHash: string
  readonly formulas: SheetFormulas
  /** The latest, where one was issued. */
  readonly revision?: RevisionMark | undefined
  readonly provenance?: Provenance | undefined
}

/** How the names of each cell are worked out, by cell. */
type SheetFormulas = ReadonlyMap<CellId, readonly Formula[]>

export function notebookPage(
  { id, notebook, shelved, kernelHash, formulas, revision, provenance }: NotebookPage,
  build: ClientBuild,
  cells: CellMarkup,
): string {
  const view = sheetView(id, notebook, shelved, formulas)
  const standing = revision && revisionStanding(revision, textFingerprint(freezeText(notebook)), kernelHash)
  const shown: SheetView = {
    ...view,
    ...(standing === undefined ? {} : { revision: standing }),
    ...(provenance === undefined ? {} : { fingerprint: shortFingerprint(provenance.fingerprint) }),
  }
  const sheet = sheetMarkup(shown, cells)
  const data: PageData = {
    id,
    notebook,
    results: [...shelved.current],
    outOfDate: [...shelved.outOfDate],
    kernelHash,
    ...(revision === undefined ? {} : { revision }),
    ...(provenance === undefined ? {} : { provenance }),
  }
  const body = html`${waysWithoutScript}<div id="app">${new Html(sheet)}</div>
<script type="application/json" id="page-data">${jsonForScript(data)}</script>`
  const entry = build.entry('sheet')
  // Without a built client the sheet is still read in the server's plain style.
  const assets = entry.styles.length > 0 ? entry : { ...entry, styles: ['/style/pages.css'] }
  return layout({ title: notebook.title.trim() === '' ? 'Untitled' : notebook.title, assets, body })
}

const rowsHere = '<!--cells-->'

/** What the renderer makes of the sheet, with cells taken from `drawn` where nothing on them changed. */
export function sheetMarkup(view: SheetView, drawn: CellMarkup): string {
  const document = newDocument()
  const frame = renderSheetAround(document, view, [document.createComment('cells')]).outerHTML
  if (view.cells.length === 0) return frame
  const context = sheetContext(view)
  const rows = view.cells.map((cell) => drawn.draw(view.id, cell, context, newDocument))
  // The rows are the last thing in the frame, so its last such comment is theirs.
  const place = frame.lastIndexOf(rowsHere)
  return `${frame.slice(0, place)}${rows.join('')}${frame.slice(place + rowsHere.length)}`
}

/** Cells are drawn in documents of their own: small ones, which the collector has done with at once. */
function newDocument(): ReturnType<NewDocument> {
  return parseHTML('<!doctype html><html><head></head><body></body></html>').document
}

/** The bar is the script's; without it the ways out of the sheet stand in its place. */
const waysWithoutScript = html`<noscript><nav class="bar" aria-label="Pages"><a class="mark" href="/">Hoverfolio</a> <a href="/">All notebooks</a> <a href="/words">Words and keys</a></nav></noscript>
`

export function sheetView(
  id: string,
  notebook: Notebook,
  { current, outOfDate }: Shelved,
  formulas: SheetFormulas = new Map(),
): SheetView {
  const fresh = new Map(current.map((result) => [result.cell, result]))
  const older = new Map(outOfDate.map((result) => [result.cell, result]))
  const numbers = marginNumbers(notebook.cells)
  let firstFigure = 1
  const cells = notebook.cells.map((cell): CellView => {
    const result = fresh.get(cell.id) ?? older.get(cell.id)
    const worked = formulas.get(cell.id)
    const view: CellView = {
      id: cell.id,
      kind: cell.kind,
      number: numbers.get(cell.id) ?? '',
      source: cell.source.join('\n'),
      state: cell.kind === 'rationale' ? 'current' : stateOf(cell.id, fresh, older),
      ...(result === undefined ? {} : { result: numberedResult(result, numbers) }),
      ...(worked === undefined ? {} : { formulas: worked }),
      findings: [],
      folded: cell.kind === 'sizing',
      firstFigure,
    }
    firstFigure += result?.figures.length ?? 0
    return view
  })
  return { id, title: notebook.title, titleBlock: notebook.titleBlock ?? {}, cells }
}

function stateOf(
  id: CellId,
  fresh: ReadonlyMap<CellId, CellResult>,
  older: ReadonlyMap<CellId, CellResult>,
): CellState {
  const result = fresh.get(id)
  if (result === undefined) return older.has(id) ? 'out of date' : 'not computed'
  return result.outcome === 'computed' ? 'current' : result.outcome
}

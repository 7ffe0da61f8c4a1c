/** A revision as a sheet to read and print: no script, nothing to edit, and it says which revision it is. */
import { parseHTML } from 'linkedom'
import type { NotebookId } from '../../../shared/contracts/index.js'
import {
  renderRevisionHead,
  renderSheet,
  type SheetView,
  type UnitSystem,
  viewInUnits,
} from '../../../shared/rendering/index.js'
import type { ServerKernel } from '../../kernel.js'
import type { ReadRevision } from '../../revisions/index.js'
import type { ClientBuild } from '../client-build.js'
import { Html, html } from '../html.js'
import { layout } from '../layout.js'
import { sheetView } from '../notebook-page.js'
import { unitChoice } from './unit-choice.js'

export interface RevisionPage {
  readonly id: NotebookId
  readonly read: ReadRevision
  readonly names: readonly string[]
  readonly kernel: ServerKernel
  readonly units: UnitSystem
}

export async function revisionPage(
  { id, read, names, kernel, units }: RevisionPage,
  build: ClientBuild,
): Promise<string> {
  const { summary, record } = read
  const { text } = record.content
  const document = newDocument()
  const formulas = await kernel.formulas?.(sizingCells(record))
  const head = renderRevisionHead(document, { notebook: id, revision: summary, names, units })
  const sheet = renderSheet(document, viewInUnits(viewOf(id, read, formulas), units))
  const entry = build.entry('sheet')
  const styles = entry.styles.length > 0 ? entry.styles : ['/style/pages.css']
  const shown = text.title.trim() === '' ? 'Untitled' : text.title
  const body = html`<nav class="bar" aria-label="Pages"><a class="mark" href="/">Hoverfolio</a> <a href="/notebooks/${id}">${shown}</a> <a href="/words">Words and keys</a></nav>
${new Html(head.outerHTML)}${unitChoice(`/notebooks/${id}/revisions/${record.name}`, units)}<div id="app">${new Html(sheet.outerHTML)}</div>`
  return layout({ title: `${shown}, revision ${record.name}`, assets: { scripts: [], preloads: [], styles }, body })
}

function viewOf(
  id: NotebookId,
  { summary, record }: ReadRevision,
  formulas: Parameters<typeof sheetView>[3],
): SheetView {
  const { text, results, unsettled } = record.content
  const notebook = { format: 'hoverfolio notebook', version: 1, ...text } as const
  const view = sheetView(id, notebook, { current: results, outOfDate: [] }, formulas)
  const states = new Map(unsettled.map(({ cell, state }) => [cell, state]))
  return {
    ...view,
    cells: view.cells.map((cell) => ({ ...cell, state: states.get(cell.id) ?? cell.state })),
    revision: { mark: summary, state: summary.altered === undefined ? 'this one' : 'altered' },
  }
}

function sizingCells({ content }: ReadRevision['record']) {
  return content.text.cells
    .filter((cell) => cell.kind === 'sizing')
    .map(({ id, source }) => ({ id, source: source.join('\n') }))
}

/** The types of a browser are not the server's. */
function newDocument(): Parameters<typeof renderSheet>[0] {
  return parseHTML('<!doctype html><html><head></head><body></body></html>').document
}

/** From the notebook file to the live document and back. Title block, threads and revisions stay with the file. */
import { generateNKeysBetween } from 'fractional-indexing'
import * as Y from 'yjs'
import { limits, type Notebook, type NotebookCell } from '../../shared/contracts/index.js'
import { cellsOf, emptyDocument, type LiveCell, type LiveContent, titleOf } from './document.js'
import { titleBlockFields, withField } from './title-block.js'

/** What the file holds beside title and cells; it passes through untouched. */
export type RestOfNotebook = Pick<Notebook, 'format' | 'version'> &
  Partial<Pick<Notebook, 'id' | 'titleBlock' | 'threads' | 'revisions'>>

export function restOf(notebook: Notebook): RestOfNotebook {
  const { title: _title, cells: _cells, ...rest } = notebook
  return rest
}

/** What the live document holds beside title and cells after an outside change: outside where that changed something, live elsewhere. */
export function mergeRest(base: RestOfNotebook, outside: RestOfNotebook, live: RestOfNotebook): RestOfNotebook {
  let titleBlock = live.titleBlock ?? {}
  for (const field of titleBlockFields)
    if (base.titleBlock?.[field] !== outside.titleBlock?.[field])
      titleBlock = withField(titleBlock, field, outside.titleBlock?.[field])
  return { ...outside, ...(outside.titleBlock === undefined && isEmpty(titleBlock) ? {} : { titleBlock }) }
}

const isEmpty = (block: object) => Object.keys(block).length === 0

/** Cells of a file in page order with a usable order key each: the file's own keys if all are there and sort, fresh ones if not. */
export function cellsOfNotebook(notebook: Notebook): readonly LiveCell[] {
  const keyed = notebook.cells.every((cell) => cell.order !== undefined)
  const sorted = keyed ? [...notebook.cells].sort(byOrder) : notebook.cells
  const keys =
    keyed && areUsableKeys(sorted.map((cell) => cell.order ?? ''))
      ? undefined
      : generateNKeysBetween(null, null, sorted.length)
  return sorted.map((cell, index) => ({
    id: cell.id,
    kind: cell.kind,
    source: cell.source.join('\n'),
    order: keys?.[index] ?? cell.order ?? '',
    ...(cell.number === undefined || cell.number === '' ? {} : { number: cell.number }),
  }))
}

export function contentOfNotebook(notebook: Notebook): LiveContent {
  return { title: notebook.title, cells: cellsOfNotebook(notebook), ignored: [] }
}

export function documentOfNotebook(notebook: Notebook): Y.Doc {
  const doc = emptyDocument()
  doc.transact(() => {
    titleOf(doc).insert(0, notebook.title)
    for (const cell of cellsOfNotebook(notebook)) putCell(doc, cell)
  })
  return doc
}

export function putCell(doc: Y.Doc, cell: LiveCell): void {
  const map = new Y.Map<unknown>()
  map.set('kind', cell.kind)
  map.set('source', new Y.Text(cell.source))
  map.set('order', cell.order)
  map.set('removed', false)
  if (cell.number !== undefined) map.set('number', cell.number)
  cellsOf(doc).set(cell.id, map)
}

/** Whether the file numbers a cell that has no number in the document: a document begun before it held numbers. */
export function lacksNumbers(content: LiveContent, notebook: Notebook): boolean {
  const numbers = new Map(notebook.cells.map((cell) => [cell.id, cell.number]))
  return content.cells.some((cell) => cell.number === undefined && (numbers.get(cell.id) ?? '') !== '')
}

/** Takes the file's numbers over for cells that have none in the document. */
export function adoptNumbers(doc: Y.Doc, notebook: Notebook): void {
  for (const { id, number } of notebook.cells) {
    const cell = cellsOf(doc).get(id)
    if (cell instanceof Y.Map && number !== undefined && cell.get('number') === undefined) cell.set('number', number)
  }
}

export function notebookOf(content: LiveContent, rest: RestOfNotebook): Notebook {
  return {
    ...rest,
    title: content.title,
    cells: content.cells.map(({ source, ...cell }): NotebookCell => ({ ...cell, source: source.split(/\r\n|\r|\n/) })),
  }
}

/** Whether a file says the same as the document: ids, numbers, kinds, sources, page order and title; how keys are spelled is no matter. */
export function sameContent(a: LiveContent, b: LiveContent): boolean {
  return (
    a.title === b.title &&
    a.cells.length === b.cells.length &&
    a.cells.every((cell, index) => {
      const other = b.cells[index]
      return (
        cell.id === other?.id &&
        cell.number === other.number &&
        cell.kind === other.kind &&
        cell.source === other.source
      )
    })
  )
}

/** Why the document would not fit in a notebook file, or `undefined`: what was acknowledged must be readable again. */
export function beyondLimits(content: LiveContent, restBytes: number): string | undefined {
  const { title, cells } = content
  if (title.length > limits.titleCharacters)
    return `the title would have ${title.length} characters; at most ${limits.titleCharacters} are accepted`
  if (cells.length > limits.cells) return `there would be ${cells.length} cells; at most ${limits.cells} are accepted`
  for (const cell of cells) {
    // One more, because the file counts a line feed for each line.
    if (cell.source.length + 1 > limits.sourceCharacters)
      return `cell "${cell.id}" would have ${cell.source.length} characters; at most ${limits.sourceCharacters - 1} are accepted`
    if (cell.order.length > 200)
      return `cell "${cell.id}" has an order key of ${cell.order.length} characters; at most 200 are accepted`
  }
  const bytes = restBytes + bytesInFile(cells, limits.notebookBytes - restBytes)
  if (bytes > limits.notebookBytes)
    return `the notebook would have ${bytes} bytes; at most ${limits.notebookBytes} are accepted`
  return undefined
}

/** Bytes of the cells in the file. Counted only when a bound of 14 bytes a character (a line feed with its indent) does not settle it. */
function bytesInFile(cells: readonly LiveCell[], enough: number): number {
  const bound = cells.reduce((sum, cell) => sum + cell.source.length * 14 + 600, 0)
  if (bound <= enough) return bound
  return cells.reduce((sum, { source }) => {
    const lines = source.split(/\r\n|\r|\n/)
    return sum + 600 + lines.reduce((bytes, line) => bytes + Buffer.byteLength(JSON.stringify(line)) + 12, 0)
  }, 0)
}

const byOrder = (a: NotebookCell, b: NotebookCell) => {
  const [left, right] = [a.order ?? '', b.order ?? '']
  return left < right ? -1 : left > right ? 1 : 0
}

/** Whether new cells can be put before, between and after these keys. */
function areUsableKeys(keys: readonly string[]): boolean {
  try {
    return keys.every((key, index) => {
      const before = keys[index - 1] ?? null
      return (before === null || before < key) && generateNKeysBetween(before, key, 1).length === 1
    })
  } catch {
    return false
  }
}

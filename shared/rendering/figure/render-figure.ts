/** A numbered figure with caption, drawing and the table behind it. */
import type { Figure } from '../../contracts/index.js'
import { element, setAttributes, svgElement } from '../dom.js'
import { lateParts } from '../late-parts.js'
import { countOf, formatNumber, typesetNodes } from '../quantity/index.js'
import { describeFigure } from './describe.js'
import { layOut } from './layout.js'
import { figureTable, type TableCell } from './table.js'

export interface FigureOptions {
  /** Number in the sheet; the caption stands alone when absent. */
  readonly number?: string
  /** [px]; 720 when absent. The drawing shrinks with the page but never grows beyond it. */
  readonly width?: number
}

const usualWidth = 720
/** The table on the page shows this many rows; CSV has all. */
const shownRows = 100

export function renderFigure(document: Document, figure: Figure, options: FigureOptions = {}): HTMLElement {
  const { number, width = usualWidth } = options
  const caption = number === undefined ? figure.caption : `Figure ${number}. ${figure.caption}`
  const id = `figure-${number ?? textHash(`${figure.caption} ${figure.marks.length}`)}`
  const drawn = drawOrReserve(document, figure, Math.max(280, width), id)
  setAttributes(drawn, { role: 'img', 'aria-label': caption })
  drawn.insertBefore(svgElement(document, 'desc', {}, describeFigure(figure)), drawn.firstChild)
  return element(
    document,
    'figure',
    { class: 'figure', id: number === undefined ? null : id, 'data-figure': number },
    element(document, 'div', { class: 'figure-paper', tabindex: 0, role: 'group', 'aria-label': 'Drawing' }, drawn),
    element(document, 'figcaption', {}, captionNodes(document, figure, number)),
    renderTable(document, figure),
  )
}

/** The drawing; while what draws is on its way, paper of the same size, so that nothing moves when it comes. */
function drawOrReserve(document: Document, figure: Figure, width: number, id: string): SVGElement {
  const parts = lateParts()
  if (parts !== undefined) return parts.drawPlot(document, figure, width, id)
  const { frame } = layOut(figure, width, id)
  const size = { width: frame.width, height: frame.height, viewBox: `0 0 ${frame.width} ${frame.height}` }
  return svgElement(document, 'svg', { class: 'figure-plot', ...size })
}

function captionNodes(document: Document, figure: Figure, number: string | undefined): Node[] {
  const words = document.createTextNode(figure.caption)
  if (number === undefined) return [words]
  return [
    element(document, 'span', { class: 'figure-number' }, `Figure ${number}.`),
    document.createTextNode(' '),
    words,
  ]
}

function renderTable(document: Document, figure: Figure): HTMLElement {
  const { columns, rows } = figureTable(figure)
  const head = columns.map((column) => element(document, 'th', { scope: 'col' }, typesetNodes(document, column)))
  const body = rows.slice(0, shownRows).map((row) =>
    element(
      document,
      'tr',
      {},
      row.map((cell) => tableCell(document, cell)),
    ),
  )
  return element(
    document,
    'details',
    { class: 'figure-data' },
    element(document, 'summary', {}, `Values (${countOf(rows.length, 'row')})`),
    element(
      document,
      'div',
      { class: 'figure-table', tabindex: 0, role: 'group', 'aria-label': 'Values of the figure' },
      element(
        document,
        'table',
        {},
        element(document, 'thead', {}, element(document, 'tr', {}, head)),
        element(document, 'tbody', {}, body),
      ),
    ),
    rows.length > shownRows
      ? element(document, 'p', {}, `The first ${shownRows} of ${rows.length} rows; the CSV file has all.`)
      : null,
  )
}

function tableCell(document: Document, cell: TableCell): HTMLElement {
  if (typeof cell === 'number')
    return element(document, 'td', { class: 'value-number' }, typesetNodes(document, formatNumber(cell)))
  return element(document, 'td', {}, cell ?? '')
}

/** A short name from text (FNV-1a, 32 bits): the same figure gets the same ids in every place. */
function textHash(text: string): string {
  let hash = 0x811c9dc5
  for (const character of text) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193) >>> 0
  return hash.toString(36)
}

/**
 * A figure as a file of its own: every colour and font is written out, for programs that know no style sheet, and the caution and where it
 * comes from stand below it, for whoever meets the picture without its sheet.
 */
import { cautionInFull, cautionLine, type Figure, type Ink } from '../../contracts/index.js'
import { setAttributes, svgElement, svgNamespace } from '../dom.js'
import { describeFigure } from './describe.js'
import { drawPlot } from './draw-plot.js'
import { inkColours } from './inks.js'

const paper = '#ffffff'
const grid = '#d9d8d0'
const margin = 14
/** Of the caution's lines [px]; its letters are at most this wide, also in a fallback font. */
const cautionLeading = 14
const cautionSize = 11
const cautionLetter = 5.6

export interface StandAloneOptions {
  readonly width?: number
  /** The line of provenance, below the caution and in the description; absent for a figure without a sheet. */
  readonly mark?: string
}

export function figureToSvgText(document: Document, figure: Figure, options: StandAloneOptions = {}): string {
  const { mark = '' } = options
  const drawn = drawPlot(document, figure, options.width ?? 640, 'figure')
  const width = Number(drawn.getAttribute('width'))
  const drawnHeight = Number(drawn.getAttribute('height'))
  const most = Math.floor(width / cautionLetter)
  const caution = [...wrap(cautionLine, most), ...(mark === '' ? [] : wrap(mark, most))]
  const height = drawnHeight + (caution.length + 1) * cautionLeading
  writeOutColours(drawn, inkColours.ink)
  const sheet = svgElement(document, 'svg', {
    xmlns: svgNamespace,
    width: width + 2 * margin,
    height: height + 2 * margin,
    viewBox: `${-margin} ${-margin} ${width + 2 * margin} ${height + 2 * margin}`,
    'font-family': drawn.getAttribute('font-family'),
    'font-size': drawn.getAttribute('font-size'),
    'text-anchor': 'middle',
  })
  sheet.append(
    svgElement(document, 'title', {}, figure.caption),
    svgElement(document, 'desc', {}, [describeFigure(figure), ...cautionInFull, mark].join(' ').trim()),
    svgElement(document, 'rect', {
      x: -margin,
      y: -margin,
      width: width + 2 * margin,
      height: height + 2 * margin,
      fill: paper,
    }),
    ...Array.from(drawn.childNodes),
    ...caution.map((words, line) => cautionText(document, words, drawnHeight + (line + 1.5) * cautionLeading)),
  )
  return `<?xml version="1.0" encoding="UTF-8"?>\n${writeXml(sheet)}\n`
}

function cautionText(document: Document, words: string, y: number): SVGElement {
  const place = { x: 0, y: y.toFixed(1), 'text-anchor': 'start', 'font-size': cautionSize, fill: inkColours.ink }
  return svgElement(document, 'text', place, words)
}

/** Lines of at most so many letters, broken between words; a longer word is broken inside. */
function wrap(text: string, most: number): readonly string[] {
  const lines: string[] = []
  const words = text.split(' ').flatMap((word) => word.match(new RegExp(`.{1,${Math.max(1, most)}}`, 'gsu')) ?? [''])
  for (const word of words) {
    const last = lines.at(-1)
    if (last === undefined || last.length + 1 + word.length > most) lines.push(word)
    else lines[lines.length - 1] = `${last} ${word}`
  }
  return lines
}

/** Replaces `currentColor` by the colour of the nearest ink class and drops the classes. */
function writeOutColours(target: Element, inherited: string): void {
  const classes = (target.getAttribute('class') ?? '').split(' ')
  const ink = classes.find((name) => name.startsWith('ink-'))?.slice(4) as Ink | undefined
  const colour = ink !== undefined ? inkColours[ink] : classes.includes('figure-grid') ? grid : inherited
  for (const name of ['fill', 'stroke'])
    if (target.getAttribute(name) === 'currentColor') target.setAttribute(name, colour)
  if (target.localName === 'text' && !target.hasAttribute('fill')) target.setAttribute('fill', colour)
  if (classes.includes('figure-label'))
    setAttributes(target, { stroke: paper, 'stroke-width': 4, 'stroke-linejoin': 'round', 'paint-order': 'stroke' })
  target.removeAttribute('class')
  target.removeAttribute('data-part')
  for (const child of Array.from(target.children)) writeOutColours(child, colour)
}

/** XML of an SVG tree: the same text in every place, whatever the document's own serialiser does. */
export function writeXml(node: Node): string {
  if (node.nodeType === 3) return escapeXml(node.textContent ?? '')
  if (node.nodeType !== 1) return ''
  const target = node as Element
  const attributes = Array.from(target.attributes)
    .map((attribute) => ` ${attribute.name}="${escapeXml(attribute.value)}"`)
    .sort()
    .join('')
  const inner = Array.from(target.childNodes).map(writeXml).join('')
  return inner === ''
    ? `<${target.localName}${attributes}/>`
    : `<${target.localName}${attributes}>${inner}</${target.localName}>`
}

function escapeXml(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: XML 1.0 has no place for them
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/g, '')
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      .replaceAll('"', '&quot;')
  )
}

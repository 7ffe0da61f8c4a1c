/**
 * Every figure on the page can be taken away as SVG, PNG or CSV. All three are made from the figure's data when asked for, so that the
 * page carries nothing for it and a file never shows another number than the sheet. Each carries the caution and where it comes from.
 */
import { cautionLine, type Figure } from '../../shared/contracts/index.js'
import { figureToCsv } from '../../shared/rendering/page.js'
import { loadLateParts } from './browser-drawing.js'
import { figureMark } from './figure-mark.js'
import { withPngText } from './png-text.js'

/** Points of a PNG for each point of the drawing: sharp when printed. */
const pngScale = 3

type Kind = 'SVG' | 'PNG' | 'CSV'

/** A figure's values as CSV; `mark` says where it comes from. */
export type WriteCsv = (figure: Figure, mark: string) => string

/**
 * Puts the three links below each figure of a column that was drawn from `figures`.
 *
 * @param toCsv - for figures behind which stands more than they draw
 */
export function offerDownloads(
  column: Element,
  figures: readonly Figure[],
  onTrouble: (sentence: string) => void,
  toCsv: WriteCsv = figureToCsv,
): void {
  column.querySelectorAll('figure').forEach((element, index) => {
    const figure = figures[index]
    if (figure === undefined || element.querySelector('.downloads') !== null) return
    element.append(makeDownloads(figure, element.dataset.figure ?? String(index + 1), onTrouble, toCsv))
  })
}

function makeDownloads(
  figure: Figure,
  number: string,
  onTrouble: (sentence: string) => void,
  toCsv: WriteCsv,
): HTMLElement {
  const line = document.createElement('p')
  line.className = 'downloads'
  line.append('Download: ')
  for (const kind of ['SVG', 'PNG', 'CSV'] as const) {
    const button = document.createElement('button')
    button.type = 'button'
    button.className = 'link-button'
    button.textContent = kind
    button.setAttribute('aria-label', `Download figure ${number} as ${kind}`)
    button.addEventListener('click', () => {
      fileOf(figure, kind, toCsv).then(
        (file) => save(file, `figure-${number}.${kind.toLowerCase()}`),
        (failure: unknown) => onTrouble(`Figure ${number} could not be saved as ${kind}: ${String(failure)}`),
      )
    })
    line.append(button, kind === 'CSV' ? '' : ', ')
  }
  return line
}

async function fileOf(figure: Figure, kind: Kind, toCsv: WriteCsv): Promise<Blob> {
  const mark = await figureMark(document)
  if (kind === 'CSV') return new Blob([toCsv(figure, mark)], { type: 'text/csv' })
  const [{ figureToSvgText }] = await Promise.all([
    import('../../shared/rendering/figure/stand-alone.js'),
    loadLateParts(),
  ])
  const svg = new Blob([figureToSvgText(document, figure, { mark })], { type: 'image/svg+xml' })
  if (kind === 'SVG') return svg
  const png = new Uint8Array(await (await toPng(svg)).arrayBuffer())
  const words = { Title: figure.caption, Description: mark, Warning: cautionLine, Software: 'Hoverfolio' }
  return new Blob([withPngText(png, words)], { type: 'image/png' })
}

async function toPng(svg: Blob): Promise<Blob> {
  const address = URL.createObjectURL(svg)
  try {
    const image = new Image()
    image.src = address
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = image.naturalWidth * pngScale
    canvas.height = image.naturalHeight * pngScale
    const context = canvas.getContext('2d')
    if (context === null) throw new Error('this browser gives no canvas to draw on')
    context.fillStyle = '#ffffff'
    context.fillRect(0, 0, canvas.width, canvas.height)
    context.drawImage(image, 0, 0, canvas.width, canvas.height)
    return await new Promise((resolve, reject) =>
      canvas.toBlob(
        (made) => (made === null ? reject(new Error('the drawing is too large')) : resolve(made)),
        'image/png',
      ),
    )
  } finally {
    URL.revokeObjectURL(address)
  }
}

function save(file: Blob, name: string): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(file)
  link.download = name
  link.click()
  // The browser has taken hold of the file by then; revoking at once would cancel the download in some.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000)
}

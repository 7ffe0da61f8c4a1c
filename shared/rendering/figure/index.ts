/** Figures as data to figures on paper. */
import type { Figure } from '../../contracts/index.js'
import { element } from '../dom.js'

export interface FigureOptions {
  readonly number?: string
  readonly width?: number
}
export function renderFigure(document: Document, figure: Figure, options: FigureOptions): HTMLElement {
  return element(
    document,
    'figure',
    {},
    element(document, 'figcaption', {}, `Figure ${options.number ?? ''}. ${figure.caption}`),
  )
}
export function figureToSvgText(_document: Document, figure: Figure): string {
  return `<svg xmlns="http://www.w3.org/2000/svg"><title>${figure.figure}</title></svg>`
}
export function figureToCsv(figure: Figure): string {
  return `${figure.figure}\r\n`
}

/** A bar of shares from 0 to 1: full for one part, striped for the next, so that nothing hangs on colour. */
import { svgElement } from '../dom.js'

export interface BarPart {
  readonly share: number
  readonly striped?: boolean
}

const height = 10

/** The numbers stand beside it in words, so it is hidden from those who cannot see it. */
export function shareBar(document: Document, parts: readonly BarPart[]): SVGElement {
  let from = 0
  const lines = parts.map(({ share, striped = false }) => {
    const to = Math.min(from + Math.max(share, 0), 1)
    const line = svgElement(document, 'line', {
      x1: percent(from),
      x2: percent(to),
      y1: height / 2,
      y2: height / 2,
      stroke: 'currentColor',
      'stroke-width': height,
      'stroke-dasharray': striped ? '2 2' : null,
    })
    from = to
    return line
  })
  return svgElement(document, 'svg', { class: 'share-bar', height, 'aria-hidden': 'true', focusable: 'false' }, lines)
}

function percent(share: number): string {
  return `${Number((share * 100).toFixed(2))}%`
}

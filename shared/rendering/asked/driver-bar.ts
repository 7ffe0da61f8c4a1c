/** A driver as a bar to either side of a zero line that all share: striped for the low end, full for the high one. */
import type { Driver } from '../../contracts/index.js'
import { svgElement } from '../dom.js'

const height = 12

/** The numbers stand beside it in words, so it is hidden from those who cannot see it. */
export function driverBar(document: Document, driver: Driver, largest: number): SVGElement {
  const [low, high] = [driver.low.change ?? 0, driver.high.change ?? 0]
  // Both to one side would cover each other, so each takes half of the height.
  const halves = low * high > 0
  const line = (change: number, place: 0 | 1, striped: boolean) =>
    change === 0
      ? null
      : svgElement(document, 'line', {
          class: 'driver-bar-change',
          x1: percent(0),
          x2: percent(largest === 0 ? 0 : change / largest),
          y1: halves ? height * (0.25 + place * 0.5) : height / 2,
          y2: halves ? height * (0.25 + place * 0.5) : height / 2,
          'stroke-width': halves ? height / 2 - 1 : height,
          'stroke-dasharray': striped ? '2 2' : null,
        })
  return svgElement(
    document,
    'svg',
    { class: 'driver-bar', height, 'aria-hidden': 'true', focusable: 'false' },
    svgElement(document, 'line', { class: 'driver-bar-zero', x1: '50%', x2: '50%', y1: 0, y2: height }),
    line(low, 0, true),
    line(high, 1, false),
  )
}

/** -1 at the left edge, 1 at the right one. */
function percent(share: number): string {
  return `${Number((50 + share * 49).toFixed(2))}%`
}

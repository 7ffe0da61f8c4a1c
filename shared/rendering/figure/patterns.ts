/** Fills of surfaces: full, hatched, dotted, light. */
import type { Ink } from '../../contracts/index.js'
import { svgElement } from '../dom.js'
import type { MarkStyle } from './inks.js'

export function patternId(prefix: string, style: MarkStyle): string {
  return `${prefix}-${style.fill}-${style.ink}`
}

/** The `fill` of a surface and how strong it is. */
export function surfaceFill(prefix: string, style: MarkStyle): { fill: string; fillOpacity: number } {
  if (style.fill === 'hatched' || style.fill === 'dotted')
    return { fill: `url(#${patternId(prefix, style)})`, fillOpacity: 1 }
  return { fill: 'currentColor', fillOpacity: style.fill === 'light' ? 0.25 : 1 }
}

/** `<defs>` with the patterns that these styles use; null when they use none. */
export function patternDefinitions(
  document: Document,
  prefix: string,
  styles: readonly MarkStyle[],
): SVGElement | null {
  const wanted = new Map<string, MarkStyle>()
  for (const style of styles)
    if (style.fill === 'hatched' || style.fill === 'dotted') wanted.set(patternId(prefix, style), style)
  if (wanted.size === 0) return null
  return svgElement(
    document,
    'defs',
    {},
    [...wanted].map(([id, style]) => pattern(document, id, style.ink, style.fill === 'hatched')),
  )
}

function pattern(document: Document, id: string, ink: Ink, hatched: boolean): SVGElement {
  return svgElement(
    document,
    'pattern',
    {
      id,
      class: `ink-${ink}`,
      patternUnits: 'userSpaceOnUse',
      width: 5,
      height: 5,
      patternTransform: hatched ? 'rotate(45)' : null,
    },
    svgElement(document, 'rect', { width: 5, height: 5, fill: 'currentColor', 'fill-opacity': 0.12 }),
    hatched
      ? svgElement(document, 'path', { d: 'M1,0V5', stroke: 'currentColor', 'stroke-width': 2 })
      : svgElement(document, 'circle', { cx: 2.5, cy: 2.5, r: 1.1, fill: 'currentColor' }),
  )
}

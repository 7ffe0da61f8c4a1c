/**
 * What draws figures and sets prose and TeX stands on libraries that are larger than all the rest of the page. A page that takes over what
 * the server drew needs none of it until something is drawn anew, so they come late there; everywhere else `index.ts` brings them at once.
 */
import type { Figure } from '../contracts/index.js'

export interface LateParts {
  /** A figure as SVG at `width` [px]; `id` begins the ids of its patterns. */
  readonly drawPlot: (document: Document, figure: Figure, width: number, id: string) => SVGSVGElement
  /** CommonMark with TeX as nodes. */
  readonly setProse: (document: Document, source: string) => DocumentFragment
  /** TeX as MathML text. */
  readonly texToMathml: (tex: string, display: boolean) => string
}

let present: LateParts | undefined

export function bringLateParts(parts: LateParts): void {
  present = parts
}

/** Undefined while they are still on their way. */
export function lateParts(): LateParts | undefined {
  return present
}

/** Every figure of a sheet as an SVG file of its own. */
import { parseHTML } from 'linkedom'
import { type Provenance, provenanceLine } from '../../shared/contracts/index.js'
import { figureToSvgText, type SheetView } from '../../shared/rendering/index.js'

export interface FigureFile {
  readonly name: string
  readonly text: string
}

/** Numbered as on the sheet. */
export function figureFiles({ cells }: SheetView, provenance: Provenance): readonly FigureFile[] {
  const mark = provenanceLine(provenance)
  return cells.flatMap(({ result, firstFigure }) =>
    (result?.figures ?? []).map((figure, index) => {
      const { document } = parseHTML('<!doctype html><html><head></head><body></body></html>')
      return { name: `figure-${firstFigure + index}.svg`, text: figureToSvgText(document, figure, { mark }) }
    }),
  )
}

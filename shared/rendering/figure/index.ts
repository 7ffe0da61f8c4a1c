export { figureToCsv } from './csv.js'
export { type FigureOptions, renderFigure } from './render-figure.js'
export { figureToSvgText } from './stand-alone.js'
export { type FigureTable, figureTable, type TableCell } from './table.js'

/** Reading figures from their data, without what draws them: so that it loads by itself. */
export { type Spot, type Step, spotAt, stepFor, stepSpot, stepWords } from './nearest.js'
export { type FigureReading, readFigure } from './reading.js'

/** The renderer as the page loads it: all but the large libraries, which `all-parts.js` brings when something is drawn anew. */
export { figureToCsv } from './figure/csv.js'
export * from './figure/reading-index.js'
export { renderFigure } from './figure/render-figure.js'
export * from './formula/index.js'
export { lateParts } from './late-parts.js'
export * from './sheet/index.js'
export * from './view.js'

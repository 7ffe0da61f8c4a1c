export { type Line, linesOf } from './lines.js'
export { lineWords, renderLine, renderLines } from './render-lines.js'
export { symbolOf } from './symbols.js'

export { renderProse } from './render-prose.js'
export { texSymbol } from './tex-symbol.js'

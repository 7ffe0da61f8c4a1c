export { renderProse } from './render-prose.js'

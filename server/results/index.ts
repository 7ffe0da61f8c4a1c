/** Results by fingerprint. */
export { Background, type BackgroundOptions } from './background.js'
export { Computing } from './computing.js'
export { ResultShelf, type Shelved, sizingCells } from './result-shelf.js'

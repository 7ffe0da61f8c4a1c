/** The worst corner of each requirement. */
export { type Corner, runCorners } from './corner.js'

/** Comparing two states of a notebook, as data. */
export { type ComparedSide, compareSides } from './compare-sides.js'

/** Comparing two states of a notebook, as data. */

export { numbersOf } from './compare-numbers.js'
export { type ComparedSide, compareSides } from './compare-sides.js'

/** What every cell declares and reads, and how the cells depend on each other. */
export { analyse } from './analyse.js'
export { kernelUses } from './kernel-uses.js'
export { type Place, sourcePlace } from './places.js'
export { readStatements, type Statement, statesName } from './statements.js'

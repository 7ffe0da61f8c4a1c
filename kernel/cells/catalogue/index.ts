/** The method catalogue: doc comments and types of the kernel as data. Used at build time only. */
export { exampleCell, type NamedCell, withNames } from './example-cell.js'
export { gatherMethods, type UncomputedMethod } from './gather-methods.js'

/** Types and dimensions of cells. */
export { createChecker } from './checker.js'
export { type DeclarationSources, gatherDeclarations } from './declarations/gather-declarations.js'

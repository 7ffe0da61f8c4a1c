/** Types and dimensions of cells. */

export { type CellLanguage, createChecker, type LanguageChecker } from './checker.js'
export { type DeclarationSources, gatherDeclarations } from './declarations/gather-declarations.js'
export type { Repair } from './repairs.js'

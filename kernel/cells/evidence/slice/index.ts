/** Parts of programs, and evaluating them. */
export { type Evaluator, openEvaluator } from './evaluator.js'
export { neededStatements } from './slice-cell.js'
export { type CellPart, neededParts, type ReadProgram, sliceProgram } from './slice-program.js'

/** Evidence: what the document rests on, what it must show, and what it states. */
export { type AssumptionOptions, assumption, type Widened } from './assumption.js'
export type { DistributionOption } from './distribution.js'
export { type RequirementOptions, requirement } from './requirement.js'
export { type ResultOptions, result } from './result.js'
export { type TableOptions, table } from './table.js'

/** The way from cells to numbers, and the stages of which it is made. */
export { withDimensions } from './dimensions.js'
export { allFindings } from './findings.js'
export { type Computation, createPipeline, type Pipeline, type PipelineParts, type Reading } from './pipeline.js'
export { resultInSource } from './result-places.js'

/** Trace: where a number came from. Results are `shared/contracts/trace.ts`. */

export type { TraceTools } from './probe.js'
export { runTrace, type TraceRequest } from './trace.js'
export { type TraceOptions, traceNumber } from './trace-number.js'
export { type NumberPlace, readUpstream, type UpstreamName } from './upstream.js'

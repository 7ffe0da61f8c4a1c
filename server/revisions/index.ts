/** Revisions: issued, signed, verified, read. */
export { readChain } from './chain.js'
export { Revisions } from './revisions.js'
export { markOf, summaries } from './summaries.js'

/** Revisions: issued, signed, verified, read, compared. */

export { type ChainLink, readChain } from './chain.js'
export { compareNamed, type Sides, sidesOf } from './compare-named.js'
export { contentOf } from './freeze.js'
export { beginFrom, revisionFile } from './outputs.js'
export { type ReadRevision, Revisions } from './revisions.js'
export { samePerson } from './signing.js'
export { summaries } from './summaries.js'

/** Revisions on the screen and on paper: their standing in the title block, their list, comparisons and the waterfall. */
export { renderComparison } from './comparison.js'
export { addressInUnits, comparisonInUnits, inUnits } from './in-units.js'
export { namesAreStated, renderNewNotebookForm, renderRevisionHead } from './revision-head.js'
export { type RevisionStanding, revisionStanding, shortFingerprint, standingWords } from './standing.js'
export { renderSignatures, renderSummary } from './summary.js'
export { renderWaterfall, type WaterfallNames, waterfallLines } from './waterfall.js'

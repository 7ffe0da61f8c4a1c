/** Sizing: closing the loop between gross mass and what it has to carry. */
export type { MassItems } from './build-up.js'
export { type Closed, type ClosedMasses, type CloseOptions, close, type NotClosed, tryClose } from './close.js'
export { type Along, type Fold, type FoldOptions, fold } from './fold.js'

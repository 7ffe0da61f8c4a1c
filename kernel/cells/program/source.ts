/** Cells as the pipeline receives them, and the one outside service that reading them needs. */
import type { CellId, ErasedSource } from '../../../shared/contracts/index.js'

/** A sizing cell in page order. Rationale cells never enter the pipeline. */
export interface SizingCell {
  readonly id: CellId
  readonly source: string
}

/**
 * Erases types from TypeScript, leaving JavaScript and a source map (version 3, as JSON text). Implemented by esbuild-wasm in a
 * worker, in Node, or by asking the server; results are cached by source, so it is called once per text.
 */
export type Eraser = (sources: readonly string[]) => Promise<readonly ErasedSource[]>

/**
 * Asked between pieces of long work on a thread that has others to serve: nothing while the turn lasts, else a promise that
 * resolves when the work may go on.
 */
export type Pause = () => Promise<void> | undefined

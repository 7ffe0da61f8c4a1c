/** What the checker is given and what it says: TypeScript's own complaints, wrong units, and the dimension of every name. */
import type { Finding, NameDimension } from '../../../shared/contracts/index.js'
import type { Graph } from './analysis.js'

/**
 * The declarations a checker works from, as one JSON value: plain `tsc` output of the kernel library and of what it
 * needs, and TypeScript's own library files. Gathered once at build time (`gatherDeclarations` in `kernel/cells/check`).
 */
export interface KernelDeclarations {
  /** Path, beginning with `/`, to the text of a `.d.ts` file. Library files are `/lib/lib.es2023.d.ts` and so on. */
  readonly files: Readonly<Record<string, string>>
  /**
   * The file whose export `preloaded` is a record of everything that cells see without asking; types exported from this
   * file (`Power`, `Mass`) are seen as well.
   */
  readonly preloadedPath: string
}

export interface CheckReport {
  /** Of kinds `type` and `dimension` only, in page order; syntax and order findings are in `graph.findings`. */
  readonly findings: readonly Finding[]
  /** Every top-level name of every readable cell. */
  readonly names: readonly NameDimension[]
}

/** Never throws for any source. Keeps what it can between calls, so that an edit of one cell is quick. */
export interface Checker {
  check(graph: Graph): CheckReport
}

/** From places in the JavaScript that runs back to places in the TypeScript that a person reads. */
import { originalPositionFor, TraceMap } from '@jridgewell/trace-mapping'

/** Counted from 1, columns in UTF-16 units. */
export interface Place {
  readonly line: number
  readonly column: number
}

/** acorn's: lines counted from 1, columns from 0. */
interface Location {
  readonly start: { readonly line: number; readonly column: number }
}

export interface Placer {
  /** The source place of a place in the code; the start of the cell when the compiler made that code up. */
  at(code: Place): Place
  /** The place of the first character of a node. */
  of(node: { readonly loc?: Location | null | undefined }): Place
}

/** Reads a source map once for many questions. */
export function createPlacer(map: string): Placer {
  const trace = new TraceMap(map)
  const at = ({ line, column }: Place): Place => {
    const original = originalPositionFor(trace, { line: Math.max(1, line), column: Math.max(0, column - 1) })
    return original.line === null ? { line: 1, column: 1 } : { line: original.line, column: original.column + 1 }
  }
  return {
    at,
    of: (node) => at({ line: node.loc?.start.line ?? 1, column: (node.loc?.start.column ?? 0) + 1 }),
  }
}

/** One place of a cell's code in its source; for a failure at run time. */
export function sourcePlace(map: string, code: Place): Place {
  return createPlacer(map).at(code)
}

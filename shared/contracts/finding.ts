/** What the checker says about a cell: the shape of `hoverfolio check --json` and of the marks in the editor. */
import { z } from 'zod'
import { CellId } from './identifiers.js'

export const Finding = z.strictObject({
  cell: CellId,
  /** Counted from 1. */
  line: z.number(),
  column: z.number(),
  endLine: z.number().optional(),
  endColumn: z.number().optional(),
  /** `syntax`: cannot be read. `type`: TypeScript. `dimension`: units. `order`: owners, cycles, unknown names. */
  kind: z.enum(['syntax', 'type', 'dimension', 'order']),
  severity: z.enum(['error', 'warning']),
  message: z.string(),
})
export type Finding = z.infer<typeof Finding>

/** A top-level name with its dimension in base units, `1` for a pure number, null where unknown. */
export const NameDimension = z.strictObject({
  cell: CellId,
  name: z.string(),
  dimension: z.string().nullable(),
  /** Dimensions of the fields of a record, or of the records in a list; absent where none is known. */
  columns: z.record(z.string(), z.string()).optional(),
  /** Of a number whose dimension is null: a clause that says what would have to be known. */
  why: z.string().optional(),
})
export type NameDimension = z.infer<typeof NameDimension>

/**
 * The notebook file: format and version, title block and cells, one source line per array item so that a text diff
 * reads well. Only `format`, `version`, `title` and `cells` are needed; such a file opens, checks and computes.
 */
import { z } from 'zod'
import { longestCellNumber } from './cell-number.js'
import { CellId, NotebookId } from './identifiers.js'
import { limits } from './limits.js'

export const notebookFormat = 'hoverfolio notebook'
export const notebookVersion = 1

/** `rationale` is prose (CommonMark with TeX), `sizing` is TypeScript that computes. */
export const CellKind = z.enum(['rationale', 'sizing'])
export type CellKind = z.infer<typeof CellKind>

const noLineBreak = (line: string) => !/[\r\n]/.test(line)

export const NotebookCell = z.strictObject({
  id: CellId,
  /** Fractional key that orders the page; without keys the array's order counts. */
  order: z.string().max(200).optional(),
  kind: CellKind,
  source: z
    .array(z.string().max(limits.sourceCharacters).refine(noLineBreak, 'one line per item, without line breaks'))
    .refine((lines) => lines.reduce((sum, line) => sum + line.length + 1, 0) <= limits.sourceCharacters, {
      error: `a cell holds at most ${limits.sourceCharacters} characters`,
    }),
  /** Number in the margin ("3a"), kept through inserts and moves until the notebook is renumbered; the place on the page when absent. */
  number: z.string().max(longestCellNumber).optional(),
})
export type NotebookCell = z.infer<typeof NotebookCell>

const line = z.string().max(limits.titleCharacters)

/** What a calculation sheet states at its head; every field may stay empty. */
export const TitleBlock = z.strictObject({
  question: z.string().max(1000).optional(),
  project: line.optional(),
  basis: line.optional(),
  prepared: line.optional(),
  checked: line.optional(),
  approved: line.optional(),
  date: line.optional(),
  revision: line.optional(),
})
export type TitleBlock = z.infer<typeof TitleBlock>

export const Notebook = z.strictObject({
  format: z.literal(notebookFormat),
  version: z.literal(notebookVersion),
  id: NotebookId.optional(),
  title: line,
  titleBlock: TitleBlock.optional(),
  cells: z
    .array(NotebookCell)
    .max(limits.cells)
    .superRefine((cells, context) => {
      const seen = new Map<string, number>()
      cells.forEach((cell, index) => {
        const first = seen.get(cell.id)
        if (first === undefined) seen.set(cell.id, index)
        else
          context.addIssue({
            code: 'custom',
            path: [index, 'id'],
            message: `the id "${cell.id}" is already used by cell ${first + 1}; every cell needs its own`,
          })
      })
    }),
  /** Review threads and revisions are kept as they came until their own contracts read them. */
  threads: z.array(z.json()).optional(),
  revisions: z.array(z.json()).optional(),
})
export type Notebook = z.infer<typeof Notebook>

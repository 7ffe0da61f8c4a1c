/** What the isolation says of one point, checked before it is believed. Short, because there are thousands. */
import { z } from 'zod'
import { ResultNumber } from './results.js'

export const NumbersBody = z.strictObject({
  /** In the order of the names asked for; null for what is no number or was not computed. */
  n: z.array(ResultNumber.nullable()),
  /** Requirements in evaluation order: name, actual, margin. */
  r: z.array(z.tuple([z.string().max(200), ResultNumber, ResultNumber])).max(100_000),
  /** The first cell that failed: id, code, sentence. */
  f: z.tuple([z.string(), z.string().max(60), z.string().max(20_000)]).optional(),
})
export type NumbersBody = z.infer<typeof NumbersBody>

/** From an old answer to a new one: which change caused which part of the difference. All numbers in SI. */
import { z } from 'zod'
import { CellId } from './identifiers.js'

/** What is adopted in one step: the value of an assumption, or the text of a cell. */
export const WaterfallPart = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('assumption'), name: z.string(), from: z.number(), to: z.number() }),
  z.strictObject({ kind: z.literal('cell'), cell: CellId, change: z.enum(['added', 'removed', 'changed']) }),
])
export type WaterfallPart = z.infer<typeof WaterfallPart>

export const WaterfallStep = z.strictObject({
  parts: z.array(WaterfallPart),
  /** Why it is taken together, in a clause; absent for a single part. */
  together: z.string().optional(),
})
export type WaterfallStep = z.infer<typeof WaterfallStep>

/** The effect of steps adopted at one place of an order: one step, or more where those between cannot be computed. */
export const WaterfallRow = z.strictObject({
  /** Places in `steps`. */
  steps: z.array(z.number()),
  effect: z.number(),
  /** Why the result could not be told in between. */
  failures: z.array(z.string()),
})
export type WaterfallRow = z.infer<typeof WaterfallRow>

export const WaterfallShares = z.discriminatedUnion('kind', [
  /** Over all sets of steps. */
  z.strictObject({ kind: z.literal('exact'), values: z.array(z.number()) }),
  /** The mean over orders drawn by chance; those in which something could not be computed are left out. */
  z.strictObject({
    kind: z.literal('sampled'),
    values: z.array(z.number()),
    orders: z.number(),
    leftOut: z.number(),
    seed: z.number(),
  }),
  z.strictObject({ kind: z.literal('none'), reason: z.string() }),
])
export type WaterfallShares = z.infer<typeof WaterfallShares>

export const Waterfall = z.strictObject({
  /** Of the result: a name, or a member of one. */
  name: z.string(),
  from: z.number(),
  to: z.number(),
  /** Part of the difference that the kernel makes: the same text computed by another one. Absent where it is the same. */
  kernel: z.number().optional(),
  steps: z.array(WaterfallStep),
  /** From the first step to the last, and from the last to the first. */
  forward: z.array(WaterfallRow),
  reverse: z.array(WaterfallRow),
  /** One for each step. */
  shares: WaterfallShares,
  /** Changes from which no way leads to the result. */
  without: z.array(WaterfallPart),
  /** How often the notebook was evaluated. */
  evaluations: z.number(),
})
export type Waterfall = z.infer<typeof Waterfall>

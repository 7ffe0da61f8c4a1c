/**
 * What a cell gave, as data. Results are keyed by fingerprint, live outside the document and are shared by everyone;
 * trial values never enter them.
 */
import { z } from 'zod'
import { Figure } from './figure.js'
import { CellId, Fingerprint } from './identifiers.js'
import { limits } from './limits.js'

const text = z.string().max(20_000)

/** JSON has no NaN or infinity, so a number that is not finite travels as its name. */
export const ResultNumber = z.union([z.number(), z.literal(['NaN', 'Infinity', '-Infinity'])])
export type ResultNumber = z.infer<typeof ResultNumber>

/** The value of one name, cut to what a reader can use: long lists carry their length and first items. */
export type ResultValue =
  | { readonly kind: 'number'; readonly si: ResultNumber }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'truth'; readonly value: boolean }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'function' }
  | { readonly kind: 'figure' }
  | { readonly kind: 'list'; readonly length: number; readonly items: readonly ResultValue[] }
  | { readonly kind: 'record'; readonly entries: readonly (readonly [string, ResultValue])[]; readonly more: number }

export const ResultValue: z.ZodType<ResultValue> = z.lazy(() =>
  z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('number'), si: ResultNumber }),
    z.strictObject({ kind: z.literal('text'), text }),
    z.strictObject({ kind: z.literal('truth'), value: z.boolean() }),
    z.strictObject({ kind: z.literal('nothing') }),
    z.strictObject({ kind: z.literal('function') }),
    z.strictObject({ kind: z.literal('figure') }),
    z.strictObject({ kind: z.literal('list'), length: z.number(), items: z.array(ResultValue).max(1000) }),
    z.strictObject({
      kind: z.literal('record'),
      entries: z.array(z.tuple([z.string(), ResultValue])).max(1000),
      more: z.number(),
    }),
  ]),
)

/** One top-level name of a cell. `dimension` comes from the checker (null where it is not known). */
export const NamedValue = z.strictObject({
  name: z.string().max(200),
  value: ResultValue,
  dimension: z.string().max(60).nullable(),
  /** Unit text the author wants it shown in. */
  unit: z.string().max(60).optional(),
  label: text.optional(),
  /** TeX. */
  symbol: z.string().max(200).optional(),
  /** Dimensions by field, of a record or of the records in a list; from the checker. */
  columns: z.record(z.string(), z.string().max(60)).optional(),
  /** Unit texts by field in which the author wants a table shown. */
  units: z.record(z.string(), z.string().max(60)).optional(),
  /** Named by a `result(...)` or `table(...)` call: shown first, and to readers of the folded cell. */
  stated: z.boolean().optional(),
})
export type NamedValue = z.infer<typeof NamedValue>

/** A method answered outside the range its source covers, or a reader should know something about the number. */
export const Advisory = z.strictObject({
  code: z.string().max(60),
  method: z.string().max(120),
  quantity: z.string().max(120).optional(),
  value: ResultNumber.optional(),
  range: z.tuple([z.number().nullable(), z.number().nullable()]).optional(),
  message: text,
})
export type Advisory = z.infer<typeof Advisory>

/** How sure an assumption is, centred on the value in the source; SI. A bare range is an interval and says nothing of the kind. */
export const Distribution = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('normal'), mean: ResultNumber, deviation: ResultNumber }),
  z.strictObject({ kind: z.literal('uniform'), low: ResultNumber, high: ResultNumber }),
  z.strictObject({ kind: z.literal('triangular'), low: ResultNumber, mode: ResultNumber, high: ResultNumber }),
  /** The logarithm is normal: 68 % lie between `median / factor` and `median * factor`. */
  z.strictObject({ kind: z.literal('lognormal'), median: ResultNumber, factor: ResultNumber }),
])
export type Distribution = z.infer<typeof Distribution>

export const AssumptionRecord = z.strictObject({
  name: z.string().max(200),
  /** The value in the source, SI. */
  value: ResultNumber,
  /** The trial value in force, SI; absent when the document's own value was used. */
  trial: ResultNumber.optional(),
  unit: z.string().max(60).optional(),
  low: ResultNumber.optional(),
  high: ResultNumber.optional(),
  distribution: Distribution.optional(),
  /** Rank correlation with other assumptions, by name. */
  correlated: z.record(z.string().max(200), z.number()).optional(),
  source: text.optional(),
  note: text.optional(),
  /** Who answers for the value. */
  owner: text.optional(),
})
export type AssumptionRecord = z.infer<typeof AssumptionRecord>

export const RequirementRecord = z.strictObject({
  name: z.string().max(200),
  actual: ResultNumber,
  atLeast: ResultNumber.optional(),
  atMost: ResultNumber.optional(),
  /** Signed distance to the nearest bound, positive when met, SI. */
  margin: ResultNumber,
  met: z.boolean(),
  unit: z.string().max(60).optional(),
  source: text.optional(),
  /** Paragraph of the rule it answers. */
  paragraph: text.optional(),
  /** Means of compliance: analysis, test, inspection ... */
  means: text.optional(),
  /** Who answers for it. */
  owner: text.optional(),
})
export type RequirementRecord = z.infer<typeof RequirementRecord>

/** Where a failure happened: a line and column of the cell's own TypeScript, counted from 1. */
export const SourcePlace = z.strictObject({ cell: CellId, line: z.number(), column: z.number() })
export type SourcePlace = z.infer<typeof SourcePlace>

export const CellError = z.strictObject({
  /** Stable code of the kernel's or the pipeline's registry: `DOES_NOT_CLOSE`, `INVALID_INPUT`, `TIME_LIMIT` ... */
  code: z.string().max(60),
  message: text,
  place: SourcePlace.optional(),
  /** The call in another cell that led here, innermost first. */
  calledFrom: z.array(SourcePlace).max(20).optional(),
  /** Data fields of a typed error (what runs away, where the fold is). */
  details: z.record(z.string(), z.union([ResultNumber, z.string(), z.boolean(), z.null()])).optional(),
})
export type CellError = z.infer<typeof CellError>

/** `computed`: values are complete. `failed`: an error ended it. `held back`: something it reads failed. */
export const Outcome = z.enum(['computed', 'failed', 'held back'])
export type Outcome = z.infer<typeof Outcome>

export const CellResult = z.strictObject({
  cell: CellId,
  fingerprint: Fingerprint,
  outcome: Outcome,
  values: z.array(NamedValue).max(limits.cellValues),
  figures: z.array(Figure).max(100),
  advisories: z.array(Advisory).max(200),
  assumptions: z.array(AssumptionRecord).max(1000),
  requirements: z.array(RequirementRecord).max(1000),
  log: z.array(text).max(1000),
  error: CellError.optional(),
  /** The cell above that failed, for `held back`. */
  heldBackBy: CellId.optional(),
})
export type CellResult = z.infer<typeof CellResult>

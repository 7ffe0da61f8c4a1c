/** Two states of a notebook side by side: what differs in text, assumptions, results, margins, advisories and figures. */
import { z } from 'zod'
import { Figure } from './figure.js'
import { CellId } from './identifiers.js'
import { CellKind } from './notebook.js'
import { Advisory, AssumptionRecord, RequirementRecord, ResultNumber } from './results.js'
import { RevisionName } from './revision.js'

/** A line of a cell: in both, only in the earlier, only in the later; or a number of equal lines left out. */
export const LineChange = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.enum(['kept', 'removed', 'added']), text: z.string() }),
  z.strictObject({ kind: z.literal('left out'), lines: z.number() }),
])
export type LineChange = z.infer<typeof LineChange>

export const CellChange = z.strictObject({
  cell: CellId,
  kind: CellKind,
  /** Number in the margin on either side; absent where the cell is not there. */
  from: z.string().optional(),
  to: z.string().optional(),
  /** Words of its opening comment or heading, on the later side where it is there. */
  heading: z.string(),
  /** A cell may be both moved and changed. */
  change: z.enum(['added', 'removed', 'changed', 'moved']),
  moved: z.boolean(),
  lines: z.array(LineChange),
})
export type CellChange = z.infer<typeof CellChange>

/** Title and fields of the title block; an empty text where one is not given. */
export const FieldChange = z.strictObject({ field: z.string(), from: z.string(), to: z.string() })
export type FieldChange = z.infer<typeof FieldChange>

export const AssumptionChange = z.strictObject({
  name: z.string(),
  dimension: z.string().nullable(),
  from: AssumptionRecord.optional(),
  to: AssumptionRecord.optional(),
  /** What of it differs: `value`, `range`, `source` ... */
  differs: z.array(z.string()),
})
export type AssumptionChange = z.infer<typeof AssumptionChange>

export const NumberChange = z.strictObject({
  /** A name, or a member of one: `closure.grossMass`. */
  name: z.string(),
  label: z.string().optional(),
  dimension: z.string().nullable(),
  unit: z.string().optional(),
  from: ResultNumber.optional(),
  to: ResultNumber.optional(),
  /** `to` less `from`, SI; absent unless both are finite. */
  change: z.number().optional(),
  /** In hundredths of the earlier number; absent where that is zero. */
  percent: z.number().optional(),
  /** Stated by its author as a result. */
  stated: z.boolean(),
})
export type NumberChange = z.infer<typeof NumberChange>

export const RequirementChange = z.strictObject({
  name: z.string(),
  from: RequirementRecord.optional(),
  to: RequirementRecord.optional(),
})
export type RequirementChange = z.infer<typeof RequirementChange>

export const AdvisoryChange = z.strictObject({
  cell: CellId,
  number: z.string(),
  change: z.enum(['new', 'gone']),
  advisory: Advisory,
})
export type AdvisoryChange = z.infer<typeof AdvisoryChange>

export const FigureChange = z.strictObject({
  cell: CellId,
  /** In the margin, on the later side where the cell is there. */
  number: z.string(),
  /** Among the figures of its cell, from 1. */
  place: z.number(),
  caption: z.string(),
  change: z.enum(['added', 'removed', 'changed']),
  from: Figure.optional(),
  to: Figure.optional(),
})
export type FigureChange = z.infer<typeof FigureChange>

/** A side of a comparison: a revision by its name, or the text as it stands. */
export const ComparedName = z.union([RevisionName, z.literal('live')])
export type ComparedName = z.infer<typeof ComparedName>

/** A side as the script of the comparison needs it to compute the waterfall. */
export const WaterfallSource = z.strictObject({
  label: z.string(),
  /** Sizing cells in page order. */
  cells: z.array(z.strictObject({ id: CellId, source: z.string() })),
  /** Numbers in the margin by cell. */
  numbers: z.record(z.string(), z.string()),
  /** Numbers that another kernel than the one at hand computed, SI by name. */
  kept: z.record(z.string(), z.number()),
})
export type WaterfallSource = z.infer<typeof WaterfallSource>

/** What the page of a comparison carries for its script, as PageData. */
export const ComparePageData = z.strictObject({
  from: WaterfallSource,
  to: WaterfallSource,
  /** Results that both sides have, those that changed first. */
  results: z.array(
    z.strictObject({
      name: z.string(),
      label: z.string().optional(),
      dimension: z.string().nullable(),
      unit: z.string().optional(),
      changed: z.boolean(),
    }),
  ),
  /** How the values of assumptions that changed are shown. */
  assumptions: z.array(
    z.strictObject({ name: z.string(), dimension: z.string().nullable(), unit: z.string().optional() }),
  ),
})
export type ComparePageData = z.infer<typeof ComparePageData>

/** GET /api/notebooks/:id/compare?from=A&to=live -> RevisionComparison */
export const RevisionComparison = z.strictObject({
  from: z.string(),
  to: z.string(),
  fields: z.array(FieldChange),
  cells: z.array(CellChange),
  assumptions: z.array(AssumptionChange),
  numbers: z.array(NumberChange),
  requirements: z.array(RequirementChange),
  advisories: z.array(AdvisoryChange),
  figures: z.array(FigureChange),
  /** Things that are on both sides and do not differ. */
  same: z.strictObject({
    cells: z.number(),
    assumptions: z.number(),
    numbers: z.number(),
    requirements: z.number(),
    figures: z.number(),
  }),
  /** The kernel that computed them is another one. */
  kernelChanged: z.boolean(),
  /** Names of the kernel that only one side uses. */
  methods: z.strictObject({ added: z.array(z.string()), removed: z.array(z.string()) }),
})
export type RevisionComparison = z.infer<typeof RevisionComparison>

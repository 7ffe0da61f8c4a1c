/** The contracts every part of the house agrees on. */
export * from './caution.js'
export * from './cell-number.js'
export * from './comparison.js'
export * from './dimension.js'
export * from './drivers.js'
export * from './evidence.js'
export * from './figure.js'
export * from './finding.js'
export type * from './formula.js'
export * from './identifiers.js'
export * from './keys.js'
export * from './limits.js'
export * from './messages.js'
export * from './method.js'
export * from './method-address.js'
export * from './method-subjects.js'
export * from './migrations.js'
export * from './notebook.js'
export * from './notebook-file.js'
export * from './numbers-body.js'
export * from './provenance.js'
export * from './quantity-names.js'
export {
  Advisory,
  AssumptionRecord,
  CellError,
  CellResult,
  Distribution,
  NamedValue,
  Outcome,
  RequirementRecord,
  ResultNumber,
  ResultValue,
  SourcePlace,
} from './results.js'
export * from './revision.js'
export * from './spread.js'
export * from './suggest.js'
export * from './trace.js'
export * from './trouble.js'
export * from './unit-table.js'
export * from './unit-text.js'
export * from './waterfall.js'

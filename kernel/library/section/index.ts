/** Aerofoil sections: polars as plain records, asked by blade elements. */
export { type Coefficients, type CoefficientsOptions, coefficients } from './coefficients.js'
export { type LinearSection, type LinearSectionOptions, linear } from './linear.js'
export type { Section } from './prepare-polar.js'
export { type TableRows, type TableSection, type TableSectionOptions, table } from './table.js'

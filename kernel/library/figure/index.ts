/** Figures as data: builders for the shapes of the contract. */
export type { AxisOptions } from './axis.js'
export { type BarsOptions, bars } from './bars.js'
export { type EfficiencyMapFigureOptions, efficiencyMap } from './efficiency-map.js'
export { type LineOptions, type LineRule, type LineSeries, line } from './line.js'
export { type MassBreakdownOptions, massBreakdown } from './mass-breakdown.js'
export { type RotorPolarOptions, rotorPolar } from './rotor-polar.js'

/** Figures as data: builders for the shapes of the contract. */
export { type AuthorityMapOptions, authorityMap } from './authority-map.js'
export type { AxisOptions } from './axis.js'
export { type BarsOptions, bars } from './bars.js'
export { type ConstraintDiagramFigureOptions, constraintDiagram } from './constraint-diagram.js'
export { type ConversionCorridorOptions, conversionCorridor } from './conversion-corridor.js'
export {
  type CountTradeFigureOptions,
  countTrade,
  type MassAgainstLossOptions,
  massAgainstLoss,
} from './count-trade.js'
export { type DayFigureOptions, day } from './day.js'
export { type DischargeFigureOptions, discharge } from './discharge.js'
export { type DiskLoadingWindowFigureOptions, diskLoadingWindow } from './disk-loading-window.js'
export { type DragBreakdownOptions, dragBreakdown } from './drag-breakdown.js'
export { type DragPolarOptions, dragPolar } from './drag-polar.js'
export { type EfficiencyMapFigureOptions, efficiencyMap } from './efficiency-map.js'
export { type HotAndHighFigureOptions, hotAndHigh } from './hot-and-high.js'
export { type LineOptions, type LineRule, type LineSeries, line } from './line.js'
export { type LossPlanOptions, lossPlan } from './loss-plan.js'
export { type MassBreakdownOptions, massBreakdown } from './mass-breakdown.js'
export { type MassSpreadOptions, massSpread } from './mass-spread.js'
export { type MissionProfileOptions, missionProfile } from './mission-profile.js'
export { type PackPowerOptions, packPower, type RagoneFigureOptions, ragone } from './pack-power.js'
export { type PayloadRangeFigureOptions, payloadRange } from './payload-range.js'
export { type PeakPerLossOptions, peakPerLoss } from './peak-per-loss.js'
export { type PowerAgainstSpeedFigureOptions, powerAgainstSpeed } from './power-against-speed.js'
export { type RotorPolarOptions, rotorPolar } from './rotor-polar.js'
export { type RouteReachFigureOptions, routeReach } from './route-reach.js'
export { type StowageComparisonOptions, stowageComparison } from './stowage-comparison.js'
export { type WhatSizesWhatFigureOptions, whatSizesWhat } from './what-sizes-what.js'

export * from './assumption-rows.js'
export * from './distribution-words.js'
export * from './register-order.js'
export * from './render-register.js'
export * from './render-requirements.js'
export * from './requirement-rows.js'
export type * from './requirement-sureness.js'
export {
  distributionText,
  type Reading,
  rangeText,
  readDistribution,
  readRange,
  readUnit,
  type StatedDistribution,
} from './sureness-text.js'
export { numberText, readValue, unitOf, type ValueReading, valueText } from './value-text.js'

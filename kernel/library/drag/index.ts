/** Drag: the polar, the power it asks for, and the speeds at which it asks for least. */
export { type BestSpeed, type BestSpeedOptions, leastDragSpeed, leastPowerSpeed } from './best-speed.js'
export { type ParabolicPolar, type Polar, type PolarOptions, polar } from './polar.js'
export { type PowerRequired, type PowerRequiredOptions, powerRequired } from './power-required.js'

/** General numerics kept by the house: small, documented, checked against analytic cases and an independent library. */
export { brentMinimum, type Minimum } from './brent-minimum.js'
export { brentRoot, type Root } from './brent-root.js'
export { type Derivative, derivative } from './derivative.js'
export { solveLinear } from './solve-linear.js'

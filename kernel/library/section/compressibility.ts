/** What the Mach number does to a section: steeper lift, and drag past the critical Mach number. */

/** Beyond this Mach number the linear theory has nothing to say and the correction is held. */
export const greatestLinearMach = 0.8

/**
 * Lift slope over its incompressible value, 1/sqrt(1 - M^2), held from M = 0.8 on.
 * Glauert, H., The Effect of Compressibility on the Lift of an Aerofoil, Proceedings of the Royal Society A 118, 1928.
 */
export function prandtlGlauert(mach: number): number {
  const held = Math.min(mach, greatestLinearMach)
  return 1 / Math.sqrt(1 - held * held)
}

/** Korn's technology factor of the six-series sections (from memory). */
const kornFactor = 0.87
/** From drag divergence (slope 0.1) back to the critical Mach number by Lock's law: (0.1/80)^(1/3). */
const divergenceAboveCritical = Math.cbrt(0.1 / 80)

/**
 * Drag past the critical Mach number: 20 (M - M_cr)^4, M_cr = 0.87 - t/c - |c_l|/10 - 0.1077.
 * Korn's equation with Lock's fourth-power law, as in Mason, W. H., Analytic Models for Technology Integration in Aircraft Design,
 * AIAA 90-3262, 1990 (from memory).
 */
export function waveDrag(mach: number, thickness: number, lift: number): number {
  const critical = kornFactor - thickness - Math.abs(lift) / 10 - divergenceAboveCritical
  const past = Math.min(mach, 1) - critical
  return past > 0 ? 20 * past * past * past * past : 0
}

/**
 * Induced velocity of an actuator disk in axial flight, without checks: momentum theory where it holds, the fit of measured
 * rotors between. Shared by `rotor.axial` and by every annulus of a blade.
 */

/** Blends the fit to the windmill branch between this climb ratio and -2. */
const blendFrom = -1.9
const windmill = -2

/**
 * The published fit as it is printed, v/v_h for V/v_h = x from -2 to 0. It meets the climb branch at 0 (value 1, with a corner:
 * slope -1.125 against -0.5) and stands 2.6 % above the windmill branch at -2.
 */
export function vortexRingQuartic(x: number): number {
  return 1 + x * (-1.125 + x * (-1.372 + x * (-1.718 - 0.655 * x)))
}

const stepAtWindmill = vortexRingQuartic(windmill) - 1

/** The fit with its step taken back by a cubic over the last twentieth, so that it meets the windmill branch at -2 in value. */
export function vortexRingRatio(x: number): number {
  const quartic = vortexRingQuartic(x)
  if (x >= blendFrom) return quartic
  const share = (blendFrom - x) / (blendFrom - windmill)
  return quartic - stepAtWindmill * share * share * (3 - 2 * share)
}

/**
 * Induced velocity at a climb speed, from a loading v_h^2 = T/(2 rho A) with the sign of the thrust; both in any one unit of
 * speed. Continuous in both. A disk that pushes the other way is its own mirror image.
 */
export function inducedVelocity(climb: number, loading: number): number {
  if (loading < 0) return -inducedVelocity(-climb, -loading)
  if (loading === 0) return 0
  const half = 0.5 * climb
  // Written so that nothing cancels where the loading is small against the speed.
  if (climb >= 0) return loading / (half + Math.sqrt(half * half + loading))
  const hover = Math.sqrt(loading)
  if (climb <= windmill * hover) return loading / (-half + Math.sqrt(Math.max(half * half - loading, 0)))
  return hover * vortexRingRatio(climb / hover)
}

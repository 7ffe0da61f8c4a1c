import { requireWithin } from '../check.js'
import type { Ratio } from '../quantity.js'
import { vortexRingQuartic } from './axial-inflow.js'

/**
 * The published fit for vertical descent, as it is printed and without `rotor.axial`'s blend: for comparison with other fits.
 *
 * @equation v/v_h = 1 - 1.125 x - 1.372 x^2 - 1.718 x^3 - 0.655 x^4
 * @param climbRatio - x = V/v_h, from -2 to 0
 * @returns v/v_h
 * @throws InvalidInput outside -2 to 0
 * @method Closed form. At -2 it gives 1.026, where momentum theory gives 1.
 * @validity -2 to 0; a mean in time through scattered measurements.
 * @source Leishman, J. G., Principles of Helicopter Aerodynamics, 2nd edition, 2006, chapter 2, with kappa = 1 (coefficients read second-hand).
 * @example
 * rotor.vortexRingFit(-1) // 1.816
 */
export function vortexRingFit(climbRatio: Ratio): Ratio {
  requireWithin('rotor.vortexRingFit', 'climbRatio', climbRatio, '1', -2, 0)
  return vortexRingQuartic(climbRatio)
}

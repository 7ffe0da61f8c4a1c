import { requireCount, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Ratio } from '../quantity.js'

export interface TipLossOptions {
  /** C_T = T/(rho A V_tip^2). */
  readonly thrustCoefficient: Ratio
  readonly blades: Ratio
}

export interface PrandtlLossOptions {
  readonly blades: Ratio
  /** r/R, above 0 and below 1. */
  readonly station: Ratio
  /** Flow through the disk over tip speed, (r/R) phi. */
  readonly inflowRatio: Ratio
}

const tipLossMethod = 'rotor.tipLoss'
const knownTipLoss = new Set(['thrustCoefficient', 'blades'])
const prandtlMethod = 'rotor.prandtlLoss'
const knownPrandtl = new Set(['blades', 'station', 'inflowRatio'])

/**
 * Effective over geometric radius of a hovering rotor, for `tipLoss` of `rotor.hover`.
 *
 * @equation B = 1 - sqrt(C_T)/N
 * @param options - `thrustCoefficient` C_T, `blades` N
 * @returns B
 * @throws InvalidInput for a thrust coefficient that is not positive or gives B below 0.5, a number of blades that is not whole, and an
 * unknown option
 * @method Closed form from Prandtl's loss at hover inflow. Another usual form, 1 - sqrt(2 C_T)/N, gives up to 3 % less (two blades at C_T = 0.02).
 * @validity Usual hover loadings, C_T up to 0.02.
 * @source Leishman, J. G., Principles of Helicopter Aerodynamics, 2nd edition, 2006, chapter 2 (from memory).
 * @example
 * rotor.tipLoss({ thrustCoefficient: 0.008, blades: 4 }) // 0.97764
 */
export function tipLoss(options: TipLossOptions): Ratio {
  checkOptions(tipLossMethod, options, knownTipLoss)
  const { thrustCoefficient, blades } = options
  requirePositive(tipLossMethod, 'thrustCoefficient', thrustCoefficient, '1')
  requireCount(tipLossMethod, 'blades', blades)
  const effective = 1 - Math.sqrt(thrustCoefficient) / blades
  if (effective < 0.5)
    throw new InvalidInput({
      method: tipLossMethod,
      argument: 'thrustCoefficient',
      value: thrustCoefficient,
      accepted: `at most ${0.25 * blades * blades}, where half of the radius is lost`,
    })
  return effective
}

/**
 * Prandtl's loss at a station of the blade: mean induced velocity of the annulus over that at a blade.
 *
 * @equation F = (2/pi) acos(exp(-f)), f = (N/2) (1 - x)/lambda, x = r/R, lambda = x phi
 * @param options - `blades` N, `station` x (above 0, below 1), `inflowRatio` lambda
 * @returns F, from 0 at the tip to 1
 * @throws InvalidInput for a station outside 0 to 1, an inflow or number of blades that is not positive, and an unknown option
 * @method Closed form: flow about the edges of a stack of sheets.
 * @validity Lightly loaded rotors; best for many blades.
 * @source Prandtl in Betz, Schraubenpropeller mit geringstem Energieverlust, 1919; Leishman, J. G., Principles of Helicopter Aerodynamics,
 * 2nd edition, 2006, chapter 3 (both from memory).
 * @example
 * rotor.prandtlLoss({ blades: 2, station: 0.95, inflowRatio: 0.057 }) // 0.7269
 */
export function prandtlLoss(options: PrandtlLossOptions): Ratio {
  checkOptions(prandtlMethod, options, knownPrandtl)
  const { blades, station, inflowRatio } = options
  requireCount(prandtlMethod, 'blades', blades)
  requireWithin(prandtlMethod, 'station', station, '1', 1e-9, 1)
  requirePositive(prandtlMethod, 'inflowRatio', inflowRatio, '1')
  const loss = prandtlFactor((0.5 * blades * (1 - station)) / inflowRatio)
  requireRepresentable(prandtlMethod, loss)
  return loss
}

/** F of Prandtl's exponent f >= 0; 1 to rounding from f = 37 on, which spares exp and acos. */
export function prandtlFactor(exponent: number): number {
  return exponent > 37 ? 1 : (2 / Math.PI) * Math.acos(Math.exp(-exponent))
}

import { requireFinite, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import type { Area, Force, Length, Pressure, Ratio } from '../quantity.js'

export interface TailLoadOptions {
  /** Carried by wing and tail together [N]: times the load factor in a manoeuvre. */
  readonly weight: Force
  /** [Pa] */
  readonly dynamicPressure: Pressure
  /** [m^2] */
  readonly wingArea: Area
  /** Mean aerodynamic chord [m]. */
  readonly chord: Length
  /** Of wing and body about their aerodynamic centre. */
  readonly zeroLiftMoment: Ratio
  /** Centre of gravity behind that centre [chords]; below 0 it lies ahead. */
  readonly gravityBehindCentre: Ratio
  /** From the centre of gravity to the lift of the tail [m]. */
  readonly tailArm: Length
}

export interface TailLoad {
  /** [N]; below 0 the tail pushes down. */
  readonly tailLift: Force
  /** [N] */
  readonly wingLift: Force
}

const method = 'wing.tailLoad'
const known = new Set([
  'weight',
  'dynamicPressure',
  'wingArea',
  'chord',
  'zeroLiftMoment',
  'gravityBehindCentre',
  'tailArm',
])

/**
 * Lift of the tail that balances the aircraft in pitch, and what is left to the wing.
 *
 * @equation L_w + L_t = W; L_w x c + q S c C_m,ac = L_t l_t, so L_t = (W x c + q S c C_m,ac)/(l_t + x c)
 * @param options - `weight` W [N], `dynamicPressure` q [Pa], `wingArea` S [m^2], `chord` c [m], `zeroLiftMoment` C_m,ac,
 * `gravityBehindCentre` x [chords], `tailArm` l_t [m]
 * @returns `tailLift` [N], `wingLift` [N]
 * @throws InvalidInput for values that are not positive, a tail that does not lie behind the aerodynamic centre of the wing, and an
 * unknown option
 * @method Statics, exact; drag and thrust go through the centre of gravity.
 * @validity Steady flight without lift from rotors.
 * @source Statics.
 * @example
 * const load = wing.tailLoad({
 *   weight: 2000 * u.kg * u.g0, dynamicPressure: 2000, wingArea: 14 * u.m2, chord: 1.24 * u.m, zeroLiftMoment: -0.05,
 *   gravityBehindCentre: 0.05, tailArm: 5 * u.m,
 * })
 * load.tailLift // -102.7
 */
export function tailLoad(options: TailLoadOptions): TailLoad {
  checkOptions(method, options, known)
  const { weight, dynamicPressure, wingArea, chord, zeroLiftMoment, gravityBehindCentre, tailArm } = options
  requirePositive(method, 'weight', weight, 'N')
  requirePositive(method, 'dynamicPressure', dynamicPressure, 'Pa')
  requirePositive(method, 'wingArea', wingArea, 'm^2')
  requirePositive(method, 'chord', chord, 'm')
  requireFinite(method, 'zeroLiftMoment', zeroLiftMoment, '1')
  requireFinite(method, 'gravityBehindCentre', gravityBehindCentre, '1')
  requirePositive(method, 'tailArm', tailArm, 'm')
  const behind = gravityBehindCentre * chord
  const distance = tailArm + behind
  if (!(distance > 0))
    throw new InvalidInput({
      method,
      argument: 'tailArm',
      value: tailArm,
      unit: 'm',
      accepted: `greater than ${-behind} m, so that the tail lies behind the aerodynamic centre of the wing`,
    })
  const tailLift = (weight * behind + dynamicPressure * wingArea * chord * zeroLiftMoment) / distance
  const wingLift = weight - tailLift
  requireRepresentable(method, tailLift + wingLift)
  return { tailLift, wingLift }
}

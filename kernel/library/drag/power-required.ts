import { requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Density, Force, Power, Ratio, Speed } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { type ParabolicPolar, requirePolar } from './polar.js'

export interface PowerRequiredOptions {
  readonly polar: ParabolicPolar
  /** Weight carried by the wing [N]. */
  readonly weight: Force
  /** Reference area of the polar [m^2]. */
  readonly wingArea: Area
  /** [kg/m^3] */
  readonly density: Density
  /** True airspeed [m/s]. */
  readonly speed: Speed
}

export interface PowerRequired {
  /** Drag times speed [W]: aerodynamic, before propeller and motor. */
  readonly power: Power
  /** [N] */
  readonly drag: Force
  readonly liftCoefficient: Ratio
  readonly dragCoefficient: Ratio
  readonly liftToDrag: Ratio
}

const known = new Set(['polar', 'weight', 'wingArea', 'density', 'speed'])

/** Beyond this a plain wing without flaps has stalled (common practice, no source). */
const greatestLift = 1.8

/**
 * Aerodynamic power to fly level at a speed.
 *
 * @equation q = rho V^2/2; C_L = W/(q S); D = q S (C_D0 + K C_L^2); P = D V
 * @param options - `polar` (C_D0 and K), `weight` W [N], `wingArea` S [m^2], `density` rho [kg/m^3], `speed` V [m/s]
 * @returns `power` [W], `drag` [N], `liftCoefficient`, `dragCoefficient`, `liftToDrag`
 * @throws InvalidInput for a value that is not positive and finite, and for an unknown option
 * @method Closed form. Steady level flight; thrust along the flight path carries no weight.
 * @validity Where the polar holds: attached flow. A lift coefficient above 1.8 carries an advisory (common practice, no source).
 * @source Anderson, J. D., Aircraft Performance and Design, 1999, section 5.3 (from memory) and table 5.1 (read, reproduced in the tests).
 * @example
 * const cruise = drag.powerRequired({
 *   polar: drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 10, spanEfficiency: 0.8 }),
 *   weight: 2000 * u.kg * u.g0, wingArea: 14 * u.m2, density: 1.0580673, speed: 51.392 * u.mps,
 * })
 * cruise.drag // 1564.91
 */
export function powerRequired(options: PowerRequiredOptions): PowerRequired {
  const method = 'drag.powerRequired'
  checkOptions(method, options, known)
  const { polar, weight, wingArea, density, speed } = options
  requirePolar(method, polar)
  requirePositive(method, 'weight', weight, 'N')
  requirePositive(method, 'wingArea', wingArea, 'm^2')
  requirePositive(method, 'density', density, 'kg/m^3')
  requirePositive(method, 'speed', speed, 'm/s')
  return levelFlight(method, polar, weight, wingArea, density, speed)
}

/** The formulas alone, for arguments that a public method of this folder has checked. */
export function levelFlight(
  method: string,
  polar: ParabolicPolar,
  weight: number,
  wingArea: number,
  density: number,
  speed: number,
): PowerRequired {
  const dynamicForce = 0.5 * density * speed * speed * wingArea
  const liftCoefficient = weight / dynamicForce
  const dragCoefficient = polar.zeroLiftDrag + polar.inducedFactor * liftCoefficient * liftCoefficient
  if (liftCoefficient > greatestLift && isListening()) adviseLift(method, liftCoefficient)
  const drag = dynamicForce * dragCoefficient
  const power = drag * speed
  const liftToDrag = liftCoefficient / dragCoefficient
  requireRepresentable(method, power + liftCoefficient + dragCoefficient + liftToDrag)
  return { power, drag, liftCoefficient, dragCoefficient, liftToDrag }
}

function adviseLift(method: string, liftCoefficient: number): void {
  advise({
    code: 'LIFT_COEFFICIENT',
    method,
    quantity: 'liftCoefficient',
    value: liftCoefficient,
    range: [0, greatestLift],
    message: `A lift coefficient of ${liftCoefficient.toPrecision(3)} is beyond the stall of a plain wing; the polar does not hold there.`,
  })
}

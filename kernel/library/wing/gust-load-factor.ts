import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Density, Length, Pressure, Ratio, Speed } from '../quantity.js'

export interface GustLoadFactorOptions {
  /** Weight over wing area [N/m^2]. */
  readonly wingLoading: Pressure
  /** Mean geometric chord [m]. */
  readonly meanChord: Length
  /** Of the aircraft [1/rad]. */
  readonly liftCurveSlope: Ratio
  /** Equivalent airspeed [m/s]. */
  readonly speed: Speed
  /** Derived gust speed [m/s], equivalent; 15.24 (50 ft/s, at the design cruise speed) when left out, 7.62 at the design dive speed. */
  readonly gustSpeed?: Speed
  /** Of the air flown in [kg/m^3], sea level when left out. */
  readonly density?: Density
}

export interface GustLoadFactor {
  readonly positive: Ratio
  readonly negative: Ratio
  /** mu, the mass of the aircraft against that of the air about it. */
  readonly massRatio: Ratio
  /** K_g, what of a sharp-edged gust is left. */
  readonly alleviation: Ratio
}

const method = 'wing.gustLoadFactor'
const known = new Set(['wingLoading', 'meanChord', 'liftCurveSlope', 'speed', 'gustSpeed', 'density'])
const seaLevelDensity = 1.225
const standardGravity = 9.80665

/**
 * Limit load factors of a vertical gust in level flight.
 *
 * @equation mu = 2 (W/S)/(rho c a g); K_g = 0.88 mu/(5.3 + mu); n = 1 +- K_g rho_0 U V a/(2 W/S)
 * @param options - `wingLoading` W/S [N/m^2], `meanChord` c [m], `liftCurveSlope` a [1/rad], `speed` V [m/s, equivalent]; optional
 * `gustSpeed` U [m/s] (15.24), `density` rho [kg/m^3] (1.225)
 * @returns `positive`, `negative`, `massRatio` mu, `alleviation` K_g
 * @throws InvalidInput for a value that is not positive, a lift curve slope outside 0.1 to 12, a gust speed above 40 m/s, and an unknown option
 * @method As printed, in SI; the printed constant 498 of knots and pounds gives 0.1 % more of the increment.
 * @validity Up to 20,000 ft the gust is 15.24 m/s at V_C and 7.62 m/s at V_D; less above. A mass ratio below 5 or so carries an
 * advisory: such light aircraft follow the gust, and gusts rather than manoeuvres size them.
 * @source 14 CFR 23.341(c) and 23.333(c) before 2017, CS-23 Amendment 4 (read).
 * @example
 * const gust = wing.gustLoadFactor({ wingLoading: 1400.95, meanChord: 1.18322 * u.m, liftCurveSlope: 5, speed: 60 * u.mps })
 * gust.positive // 2.55057
 */
export function gustLoadFactor(options: GustLoadFactorOptions): GustLoadFactor {
  checkOptions(method, options, known)
  const { wingLoading, meanChord, liftCurveSlope, speed, gustSpeed = 15.24, density = seaLevelDensity } = options
  requirePositive(method, 'wingLoading', wingLoading, 'N/m^2')
  requirePositive(method, 'meanChord', meanChord, 'm')
  requireWithin(method, 'liftCurveSlope', liftCurveSlope, '1', 0.1, 12)
  requirePositive(method, 'speed', speed, 'm/s')
  requirePositive(method, 'gustSpeed', gustSpeed, 'm/s')
  requireWithin(method, 'gustSpeed', gustSpeed, 'm/s', 0, 40)
  requirePositive(method, 'density', density, 'kg/m^3')
  const massRatio = (2 * wingLoading) / (density * meanChord * liftCurveSlope * standardGravity)
  const alleviation = (0.88 * massRatio) / (5.3 + massRatio)
  const increment = (alleviation * seaLevelDensity * gustSpeed * speed * liftCurveSlope) / (2 * wingLoading)
  requireRepresentable(method, massRatio + alleviation + increment)
  adviseOutside(massRatio, {
    code: 'GUST_MASS_RATIO',
    method,
    quantity: 'massRatio',
    low: 5,
    because: 'below 5 the alleviation factor is outside the aeroplanes it was derived from',
  })
  return { positive: 1 + increment, negative: 1 - increment, massRatio, alleviation }
}

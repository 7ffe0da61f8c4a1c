/** What is left of each limit in one state of the air: the question that a hot and high grid asks at every place. */
import { requireNonNegative, requirePositive, requireRepresentable, requireShare, requireWithin } from '../check.js'
import { type ParabolicPolar, requirePolar } from '../drag/polar.js'
import { levelFlight } from '../drag/power-required.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { adviseOutside } from '../outside.js'
import type { Area, Density, Mass, Power, Ratio, Speed } from '../quantity.js'
import { silently } from '../recorder.js'
import { hover } from '../rotor/hover.js'
import { stallSpeed } from '../wing/stall-speed.js'

export interface LiftLimits {
  /** Of all lift rotors [m^2]. */
  readonly diskArea: Area
  readonly figureOfMerit: Ratio
  /** Share of thrust lost on wing and body; 0 when left out. */
  readonly download?: Ratio
  /** That the lift motors can give together [W]. */
  readonly shaftPower: Power
  /** Thrust asked for over weight: the margin to climb and steer; 1 when left out. */
  readonly thrustRatio?: Ratio
  /** From the terminals of the pack to the shafts; 0.9 when left out. */
  readonly electricalEfficiency?: Ratio
  /** That the pack can give at the worst instant [W]; no limit when left out. */
  readonly packPower?: Power
}

export interface WingLimits {
  /** [m^2] */
  readonly wingArea: Area
  readonly maximumLift: Ratio
  /** True airspeed at which the wing must carry the weight [m/s]. */
  readonly speed: Speed
  /** Over the stall speed; 1.2 when left out. */
  readonly margin?: Ratio
}

export interface CruiseLimits {
  readonly polar: ParabolicPolar
  /** [m^2] */
  readonly wingArea: Area
  /** True airspeed [m/s]. */
  readonly speed: Speed
  /** Vertical [m/s]; 0 when left out. */
  readonly climbSpeed?: Speed
  readonly propellerEfficiency: Ratio
  /** That the cruise motor can give [W]. */
  readonly shaftPower: Power
}

export interface MarginsOptions {
  /** [kg] */
  readonly grossMass: Mass
  /** [kg/m^3] */
  readonly density: Density
  readonly lift?: LiftLimits
  readonly wing?: WingLimits
  readonly cruise?: CruiseLimits
}

/** Share of what is available that is left, by limit: negative is lacking. */
export type Margins = Readonly<Record<string, Ratio>>

const method = 'limits.margins'
const known = new Set(['grossMass', 'density', 'lift', 'wing', 'cruise'])
const knownLift = new Set([
  'diskArea',
  'figureOfMerit',
  'download',
  'shaftPower',
  'thrustRatio',
  'electricalEfficiency',
  'packPower',
])
const knownWing = new Set(['wingArea', 'maximumLift', 'speed', 'margin'])
const knownCruise = new Set(['polar', 'wingArea', 'speed', 'climbSpeed', 'propellerEfficiency', 'shaftPower'])
const standardGravity = 9.80665

/**
 * Margins of hover power, pack power, wing stall and cruise power of a given aircraft in air of a given density.
 *
 * @equation margin = 1 - needed/available; hover: P = (n m g/(1 - d))^(3/2)/(FM sqrt(2 rho A)); pack: P/eta; wing: (k V_s/V)^2; cruise: (D V + m g V_climb)/eta_p
 * @param options - `grossMass` m [kg], `density` rho [kg/m^3], and any of `lift` `{ diskArea, figureOfMerit, download (0), shaftPower [W], thrustRatio n (1), electricalEfficiency eta (0.9), packPower [W] }`,
 * `wing` `{ wingArea [m^2], maximumLift, speed [m/s], margin k (1.2) }`, `cruise` `{ polar, wingArea [m^2], speed [m/s], climbSpeed (0), propellerEfficiency, shaftPower [W] }`
 * @returns a record by limit: `'hover power'`, `'pack power'`, `'wing stall'`, `'cruise power'`, each the share of what is available that is left; negative is lacking
 * @throws InvalidInput for none of the three, values that are not positive, shares outside 0 to 1, and an unknown option
 * @method Closed forms of `rotor.hover`, `wing.stallSpeed` and `drag.powerRequired`.
 * @validity Motors and pack give the same power at any altitude, though thin and hot air cools them less: below 1.1 kg/m^3 an advisory. Give `shaftPower` from `powertrain.motorInAir` where it must last.
 * @source As the methods named.
 * @example
 * const left = limits.margins({
 *   grossMass: 1637 * u.kg, density: air.standard(1500 * u.m, 20 * u.K).density,
 *   lift: { diskArea: 42.5, figureOfMerit: 0.72, download: 0.05, shaftPower: 400 * u.kW, packPower: 420 * u.kW },
 * })
 * left['hover power'] // 0.16733
 */
export function margins(options: MarginsOptions): Margins {
  checkOptions(method, options, known)
  const { grossMass, density, lift, wing, cruise } = options
  requirePositive(method, 'grossMass', grossMass, 'kg')
  requirePositive(method, 'density', density, 'kg/m^3')
  const weight = grossMass * standardGravity
  if (lift !== undefined || cruise !== undefined)
    adviseOutside(density, {
      ...{ code: 'COOLING_AIR', method, quantity: 'density', low: 1.1 },
      because:
        'motors are taken to give the power of dense air, though thin air cools them less (powertrain.motorInAir)',
    })
  const answer: Record<string, number> = {}
  if (lift !== undefined) addLift(answer, lift, weight, density)
  if (wing !== undefined) answer['wing stall'] = wingMargin(wing, weight, density)
  if (cruise !== undefined) answer['cruise power'] = cruiseMargin(cruise, weight, density)
  const values = Object.values(answer)
  if (values.length === 0)
    throw new InvalidInput({
      method,
      argument: 'lift, wing and cruise',
      value: 'missing',
      accepted: 'given, one at least',
    })
  requireRepresentable(
    method,
    values.reduce((sum, one) => sum + one, 0),
  )
  return answer
}

function addLift(answer: Record<string, number>, lift: LiftLimits, weight: number, density: number): void {
  checkOptions(`${method} lift`, lift, knownLift)
  const { download = 0, thrustRatio = 1, electricalEfficiency = 0.9, packPower } = lift
  requirePositive(method, 'lift.diskArea', lift.diskArea, 'm^2')
  requireShare(method, 'lift.figureOfMerit', lift.figureOfMerit)
  requireWithin(method, 'lift.download', download, '1', 0, 0.5)
  requirePositive(method, 'lift.thrustRatio', thrustRatio, '1')
  requirePositive(method, 'lift.shaftPower', lift.shaftPower, 'W')
  requireShare(method, 'lift.electricalEfficiency', electricalEfficiency)
  const thrust = (thrustRatio * weight) / (1 - download)
  const { diskArea, figureOfMerit } = lift
  const { power } = silently(() => hover({ thrust, diskArea, density, figureOfMerit }))
  answer['hover power'] = 1 - power / lift.shaftPower
  if (packPower === undefined) return
  requirePositive(method, 'lift.packPower', packPower, 'W')
  answer['pack power'] = 1 - power / electricalEfficiency / packPower
}

function wingMargin(wing: WingLimits, weight: number, density: number): number {
  checkOptions(`${method} wing`, wing, knownWing)
  const { wingArea, maximumLift, speed, margin = 1.2 } = wing
  requirePositive(method, 'wing.wingArea', wingArea, 'm^2')
  requirePositive(method, 'wing.maximumLift', maximumLift, '1')
  requirePositive(method, 'wing.speed', speed, 'm/s')
  requirePositive(method, 'wing.margin', margin, '1')
  return 1 - ((margin * stallSpeed({ weight, density, wingArea, maximumLift })) / speed) ** 2
}

function cruiseMargin(cruise: CruiseLimits, weight: number, density: number): number {
  checkOptions(`${method} cruise`, cruise, knownCruise)
  const { polar, wingArea, speed, climbSpeed = 0, propellerEfficiency, shaftPower } = cruise
  requirePolar(method, polar)
  requirePositive(method, 'cruise.wingArea', wingArea, 'm^2')
  requirePositive(method, 'cruise.speed', speed, 'm/s')
  requireNonNegative(method, 'cruise.climbSpeed', climbSpeed, 'm/s')
  requireShare(method, 'cruise.propellerEfficiency', propellerEfficiency)
  requirePositive(method, 'cruise.shaftPower', shaftPower, 'W')
  const { power } = silently(() => levelFlight(method, polar, weight, wingArea, density, speed))
  return 1 - (power + weight * climbSpeed) / (propellerEfficiency * shaftPower)
}

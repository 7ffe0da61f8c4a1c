import { requirePositive, requireRepresentable, requireShare, requireWithin } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Density, Force, Length, Power, Ratio, Speed } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface DuctedOptions {
  /** Of rotor and duct together [N]. */
  readonly thrust: Force
  /** Of the rotor, which fills the duct [m^2]. */
  readonly diskArea: Area
  /** [kg/m^3] */
  readonly density: Density
  /** Exit area over disk area; 1 for a straight duct. */
  readonly expansionRatio: Ratio
  /** Ideal over actual power of the ducted rotor, 1 when left out. */
  readonly figureOfMerit?: Ratio
  /** Radius of the inlet lip [m]; with it the lip is watched. */
  readonly lipRadius?: Length
}

export interface Ducted {
  /** At the rotor [m/s]. */
  readonly inducedVelocity: Speed
  /** At the exit and in the far wake [m/s]. */
  readonly wakeVelocity: Speed
  readonly idealPower: Power
  /** At the shaft [W]. */
  readonly power: Power
  /** [N] */
  readonly rotorThrust: Force
  /** On duct and lip [N]. */
  readonly ductThrust: Force
  /** Rotor thrust over thrust. */
  readonly rotorShare: Ratio
  /** Ideal power over that of an open rotor with the same thrust and disk. */
  readonly powerRatio: Ratio
  /** Thrust over that of an open rotor with the same ideal power and disk. */
  readonly thrustRatio: Ratio
}

const method = 'rotor.ducted'
const known = new Set(['thrust', 'diskArea', 'density', 'expansionRatio', 'figureOfMerit', 'lipRadius'])
/** Below this share of the rotor's diameter the inlet flow leaves the lip and its thrust is lost (from memory). */
const leastLipShare = 0.06
const widestExpansion = 1.5

/**
 * A ducted rotor in hover: what the duct carries and what it saves.
 *
 * @equation w = sqrt(T/(rho A s)), v = s w; P_ideal = T w/2 = T^1.5/sqrt(4 s rho A); T_rotor/T = 1/(2 s); P/P_open = 1/sqrt(2 s) at equal
 * thrust; T/T_open = (2 s)^(1/3) at equal power
 * @param options - `thrust` T of rotor and duct [N], `diskArea` A [m^2], `density` rho [kg/m^3], `expansionRatio` s; optional
 * `figureOfMerit` (1), `lipRadius` [m]
 * @returns `inducedVelocity` v [m/s], `wakeVelocity` w [m/s], `idealPower` [W], `power` [W], `rotorThrust` [N], `ductThrust` [N],
 * `rotorShare`, `powerRatio`, `thrustRatio`
 * @throws InvalidInput for a value that is not positive, an expansion ratio outside 0.5 to 3 (at 0.5 it is the open rotor), a figure of
 * merit above 1, and an unknown option
 * @method Momentum theory with the wake held to the exit area. Compare at equal *envelope* before choosing a duct: its wall and lip take
 * disk area that an open rotor would use.
 * @validity Expansion ratio up to 1.5 and lip radius of at least 6 % of the rotor's diameter (from memory): beyond, the flow separates and
 * the duct's share is lost; an advisory. The tip gap is inside the figure of merit.
 * @source Pereira, J. L., Hover and Wind-Tunnel Testing of Shrouded Rotors, Ph.D., University of Maryland, 2008, chapter 1; McCormick,
 * Aerodynamics of V/STOL Flight, 1967 (formulas from memory).
 * @example
 * const fan = rotor.ducted({ thrust: 1 * u.kN, diskArea: 1 * u.m2, density: 1.225, expansionRatio: 1 })
 * fan.idealPower // 14285.7
 */
export function ducted(options: DuctedOptions): Ducted {
  checkOptions(method, options, known)
  const { thrust, diskArea, density, expansionRatio, figureOfMerit = 1, lipRadius } = options
  requirePositive(method, 'thrust', thrust, 'N')
  requirePositive(method, 'diskArea', diskArea, 'm^2')
  requirePositive(method, 'density', density, 'kg/m^3')
  requireWithin(method, 'expansionRatio', expansionRatio, '1', 0.5, 3)
  requireShare(method, 'figureOfMerit', figureOfMerit)
  if (lipRadius !== undefined) requirePositive(method, 'lipRadius', lipRadius, 'm')
  const wakeVelocity = Math.sqrt(thrust / (density * diskArea * expansionRatio))
  const idealPower = 0.5 * thrust * wakeVelocity
  const rotorShare = 0.5 / expansionRatio
  const answer = {
    inducedVelocity: expansionRatio * wakeVelocity,
    wakeVelocity,
    idealPower,
    power: idealPower / figureOfMerit,
    rotorThrust: thrust * rotorShare,
    ductThrust: thrust * (1 - rotorShare),
    rotorShare,
    powerRatio: 1 / Math.sqrt(2 * expansionRatio),
    thrustRatio: Math.cbrt(2 * expansionRatio),
  }
  requireRepresentable(method, answer.power + answer.inducedVelocity)
  if (isListening()) adviseDuct(expansionRatio, lipRadius, diskArea)
  return answer
}

function adviseDuct(expansionRatio: number, lipRadius: number | undefined, diskArea: number): void {
  if (expansionRatio > widestExpansion)
    advise({
      code: 'DUCT_EXPANSION',
      method,
      quantity: 'expansionRatio',
      value: expansionRatio,
      range: [0.5, widestExpansion],
      message: `A diffuser of ${expansionRatio} times the disk separates unless it is long: keep to 1.5, about 10 degrees of half angle at most.`,
    })
  if (lipRadius === undefined) return
  const lipShare = lipRadius / (2 * Math.sqrt(diskArea / Math.PI))
  if (lipShare < leastLipShare)
    advise({
      code: 'DUCT_LIP',
      method,
      quantity: 'lipRadius',
      value: lipShare,
      range: [leastLipShare, null],
      message: `A lip radius of ${(100 * lipShare).toFixed(1)} % of the diameter is sharp: the inlet flow separates in hover and more so edgewise, and much of the duct's thrust is lost (6 % at least).`,
    })
}

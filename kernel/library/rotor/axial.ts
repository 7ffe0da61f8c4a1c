import { requireFinite, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type { Area, Density, Force, Power, Ratio, Speed } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { inducedVelocity as induced } from './axial-inflow.js'

export interface AxialOptions {
  /** Along the thrust [m/s]; negative in a descent. */
  readonly climbSpeed: Speed
  /** [N] */
  readonly thrust: Force
  /** [m^2] */
  readonly diskArea: Area
  /** [kg/m^3] */
  readonly density: Density
}

/** What the flow through the disk looks like: hover counts as climb. */
export type AxialState = 'climb' | 'vortex ring' | 'turbulent wake' | 'windmill'

export interface Axial {
  /** In the plane of the disk [m/s]. */
  readonly inducedVelocity: Speed
  /** Ideal: thrust times the flow through the disk [W]; negative where the air drives the rotor. */
  readonly power: Power
  readonly state: AxialState
  /** Climb speed over induced velocity in hover. */
  readonly climbRatio: Ratio
  /** [m/s] */
  readonly hoverInducedVelocity: Speed
}

const method = 'rotor.axial'
const known = new Set(['climbSpeed', 'thrust', 'diskArea', 'density'])

/**
 * Ideal induced velocity and power of a rotor that climbs or descends along its axis.
 *
 * @equation v_h = sqrt(T/(2 rho A)), x = V/v_h; climb (x >= 0): v/v_h = -x/2 + sqrt(x^2/4 + 1); -2 < x < 0: v/v_h = 1 - 1.125 x - 1.372 x^2
 * - 1.718 x^3 - 0.655 x^4; windmill (x <= -2): v/v_h = -x/2 - sqrt(x^2/4 - 1); P = T (V + v)
 * @param options - `climbSpeed` V [m/s] (negative in a descent), `thrust` T [N], `diskArea` A [m^2], `density` rho [kg/m^3]
 * @returns `inducedVelocity` v [m/s], `power` P [W], `state`, `climbRatio` x, `hoverInducedVelocity` v_h [m/s]
 * @throws InvalidInput for a thrust, disk or density that is not positive, a speed that is not finite, and an unknown option
 * @method Momentum theory where the wake streams one way; between, where no momentum balance holds, a fit through measured rotors. The fit
 * meets the climb branch at x = 0 in value (its slope jumps from -0.5 to -1.125 there). At x = -2 it stands 2.6 % above the windmill
 * branch; a cubic takes that step back between x = -1.9 and -2, so that v and P are continuous everywhere. Turbulent wake is named from
 * ideal autorotation (V + v = 0 at x = -1.777) on to x = -2.
 * @validity Descents between 0 and 2 v_h carry an advisory: the fit is a mean in time over scattered measurements of untwisted blades, thrust
 * fluctuates there, and twist raises the peak.
 * @source Leishman, J. G., Principles of Helicopter Aerodynamics, 2nd edition, 2006, chapter 2 (quartic with kappa = 1, coefficients read
 * second-hand); Castles and Gray,
 * NACA TN-2474, 1951, equation 15 (momentum branches). States as in Johnson, Helicopter Theory, 1980 (from memory).
 * @example
 * const sinking = rotor.axial({ climbSpeed: -6, thrust: 4 * u.kN, diskArea: 20 * u.m2, density: 1.225 })
 * sinking.inducedVelocity // 13.713
 */
export function axial(options: AxialOptions): Axial {
  checkOptions(method, options, known)
  const { climbSpeed, thrust, diskArea, density } = options
  requireFinite(method, 'climbSpeed', climbSpeed, 'm/s')
  requirePositive(method, 'thrust', thrust, 'N')
  requirePositive(method, 'diskArea', diskArea, 'm^2')
  requirePositive(method, 'density', density, 'kg/m^3')
  const loading = thrust / (2 * density * diskArea)
  const hoverInducedVelocity = Math.sqrt(loading)
  const inducedVelocity = induced(climbSpeed, loading)
  const power = thrust * (climbSpeed + inducedVelocity)
  const climbRatio = climbSpeed / hoverInducedVelocity
  requireRepresentable(method, inducedVelocity + power + climbRatio + hoverInducedVelocity)
  if (isListening()) adviseVortexRing(method, climbRatio)
  return {
    inducedVelocity,
    power,
    state: stateOf(climbRatio, climbSpeed + inducedVelocity),
    climbRatio,
    hoverInducedVelocity,
  }
}

function stateOf(climbRatio: number, throughDisk: number): AxialState {
  if (climbRatio >= 0) return 'climb'
  if (climbRatio <= -2) return 'windmill'
  return throughDisk >= 0 ? 'vortex ring' : 'turbulent wake'
}

/** Says that a descent lies where a fit stands in for theory. */
export function adviseVortexRing(caller: string, climbRatio: number): void {
  if (climbRatio >= 0 || climbRatio <= -2) return
  advise({
    code: 'VORTEX_RING',
    method: caller,
    quantity: 'climbRatio',
    value: climbRatio,
    range: [0, null],
    message: `A descent at ${(-climbRatio).toPrecision(3)} times the hover induced velocity is in or near the vortex ring: power is a mean in time from a fit, and thrust fluctuates. Descend below a quarter of it or with forward speed.`,
  })
}

/** What a loss asks of a remaining rotor: by speed at fixed pitch, or by pitch at one speed. */
import { requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside, requireChoice } from '../outside.js'
import type { Density, Force, Length, MomentOfInertia, Ratio, Speed, Time, Torque } from '../quantity.js'

export interface RotorResponseOptions {
  readonly control: 'speed' | 'pitch'
  /** In normal hover [N]. */
  readonly thrust: Force
  /** After the loss [N]: `thrusts` of `authority.trim`. */
  readonly thrustAfter: Force
  /** [m] */
  readonly radius: Length
  /** In normal hover [m/s]. */
  readonly tipSpeed: Speed
  /** Blade area over disk area. */
  readonly solidity: Ratio
  /** [kg/m^3] */
  readonly density: Density
  /** [m/s] */
  readonly speedOfSound: Speed
  /** In normal hover [N m]; for the time constant. */
  readonly torque?: Torque
  /** Of rotor and motor about the shaft [kg m^2]; for the time constant. */
  readonly rotorInertia?: MomentOfInertia
  /** C_T/sigma at which the blades stall; 0.14 when left out. */
  readonly stallBladeLoading?: Ratio
  /** Tip Mach number not to be passed; 0.7 when left out. */
  readonly greatestTipMach?: Ratio
}

export interface RotorState {
  /** [m/s] */
  readonly tipSpeed: Speed
  readonly tipMach: Ratio
  /** C_T/sigma = T/(rho A sigma V_tip^2). */
  readonly bladeLoading: Ratio
  /** Share of the stall's blade loading that is left; below 0 beyond it. */
  readonly stallMargin: Ratio
}

export interface RotorResponse {
  readonly intact: RotorState
  readonly after: RotorState
  readonly thrustRatio: Ratio
  /** Of the rotor's speed, in normal hover [s]; absent without torque and inertia, and by pitch, where it is the actuator's. */
  readonly timeConstant?: Time
  /** Whether the blades are not stalled and the tips within their Mach number, intact and after. */
  readonly within: boolean
}

const method = 'authority.rotorResponse'
const known = new Set([
  'control',
  'thrust',
  'thrustAfter',
  'radius',
  'tipSpeed',
  'solidity',
  'density',
  'speedOfSound',
  'torque',
  'rotorInertia',
  'stallBladeLoading',
  'greatestTipMach',
])

/**
 * Tip Mach number, blade loading and quickness of a rotor whose thrust must rise after another is lost.
 *
 * @equation by speed: V_tip' = V_tip sqrt(T'/T), tau = J Omega/(2 Q); by pitch: V_tip' = V_tip; C_T/sigma = T/(rho pi R^2 sigma V_tip^2)
 * @param options - `control` 'speed' (fixed pitch) or 'pitch' (variable, at one speed), `thrust` and `thrustAfter` [N], `radius` [m], `tipSpeed`
 * [m/s], `solidity`, `density` [kg/m^3], `speedOfSound` [m/s]; `torque` Q [N m] and `rotorInertia` J [kg m^2] for the time constant;
 * `stallBladeLoading` (0.14), `greatestTipMach` (0.7)
 * @returns `intact` and `after`: `tipSpeed` [m/s], `tipMach`, `bladeLoading`, `stallMargin`; `thrustRatio`, `timeConstant` [s], `within`
 * @throws InvalidInput for values that are not positive, another control, and an unknown option
 * @method By speed the blade loading stays as it is and the tips run faster; by pitch the tips keep their speed and the blades near their stall.
 * The time constant is that of a speed perturbed at constant motor torque: the aerodynamic torque goes with Omega^2.
 * @validity A motor held to a speed by its controller is quicker, as far as its torque allows. Stall at C_T/sigma 0.12 to 0.16 in hover (from memory).
 * Advisories beyond stall and Mach number.
 * @source Fixed pitch and pitch control of rotors: elementary; stall: Leishman, J. G., Principles of Helicopter Aerodynamics, 2006 (from memory).
 * @example
 * const faster = authority.rotorResponse({
 *   control: 'speed', thrust: 2 * u.kN, thrustAfter: 3 * u.kN, radius: 1 * u.m, tipSpeed: 140 * u.mps, solidity: 0.1,
 *   density: 1.2, speedOfSound: 340, torque: 180 * u.N * u.m, rotorInertia: 0.9,
 * })
 * faster.after.tipSpeed // 171.46
 */
export function rotorResponse(options: RotorResponseOptions): RotorResponse {
  checkOptions(method, options, known)
  const { control, thrust, thrustAfter, radius, tipSpeed, torque, rotorInertia } = options
  requireChoice(method, 'control', control, ['speed', 'pitch'])
  const units = {
    thrust: 'N',
    thrustAfter: 'N',
    radius: 'm',
    tipSpeed: 'm/s',
    solidity: '1',
    density: 'kg/m^3',
  } as const
  for (const name of Object.keys(units) as (keyof typeof units)[])
    requirePositive(method, name, options[name], units[name])
  requirePositive(method, 'speedOfSound', options.speedOfSound, 'm/s')
  const { stallBladeLoading = 0.14, greatestTipMach = 0.7 } = options
  requirePositive(method, 'stallBladeLoading', stallBladeLoading, '1')
  requirePositive(method, 'greatestTipMach', greatestTipMach, '1')
  const ratio = thrustAfter / thrust
  const intact = stateOf(options, thrust, tipSpeed, stallBladeLoading)
  const after = stateOf(
    options,
    thrustAfter,
    control === 'speed' ? tipSpeed * Math.sqrt(ratio) : tipSpeed,
    stallBladeLoading,
  )
  const time = control === 'speed' ? speedTime(torque, rotorInertia, tipSpeed / radius) : undefined
  requireRepresentable(
    method,
    ratio + intact.tipMach + after.tipMach + intact.stallMargin + after.stallMargin + (time ?? 0),
  )
  warn(after, stallBladeLoading, greatestTipMach)
  return {
    intact,
    after,
    thrustRatio: ratio,
    ...(time === undefined ? {} : { timeConstant: time }),
    within: [intact, after].every((one) => one.stallMargin >= 0 && one.tipMach <= greatestTipMach),
  }
}

function stateOf(options: RotorResponseOptions, thrust: number, tipSpeed: number, stall: number): RotorState {
  const { density, radius, solidity, speedOfSound } = options
  const bladeLoading = thrust / (density * Math.PI * radius * radius * solidity * tipSpeed * tipSpeed)
  return { tipSpeed, tipMach: tipSpeed / speedOfSound, bladeLoading, stallMargin: 1 - bladeLoading / stall }
}

function speedTime(torque: number | undefined, inertia: number | undefined, speed: number): number | undefined {
  if (torque === undefined && inertia === undefined) return undefined
  requirePositive(method, 'torque', torque as number, 'N m')
  requirePositive(method, 'rotorInertia', inertia as number, 'kg m^2')
  return ((inertia as number) * speed) / (2 * (torque as number))
}

function warn(after: RotorState, stall: number, mach: number): void {
  adviseOutside(after.bladeLoading, {
    code: 'ROTOR_STALL_AFTER_LOSS',
    method,
    quantity: 'bladeLoading',
    high: stall,
    because: 'the blades of a remaining rotor stall after the loss and do not give this thrust',
  })
  adviseOutside(after.tipMach, {
    code: 'TIP_MACH_AFTER_LOSS',
    method,
    quantity: 'tipMach',
    high: mach,
    because: 'the tips of a remaining rotor run faster after the loss than was allowed',
  })
}

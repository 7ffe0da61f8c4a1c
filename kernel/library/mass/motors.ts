/** Motors, their gearboxes and controllers. */
import type { AngularSpeed, Mass, Power, Ratio, SpecificPower, Torque, TorqueDensity } from '../quantity.js'
import { u } from '../units.js'
import { type MassItem, massOf, positive, within } from './method.js'

export interface MotorMassOptions {
  /** `'torqueDensity'` when left out. */
  readonly method?: 'torqueDensity' | 'specificPower' | 'regression'
  /** Continuous, at the output: the rotor's where there is a gear [N m]. */
  readonly torque?: Torque
  /** Greatest, at the output [N m]. */
  readonly peakTorque?: Torque
  /** Motor over output speed; 1 (direct drive) when left out. */
  readonly gearRatio?: Ratio
  /** Continuous torque per mass [N m/kg]; 10 when left out; for `'torqueDensity'`. */
  readonly torqueDensity?: TorqueDensity
  /** Peak over continuous torque that the motor bears; 2 when left out; for `'torqueDensity'`. */
  readonly peakRatio?: Ratio
  /** Continuous [W]. */
  readonly power?: Power
  /** Greatest [W]. */
  readonly peakPower?: Power
}

export interface GearboxMassOptions {
  readonly method?: 'glenn'
  /** Greatest [W]. */
  readonly power: Power
  /** [rad/s] */
  readonly motorSpeed: AngularSpeed
  /** [rad/s] */
  readonly outputSpeed: AngularSpeed
  /** 72 for gearboxes built, 34 for what was hoped; 72 when left out. */
  readonly technologyFactor?: Ratio
}

export interface ControllerMassOptions {
  /** `'specificPower'` when left out. */
  readonly method?: 'specificPower' | 'inverter' | 'small'
  /** Continuous [W]. */
  readonly power: Power
  /** [W/kg]; 15 kW/kg when left out; for `'specificPower'`. */
  readonly specificPower?: SpecificPower
}

export const motorItem: MassItem<MotorMassOptions> = {
  call: 'mass.motor',
  checks: {
    torque: positive('N m'),
    peakTorque: positive('N m'),
    gearRatio: within('1', 1, 100),
    torqueDensity: within('N m/kg', 0.1, 200),
    peakRatio: within('1', 1, 10),
    power: positive('W'),
    peakPower: positive('W'),
  },
  fill: (o) => ({
    torque: o.torque,
    peakTorque: o.peakTorque,
    gearRatio: o.gearRatio ?? 1,
    torqueDensity: o.torqueDensity ?? 10,
    peakRatio: o.peakRatio ?? 2,
    power: o.power,
    peakPower: o.peakPower,
  }),
  methods: [
    {
      name: 'torqueDensity',
      needs: ['torque'],
      mass: (o) => {
        const sized = o.peakTorque === undefined ? o.torque : Math.max(o.torque, o.peakTorque / o.peakRatio)
        return sized / o.gearRatio / o.torqueDensity
      },
    },
    { name: 'specificPower', needs: ['power'], mass: (o) => 0.2322e-3 * o.power },
    {
      name: 'regression',
      needs: ['torque', 'power'],
      mass: (o) => {
        const byTorque = 0.0995 * (o.torque / o.gearRatio) - 0.117
        const byPower = 0.249e-3 * o.power + 1.56
        const byPeakTorque = o.peakTorque === undefined ? 0 : 0.0411 * (o.peakTorque / o.gearRatio) + 3.94
        const byPeakPower = o.peakPower === undefined ? 0 : 0.12e-3 * o.peakPower + 3.65
        return Math.max(byTorque, byPower, byPeakTorque, byPeakPower)
      },
      caution:
        'The regression "regression" comes from unattributed code without its data: for orders of magnitude only.',
    },
  ],
}

export const gearboxItem: MassItem<GearboxMassOptions> = {
  call: 'mass.gearbox',
  checks: {
    power: positive('W'),
    motorSpeed: positive('rad/s'),
    outputSpeed: positive('rad/s'),
    technologyFactor: within('1', 5, 300),
  },
  fill: (o) => ({
    power: o.power,
    motorSpeed: o.motorSpeed,
    outputSpeed: o.outputSpeed,
    technologyFactor: o.technologyFactor ?? 72,
  }),
  methods: [
    {
      name: 'glenn',
      needs: ['power', 'motorSpeed', 'outputSpeed'],
      mass: (o) =>
        (u.lb * o.technologyFactor * (o.power / u.hp) ** 0.76 * (o.motorSpeed / u.rpm) ** 0.13) /
        (o.outputSpeed / u.rpm) ** 0.89,
    },
  ],
}

export const controllerItem: MassItem<ControllerMassOptions> = {
  call: 'mass.controller',
  checks: { power: positive('W'), specificPower: positive('W/kg') },
  fill: (o) => ({ power: o.power, specificPower: o.specificPower ?? 15e3 }),
  methods: [
    { name: 'specificPower', needs: ['power'], mass: (o) => o.power / o.specificPower },
    {
      name: 'inverter',
      needs: ['power'],
      mass: (o) => 0.0187e-3 * o.power + 0.433,
      caution: 'The regression "inverter" comes from unattributed code without its data: for orders of magnitude only.',
    },
    { name: 'small', needs: ['power'], mass: (o) => 0.7383e-4 * o.power ** 0.8854 },
  ],
}

/**
 * Mass of a motor from the torque it must hold, or by a power.
 *
 * @equation torqueDensity: m = max(Q, Q_peak/k)/(i tau); specificPower: m = 0.2322 kg/kW P; regression: m = max(0.0995 Q - 0.117, 0.249 P + 1.56, 0.0411 Q_peak + 3.94, 0.12 P_peak + 3.65) [kg, N m, kW]
 * @param options - `method`, `torque` Q and `peakTorque` Q_peak at the output [N m], `gearRatio` i (1), `torqueDensity` tau (10 N m/kg), `peakRatio` k (2), `power` P and `peakPower` [W]
 * @returns mass [kg], the gearbox apart
 * @throws InvalidInput as `mass.wing`
 * @method Torque, not power, sets the active metal of a motor; a gear trades it for speed. `mass.spread("motor", ...)` shows the methods side by side.
 * @validity Continuous torque per mass, direct drive: air-cooled 8 to 15 N m/kg, peak of liquid-cooled ones 20 to 35 N m/kg (from memory, low confidence); one marine axial-flux motor 5.8 N m/kg (read).
 * The regression always carries an advisory.
 * @source Torque density: from memory. Specific power: code comment that cites Duffy et al., AIAA 2018-4978 (read). Regression: unattributed student code (read).
 * @example
 * mass.motor({ torque: 300 * u.N * u.m, peakTorque: 700 * u.N * u.m }) // 35
 */
export function motor(options: MotorMassOptions): Mass {
  return massOf(motorItem, options)
}

/**
 * Mass of a reduction gear.
 *
 * @equation W = K P^0.76 n_motor^0.13/n_out^0.89 [lb, hp, rpm]
 * @param options - `power` P [W], `motorSpeed` and `outputSpeed` [rad/s], `technologyFactor` K (72; 34 for what was hoped)
 * @returns mass [kg], lubrication included
 * @throws InvalidInput as `mass.wing`
 * @method Regression over helicopter and propeller gearboxes.
 * @validity Gearboxes of 100 kW and more; small ones come out too heavy (from memory).
 * @source Brown, G. V., et al., NASA Glenn Research Center Program in High Power Density Motors for Aeropropulsion, NASA/TM-2005-213800 (from memory).
 * @example
 * mass.gearbox({ power: 100 * u.kW, motorSpeed: 6000 * u.rpm, outputSpeed: 1500 * u.rpm }) // 6.2415
 */
export function gearbox(options: GearboxMassOptions): Mass {
  return massOf(gearboxItem, options)
}

/**
 * Mass of a motor controller.
 *
 * @equation specificPower: m = P/p; inverter: m = 0.0187 P + 0.433 [kg, kW]; small: m = 0.7383e-4 P^0.8854 [kg, W]
 * @param options - `method`, `power` P [W], `specificPower` p (15 kW/kg)
 * @returns mass [kg]
 * @throws InvalidInput as `mass.wing`
 * @method `mass.spread("controller", ...)` shows them side by side: they differ by a factor of two and more.
 * @validity Small: controllers of model and survey aircraft up to some 20 kW. Specific power 10 to 25 kW/kg without its cooling (from memory, low confidence). Inverter: always an advisory.
 * @source Specific power: from memory. Inverter: unattributed student code (read). Small: code comment "from paper", probably Tyan et al., 2017 (read; attribution from memory, low confidence).
 * @example
 * mass.controller({ power: 10 * u.kW, method: 'small' }) // 0.2569
 */
export function controller(options: ControllerMassOptions): Mass {
  return massOf(controllerItem, options)
}

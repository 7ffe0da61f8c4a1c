/** A day of sectors: the pack and the motors flown, charged and flown again, with temperature, time on the ground and wear. */
import type { Cell, CellOptions, CurrentRating, ProfileSegment } from '../battery/index.js'
import { checkOptions } from '../errors.js'
import type { AbsoluteTemperature, Energy, Power, Quantity, Ratio, ThermalConductance, Time } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import { flyDay } from './day-flown.js'
import { knownDay, readDay } from './day-setting.js'

export interface DaySegment extends ProfileSegment {
  /** Loss of the lift motors over the loss that may last (`powertrain.motorAt` calls it `heatShare`); 0 when left out. */
  readonly motorHeatShare?: Ratio
}

export interface DayOptions {
  /** As aged as on the day asked about. */
  readonly cell: Cell | CellOptions
  readonly series: Ratio
  readonly parallel: Ratio
  /** Of one sector: powers at the terminals and durations, as for `battery.run`. */
  readonly sector: readonly DaySegment[]
  /** In the day, 1 to 50. */
  readonly sectors: Ratio
  /** On the ground between sectors [s]. */
  readonly turnaround: Time
  /** Of the charger, at the terminals of the pack [W]; 0 charges nothing. */
  readonly chargePower: Power
  /** Greatest charging current over capacity [1/s]; 1 per hour when left out. */
  readonly chargeRate?: Quantity<'s^-1'>
  /** State of charge at which charging ends and the day begins; 1 when left out. */
  readonly chargeTo?: Ratio
  /** State of charge that must be left in flight; 0 when left out. */
  readonly floor?: Ratio
  readonly rating?: CurrentRating
  /** Of the cells at the start of the day [K]; the ambient when left out. */
  readonly temperature?: AbsoluteTemperature
  /** [K] */
  readonly ambient: AbsoluteTemperature
  /** From the cells of the whole pack to the ambient in flight [W/K]. */
  readonly conductance: ThermalConductance
  /** On the ground, with a chiller for instance [W/K]; that in flight when left out. */
  readonly groundConductance?: ThermalConductance
  /** Thermal time constant of the lift motors [s]; 120 when left out. */
  readonly motorThermalTime?: Time
  /** Above which charging may not begin [K]; 318.15 when left out. */
  readonly chargeBelow?: AbsoluteTemperature
  /** Full cycles to the end of life; gives the days. */
  readonly cyclesToEndOfLife?: Ratio
}

export interface SectorRow {
  /** From 1. */
  readonly sector: Ratio
  /** Charge at take-off and after landing. */
  readonly departure: Ratio
  readonly arrival: Ratio
  /** Greatest of the cells in the sector [K]. */
  readonly cellTemperature: AbsoluteTemperature
  /** Greatest temperature rise of the lift motors over the rise allowed. */
  readonly motorHeat: Ratio
  /** Waited on the ground until the cells were cool enough to be charged [s]. */
  readonly coolingTime: Time
  /** [s] */
  readonly chargingTime: Time
  /** At the terminals, into the pack [J]. */
  readonly charged: Energy
}

export interface DayHistory {
  /** [s] */
  readonly time: readonly Time[]
  readonly stateOfCharge: readonly Ratio[]
  /** Of the cells [K]. */
  readonly temperature: readonly AbsoluteTemperature[]
  /** Temperature rise of the lift motors over the rise allowed. */
  readonly motorHeat: readonly Ratio[]
}

export interface Day {
  /** True when every sector was flown and no motor was too hot. */
  readonly ok: boolean
  /** What ended it; empty when nothing did. */
  readonly message: string
  /** Flown whole. */
  readonly sectorsFlown: Ratio
  /** Of all sectors [K]. */
  readonly greatestTemperature: AbsoluteTemperature
  readonly greatestMotorHeat: Ratio
  /** Equivalent full cycles of charge in the day. */
  readonly cycles: Ratio
  /** Until the end of life; absent without `cyclesToEndOfLife`. */
  readonly daysToEndOfLife?: Ratio
  /** Over the day, at the terminals [J]. */
  readonly delivered: Energy
  /** [J] */
  readonly charged: Energy
  readonly rows: readonly SectorRow[]
  readonly history: DayHistory
}

const method = 'limits.day'

/**
 * A day of sectors flown one after the other: charge, cell and motor temperature, recharge, turnaround and wear.
 *
 * @equation in flight as `battery.run`; on the ground ds/dt = I/Q, I least of P (constant power), rate Q, (V_full - V_oc)/R; m c_p dT/dt = I^2 R - G (T - T_a); motor d theta/dt = (x - theta)/tau; cycles = charge drawn/Q
 * @param options - `cell`, `series`, `parallel`, `sector`: list of `{ name, power [W], duration [s], motorHeatShare x (0) }`, `sectors` (number), `turnaround` [s], `chargePower` [W], `ambient` [K], `conductance` G [W/K]; optional
 * `chargeRate` (1/h) [1/s], `chargeTo` (1), `floor` (0), `rating` (`'continuous'`), `temperature` at the start (ambient) [K], `groundConductance` (G) [W/K], `motorThermalTime` tau (120 s), `chargeBelow` (318.15 K), `cyclesToEndOfLife`
 * @returns `ok`, `message`, `sectorsFlown`, `greatestTemperature` [K], `greatestMotorHeat`, `cycles`, `daysToEndOfLife`, `delivered`, `charged` [J], `rows` by sector, `history` with `time`, `stateOfCharge`, `temperature`, `motorHeat`
 * @throws InvalidInput as `battery.run`, for a number of sectors that is not whole or beyond 50, negative times and powers, and an unknown option
 * @method Runge-Kutta in flight, midpoint steps of 10 s at most on the ground. Charging waits until the cells are cool enough. A sector that the pack cannot fly ends the day with the segment and second; a motor above its
 * rise is an answer with an advisory.
 * @validity As the cell's; cells age by heat and by time besides, which is not counted. Motors cool by their own time constant whether they turn or not.
 * @source As `battery.run` and `powertrain.overload`; charging: constant current, constant voltage, common practice. 45 degrees Celsius before a charge: common practice, no source.
 * @example
 * const shuttle = limits.day({
 *   cell: battery.cells.power18650, series: 200, parallel: 60, sectors: 4, turnaround: 15 * u.min, chargePower: 150 * u.kW, chargeRate: 2 / u.h,
 *   ambient: 303.15 * u.K, conductance: 400, rating: 'peak', cyclesToEndOfLife: 1000,
 *   sector: [{ name: 'hover', power: 320 * u.kW, duration: 45, motorHeatShare: 2 }, { name: 'cruise', power: 90 * u.kW, duration: 700 }, { name: 'landing', power: 320 * u.kW, duration: 45, motorHeatShare: 2 }],
 * })
 * shuttle.ok // true
 */
export function day(options: DayOptions): Day {
  checkOptions(method, options, knownDay)
  const answer = flyDay(method, readDay(method, options))
  if (isListening() && !answer.ok)
    advise({
      code: 'DAY_ENDS',
      method,
      quantity: 'sectorsFlown',
      value: answer.sectorsFlown,
      range: [options.sectors, null],
      message: answer.message,
    })
  return answer
}

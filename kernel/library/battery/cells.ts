import { cell } from './cell.js'
import { fittedCapacity, fittedKnots, fittedVoltage } from './published-ocv.js'

const voltages = fittedKnots.map(fittedVoltage)
const celsius = 273.15

/**
 * Resistance over its value at mid charge: flat above a third, twice and a half at empty. House model, after the shape that pulse tests of
 * nickel-rich cells show (from memory).
 */
function overMidCharge(stateOfCharge: number): number {
  return 1 + 1.5 * Math.exp(-stateOfCharge / 0.08)
}

/**
 * Cells that come with the kernel: one for energy, one for power.
 *
 * @equation V_oc(s) = U_positive(y(s)) - U_negative(x(s)); R(s, T) = R_mid (1 + 1.5 exp(-s/0.08)) exp(T_a (1/T - 1/298.15 K))
 * @returns `energy21700` (5.15 Ah, 69 g, 28 milliohm, 7.5 A continuous, 15 A peak), `power18650` (2.95 Ah, 48 g, 25 milliohm, 15 A continuous, 30 A peak)
 * @throws nothing
 * @method The electrodes' fits evaluated at 131 knots. A cell of one's own comes from `battery.cell`.
 * @validity Open-circuit voltage of `energy21700` within 2 mV of the published fits; for `power18650` the same curve stands for nickel-rich cells in general (30 mV).
 * Resistances, their rise at low charge and with cold are house models; a pack is only as good as the cell test behind it.
 * @source Open-circuit voltage: Chen et al., Journal of the Electrochemical Society 167, 2020, 080534 (read in a public parameter file). `energy21700`: 25 to 30 milliohm,
 * mass, currents from memory. `power18650`: capacity, mass, currents, temperatures from the data page of a 3000 mAh 18650 cell, sp-powerbattery.com (read); that
 * page's 18 milliohm is at 1 kHz, and direct-current resistance is 1.5 to 2 times that (from memory). Specific heat of nickel-rich cells 1040 J/(kg K):
 * batterydesign.net (read).
 * @example
 * battery.cells.energy21700.nominalVoltage // 3.722
 */
export const cells = Object.freeze({
  energy21700: cell({
    name: 'energy 21700',
    capacity: fittedCapacity,
    mass: 0.069,
    stateOfCharge: fittedKnots,
    openCircuitVoltage: voltages,
    resistance: fittedKnots.map((charge) => 0.028 * overMidCharge(charge)),
    minimumVoltage: 2.5,
    continuousCurrent: 7.5,
    peakCurrent: 15,
    minimumTemperature: celsius - 20,
    maximumTemperature: celsius + 60,
    specificHeat: 1040,
  }),
  power18650: cell({
    name: 'power 18650',
    capacity: 2.95 * 3600,
    mass: 0.048,
    stateOfCharge: fittedKnots,
    openCircuitVoltage: voltages,
    resistance: fittedKnots.map((charge) => 0.025 * overMidCharge(charge)),
    minimumVoltage: 2.5,
    continuousCurrent: 15,
    peakCurrent: 30,
    minimumTemperature: celsius - 20,
    maximumTemperature: celsius + 75,
    specificHeat: 1040,
  }),
})

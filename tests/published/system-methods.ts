/** How the kernel answers the published cases of batteries, masses, booms and wires: one entry per kind of case. */
import { preloaded } from '../../kernel/library/index.js'
import type { Case } from './cases.js'

const { battery, drag, u } = preloaded
type Inputs = Case['inputs']

export const at = (inputs: Inputs, key: string): number => {
  const value = inputs[key]
  if (value === undefined) throw new Error(`the case lacks ${key}`)
  return value
}

/** One cell that is nothing but its circuit; the floor is far below, so that the circuit alone decides. */
function circuit(i: Inputs) {
  return battery.cell({
    capacity: 3 * u.Ah,
    mass: i.cell_mass_kg ?? 0.05,
    openCircuitVoltage: i.ocv_V ?? at(i, 'ocv_cell_V'),
    resistance: i.resistance_ohm ?? at(i, 'resistance_cell_ohm'),
    minimumVoltage: i.v_min_V ?? 0.1,
  })
}

const here = { series: 1, parallel: 1, stateOfCharge: 1, temperature: 298.15 }
const cellAt54W = (i: Inputs) => battery.discharge({ ...here, cell: circuit(i), power: at(i, 'power_W') })
const fitted = battery.cells.energy21700
const openVoltage = (stateOfCharge: number) => battery.cellAt({ cell: fitted, stateOfCharge }).openCircuitVoltage

/** Best endurance of Traub's example: the flight of least power, the battery by Peukert's law. */
function traub(i: Inputs, exponent = at(i, 'peukert_n')) {
  const flight = drag.leastPowerSpeed({
    polar: { zeroLiftDrag: at(i, 'CD0'), inducedFactor: at(i, 'k_induced') },
    weight: at(i, 'weight_N'),
    wingArea: at(i, 'wing_area_m2'),
    density: at(i, 'rho_kg_m3'),
  })
  const { time } = battery.peukert({
    capacity: at(i, 'capacity_Ah') * u.Ah,
    ratedTime: at(i, 'rated_discharge_h') * u.h,
    current: flight.power / (at(i, 'eta_total') * at(i, 'battery_voltage_V')),
    exponent,
  })
  return { ...flight, time }
}

export const methods: readonly [RegExp, (inputs: Inputs) => number][] = [
  [/^ecm-01$/, (i) => cellAt54W(i).current],
  [/^ecm-02$/, (i) => cellAt54W(i).voltage],
  [/^ecm-0[34]$/, (i) => battery.powerLimit({ ...here, cell: circuit(i) }).power],
  [
    /^ecm-06$/,
    (i) => {
      const cell = circuit({ ocv_V: 4, resistance_ohm: 0.02 })
      const { power } = battery.powerLimit({ ...here, cell })
      return battery.discharge({ ...here, cell, power: power * at(i, 'power_over_pmax') }).efficiency
    },
  ],
  [
    /^pack-01$/,
    (i) => {
      const [series, parallel] = [at(i, 'n_series'), at(i, 'n_parallel')]
      return battery.powerLimit({ ...here, cell: circuit(i), series, parallel }).power
    },
  ],
  [
    /^ocv-00$/,
    (i) => {
      const { empty, full } = { empty: 0.0263457902706, full: 0.910618046652 }
      return openVoltage((at(i, 'x_neg') - empty) / (full - empty))
    },
  ],
  [/^ocv-\d\d$/, (i) => openVoltage(at(i, 'state_of_charge'))],
  [/^ocv-mean$/, (i) => battery.window({ cell: fitted, from: at(i, 'soc_to'), to: at(i, 'soc_from') }).meanVoltage],
  [
    /^evtol-cycle-02$/,
    (i) => {
      const nominal = battery.cell({
        capacity: at(i, 'nominal_Ah') * u.Ah,
        mass: 0.048,
        openCircuitVoltage: at(i, 'nominal_V'),
        resistance: 0.02,
        minimumVoltage: 2.5,
      })
      const flown = battery.run({ cell: nominal, series: 1, parallel: 1, profile: publishedDuty })
      return flown.delivered / nominal.energy
    },
  ],
  [/^evtol-cycle-03$/, () => takeOff.power / cruise.power],
  [/^evtol-cycle-04$/, (i) => (at(i, 'P_W') / (at(i, 'nominal_Wh') * u.Wh)) * u.h],
  [
    /^cell-01$/,
    (i) => {
      const { specificEnergy } = battery.cell({
        capacity: at(i, 'capacity_Ah') * u.Ah,
        mass: at(i, 'mass_kg'),
        openCircuitVoltage: at(i, 'nominal_V'),
        resistance: 0.027,
        minimumVoltage: 2.5,
      })
      return (specificEnergy / u.Wh) * u.kg
    },
  ],
  [
    /^cell-02$/,
    (i) => {
      const { continuousRate = 0 } = battery.cells.power18650
      // The shipped cell is that data page's.
      if (battery.cells.power18650.continuousCurrent !== at(i, 'current_A')) return 0
      return continuousRate * u.h
    },
  ],
  [
    /^therm-/,
    (i) => {
      const { heat } = cellAt54W(i)
      const heatCapacity = at(i, 'cell_mass_kg') * at(i, 'cp_J_kgK')
      return battery.heating({ heat, duration: at(i, 'time_s'), heatCapacity }).rise
    },
  ],
  [
    /^peukert-01$/,
    (i) =>
      battery.peukert({
        capacity: at(i, 'rated_capacity_Ah') * u.Ah,
        ratedTime: at(i, 'rated_time_h') * u.h,
        current: at(i, 'current_A'),
        exponent: at(i, 'peukert_n'),
      }).time / u.h,
  ],
  [/^traub-01$/, (i) => 1 - traub(i).time / traub(i, 1).time],
  [/^traub-03$/, (i) => traub(i).speed],
  [/^traub-04$/, (i) => traub(i).power],
  [/^traub-05$/, (i) => traub(i).time / u.h],
  [/^peukert-speed-01$/, (i) => battery.peukertRangeSpeed({ exponent: at(i, 'peukert_n') })],
]

const takeOff = { name: 'take-off', power: 54, duration: 75 }
const cruise = { name: 'cruise', power: 16, duration: 800 }
/** The baseline mission of one cell, Bills et al., Scientific Data 10:344, 2023 (read in a dataset card that quotes it). */
export const publishedDuty = [takeOff, cruise, { name: 'landing', power: 54, duration: 105 }]

/** How the kernel answers the published cases of batteries, masses, booms and wires: one entry per kind of case. */
import { preloaded } from '../../kernel/library/index.js'
import type { Case } from './cases.js'

const { battery, drag, mass, u } = preloaded
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

function wingOf(i: Inputs) {
  return {
    grossMass: i.mass_dg_kg ?? i.mass_to_kg ?? at(i, 'mass_kg'),
    ultimateLoadFactor: at(i, 'n_ult'),
    area: at(i, 'S_m2'),
    aspectRatio: at(i, 'AR'),
    ...(i.taper === undefined ? {} : { taper: i.taper }),
    ...(i.t_c === undefined ? {} : { thicknessRatio: i.t_c }),
    ...(i.q_Pa === undefined ? {} : { dynamicPressure: i.q_Pa }),
    ...(i.wing_fuel_kg === undefined ? {} : { massInWing: i.wing_fuel_kg }),
    sweep: (i.sweep_deg ?? 0) * u.deg,
  }
}

function tubeOf(i: Inputs) {
  return mass.tube({
    radius: at(i, 'r_mean_m'),
    wall: at(i, 't_m'),
    length: at(i, 'L_m'),
    elasticModulus: at(i, 'E_Pa'),
    shearModulus: at(i, 'G_Pa'),
    density: at(i, 'rho_kg_m3'),
    tipForce: at(i, 'F_tip_N'),
    tipTorque: at(i, 'T_Nm'),
    tipMass: at(i, 'm_tip_kg'),
  })
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
  [/^mass_(ev_)?raymer_wing$/, (i) => mass.wing({ ...wingOf(i), method: 'raymer' })],
  [/^mass_ev_nicolai_wing$/, (i) => mass.wing({ ...wingOf(i), method: 'nicolai', speed: at(i, 'V_e_m_s') })],
  [/^mass_cessna_wing$/, (i) => mass.wing({ ...wingOf(i), method: 'cessna' })],
  [
    /^mass_raymer_htail$/,
    // The source puts the wing's aspect ratio and thickness into the equation of the tail.
    (i) =>
      mass.horizontalTail({
        grossMass: at(i, 'mass_dg_kg'),
        ultimateLoadFactor: at(i, 'n_ult'),
        area: at(i, 'S_ht_m2'),
        aspectRatio: at(i, 'A'),
        taper: at(i, 'taper_ht'),
        thicknessRatio: at(i, 't_c'),
        sweep: at(i, 'sweep_ht_deg') * u.deg,
        dynamicPressure: at(i, 'q_Pa'),
      }),
  ],
  [
    /^mass_raymer_fuselage$/,
    (i) =>
      mass.fuselage({
        grossMass: at(i, 'mass_dg_kg'),
        ultimateLoadFactor: at(i, 'n_ult'),
        wettedArea: at(i, 'Swet_m2'),
        length: at(i, 'L_m'),
        depth: at(i, 'D_m'),
        tailArm: at(i, 'tail_arm_m'),
        dynamicPressure: at(i, 'q_Pa'),
      }),
  ],
  [/^mass_electrical_cessna$/, (i) => mass.electrical({ grossMass: at(i, 'mass_to_kg') })],
  [/^mass_hydraulics_raymer$/, (i) => mass.hydraulics({ grossMass: at(i, 'mass_to_kg'), mach: 0.3 })],
  [
    /^mass_ev_raymer_gear$/,
    (i) =>
      mass.gear({
        grossMass: at(i, 'mass_landing_kg'),
        landingLoadFactor: at(i, 'n_land_ult'),
        mainLength: at(i, 'Lm_m'),
        noseLength: at(i, 'Ln_m'),
        fixed: false,
      }),
  ],
  [
    /^mass_prouty_blades$/,
    (i) =>
      mass.rotorBlades({
        method: 'prouty',
        blades: at(i, 'n_blades'),
        radius: at(i, 'R_m'),
        chord: at(i, 'chord_m'),
        tipSpeed: at(i, 'Vtip_m_s'),
      }),
  ],
  [/^boom_mass$/, (i) => tubeOf(i).mass],
  [/^boom_I$/, (i) => tubeOf(i).secondMoment],
  [/^boom_bending_stress$/, (i) => tubeOf(i).bendingStress],
  [/^boom_tip_deflection$/, (i) => tubeOf(i).tipDeflection],
  [/^boom_shear_stress$/, (i) => tubeOf(i).shearStress],
  [/^boom_twist$/, (i) => tubeOf(i).twist],
  [/^boom_freq_tip_mass$/, (i) => tubeOf(i).frequency],
  [/^boom_freq_bare$/, (i) => tubeOf(i).bareFrequency],
  [
    /^wire_mass$/,
    (i) =>
      mass.wiring({
        current: at(i, 'I_A'),
        length: at(i, 'length_total_m'),
        voltageDrop: at(i, 'dV_V'),
        resistivity: at(i, 'rho_e_ohm_m'),
        density: at(i, 'rho_m_kg_m3'),
      }).conductorMass,
  ],
  [/^peukert-speed-01$/, (i) => battery.peukertRangeSpeed({ exponent: at(i, 'peukert_n') })],
]

const takeOff = { name: 'take-off', power: 54, duration: 75 }
const cruise = { name: 'cruise', power: 16, duration: 800 }
/** The baseline mission of one cell, Bills et al., Scientific Data 10:344, 2023 (read in a dataset card that quotes it). */
export const publishedDuty = [takeOff, cruise, { name: 'landing', power: 54, duration: 105 }]

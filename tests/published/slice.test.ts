/**
 * Published cases for air, rotor, drag and battery. Two tables: numbers that somebody else printed, which are the evidence, and
 * formulas worked out again, which only check arithmetic.
 */
import { preloaded } from '../../kernel/library/index.js'
import { type Case, readCases } from './cases.js'
import { checkCases, type Methods } from './check-cases.js'

const { air, battery, drag, rotor, u } = preloaded
type Inputs = Case['inputs']
const at = (inputs: Inputs, key: string): number => {
  const value = inputs[key]
  if (value === undefined) throw new Error(`the case lacks ${key}`)
  return value
}

const unitPolar = drag.polar({ zeroLiftDrag: 0.03, aspectRatio: 9, spanEfficiency: 0.8 })
const unitFlight = { polar: unitPolar, weight: 1e4, wingArea: 15, density: 1.225 }

function standard(inputs: Inputs) {
  return air.standard(at(inputs, 'H_geopotential_m'))
}

function hotDay(inputs: Inputs) {
  return air.standard(at(inputs, 'H_pressure_m'), at(inputs, 'delta_T_K'))
}

/** An aircraft given by span or aspect ratio. */
function flightOf(inputs: Inputs) {
  const { W_N, mass_kg, S_m2, span_m, AR, e, CD0, rho_kg_m3 } = inputs
  const wingArea = S_m2 ?? 0
  const polar = drag.polar({
    zeroLiftDrag: CD0 ?? 0,
    aspectRatio: AR ?? (span_m ?? 0) ** 2 / wingArea,
    spanEfficiency: e ?? 0,
  })
  return { polar, weight: W_N ?? (mass_kg ?? 0) * u.g0, wingArea, density: rho_kg_m3 ?? 0 }
}

function hoverAtLoading(inputs: Inputs, loading: string, rho: string, figureOfMerit = 1) {
  return rotor.hover({ thrust: at(inputs, loading), diskArea: 1, density: at(inputs, rho), figureOfMerit })
}

const methods: Methods = [
  [/^isa_temperature/, (i) => standard(i).temperature],
  [/^isa_pressure/, (i) => standard(i).pressure],
  [/^isa_density/, (i) => standard(i).density],
  [/^isa_speed_of_sound/, (i) => standard(i).speedOfSound],
  [/^isa_dynamic_viscosity/, (i) => standard(i).dynamicViscosity],
  [/^hotday_density_altitude/, (i) => air.densityAltitude(hotDay(i).density)],
  [/^hotday_density_/, (i) => hotDay(i).density],
  [
    /^anderson_apd_T51/,
    (i) =>
      drag.powerRequired({
        polar: { zeroLiftDrag: at(i, 'CD0'), inducedFactor: at(i, 'K') },
        weight: at(i, 'W_N'),
        wingArea: at(i, 'S_m2'),
        density: at(i, 'rho_kg_m3'),
        speed: at(i, 'V_m_s'),
      }).drag,
  ],
  [/^(cp1_CLmd|evtol2000_.*_CL_md)$/, (i) => flightOf(i).polar.liftAtBestRatio],
  [/^evtol2000_.*_CL_mp$/, (i) => flightOf(i).polar.liftAtLeastPower],
  [/^(cp1_LDmax|evtol2000_.*_LD_max)$/, (i) => flightOf(i).polar.maximumLiftToDrag],
  [/^(cp1_Vmd|evtol2000_.*_V_md)$/, (i) => drag.leastDragSpeed(flightOf(i)).speed],
  [/^evtol2000_.*_D_min$/, (i) => drag.leastDragSpeed(flightOf(i)).drag],
  [/^(cp1_Pmin|evtol2000_.*_P_min)$/, (i) => drag.leastPowerSpeed(flightOf(i)).power],
  [
    /^cp1_CL32$/,
    (i) => {
      const best = drag.leastPowerSpeed(flightOf(i))
      return best.liftCoefficient ** 1.5 / best.dragCoefficient
    },
  ],
  [/^cp1_min_glide$/, (i) => Math.atan(1 / flightOf(i).polar.maximumLiftToDrag) / u.deg],
  [
    /^cp1_RC_max$/,
    (i) => {
      const flight = flightOf(i)
      return (at(i, 'eta') * at(i, 'P_shaft_W') - drag.leastPowerSpeed(flight).power) / flight.weight
    },
  ],
  [
    /^cp1_glide_V/,
    (i) =>
      preloaded.wing.stallSpeed({
        weight: at(i, 'W_N') * Math.cos(at(i, 'gamma_deg') * u.deg),
        density: at(i, 'rho_kg_m3'),
        wingArea: at(i, 'S_m2'),
        maximumLift: at(i, 'CL'),
      }),
  ],
  [/^ratio_CLmp_over_CLmd$/, () => unitPolar.liftAtLeastPower / unitPolar.liftAtBestRatio],
  [/^ratio_Vmp_over_Vmd$/, () => drag.leastPowerSpeed(unitFlight).speed / drag.leastDragSpeed(unitFlight).speed],
  [/^ratio_CDi_over_CD0_at_mp$/, () => drag.leastPowerSpeed(unitFlight).dragCoefficient / unitPolar.zeroLiftDrag - 1],
  [
    /^(ratio_LD_mp_over_LDmax|polar-02)$/,
    () => drag.leastPowerSpeed(unitFlight).liftToDrag / unitPolar.maximumLiftToDrag,
  ],
  [/^ratio_P_mp_over_P_md$/, () => drag.leastPowerSpeed(unitFlight).power / drag.leastDragSpeed(unitFlight).power],
  [
    /^ratio_Dmin_double_CD0$/,
    () => {
      const polar = drag.polar({ zeroLiftDrag: 0.06, aspectRatio: 9, spanEfficiency: 0.8 })
      return drag.leastDragSpeed({ ...unitFlight, polar }).drag / drag.leastDragSpeed(unitFlight).drag
    },
  ],
  [
    /^ratio_Pmin_double_W$/,
    () => drag.leastPowerSpeed({ ...unitFlight, weight: 2e4 }).power / drag.leastPowerSpeed(unitFlight).power,
  ],
  [/^hover-vi-/, (i) => hoverAtLoading(i, 'disk_loading_Pa', 'rho').inducedVelocity],
  [
    /^leishman-ex-tiltrotor-ideal$/,
    (i) =>
      rotor.hover({
        thrust: at(i, 'thrust_N'),
        diskArea: Math.PI * at(i, 'radius_m') ** 2,
        density: at(i, 'rho'),
        figureOfMerit: 1,
      }).idealPower,
  ],
  [
    /^leishman-ex-tiltrotor-total$/,
    (i) =>
      rotor.hover({
        thrust: at(i, 'gross_weight_N'),
        diskArea: at(i, 'rotors') * Math.PI * at(i, 'radius_m') ** 2,
        density: at(i, 'rho'),
        figureOfMerit: at(i, 'figure_of_merit'),
      }).power * at(i, 'transmission_factor'),
  ],
  [
    /^prouty-ideal-hp$/,
    (i) =>
      rotor.hover({
        thrust: at(i, 'thrust_N'),
        diskArea: at(i, 'disk_area_m2'),
        density: at(i, 'rho'),
        figureOfMerit: 1,
      }).idealPower,
  ],
  [
    /^FM-modified/,
    (i) => {
      const [radius, density, tipSpeed] = [2, 1.2, 180]
      return rotor.hover({
        thrust: at(i, 'CT') * density * Math.PI * radius ** 2 * tipSpeed ** 2,
        radius,
        density,
        tipSpeed,
        solidity: at(i, 'sigma'),
        inducedFactor: at(i, 'kappa'),
        profileDrag: at(i, 'Cd0'),
      }).figureOfMerit
    },
  ],
  [
    /^hover-power-/,
    (i) => {
      const hover = hoverAtLoading(i, 'disk_loading_N_m2', 'rho_kg_m3', at(i, 'figure_of_merit'))
      return (hover.power / at(i, 'disk_loading_N_m2')) * u.g0
    },
  ],
  [/^disk-q-01$/, (i) => 2 * hoverAtLoading(i, 'disk_loading_N_m2', 'rho_kg_m3').inducedVelocity],
  [
    /^download-02$/,
    (i) => {
      const power = (thrust: number) => rotor.hover({ thrust, diskArea: 20, density: 1.2, figureOfMerit: 0.7 }).power
      return power(1e4 / (1 - at(i, 'download_fraction_of_thrust'))) / power(1e4)
    },
  ],
  [
    /^download-03$/,
    (i) => {
      const [thrust, density] = [1e4, 1.2]
      const wake =
        2 * rotor.hover({ thrust, diskArea: at(i, 'disk_area_m2'), density, figureOfMerit: 1 }).inducedVelocity
      return (0.5 * density * wake ** 2 * at(i, 'drag_coefficient') * at(i, 'exposed_area_m2')) / thrust
    },
  ],
  [
    /^range-02$/,
    (i) => {
      const force = u.g0 / at(i, 'lift_to_drag')
      const energy = (force * at(i, 'range_m')) / at(i, 'eta_total')
      return battery.massForEnergy({ energy, specificEnergy: at(i, 'E_star_J_per_kg'), usableShare: 1 }).mass
    },
  ],
  [
    /^endur-01$/,
    (i) => {
      const mass = at(i, 'battery_mass_fraction')
      const energy = battery.usableEnergy({ mass, specificEnergy: at(i, 'E_star_J_per_kg'), usableShare: 1 })
      const power = (u.g0 / at(i, 'lift_to_drag')) * at(i, 'speed_m_s')
      return (energy * at(i, 'eta_total')) / power
    },
  ],
  [
    /^eol-01$/,
    (i) =>
      battery.usableEnergy({
        mass: 1,
        specificEnergy: at(i, 'cell_Wh_per_kg') * at(i, 'cell_to_pack_mass_ratio') * u.Wh,
        usableShare: at(i, 'depth_of_discharge'),
        capacityLeft: at(i, 'state_of_health'),
      }) / u.Wh,
  ],
]

const cases = ['cases-air.json', 'cases-performance.json', 'cases-hover.json', 'cases-energy.json'].flatMap(readCases)

checkCases({ subject: 'air, hover, polar and battery energy', cases, methods })

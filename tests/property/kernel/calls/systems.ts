/** Calls on batteries, powertrains and masses with any numbers. */
import { preloaded } from '../../../../kernel/library/index.js'
import { type AnyCall, type V, v } from '../any-input.js'

const { battery, mass, powertrain } = preloaded

/** A cell of any numbers; mostly sane ones, so that methods are reached. */
const anyCell = (x: V) => ({
  capacity: 1e4 * v(x, 0),
  mass: 0.05,
  openCircuitVoltage: [3 * v(x, 1), 3 * v(x, 1) + 1],
  resistance: 0.02 * v(x, 2),
  minimumVoltage: v(x, 3),
})
const state = (x: V) => ({
  series: 100 * v(x, 4),
  parallel: v(x, 5),
  stateOfCharge: v(x, 6) / 3,
  temperature: 100 * v(x, 7),
})
const wing = (x: V) => ({
  grossMass: 1e3 * v(x, 0),
  ultimateLoadFactor: 2 * v(x, 1),
  area: 5 * v(x, 2),
  aspectRatio: 4 * v(x, 3),
  taper: v(x, 4),
  thicknessRatio: v(x, 5) / 5,
  sweep: v(x, 6) / 3,
  dynamicPressure: 1e3 * v(x, 7),
})
const body = (x: V) => ({
  grossMass: 1e3 * v(x, 0),
  ultimateLoadFactor: v(x, 1),
  wettedArea: v(x, 2),
  length: v(x, 3),
  depth: v(x, 4),
  tailArm: v(x, 5),
  dynamicPressure: v(x, 6),
  speed: v(x, 7),
  diveSpeed: v(x, 8),
  occupants: v(x, 1),
})
const aMotor = (x: V) =>
  powertrain.motor({
    continuousTorque: v(x, 0),
    ratedSpeed: 100 * v(x, 1),
    efficiency: v(x, 2),
    constantShare: v(x, 3) / 20,
  })

export const calls: readonly AnyCall[] = [
  ['battery.cell', 4, (x) => battery.cell(anyCell(x))],
  ['battery.discharge', 9, (x) => battery.discharge({ cell: anyCell(x), ...state(x), power: 1e3 * v(x, 8) })],
  ['battery.powerLimit', 8, (x) => battery.powerLimit({ cell: anyCell(x), ...state(x) })],
  ['battery.aged', 6, (x) => battery.aged({ cell: anyCell(x), capacityLeft: v(x, 4), resistanceGrowth: v(x, 5) })],
  [
    'battery.fade',
    4,
    (x) => battery.fade({ cycles: v(x, 0), cyclesToEndOfLife: v(x, 1), capacityAtEnd: v(x, 2), exponent: v(x, 3) }),
  ],
  ['battery.pack', 6, (x) => battery.pack({ cell: anyCell(x), series: v(x, 4), parallel: v(x, 5) })],
  [
    'battery.pack by energy',
    7,
    (x) => battery.pack({ cell: anyCell(x), voltage: 100 * v(x, 4), energy: 1e6 * v(x, 5), cellShare: v(x, 6) }),
  ],
  ['battery.window', 6, (x) => battery.window({ cell: anyCell(x), from: v(x, 4), to: v(x, 5) })],
  [
    'battery.cellAt',
    6,
    (x) => battery.cellAt({ cell: anyCell(x), stateOfCharge: v(x, 4), temperature: 100 * v(x, 5) }),
  ],
  [
    'battery.heating',
    5,
    (x) =>
      battery.heating({
        heat: v(x, 0),
        duration: v(x, 1),
        heatCapacity: v(x, 2),
        conductance: v(x, 3),
        ambient: 100 * v(x, 4),
      }),
  ],
  [
    'battery.peukert',
    4,
    (x) => battery.peukert({ capacity: v(x, 0), ratedTime: v(x, 1), current: v(x, 2), exponent: v(x, 3) }),
  ],
  ['battery.peukertRangeSpeed', 1, (x) => battery.peukertRangeSpeed({ exponent: v(x, 0) })],
  [
    'battery.massForMission',
    9,
    (x) =>
      battery.massForMission({
        cell: anyCell(x),
        energy: 1e6 * v(x, 4),
        floor: v(x, 5) / 3,
        efficiency: v(x, 6),
        demands: [{ power: 1e4 * v(x, 7), temperature: 100 * v(x, 8) }],
      }),
  ],
  [
    'battery.availablePower',
    5,
    (x) => battery.availablePower({ cell: anyCell(x), temperature: 100 * v(x, 4), points: 5 }),
  ],
  ['battery.ragone', 6, (x) => battery.ragone({ cell: anyCell(x), from: v(x, 4), floor: v(x, 5) / 3, points: 4 })],
  [
    'battery.run',
    12,
    (x) =>
      battery.run({
        cell: anyCell(x),
        ...state(x),
        profile: [
          { power: 1e3 * v(x, 8), duration: 100 * v(x, 9) },
          { power: 1e2 * v(x, 10), duration: 10 },
        ],
        conductance: v(x, 11),
        maxStep: 20,
      }),
  ],
  ['powertrain.motor', 4, aMotor],
  ['powertrain.motorAt', 6, (x) => powertrain.motorAt({ motor: aMotor(x), torque: v(x, 4), speed: 100 * v(x, 5) })],
  [
    'powertrain.overload',
    8,
    (x) =>
      powertrain.overload({
        motor: aMotor(x),
        torque: v(x, 4),
        speed: 100 * v(x, 5),
        startShare: v(x, 6),
        duration: v(x, 7),
      }),
  ],
  [
    'powertrain.motorInAir',
    9,
    (x) =>
      powertrain.motorInAir({
        motor: aMotor(x),
        density: v(x, 4),
        temperature: 280 + 10 * v(x, 5),
        airSpeedRatio: v(x, 6),
        exponent: v(x, 7) / 2,
        windingLimit: 320 + 100 * v(x, 8),
      }),
  ],
  [
    'powertrain.efficiencyMap',
    8,
    (x) => powertrain.efficiencyMap({ motor: aMotor(x), torque: [v(x, 4), v(x, 5)], speed: [v(x, 6), v(x, 7)] }),
  ],
  [
    'powertrain.controllerAt',
    5,
    (x) => {
      const controller = powertrain.controller({
        ratedPower: v(x, 0),
        efficiency: v(x, 1),
        standbyShare: v(x, 2),
        squareShare: v(x, 3),
      })
      return powertrain.controllerAt({ controller, power: v(x, 4) })
    },
  ],
  [
    'powertrain.controller',
    4,
    (x) =>
      powertrain.controller({
        ratedPower: v(x, 0),
        efficiency: v(x, 1),
        standbyShare: v(x, 2) / 3,
        squareShare: v(x, 3) / 3,
      }),
  ],
  [
    'powertrain.chain',
    10,
    (x) =>
      powertrain.chain({
        shaftPower: 100 * v(x, 4),
        shaftSpeed: 100 * v(x, 5),
        motor: aMotor(x),
        controller: powertrain.controller({ ratedPower: 1e3, efficiency: v(x, 6) }),
        gearRatio: v(x, 7),
        cableResistance: v(x, 8),
        voltage: 100 * v(x, 9),
      }),
  ],
  ['mass.wing', 8, (x) => mass.wing(wing(x))],
  ['mass.spread of wings', 9, (x) => mass.spread('wing', { ...wing(x), speed: 20 * v(x, 8) })],
  ['mass.spread of horizontal tails', 9, (x) => mass.spread('horizontalTail', { ...wing(x), arm: v(x, 8) })],
  ['mass.spread of vertical tails', 9, (x) => mass.spread('verticalTail', { ...wing(x), tailHeight: v(x, 8) })],
  ['mass.spread of bodies', 9, (x) => mass.spread('fuselage', body(x))],
  [
    'mass.spread of gears',
    4,
    (x) =>
      mass.spread('gear', {
        grossMass: 1e3 * v(x, 0),
        landingLoadFactor: v(x, 1),
        mainLength: v(x, 2),
        noseLength: v(x, 3),
      }),
  ],
  ['mass.spread of furnishing', 2, (x) => mass.spread('furnishing', { grossMass: 1e3 * v(x, 0), occupants: v(x, 1) })],
  [
    'mass.spread of controls',
    4,
    (x) =>
      mass.spread('flightControls', {
        grossMass: v(x, 0),
        length: v(x, 1),
        span: v(x, 2),
        ultimateLoadFactor: v(x, 3),
      }),
  ],
  ['mass.spread of avionics', 2, (x) => mass.spread('avionics', { grossMass: v(x, 0), uninstalledMass: v(x, 1) })],
  ['mass.electrical', 1, (x) => mass.electrical({ grossMass: v(x, 0) })],
  ['mass.hydraulics', 2, (x) => mass.hydraulics({ grossMass: v(x, 0), mach: v(x, 1) })],
  [
    'mass.spread of blades',
    6,
    (x) =>
      mass.spread('rotorBlades', {
        blades: Math.round(v(x, 0)),
        radius: v(x, 1),
        chord: v(x, 2),
        tipSpeed: 100 * v(x, 3),
        thrust: 1e3 * v(x, 4),
        thicknessRatio: v(x, 5) / 8,
      }),
  ],
  [
    'mass.spread of hubs',
    4,
    (x) => mass.spread('hub', { blades: v(x, 0), radius: v(x, 1), tipSpeed: 100 * v(x, 2), bladeMass: v(x, 3) }),
  ],
  [
    'mass.spread of motors',
    5,
    (x) =>
      mass.spread('motor', {
        torque: v(x, 0),
        peakTorque: v(x, 1),
        gearRatio: v(x, 2),
        power: v(x, 3),
        peakPower: v(x, 4),
      }),
  ],
  ['mass.gearbox', 3, (x) => mass.gearbox({ power: v(x, 0), motorSpeed: v(x, 1), outputSpeed: v(x, 2) })],
  ['mass.spread of controllers', 2, (x) => mass.spread('controller', { power: v(x, 0), specificPower: v(x, 1) })],
  ['mass.propeller', 3, (x) => mass.propeller({ diameter: v(x, 0), power: 1e4 * v(x, 1), blades: v(x, 2) })],
  [
    'mass.wiring',
    4,
    (x) => mass.wiring({ current: v(x, 0), length: v(x, 1), voltageDrop: v(x, 2), insulation: v(x, 3) }),
  ],
  [
    'mass.tube',
    9,
    (x) =>
      mass.tube({
        radius: v(x, 0),
        wall: v(x, 1),
        length: v(x, 2),
        elasticModulus: v(x, 3),
        shearModulus: v(x, 4),
        density: v(x, 5),
        tipForce: v(x, 6),
        tipTorque: v(x, 7),
        tipMass: v(x, 8),
      }),
  ],
  [
    'mass.boom',
    7,
    (x) =>
      mass.boom({
        length: v(x, 0),
        radius: 0.1 * v(x, 1),
        tipForce: 1e3 * v(x, 2),
        tipTorque: 1e2 * v(x, 3),
        tipMass: 10 * v(x, 4),
        minimumFrequency: v(x, 5),
        maximumDeflection: v(x, 6),
      }),
  ],
  [
    'mass.stowageMechanism',
    3,
    (x) => mass.stowageMechanism({ movedMass: v(x, 0), doorArea: v(x, 1), count: Math.round(v(x, 2)) }),
  ],
  ['mass.cooling', 2, (x) => mass.cooling({ heat: v(x, 0), specificHeatFlow: v(x, 1) })],
  [
    'mass.parachute',
    4,
    (x) => mass.parachute({ grossMass: v(x, 0), descentSpeed: v(x, 1), density: v(x, 2), share: v(x, 3) }),
  ],
  ['mass.growth', 2, (x) => mass.growth([{ name: 'a', mass: v(x, 0), maturity: 'drawn', allowance: v(x, 1) }])],
  [
    'mass.properties',
    8,
    (x) =>
      mass.properties([
        { name: 'a', mass: v(x, 0), x: v(x, 1), y: v(x, 2), z: v(x, 3) },
        { name: 'b', mass: v(x, 4), x: v(x, 5), y: v(x, 6), size: [v(x, 7), 1, 1] },
      ]),
  ],
  ['mass.avionics', 2, (x) => mass.avionics({ grossMass: 1e3 * v(x, 0), uninstalledMass: 10 * v(x, 1) })],
  ['mass.controller', 2, (x) => mass.controller({ power: 1e4 * v(x, 0), specificPower: 1e4 * v(x, 1) })],
  ['mass.flightControls', 1, (x) => mass.flightControls({ grossMass: 1e3 * v(x, 0) })],
  ['mass.furnishing', 2, (x) => mass.furnishing({ grossMass: 1e3 * v(x, 0), occupants: v(x, 1) })],
  ['mass.fuselage', 9, (x) => mass.fuselage(body(x))],
  ['mass.gear', 2, (x) => mass.gear({ grossMass: 1e3 * v(x, 0), landingLoadFactor: 2 * v(x, 1) })],
  ['mass.horizontalTail', 9, (x) => mass.horizontalTail({ ...wing(x), arm: 3 * v(x, 8) })],
  ['mass.verticalTail', 9, (x) => mass.verticalTail({ ...wing(x), tailHeight: v(x, 8) / 3 })],
  [
    'mass.hub',
    4,
    (x) =>
      mass.hub({
        blades: Math.round(v(x, 0)),
        radius: v(x, 1),
        tipSpeed: 100 * v(x, 2),
        bladeMass: 3 * v(x, 3),
      }),
  ],
  ['mass.motor', 2, (x) => mass.motor({ torque: 100 * v(x, 0), torqueDensity: 10 * v(x, 1) })],
  [
    'mass.rotorBlades',
    5,
    (x) =>
      mass.rotorBlades({
        blades: Math.round(v(x, 0)),
        radius: v(x, 1),
        chord: v(x, 2) / 5,
        tipSpeed: 80 * v(x, 3),
        thrust: 1e3 * v(x, 4),
      }),
  ],
]

/** The boxes of batteries, powertrains, masses and reliability. */
import { preloaded } from '../../../../kernel/library/index.js'
import { aboveZero, type Box, fromTo, notNegative, usual } from './engine.js'

const { battery, mass, powertrain, reliability } = preloaded

const share = (low = 0.1, high = 1) => usual(low, high, { refused: [0, 1] })
const cell = battery.cells.power18650
const charge = fromTo(0, 1)
const [coldest, hottest] = [cell.minimumTemperature ?? 0, cell.maximumTemperature ?? 0]
const warmth = usual(coldest, hottest, { refused: [200, 500], advised: [coldest, hottest], middle: 298.15 })
const counts = { series: aboveZero(50, 250), parallel: aboveZero(5, 100) }
const motor = powertrain.motor({ continuousTorque: 250, ratedSpeed: 125, efficiency: 0.94 })
const controller = powertrain.controller({ ratedPower: 40e3, efficiency: 0.97 })
const grossMass = aboveZero(300, 5670, { advised: [300, 5670] })
const surface = {
  grossMass,
  ultimateLoadFactor: usual(4, 7, { refused: [0.5, 30] }),
  area: aboveZero(8, 30),
  aspectRatio: usual(5, 16, { refused: [0.5, 60] }),
  taper: usual(0.3, 1),
  thicknessRatio: usual(0.1, 0.2, { refused: [0.02, 0.5] }),
  sweep: usual(-0.3, 0.3),
  dynamicPressure: aboveZero(1000, 4000),
}

const batteries: readonly Box[] = [
  {
    name: 'battery.discharge',
    call: battery.discharge,
    sides: { ...counts, power: notNegative(0, 3e4), stateOfCharge: charge, temperature: warmth },
    fixed: { cell },
    quiet: 0.7,
  },
  {
    name: 'battery.powerLimit',
    call: battery.powerLimit,
    sides: { ...counts, stateOfCharge: charge, temperature: warmth },
    fixed: { cell },
  },
  {
    name: 'battery.cellAt',
    call: battery.cellAt,
    sides: { stateOfCharge: charge, temperature: fromTo(200, 500) },
    fixed: { cell },
  },
  {
    name: 'battery.aged',
    call: battery.aged,
    sides: {
      capacityLeft: usual(0.7, 1, { refused: [0, 1], advised: [0.7, null] }),
      resistanceGrowth: usual(1, 2, { refused: [1, null] }),
    },
    fixed: { cell },
  },
  {
    name: 'battery.fade',
    call: battery.fade,
    sides: {
      cycles: usual(0, 700, { refused: [0, null], advised: [null, 1000], middle: 300 }),
      cyclesToEndOfLife: aboveZero(700, 1300),
      capacityAtEnd: share(0.6, 0.9),
      exponent: fromTo(0.5, 1.5),
    },
  },
  {
    name: 'battery.pack',
    call: battery.pack,
    sides: { ...counts, cellShare: usual(0.6, 0.8, { refused: [0, 1], advised: [0.6, 0.8] }) },
    fixed: { cell },
  },
  {
    name: 'battery.window',
    call: battery.window,
    sides: { from: usual(0.6, 1, { refused: [null, 1] }), to: usual(0, 0.5, { refused: [0, null] }) },
    fixed: { cell },
  },
  {
    name: 'battery.heating',
    call: battery.heating,
    sides: {
      heat: notNegative(0, 1e4),
      duration: notNegative(0, 1000),
      heatCapacity: aboveZero(1e5, 1e6),
      conductance: notNegative(0, 300),
      ambient: usual(260, 320, { refused: [100, 2000] }),
    },
  },
  {
    name: 'battery.peukert',
    call: battery.peukert,
    sides: {
      capacity: aboveZero(5e3, 2e4),
      ratedTime: aboveZero(1000, 1e4),
      current: aboveZero(1, 20),
      exponent: usual(1, 1.1, { refused: [1, 2], advised: [null, 1.1] }),
    },
  },
  {
    name: 'battery.peukertRangeSpeed',
    call: battery.peukertRangeSpeed,
    sides: { exponent: usual(1, 1.1, { refused: [1, 2], advised: [null, 1.1] }) },
  },
  {
    name: 'battery.massForEnergy',
    call: battery.massForEnergy,
    sides: {
      energy: notNegative(1e6, 5e8),
      specificEnergy: aboveZero(4e5, 300 * 3600, { advised: [null, 300 * 3600] }),
      usableShare: share(0.5, 1),
      capacityLeft: share(0.7, 1),
    },
  },
  {
    name: 'battery.usableEnergy',
    call: battery.usableEnergy,
    sides: {
      mass: notNegative(0, 800),
      specificEnergy: aboveZero(4e5, 300 * 3600, { advised: [null, 300 * 3600] }),
      usableShare: share(0.5, 1),
    },
  },
  {
    name: 'battery.massForMission',
    call: battery.massForMission,
    sides: {
      energy: notNegative(1e6, 5e8),
      floor: usual(0.05, 0.4, { refused: [0, null] }),
      from: usual(0.8, 1, { refused: [null, 1] }),
      cellShare: usual(0.6, 0.8, { refused: [0, 1] }),
      efficiency: share(0.85, 1),
    },
    fixed: { cell, demands: [{ name: 'landing', power: 1e5, stateOfCharge: 0.5 }] },
  },
  {
    name: 'battery.run',
    call: battery.run,
    sides: {
      ...counts,
      stateOfCharge: usual(0.2, 1, { refused: [0, 1] }),
      temperature: usual(283, 310, { refused: [200, 500] }),
      floor: usual(0, 0.2, { refused: [0, null] }),
      conductance: notNegative(0, 20),
    },
    fixed: { cell, profile: [{ name: 'hover', power: 2e4, duration: 60 }] },
    quiet: 0.9,
  },
]

const drives: readonly Box[] = [
  {
    name: 'powertrain.motor',
    call: powertrain.motor,
    sides: {
      continuousTorque: aboveZero(20, 500),
      ratedSpeed: aboveZero(100, 600),
      efficiency: usual(0.85, 0.97, { refused: [0.3, 0.999], advised: [null, 0.97] }),
      constantShare: usual(0, 1 / 6, { refused: [0, 1 / 6], middle: 0.05 }),
    },
  },
  {
    name: 'powertrain.motorAt',
    call: powertrain.motorAt,
    sides: { torque: notNegative(0, 250), speed: notNegative(0, 125) },
    fixed: { motor },
  },
  {
    name: 'powertrain.overload',
    call: powertrain.overload,
    sides: {
      torque: notNegative(0, 240),
      speed: notNegative(0, 120),
      startShare: fromTo(0, 1),
      duration: notNegative(1, 300),
    },
    fixed: { motor },
    quiet: 0.8,
  },
  {
    name: 'powertrain.motorInAir',
    call: powertrain.motorInAir,
    sides: {
      density: aboveZero(0.6, 1.3, { advised: [0.6, 1.3] }),
      temperature: usual(250, 325, { refused: [150, 427.15] }),
      airSpeedRatio: aboveZero(0.5, 1.5),
      exponent: fromTo(0, 1),
      windingLimit: usual(400, 456.3, { refused: [314.15, 1000] }),
    },
    fixed: { motor },
  },
  {
    name: 'powertrain.controller',
    call: powertrain.controller,
    sides: {
      ratedPower: aboveZero(1e4, 2e5),
      efficiency: usual(0.9, 0.99, { refused: [0.3, 0.999], advised: [null, 0.99] }),
      standbyShare: notNegative(0, 0.3),
      squareShare: notNegative(0, 0.5),
    },
  },
  {
    name: 'powertrain.controllerAt',
    call: powertrain.controllerAt,
    sides: { power: usual(0, 4e4, { refused: [0, null], advised: [null, 4e4] }) },
    fixed: { controller },
  },
  {
    name: 'powertrain.chain',
    call: powertrain.chain,
    sides: {
      shaftPower: notNegative(0, 2e4),
      shaftSpeed: aboveZero(90, 145),
      cableResistance: notNegative(0, 0.05),
      voltage: aboveZero(500, 900),
    },
    fixed: { motor, controller },
  },
]

const masses: readonly Box[] = [
  { name: 'mass.wing', call: mass.wing, sides: surface, quiet: 0.9 },
  {
    name: 'mass.horizontalTail',
    call: mass.horizontalTail,
    sides: { ...surface, area: aboveZero(1, 5), aspectRatio: usual(3, 6, { refused: [0.3, 30] }) },
    quiet: 0.9,
  },
  {
    name: 'mass.gear',
    call: mass.gear,
    sides: { grossMass, landingLoadFactor: usual(3, 6) },
  },
  {
    name: 'mass.wiring',
    call: mass.wiring,
    sides: {
      current: aboveZero(20, 200),
      length: aboveZero(5, 20),
      voltageDrop: aboveZero(0.5, 1),
      insulation: notNegative(0.1, 0.5),
    },
    quiet: 0.8,
  },
  {
    name: 'mass.propeller',
    call: mass.propeller,
    sides: {
      diameter: aboveZero(1, 3),
      power: aboveZero(4e4, 5e5),
      blades: usual(2, 6, { whole: true, refused: [1, null] }),
    },
  },
  {
    name: 'mass.stowageMechanism',
    call: mass.stowageMechanism,
    sides: {
      movedMass: notNegative(1, 20),
      doorArea: notNegative(0, 1),
      count: usual(1, 12, { whole: true }),
    },
    quiet: 0,
  },
  {
    name: 'mass.cooling',
    call: mass.cooling,
    sides: { heat: notNegative(0, 5e4), specificHeatFlow: aboveZero(1000, 2000) },
  },
  {
    name: 'mass.boom',
    call: mass.boom,
    sides: {
      length: aboveZero(2, 4),
      radius: aboveZero(0.06, 0.12),
      tipForce: notNegative(500, 5000),
      tipTorque: notNegative(0, 500),
      tipMass: notNegative(5, 30),
    },
    quiet: 0,
  },
]

const chances: readonly Box[] = [
  {
    name: 'reliability.kOfN',
    call: reliability.kOfN,
    sides: {
      needed: usual(1, 8, { whole: true, refused: [1, 10], middle: 4 }),
      of: usual(8, 12, { whole: true, refused: [1, null] }),
      unitFailure: fromTo(0, 1),
      commonCause: fromTo(0, 1),
    },
  },
  {
    name: 'reliability.requiredUnitFailure',
    call: reliability.requiredUnitFailure,
    sides: { target: usual(1e-9, 0.5, { refused: [0, 1] }), commonCause: fromTo(0, 1, { middle: 0.01 }) },
    fixed: { needed: 3, of: 4 },
  },
  {
    name: 'reliability.unitFailure',
    call: reliability.unitFailure,
    sides: {
      rate: notNegative(0, 1e-5),
      time: notNegative(0, 4000),
      startFailure: usual(0, 0.02, { refused: [0, null] }),
      latentFailure: usual(0, 0.02, { refused: [0, null] }),
    },
  },
  {
    name: 'reliability.maintenance',
    call: reliability.maintenance,
    sides: { of: usual(1, 16, { whole: true, refused: [1, null] }), unitFailure: fromTo(0, 1) },
  },
]

export const boxes: readonly Box[] = [...batteries, ...drives, ...masses, ...chances]

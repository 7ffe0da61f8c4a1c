/** What must hold of batteries, powertrains and masses for any input: a typed error or finite numbers, and the laws of the physics. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { anything, numbersOf, type V, v, within } from './any-input.js'

const { battery, mass, powertrain } = preloaded
const numRuns = 1000

const cell = battery.cells.power18650

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
const aMotor = (x: V) =>
  powertrain.motor({
    continuousTorque: v(x, 0),
    ratedSpeed: 100 * v(x, 1),
    efficiency: v(x, 2),
    constantShare: v(x, 3) / 20,
  })

const calls: readonly [string, number, (x: V) => unknown][] = [
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
  [
    'mass.spread of bodies',
    9,
    (x) =>
      mass.spread('fuselage', {
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
      }),
  ],
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
]

describe('every call of battery, powertrain and mass', () => {
  it.each(calls)('%s gives finite numbers or an error of the kernel, for any input', (_, count, call) => {
    fc.assert(
      fc.property(fc.array(anything, { minLength: count, maxLength: count }), (values) => {
        for (const number of numbersOf(() => call(values))) expect(Number.isFinite(number)).toBe(true)
      }),
      { numRuns, seed: 20_271 },
    )
  })
})

describe('laws of batteries', () => {
  const charge = within(0.05, 1)
  const warmth = within(260, 320)
  const pack = { cell, series: 100, parallel: 10 }

  it('battery.discharge: what leaves the store is what arrives and what becomes heat', () => {
    fc.assert(
      fc.property(charge, warmth, within(0, 1), (stateOfCharge, temperature, share) => {
        const state = { ...pack, stateOfCharge, temperature }
        const { power } = battery.powerLimit(state)
        const now = battery.discharge({ ...state, power: share * power })
        expect(now.ok).toBe(true)
        expect(Math.abs(now.openCircuitVoltage * now.current - now.power - now.heat)).toBeLessThan(1e-9 * (1 + power))
        expect(now.cellVoltage).toBeGreaterThanOrEqual(cell.minimumVoltage - 1e-12)
      }),
      { numRuns, seed: 20_272 },
    )
  })

  it('battery.powerLimit rises with charge and warmth, and falls with age', () => {
    fc.assert(
      fc.property(within(0.05, 0.98), warmth, within(1, 3), (stateOfCharge, temperature, resistanceGrowth) => {
        const limit = (more: object) =>
          battery.powerLimit({ ...pack, rating: 'peak', stateOfCharge, temperature, ...more }).power
        const here = limit({})
        expect(limit({ stateOfCharge: stateOfCharge + 0.01 })).toBeGreaterThanOrEqual(here)
        expect(limit({ temperature: temperature + 1 })).toBeGreaterThanOrEqual(here)
        const old = battery.aged({ cell, capacityLeft: 0.8, resistanceGrowth })
        expect(limit({ cell: old })).toBeLessThanOrEqual(here)
      }),
      { numRuns, seed: 20_273 },
    )
  })

  it('battery.discharge has a deficit that changes sign exactly at the limit', () => {
    fc.assert(
      fc.property(charge, warmth, within(-1e-9, 1e-9), (stateOfCharge, temperature, off) => {
        const state = { ...pack, stateOfCharge, temperature }
        const { power } = battery.powerLimit(state)
        const now = battery.discharge({ ...state, power: power * (1 + off) })
        expect(now.ok).toBe(now.deficit <= 0)
        expect(Math.abs(now.current * now.voltage - power)).toBeLessThan(1e-8 * power)
      }),
      { numRuns, seed: 20_274 },
    )
  })

  it('battery.run keeps the book of energy wherever it ends, and never goes below its floors', () => {
    const segment = fc.record({ power: within(0, 6e4), duration: within(1, 900) })
    fc.assert(
      fc.property(
        fc.array(segment, { minLength: 1, maxLength: 4 }),
        charge,
        warmth,
        (profile, stateOfCharge, temperature) => {
          const flown = battery.run({ ...pack, profile, stateOfCharge, temperature, floor: 0.03, maxStep: 5 })
          const open = flown.delivered + flown.heat - flown.stored
          // Of what was drawn, or of what rounding leaves of a full pack.
          expect(Math.abs(open)).toBeLessThan(1e-6 * flown.stored + 1e-12 * 1000 * cell.energy)
          expect(flown.stateOfCharge).toBeGreaterThanOrEqual(0.03 - 1e-9)
          if (flown.ok) expect(flown.leastMargin).toBeGreaterThanOrEqual(0)
          else expect(flown.message).toContain(flown.segment)
        },
      ),
      { numRuns: 200, seed: 20_275 },
    )
  })

  it('battery.massForMission grows with energy, power and floor, and never falls below either bound', () => {
    fc.assert(
      fc.property(within(1e6, 4e8), within(1e4, 1e6), within(0.05, 0.4), (energy, power, floor) => {
        const sized = (more: object) => battery.massForMission({ cell, energy, floor, demands: [{ power }], ...more })
        const here = sized({})
        expect(here.mass).toBe(Math.max(here.energyMass, here.powerMass))
        expect(sized({ energy: 1.1 * energy }).mass).toBeGreaterThanOrEqual(here.mass)
        expect(sized({ demands: [{ power: 1.1 * power }] }).mass).toBeGreaterThanOrEqual(here.mass)
        expect(sized({ floor: floor + 0.01 }).energyMass).toBeGreaterThan(here.energyMass)
      }),
      { numRuns, seed: 20_276 },
    )
  })
})

describe('laws of powertrains', () => {
  const motor = powertrain.motor({ continuousTorque: 250, ratedSpeed: 125, efficiency: 0.94, constantShare: 0.05 })
  const controller = powertrain.controller({ ratedPower: 40e3, efficiency: 0.97 })

  it('powertrain.motorAt never beats the efficiency of the data page', () => {
    fc.assert(
      fc.property(within(0, 600), within(0, 200), (torque, speed) => {
        expect(powertrain.motorAt({ motor, torque, speed }).efficiency).toBeLessThanOrEqual(0.94 * (1 + 1e-12))
      }),
      { numRuns, seed: 20_277 },
    )
  })

  it('powertrain.chain takes more battery power for more shaft power, and the book closes', () => {
    fc.assert(
      fc.property(within(0, 6e4), within(20, 150), within(0, 0.05), (shaftPower, shaftSpeed, cableResistance) => {
        const drive = (power: number) =>
          powertrain.chain({ shaftPower: power, shaftSpeed, motor, controller, cableResistance, voltage: 700 })
        const one = drive(shaftPower)
        const losses = Object.values(one.losses).reduce((sum, loss) => sum + loss, 0)
        expect(Math.abs(one.batteryPower - shaftPower - losses)).toBeLessThan(1e-9 * one.batteryPower)
        expect(drive(shaftPower + 1).batteryPower).toBeGreaterThan(one.batteryPower)
      }),
      { numRuns, seed: 20_278 },
    )
  })
})

describe('laws of masses', () => {
  it('mass.boom meets all of its bounds at once', () => {
    const load = fc.record({
      length: within(0.5, 4),
      radius: within(0.05, 0.2),
      tipForce: within(0, 2e4),
      tipTorque: within(0, 5e3),
      tipMass: within(0, 60),
      minimumFrequency: within(0, 8),
    })
    fc.assert(
      fc.property(load, (options) => {
        const boom = mass.boom(options)
        const { allowableStress, allowableShear } = mass.materials.carbon
        const close = 1 + 1e-9
        expect(1.5 * boom.bendingStress).toBeLessThanOrEqual(Math.min(allowableStress, boom.bucklingStress) * close)
        expect(1.5 * boom.shearStress).toBeLessThanOrEqual(allowableShear * close)
        expect(boom.frequency * close).toBeGreaterThanOrEqual(options.minimumFrequency)
        expect(boom.nextShare).toBeLessThanOrEqual(1)
      }),
      { numRuns, seed: 20_279 },
    )
  })

  it('mass.properties is moved, mirrored and scaled as its items are', () => {
    const item = fc.record({ mass: within(0.1, 500), x: within(-5, 5), y: within(-5, 5), z: within(-2, 2) })
    fc.assert(
      fc.property(fc.array(item, { minLength: 1, maxLength: 8 }), within(-20, 20), (places, shift) => {
        const named = places.map((one, index) => ({ ...one, name: `item ${index}` }))
        const here = mass.properties(named)
        const moved = mass.properties(named.map((one) => ({ ...one, x: one.x + shift })))
        const mirrored = mass.properties(named.map((one) => ({ ...one, y: -one.y })))
        const size = here.Ixx + here.Iyy + here.Izz + 1e-9
        expect(Math.abs(moved.x - here.x - shift)).toBeLessThan(1e-9)
        expect(Math.abs(moved.Izz - here.Izz) / size).toBeLessThan(1e-9)
        expect(Math.abs(mirrored.Ixy + here.Ixy) / size).toBeLessThan(1e-9)
        // No moment of inertia exceeds the sum of the other two.
        expect(here.Ixx).toBeLessThanOrEqual((here.Iyy + here.Izz) * (1 + 1e-9))
        expect(here.Izz).toBeLessThanOrEqual((here.Ixx + here.Iyy) * (1 + 1e-9))
      }),
      { numRuns, seed: 20_280 },
    )
  })
})

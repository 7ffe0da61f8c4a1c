/** What must hold of batteries, powertrains and masses for any input: a typed error or finite numbers, and the laws of the physics. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { answersAnything, within } from './any-input.js'
import { calls } from './calls/systems.js'
import { runs, slowRuns } from './runs.js'

const { battery, mass, powertrain } = preloaded
const numRuns = runs

const cell = battery.cells.power18650

answersAnything('every call of battery, powertrain and mass', calls, 20_271)

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
          const bookOf = (maxStep: number) => {
            const run = battery.run({ ...pack, profile, stateOfCharge, temperature, floor: 0.03, maxStep })
            return { run, open: Math.abs(run.delivered + run.heat - run.stored) }
          }
          const { run: flown, open } = bookOf(1)
          // Of what was drawn, or of what rounding leaves of a full pack. Steps across knots at low charge are of second order:
          // the worst of 4,600 random runs was 4.7e-7 at 1 s, 1.9e-6 at 2 s and 1.4e-5 at the usual 10 s.
          expect(open).toBeLessThan(1e-6 * flown.stored + 1e-12 * 1000 * cell.energy)
          const usual = bookOf(10)
          expect(usual.open).toBeLessThan(3e-5 * usual.run.stored + 1e-12 * 1000 * cell.energy)
          expect(flown.stateOfCharge).toBeGreaterThanOrEqual(0.03 - 1e-9)
          expect(flown.delivered).toBeLessThanOrEqual(flown.stored * (1 + 1e-6) + 1e-12 * 1000 * cell.energy)
          if (flown.ok) expect(flown.leastMargin).toBeGreaterThanOrEqual(0)
          else expect(flown.message).toContain(flown.segment)
        },
      ),
      { numRuns: slowRuns(200), seed: 20_275 },
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

/** Published cases of missions: energy per distance, hops, reserves that rules print. */
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../kernel/library/index.js'
import { readCases } from './cases.js'
import { checkCases } from './check-cases.js'
import { methods } from './mission-methods.js'
import { publishedDuty } from './system-methods.js'

const { battery, drag, mission, u } = preloaded

checkCases({ subject: 'missions and reserves', cases: readCases('cases-mission.json'), methods })

describe('the published duty of one cell (Bills et al., Scientific Data 10:344, 2023; read in a dataset card)', () => {
  it('is what mission.fly draws from a cell when hover and cruise are made to take its powers', () => {
    // 54 W in hover and 16 W in cruise for one cell of a thousand: disk and polar follow from the powers.
    const count = 1000
    const weight = 1000 * u.g0
    const hoverPower = 54 * count
    const diskArea = weight ** 3 / (2 * 1.225000018 * hoverPower ** 2)
    const thrust = (16 * count) / 50
    const lift = weight / (0.5 * 1.225000018 * 50 ** 2 * 10)
    const dragCoefficient = thrust / (0.5 * 1.225000018 * 50 ** 2 * 10)
    const aircraft = mission.aircraft({
      mass: 1000,
      wingArea: 10,
      maximumLift: 5,
      polar: { zeroLiftDrag: 0.5 * dragCoefficient, inducedFactor: (0.5 * dragCoefficient) / lift ** 2 },
      lift: { diskArea, figureOfMerit: 1, inducedFactor: 1, efficiency: 1 },
      cruise: { propellerEfficiency: 1, efficiency: 1 },
      battery: { cell: battery.cells.power18650, series: 50, parallel: 20, rating: 'peak' },
    })
    const flown = mission.fly({
      aircraft,
      segments: [
        { kind: 'hover', time: 75 },
        { kind: 'cruise', time: 800, speed: 50 },
        { kind: 'landing', time: 105 },
      ],
    })
    expect(flown.feasible).toBe(true)
    expect(flown.energy / count).toBeCloseTo(22_520, 2)
    const run = battery.run({
      cell: battery.cells.power18650,
      series: 1,
      parallel: 1,
      rating: 'peak',
      profile: publishedDuty,
    })
    expect(flown.stateOfCharge).toBeCloseTo(run.stateOfCharge, 7)
    expect(flown.temperature).toBeCloseTo(run.temperature, 5)
  })
})

describe('the closed forms of range and endurance (Hepperle, NATO STO-MP-AVT-209 paper 9, 2012; equations from memory)', () => {
  /** A store of constant voltage without loss: nothing but its energy. */
  const ideal = battery.cell({ capacity: 3600, mass: 0.05, openCircuitVoltage: 4, resistance: 1e-9, minimumVoltage: 1 })
  const mass = 2000
  const aircraftOf = (liftToDrag: number, specificEnergy: number, share: number, efficiency: number) =>
    mission.aircraft({
      mass,
      wingArea: 14,
      maximumLift: 10,
      polar: { zeroLiftDrag: 1 / (2 * liftToDrag), inducedFactor: 1 / (2 * liftToDrag) },
      lift: { diskArea: 40, figureOfMerit: 0.7, efficiency: 0.9 },
      cruise: { propellerEfficiency: efficiency, efficiency: 1 },
      battery: { cell: ideal, series: 100, parallel: (specificEnergy * share * mass) / (100 * ideal.energy), floor: 0 },
    })

  it('are what mission.fly flies with an ideal store: range-01, 247.79 km to empty at the best lift-to-drag ratio', () => {
    const aircraft = aircraftOf(15, (200 * u.Wh) / u.kg, 0.3, 0.75)
    const range = 247.79 * u.km
    const nearly = mission.fly({ aircraft, segments: [{ kind: 'cruise', distance: range * 0.9999 }] })
    expect(nearly.feasible).toBe(true)
    expect(nearly.stateOfCharge).toBeCloseTo(1e-4, 4)
    const beyond = mission.fly({ aircraft, segments: [{ kind: 'cruise', distance: range * 1.001 }] })
    expect(beyond).toMatchObject({ feasible: false, status: 'charge floor' })
    expect((beyond.second * (beyond.rows[0]?.speed ?? 0)) / range).toBeCloseTo(1, 4)
  })

  it('are what mission.fly flies for a time: endur-01, 3964.7 s at 50 m/s', () => {
    // The lift coefficient at 50 m/s is not 1 here: area and polar follow from the ratio asked for at that speed.
    const area = (mass * u.g0) / (0.5 * 1.225 * 50 ** 2)
    const aircraft = { ...aircraftOf(12, (200 * u.Wh) / u.kg, 0.3, 0.75), wingArea: area }
    const flown = mission.fly({ aircraft, segments: [{ kind: 'loiter', speed: 50, time: 5000 }] })
    expect(flown.status).toBe('charge floor')
    expect(flown.second / 3964.656636).toBeCloseTo(1, 6)
  })
})

describe('common practice, no source: what stowing the stopped rotors buys (row 8)', () => {
  // A drag cut near 17 % fits the sizes quoted; the same energy, the same mass.
  const craftOf = (share: number, more = {}) =>
    mission.aircraft({
      mass: 1900,
      wingArea: 15,
      maximumLift: 10,
      polar: drag.polar({ zeroLiftDrag: 0.038 * share, aspectRatio: 11, spanEfficiency: 0.8 }),
      lift: { diskArea: 42.5, figureOfMerit: 0.72, efficiency: 0.9 },
      cruise: { propellerEfficiency: 0.84, efficiency: 0.91 },
      ...more,
    })

  it('gains more in range than in endurance, and both less than the drag that was cut', () => {
    const [exposed, stowed] = [1, 0.83].map((share) => mission.speeds({ aircraft: craftOf(share) }))
    const range = (exposed?.bestRange.energyPerDistance ?? 0) / (stowed?.bestRange.energyPerDistance ?? 1) - 1
    const endurance = (exposed?.bestEndurance.power ?? 0) / (stowed?.bestEndurance.power ?? 1) - 1
    expect(range).toBeCloseTo(0.83 ** -0.5 - 1, 9)
    expect(endurance).toBeCloseTo(0.83 ** -0.25 - 1, 9)
    expect(range).toBeGreaterThan(endurance)
    expect(endurance).toBeGreaterThan(0)
  })

  it('loses its gain of endurance to the mass of the mechanism before it loses its gain of range', () => {
    const gain = (growth: number) => {
      const bare = mission.speeds({ aircraft: craftOf(1) })
      const stowed = mission.speeds({ aircraft: craftOf(0.83, { mass: 1900 * growth }) })
      return {
        range: (bare.bestRange.energyPerDistance ?? 0) / (stowed.bestRange.energyPerDistance ?? 1) - 1,
        endurance: bare.bestEndurance.power / stowed.bestEndurance.power - 1,
      }
    }
    // The break-even growths of gross mass are exact: (1-f)^(-1/2) for range and (1-f)^(-1/6) for endurance.
    expect(gain(0.83 ** -0.5).range).toBeCloseTo(0, 9)
    expect(gain(0.83 ** (-1 / 6)).endurance).toBeCloseTo(0, 9)
    expect(gain(0.83 ** (-1 / 6)).range).toBeGreaterThan(0)
  })
})

/** That batteries, powertrains and masses keep their dimensions through a cell, and that a wrong unit is caught. */
import { describe, expect, it } from 'vitest'
import { checkCell } from '../../cells/check/notebook.js'

const sizing = `
const old = battery.aged({ cell: battery.cells.power18650, capacityLeft: 0.8, resistanceGrowth: 1.5 })
const sized = battery.massForMission({
  cell: old, energy: 60 * u.kWh, floor: 0.1,
  demands: [{ name: 'landing', power: 320 * u.kW, stateOfCharge: 0.15, temperature: 283.15 * u.K }],
})
const packMass = sized.mass
const pack = battery.pack({ cell: old, voltage: 700 * u.V, energy: 90 * u.kWh })
const now = battery.discharge({
  cell: old, series: pack.series, parallel: pack.parallel, power: 250 * u.kW, stateOfCharge: 0.4, temperature: 290 * u.K,
})
const current = now.current
const lost = now.heat + now.deficit
const flown = battery.run({
  cell: old, series: pack.series, parallel: pack.parallel, profile: [{ name: 'hover', power: 300 * u.kW, duration: 60 * u.s }],
})
const book = flown.delivered + flown.heat - flown.stored
const lift = powertrain.motor({ continuousTorque: 250 * u.N * u.m, ratedSpeed: 1200 * u.rpm, efficiency: 0.94 })
const drive = powertrain.chain({
  shaftPower: 25 * u.kW, shaftSpeed: 1200 * u.rpm, motor: lift,
  controller: powertrain.controller({ ratedPower: 40 * u.kW, efficiency: 0.97 }),
})
const copper = drive.losses.copper
const wings = mass.spread('wing', { grossMass: 2000 * u.kg, ultimateLoadFactor: 5.7, area: 14 * u.m2, aspectRatio: 10 })
const scatter = wings.high - wings.low
const boom = mass.boom({ length: 1.5 * u.m, radius: 60 * u.mm, tipForce: 4 * u.kN, tipMass: 25 * u.kg })
const stiffness = mass.materials.carbon.elasticModulus * boom.secondMoment
const placed = mass.properties([{ name: 'wing', mass: 180 * u.kg, x: 0 * u.m, y: 0 * u.m }])
const inertia = placed.Ixx
const seen = figure.massSpread({ spreads: { wing: wings } })
`

describe('cells that size batteries, powertrains and masses', () => {
  it('have no findings and the dimensions of their results', async () => {
    const { names, said } = await checkCell(sizing)
    expect(said).toEqual([])
    expect(names).toMatchObject({
      packMass: 'kg',
      current: 'A',
      lost: 'kg m^2 s^-3',
      book: 'kg m^2 s^-2',
      copper: 'kg m^2 s^-3',
      scatter: 'kg',
      stiffness: 'kg m^3 s^-2',
      inertia: 'kg m^2',
    })
  })

  it.each([
    [
      'battery.discharge({ cell: battery.cells.power18650, series: 1, parallel: 1, power: 5 * u.kWh, stateOfCharge: 1, temperature: 290 * u.K })',
      'kg m^2 s^-3',
    ],
    [
      'mass.wing({ grossMass: 2 * u.kN, ultimateLoadFactor: 5.7, area: 14 * u.m2, aspectRatio: 10 })',
      'wants kg but got kg m s^-2',
    ],
    [
      'battery.run({ cell: battery.cells.power18650, series: 1, parallel: 1, profile: [{ power: 5 * u.W, duration: 5 * u.m }] })',
      'wants s but got m',
    ],
  ])('are told of a wrong unit in %s', async (call, finding) => {
    const { said } = await checkCell(`const answer = ${call}`)
    expect(said).toHaveLength(1)
    expect(said[0]).toContain(finding)
  })
})

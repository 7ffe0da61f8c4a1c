/** That missions keep their dimensions through a cell, and that a wrong unit is caught. */
import { describe, expect, it } from 'vitest'
import { checkCell } from '../../cells/check/notebook.js'

const aircraft = `
const craft = mission.aircraft({
  mass: 1900 * u.kg, wingArea: 15 * u.m2, maximumLift: 1.5,
  polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
  lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, download: 0.05, efficiency: 0.9, powerLimit: 500 * u.kW },
  cruise: { propellerEfficiency: 0.84, efficiency: 0.91, powerLimit: 180 * u.kW }, hotelPower: 2 * u.kW,
  battery: { cell: battery.cells.power18650, series: 200, parallel: 60, rating: 'peak', aged: { capacityLeft: 0.8, resistanceGrowth: 1.5 } },
})
`
const flying = `${aircraft}
const sector = mission.segments([
  { kind: 'hover', time: 60 * u.s }, { kind: 'transition', acceleration: 0.15 * u.g0 }, { kind: 'climb', to: 900 * u.m, rate: 500 * u.fpm },
  { kind: 'cruise', speed: 58 * u.mps, tailwind: -10 * u.kt }, { kind: 'descent', to: 600 * u.m },
  { kind: 'reserve', time: mission.reserves.rotorcraftVisual.time }, { kind: 'return transition' }, { kind: 'landing', time: 30 * u.s },
])
const flown = mission.fly({ aircraft: craft, segments: sector, altitude: 600 * u.m, temperatureOffset: 15 * u.K, distance: 60 * u.km })
const hovering = mission.multirotor({
  mass: 1600 * u.kg, dragArea: 1.2 * u.m2, lift: { diskArea: 42.5 * u.m2, figureOfMerit: 0.72, efficiency: 0.9 }, battery: craft.battery,
})
const short = mission.fly({ aircraft: { ...hovering, mass: 1650 * u.kg }, segments: [{ kind: 'cruise', distance: 10 * u.km }] })
const onRotors = short.energy / (10 * u.km)
const energy = flown.energy
const margin = flown.landing.powerMargin
const lacking = flown.deficits.energy
const perDistance = mission.speeds({ aircraft: { ...craft, mass: 1950 * u.kg } }).bestRange.power / (50 * u.mps)
const rows = flown.rows.map((row) => row.distance)
const rating = mission.transition({ aircraft: craft, abortAt: 20 * u.mps }).ratingNeeded
const drawn = figure.missionProfile({ flown, show: 'charge' })
const corridor = figure.conversionCorridor({ corridor: mission.corridor({ aircraft: craft }) })
const curve = figure.powerAgainstSpeed({ curve: mission.powerAgainstSpeed({ aircraft: craft }) })
`

describe('cells that fly missions', () => {
  it('have no findings and the dimensions of their results', async () => {
    const { names, said } = await checkCell(flying)
    expect(said).toEqual([])
    expect(names).toMatchObject({
      onRotors: 'kg m s^-2',
      energy: 'kg m^2 s^-2',
      margin: 'kg m^2 s^-3',
      lacking: 'kg m^2 s^-2',
      perDistance: 'kg m s^-2',
      rating: 'kg m^2 s^-3',
    })
  })

  it.each([
    [
      `${aircraft}const answer = mission.fly({ aircraft: craft, segments: [{ kind: 'hover', time: 60 * u.m }] })`,
      'wants s but got m',
    ],
    [
      `const craft = mission.multirotor({ mass: 1600 * u.kg, dragArea: 1.2 * u.m, lift: { diskArea: 42 * u.m2, figureOfMerit: 0.7, efficiency: 0.9 } })`,
      'wants m^2 (for instance m2) but got m',
    ],
    [`${aircraft}const answer = mission.speeds({ aircraft: craft, tailwind: 10 * u.N })`, 'tailwind wants m s^-1'],
    [`${aircraft}const answer = mission.trim({ aircraft: craft, speed: 10 * u.m })`, 'speed wants m s^-1'],
  ])('are told of a wrong unit', async (cell, finding) => {
    const { said } = await checkCell(cell)
    expect(said).toHaveLength(1)
    expect(said[0]).toContain(finding)
  })
})

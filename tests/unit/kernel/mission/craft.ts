/** An invented aircraft of the size of the Skerry Link, and a sector of it, for the tests of missions. */
import { preloaded } from '../../../../kernel/library/index.js'

const { battery, drag, mission, u } = preloaded

export const options = {
  mass: 1900 * u.kg,
  wingArea: 15 * u.m2,
  maximumLift: 1.5,
  polar: drag.polar({ zeroLiftDrag: 0.038, aspectRatio: 11, spanEfficiency: 0.8 }),
  lift: {
    diskArea: 42.5 * u.m2,
    figureOfMerit: 0.72,
    download: 0.05,
    efficiency: 0.9,
    count: 8,
    solidity: 0.14,
    tipSpeed: 165 * u.mps,
    powerLimit: 500 * u.kW,
  },
  cruise: { propellerEfficiency: 0.84, efficiency: 0.91, powerLimit: 180 * u.kW },
  hotelPower: 2 * u.kW,
  battery: { cell: battery.cells.power18650, series: 200, parallel: 60, rating: 'peak' as const },
}

export const craft = mission.aircraft(options)

export const sector = mission.segments([
  { kind: 'hover', time: 30 * u.s },
  { kind: 'vertical climb', height: 30 * u.m, rate: 2 * u.mps },
  { kind: 'transition' },
  { kind: 'climb', to: 1200 * u.m, rate: 3 * u.mps },
  { kind: 'cruise', speed: 58 * u.mps },
  { kind: 'descent', to: 630 * u.m },
  { kind: 'reserve', time: 20 * u.min },
  { kind: 'return transition' },
  { kind: 'landing', time: 30 * u.s, height: 30 * u.m },
])

export const day = { altitude: 600 * u.m, temperatureOffset: 15 * u.K, distance: 60 * u.km }

/** Records with something else in place of a part. */
export const withLift = (lift: object) => ({ ...options, lift: { ...options.lift, ...lift } })
export const withCruise = (cruise: object) => ({ ...options, cruise: { ...options.cruise, ...cruise } })
export const withBattery = (store: object) => ({ ...options, battery: { ...options.battery, ...store } })

/** Calls on missions with any numbers. */
import { preloaded } from '../../../../kernel/library/index.js'
import { type AnyCall, type V, v } from '../any-input.js'

const { battery, mission } = preloaded

/** An aircraft of any numbers; mostly sane ones, so that methods are reached. */
const anyCraft = (x: V) => ({
  mass: 1e3 * v(x, 0),
  wingArea: 10 * v(x, 1),
  maximumLift: v(x, 2),
  polar: { zeroLiftDrag: 0.03 * v(x, 3), inducedFactor: 0.04 * v(x, 4) },
  lift: {
    diskArea: 30 * v(x, 5),
    figureOfMerit: v(x, 6) / 3,
    download: v(x, 7) / 10,
    efficiency: 0.9,
    count: 8,
    solidity: 0.1,
    powerLimit: 3e5 * v(x, 8),
  },
  cruise: { propellerEfficiency: 0.8, efficiency: 0.9, powerLimit: 1e5 * v(x, 9), staticThrust: 3e3 },
  hotelPower: 1e3 * v(x, 10),
  battery: { cell: battery.cells.power18650, series: 200, parallel: 30 * v(x, 11), rating: 'peak' as const },
})
const anyMultirotor = (x: V) => {
  const { mass, lift, hotelPower, battery: pack } = anyCraft(x)
  return { mass, dragArea: v(x, 2), lift, hotelPower, battery: pack }
}
const air = (x: V) => ({ altitude: 1e3 * v(x, 12), temperatureOffset: 5 * v(x, 13) })
const anySegments = (x: V) => [
  { kind: 'hover' as const, time: 30 * v(x, 14) },
  { kind: 'vertical climb' as const, height: 30 * v(x, 15), rate: v(x, 16) },
  { kind: 'transition' as const, acceleration: v(x, 17) },
  { kind: 'climb' as const, to: 1e3 * v(x, 12) + 500 * v(x, 15), rate: v(x, 16) },
  { kind: 'cruise' as const, distance: 1e4 * v(x, 18), tailwind: 10 * (1 - v(x, 16)) },
  { kind: 'reserve' as const, time: 300 * v(x, 14), speed: 30 * v(x, 18) },
  { kind: 'return transition' as const, stoppedRotors: 1 },
  { kind: 'balked landing' as const },
  { kind: 'landing' as const, height: 10, rate: v(x, 17), massChange: -10 * v(x, 15) },
]

/** Without a wing there is nothing to pass to. */
const onRotors = (x: V) => [
  ...anySegments(x).filter((one) => one.kind !== 'transition' && one.kind !== 'return transition'),
  { kind: 'loiter' as const, time: 60, speed: 'power limit' as const },
]

export const calls: readonly AnyCall[] = [
  ['mission.aircraft', 12, (x) => ({ ...mission.aircraft(anyCraft(x)), battery: undefined })],
  ['mission.multirotor', 12, (x) => ({ ...mission.multirotor(anyMultirotor(x)), battery: undefined })],
  [
    'mission.fly of a multirotor',
    19,
    (x) => mission.fly({ aircraft: anyMultirotor(x), ...air(x), segments: onRotors(x), steps: 'coarse' }),
  ],
  ['mission.segments', 19, (x) => mission.segments(anySegments(x))],
  ['mission.speeds', 15, (x) => mission.speeds({ aircraft: anyCraft(x), ...air(x), tailwind: 10 * v(x, 14) })],
  [
    'mission.trim',
    16,
    (x) => mission.trim({ aircraft: anyCraft(x), ...air(x), speed: 20 * v(x, 14), acceleration: v(x, 15) }),
  ],
  ['mission.corridor', 15, (x) => mission.corridor({ aircraft: anyCraft(x), ...air(x), to: 20 * v(x, 14), points: 8 })],
  [
    'mission.powerAgainstSpeed',
    15,
    (x) => mission.powerAgainstSpeed({ aircraft: anyCraft(x), ...air(x), to: 30 * v(x, 14), points: 9 }),
  ],
  [
    'mission.transition',
    17,
    (x) =>
      mission.transition({
        aircraft: anyCraft(x),
        ...air(x),
        acceleration: v(x, 14),
        speed: 20 * v(x, 15),
        stoppedRotors: v(x, 16),
      }),
  ],
  [
    'mission.fly',
    21,
    (x) => {
      const cells = { stateOfCharge: v(x, 19) / 3, cellTemperature: 150 + 100 * v(x, 20) }
      return mission.fly({ aircraft: anyCraft(x), ...air(x), ...cells, segments: anySegments(x), steps: 'coarse' })
    },
  ],
  [
    'mission.fly in fine steps',
    19,
    (x) => mission.fly({ aircraft: anyCraft(x), ...air(x), segments: anySegments(x), maxStep: 20 }),
    50,
  ],
  ['mission.demand', 19, (x) => mission.demand({ aircraft: anyCraft(x), ...air(x), segments: anySegments(x) })],
]

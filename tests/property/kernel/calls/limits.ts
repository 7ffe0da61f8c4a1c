/** Calls on limits and on the diagrams of sizing with any numbers. */
import { preloaded } from '../../../../kernel/library/index.js'
import { type AnyCall, type V, v } from '../any-input.js'

const { battery, limits, sizing } = preloaded

const cell = battery.cells.power18650
const polar = (x: V) => ({ zeroLiftDrag: v(x, 0) / 20, inducedFactor: v(x, 1) / 20 })
const craft = (x: V) => ({ polar: polar(x), weight: 1e4 * v(x, 2), wingArea: 10 * v(x, 3), density: v(x, 4) })

export const calls: readonly AnyCall[] = [
  [
    'sizing.constraintDiagram',
    12,
    (x) =>
      sizing.constraintDiagram({
        polar: polar(x),
        propellerEfficiency: v(x, 2),
        constraints: [
          { kind: 'stall', density: v(x, 3), speed: 50 * v(x, 4), maximumLift: v(x, 5), margin: v(x, 6) },
          { kind: 'cruise', density: v(x, 3), speed: 50 * v(x, 7) },
          { kind: 'climb', density: v(x, 3), climbSpeed: v(x, 8) },
          { kind: 'turn', density: v(x, 3), speed: 50 * v(x, 7), loadFactor: v(x, 9) },
        ],
        design: { wingLoading: 1e3 * v(x, 10), specificPower: 100 * v(x, 11) },
      }),
  ],
  [
    'sizing.diskLoadingWindow',
    9,
    (x) =>
      sizing.diskLoadingWindow({
        density: v(x, 0),
        download: v(x, 1) / 6,
        design: 300 * v(x, 2),
        bounds: [
          { kind: 'hover power', specificPower: 100 * v(x, 3), figureOfMerit: v(x, 4) },
          { kind: 'footprint', grossMass: 1e3 * v(x, 5), diskArea: v(x, 6) },
          { kind: 'outwash', speed: 10 * v(x, 7) },
          { kind: 'tip speed', speed: 100 * v(x, 7), solidity: v(x, 8) },
        ],
      }),
  ],
  [
    'sizing.electricRange',
    7,
    (x) =>
      sizing.electricRange({
        grossMass: 1e3 * v(x, 0),
        batteryMass: 1e2 * v(x, 1),
        usableSpecificEnergy: 1e5 * v(x, 2),
        liftToDrag: 5 * v(x, 3),
        efficiency: v(x, 4),
        speed: 30 * v(x, 5),
        reserveTime: 1e3 * v(x, 6),
      }),
  ],
  [
    'sizing.payloadRange',
    4,
    (x) =>
      sizing.payloadRange({
        mostPayload: 100 * v(x, 0),
        leastPayload: v(x, 1),
        points: 3,
        evaluate: (payload, range) => ({
          energy: range * (1 + payload * v(x, 2)) - 1e5 * v(x, 3),
          load: payload - 200,
        }),
      }),
  ],
  [
    'sizing.growthFactor',
    3,
    (x) => {
      const requiredMass = (m: number) => ({ a: 100 * v(x, 0), b: (v(x, 1) / 4) * m, c: 1e-5 * v(x, 2) * m * m })
      const { grossMass } = sizing.close({ requiredMass, from: 100 })
      return sizing.growthFactor({ requiredMass, grossMass })
    },
  ],
  [
    'sizing.sensitivity',
    3,
    (x) =>
      sizing.sensitivity({
        name: 'a',
        value: v(x, 0),
        grossMass: 100 * v(x, 1),
        requiredMass: (m, a) => 100 * v(x, 1) * (1 - v(x, 2) / 4) * (a / v(x, 0)) + (v(x, 2) / 4) * m,
      }),
  ],
  [
    'sizing.close with deficits',
    4,
    (x) =>
      sizing.close({
        requiredMass: (m) => 100 * v(x, 0) + (v(x, 1) / 3) * m,
        from: 100,
        deficits: (m) => ({ power: { lacking: v(x, 2) * m - v(x, 3), of: v(x, 3) }, bare: v(x, 2) }),
      }),
  ],
  [
    'limits.packPower',
    6,
    (x) =>
      limits.packPower({
        cell,
        energy: 1e8 * v(x, 0),
        floor: v(x, 1) / 10,
        demands: [{ power: 1e5 * v(x, 2), stateOfCharge: v(x, 3) / 3 }],
        corners: [{ name: 'a', capacityLeft: v(x, 4), resistanceGrowth: 1 + v(x, 5) }],
      }),
  ],
  [
    'limits.speedFloors',
    6,
    (x) =>
      limits.speedFloors({
        weight: 1e4 * v(x, 0),
        density: v(x, 1),
        wingArea: 10 * v(x, 2),
        maximumLift: v(x, 3),
        speeds: [{ name: 'a', speed: 30 * v(x, 4), loadFactor: v(x, 5) }],
      }),
  ],
  [
    'limits.margins',
    12,
    (x) =>
      limits.margins({
        grossMass: 1e3 * v(x, 0),
        density: v(x, 1),
        lift: {
          diskArea: 20 * v(x, 2),
          figureOfMerit: v(x, 3),
          shaftPower: 1e5 * v(x, 4),
          thrustRatio: v(x, 5),
          packPower: 1e5 * v(x, 6),
        },
        wing: { wingArea: 10 * v(x, 7), maximumLift: v(x, 8), speed: 30 * v(x, 9) },
        cruise: {
          polar: polar(x),
          wingArea: 10 * v(x, 7),
          speed: 30 * v(x, 9),
          propellerEfficiency: v(x, 10),
          shaftPower: 1e5 * v(x, 11),
        },
      }),
  ],
  [
    'limits.hotAndHigh',
    5,
    (x) =>
      limits.hotAndHigh({
        altitudes: [1e3 * v(x, 0), 2e3 * v(x, 1)],
        temperatureOffsets: [10 * v(x, 2)],
        margins: (there) => ({ a: v(x, 3) * there.density - 1, b: v(x, 4) }),
      }),
  ],
  [
    'limits.climbAfterLoss',
    9,
    (x) =>
      limits.climbAfterLoss({
        ...craft(x),
        shaftPower: 1e5 * v(x, 5),
        units: Math.round(v(x, 6)),
        propellerEfficiency: v(x, 7),
        addedDragArea: v(x, 8),
      }),
  ],
  [
    'limits.verticalClimbAfterLoss',
    6,
    (x) =>
      limits.verticalClimbAfterLoss({
        thrusts: [1e3 * v(x, 0), 1e3 * v(x, 1)],
        diskArea: v(x, 2),
        density: v(x, 3),
        figureOfMerit: v(x, 4),
        unitPower: 1e4 * v(x, 5),
      }),
  ],
  [
    'limits.massGrowth',
    5,
    (x) =>
      limits.massGrowth({
        growthFactor: v(x, 0),
        items: [
          { name: 'a', mass: v(x, 1), allowance: v(x, 2), low: v(x, 3), high: v(x, 4) },
          { name: 'b', mass: v(x, 1), category: 'battery', maturity: 'layout' },
        ],
      }),
  ],
  [
    'limits.hotelPower',
    5,
    (x) =>
      limits.hotelPower({
        items: [{ name: 'a', power: v(x, 0), duty: v(x, 1) }],
        heat: [{ name: 'b', heat: v(x, 2) }],
        coolingShare: v(x, 3),
        converterEfficiency: v(x, 4),
      }),
  ],
  [
    'limits.glide',
    8,
    (x) => limits.glide({ ...craft(x), height: 100 * v(x, 5), headwind: v(x, 6), addedDragArea: v(x, 7) }),
  ],
  [
    'limits.routeReach',
    8,
    (x) =>
      limits.routeReach({
        length: 1e4 * v(x, 0),
        height: 100 * v(x, 1),
        liftToDrag: 5 * v(x, 2),
        energyLeft: (along) => 1e6 * v(x, 3) + along,
        rotorBorne: { power: 1e5 * v(x, 4), speed: 10 * v(x, 5), landingEnergy: 1e5 * v(x, 6) },
        sites: [{ name: 'a', along: 1e3 * v(x, 7) }],
        points: 7,
      }),
  ],
  [
    'limits.whatSizesWhat',
    3,
    (x) =>
      limits.whatSizesWhat({
        limits: [0, 1, 2].map((at) => ({ component: at < 2 ? 'a' : 'b', limit: String(at), size: v(x, at) })),
      }),
  ],
  ['limits.failureTable', 1, (x) => limits.failureTable({ cases: [{ failure: 'a', phase: 'b', margin: v(x, 0) }] })],
  [
    'limits.day',
    9,
    (x) =>
      limits.day({
        cell,
        series: 100,
        parallel: 10 * v(x, 0),
        sectors: 2,
        sector: [{ power: 1e4 * v(x, 1), duration: 0.1 * v(x, 2), motorHeatShare: v(x, 3) }],
        turnaround: 0.05 * v(x, 4),
        chargePower: 1e4 * v(x, 5),
        chargeTo: v(x, 6) / 3,
        ambient: 280 + 10 * v(x, 7),
        conductance: v(x, 8),
      }),
    200,
  ],
  [
    'limits.massAllowance',
    2,
    (x) => {
      const categories = ['structure', 'battery', 'propulsion'] as const
      const maturities = ['estimated', 'released', 'actual'] as const
      const category = categories[Math.floor(v(x, 0))] as (typeof categories)[number]
      return limits.massAllowance({
        category,
        maturity: maturities[Math.floor(v(x, 1))] as (typeof maturities)[number],
      })
    },
  ],
  [
    'limits.notModelled',
    1,
    (x) => {
      const own = {
        notModelled: `the ${v(x, 0)}`,
        on: 'range',
        effect: 'flatters' as const,
        likelySize: `${v(x, 0)} %`,
      }
      return limits.notModelled({ also: [own] }).length
    },
  ],
  [
    'sizing.close',
    4,
    (x) =>
      sizing.close({
        requiredMass: (m) => ({ a: 100 * v(x, 0), b: (v(x, 1) / 3) * m, c: 1e-4 * v(x, 2) * m ** 1.5 }),
        from: 100 * v(x, 3),
      }),
  ],
  [
    'sizing.fold',
    4,
    (x) =>
      sizing.fold({
        name: 'a',
        value: v(x, 0),
        from: 100 * v(x, 1),
        requiredMass: (m, a) => 100 * a * v(x, 2) + 1e-4 * v(x, 3) * m ** 1.5,
      }),
    200,
  ],
]

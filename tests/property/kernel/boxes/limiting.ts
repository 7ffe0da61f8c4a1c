/** The boxes of what limits an aircraft: packs, days, heat and height, reach, growth, and the tables of them. */
import { preloaded } from '../../../../kernel/library/index.js'
import { aboveZero, type Box, fromTo, notNegative, usual, wholeFromTo } from './engine.js'

const { battery, limits } = preloaded

type Numbers = Readonly<Record<string, number>>
const cell = battery.cells.power18650
const share = (low: number, high: number) => usual(low, high, { refused: [0, 1] })
const warm = (low: number, high: number) => usual(low, high, { refused: [200, 500] })

const packs: readonly Box[] = [
  {
    name: 'limits.packPower',
    call: ({ power, stateOfCharge, capacityLeft, resistanceGrowth, temperature, ...rest }: Numbers) =>
      limits.packPower({
        ...rest,
        cell,
        demands: [{ name: 'landing', power: power ?? 0, stateOfCharge: stateOfCharge ?? 0 }],
        corners: [
          {
            ...{ name: 'old', capacityLeft: capacityLeft ?? 0, resistanceGrowth: resistanceGrowth ?? 0 },
            temperature: temperature ?? 0,
          },
        ],
      } as never),
    sides: {
      energy: notNegative(1e8, 3e8),
      floor: usual(0.05, 0.15, { refused: [0, 1] }),
      cellShare: share(0.6, 0.8),
      efficiency: share(0.9, 1),
      power: notNegative(1e5, 4e5),
      stateOfCharge: usual(0.2, 1, { refused: [null, 1] }),
      capacityLeft: share(0.75, 1),
      resistanceGrowth: usual(1, 2, { refused: [1, 100] }),
      temperature: warm(278, 318),
    },
  },
  {
    name: 'limits.day',
    call: ({ power, duration, motorHeatShare, ...rest }: Numbers) =>
      limits.day({
        ...rest,
        cell,
        rating: 'peak',
        sector: [
          { name: 'hover', power: power ?? 0, duration: duration ?? 0, motorHeatShare: motorHeatShare ?? 0 },
          { name: 'cruise', power: 9e4, duration: 300 },
        ],
      } as never),
    sides: {
      series: aboveZero(180, 220),
      parallel: aboveZero(55, 80),
      sectors: usual(1, 3, { whole: true, refused: [1, 50], middle: 1 }),
      power: notNegative(2e5, 3e5),
      duration: usual(20, 45, { refused: [0, null], middle: 30 }),
      motorHeatShare: notNegative(0, 2),
      turnaround: usual(300, 1200, { refused: [0, 172_800] }),
      chargePower: notNegative(1e5, 2e5),
      chargeTo: usual(0.8, 1, { refused: [null, 1] }),
      ambient: usual(275, 310, { refused: [200, 400] }),
      conductance: notNegative(100, 600),
      motorThermalTime: aboveZero(60, 240),
      cyclesToEndOfLife: aboveZero(500, 2000),
    },
    quiet: 0.5,
    inAThousand: 50,
  },
]

const air: readonly Box[] = [
  {
    name: 'limits.margins',
    call: ({ grossMass, density, ...o }: Numbers) =>
      limits.margins({
        ...{ grossMass: grossMass ?? 0, density: density ?? 0 },
        lift: {
          ...{ diskArea: o.diskArea ?? 0, figureOfMerit: o.figureOfMerit ?? 0, download: o.download ?? 0 },
          ...{ shaftPower: o.shaftPower ?? 0, thrustRatio: o.thrustRatio ?? 0, packPower: 4e5 },
          electricalEfficiency: o.electricalEfficiency ?? 0,
        },
        wing: { wingArea: o.wingArea ?? 0, maximumLift: o.maximumLift ?? 0, speed: o.speed ?? 0 },
        cruise: {
          polar: { zeroLiftDrag: 0.04, inducedFactor: 0.04 },
          ...{ wingArea: o.wingArea ?? 0, speed: o.speed ?? 0, climbSpeed: o.climbSpeed ?? 0 },
          ...{ propellerEfficiency: o.propellerEfficiency ?? 0, shaftPower: 1.5e5 },
        },
      }),
    sides: {
      grossMass: aboveZero(1000, 2500),
      density: aboveZero(1.1, 1.3, { advised: [1.1, null] }),
      diskArea: aboveZero(30, 60),
      figureOfMerit: share(0.6, 0.8),
      download: fromTo(0, 0.5),
      shaftPower: aboveZero(2e5, 5e5),
      thrustRatio: aboveZero(1, 1.5),
      electricalEfficiency: share(0.8, 0.95),
      wingArea: aboveZero(10, 25),
      maximumLift: aboveZero(1.2, 2.2),
      speed: aboveZero(45, 80),
      climbSpeed: notNegative(0, 5),
      propellerEfficiency: share(0.7, 0.9),
    },
  },
  {
    name: 'limits.hotAndHigh',
    call: ({ altitude, temperatureOffset, mass }: Numbers) =>
      limits.hotAndHigh({
        altitudes: [-500, altitude ?? 0],
        temperatureOffsets: [-40, temperatureOffset ?? 0],
        margins: (there) => ({ hover: (2000 * there.density) / (mass ?? 0) - 1 }),
      }),
    sides: {
      altitude: usual(500, 4000, { refused: [-500, 20_000] }),
      temperatureOffset: usual(-30, 40, { refused: [-40, null] }),
      mass: usual(1000, 3000),
    },
  },
  {
    name: 'limits.verticalClimbAfterLoss',
    call: ({ thrusts, ...rest }: Numbers) =>
      limits.verticalClimbAfterLoss({ ...rest, thrusts: [0, thrusts ?? 0, 2000] } as never),
    sides: {
      thrusts: notNegative(1500, 3000),
      diskArea: aboveZero(3, 7),
      density: aboveZero(0.8, 1.3),
      figureOfMerit: share(0.6, 0.8),
      unitPower: aboveZero(4e4, 9e4),
    },
  },
  {
    name: 'limits.routeReach',
    call: ({ along, power, speed, landingEnergy, ...rest }: Numbers) =>
      limits.routeReach({
        ...rest,
        sites: [
          { name: 'south', along: 0, runway: true },
          { name: 'north', along: along ?? 0 },
        ],
        rotorBorne: { power: power ?? 0, speed: speed ?? 0, landingEnergy: landingEnergy ?? 0 },
      } as never),
    sides: {
      length: aboveZero(2e4, 1e5),
      height: notNegative(200, 1000),
      keptHeight: notNegative(0, 150),
      liftToDrag: aboveZero(8, 16),
      energyLeft: notNegative(0, 2e8),
      points: usual(5, 60, { refused: [2, 2000] }),
      along: usual(2e4, 1e5),
      power: aboveZero(2e5, 4e5),
      speed: aboveZero(15, 35),
      landingEnergy: notNegative(1e6, 3e7),
    },
  },
]

const categories = [
  ...(['structure', 'fittings', 'battery', 'thermal control', 'mechanism'] as const),
  ...(['propulsion', 'wire harness', 'electronics', 'instrumentation'] as const),
]
const maturities = ['estimated', 'layout', 'pre-release', 'released', 'existing', 'actual'] as const
const subjects = [
  ...(['air', 'rotor', 'propeller', 'wing', 'drag', 'mass', 'battery', 'powertrain', 'mission'] as const),
  ...(['layout', 'authority', 'sizing'] as const),
]

const lists: readonly Box[] = [
  {
    name: 'limits.massAllowance',
    call: ({ category, maturity }: Numbers) =>
      limits.massAllowance({
        category: categories[category ?? 0] as (typeof categories)[number],
        maturity: maturities[maturity ?? 0] as (typeof maturities)[number],
      }),
    sides: {
      category: wholeFromTo(0, categories.length - 1),
      maturity: wholeFromTo(0, maturities.length - 1),
    },
  },
  {
    name: 'limits.massGrowth',
    call: ({ mass, allowance, low, high, growthFactor }: Numbers) =>
      limits.massGrowth({
        growthFactor: growthFactor ?? 0,
        items: [
          { name: 'wing', mass: mass ?? 0, allowance: allowance ?? 0, low: low ?? 0, high: high ?? 0 },
          { name: 'camera', mass: 4, category: 'instrumentation', maturity: 'actual' },
        ],
      }),
    sides: {
      mass: usual(150, 180),
      allowance: fromTo(0, 2, { box: [0, 0.5] }),
      low: usual(100, 150, { refused: [0, 165] }),
      high: usual(180, 250, { refused: [165, null] }),
      growthFactor: aboveZero(1, 4),
    },
  },
  {
    name: 'limits.hotelPower',
    call: ({ power, duty, heat, ...rest }: Numbers) =>
      limits.hotelPower({
        ...rest,
        items: [{ name: 'avionics', power: power ?? 0, duty: duty ?? 0 }],
        heat: [{ name: 'cells', heat: heat ?? 0 }],
      } as never),
    sides: {
      power: notNegative(100, 3000),
      duty: fromTo(0, 1),
      heat: notNegative(0, 2e4),
      coolingShare: fromTo(0, 1, { box: [0, 0.1] }),
      converterEfficiency: usual(0.85, 0.97, { refused: [0.01, 1] }),
    },
  },
  {
    name: 'limits.failureTable',
    call: ({ margin, peakShare }: Numbers) =>
      limits.failureTable({
        cases: [
          { failure: 'lift rotor', phase: 'hover', trim: { feasible: true, peakShare: peakShare ?? 0 } },
          { failure: 'cruise motor', phase: 'cruise', margin: margin ?? 0 },
        ],
      }),
    sides: { margin: usual(-1, 1), peakShare: usual(0.1, 0.3) },
  },
  {
    name: 'limits.whatSizesWhat',
    call: ({ size, other }: Numbers) =>
      limits.whatSizesWhat({
        limits: [
          { component: 'battery', limit: 'energy', size: size ?? 0 },
          { component: 'battery', limit: 'power', size: other ?? 0 },
        ],
      }),
    sides: { size: notNegative(100, 500), other: usual(100, 500) },
  },
  {
    name: 'limits.notModelled',
    call: ({ subject, also }: Numbers) =>
      limits.notModelled({
        subjects: [subjects[subject ?? 0] as (typeof subjects)[number]],
        also: [{ notModelled: 'icing', on: 'range', effect: 'flatters', likelySize: `${also ?? 0} %` }],
      }).length,
    sides: { subject: wholeFromTo(0, subjects.length - 1), also: usual(0, 50) },
  },
]

export const boxes: readonly Box[] = [...packs, ...air, ...lists]

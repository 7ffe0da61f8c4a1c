/** The boxes of missions and of closing a sizing. */
import { preloaded } from '../../../../kernel/library/index.js'
import { aboveZero, type Box, fromTo, notNegative, usual } from './engine.js'

const { battery, mission, sizing } = preloaded

type Numbers = Readonly<Record<string, number>>
const share = (low: number, high: number) => usual(low, high, { refused: [0, 1] })

/** An aircraft by the names of its numbers. */
const craftOf = (o: Numbers) => ({
  ...{ mass: o.mass ?? 1600, wingArea: o.wingArea ?? 15, maximumLift: o.maximumLift ?? 1.6 },
  polar: { zeroLiftDrag: o.zeroLiftDrag ?? 0.04, inducedFactor: o.inducedFactor ?? 0.04 },
  lift: {
    ...{ diskArea: o.diskArea ?? 42, figureOfMerit: o.figureOfMerit ?? 0.72, download: o.download ?? 0.05 },
    ...{ efficiency: o.efficiency ?? 0.9, count: 8, solidity: o.solidity ?? 0.1, powerLimit: 6e5 },
  },
  cruise: { propellerEfficiency: o.propellerEfficiency ?? 0.83, efficiency: 0.9 },
  hotelPower: o.hotelPower ?? 1000,
  ...{ stallMargin: o.stallMargin ?? 1.3, conversionMargin: o.conversionMargin ?? 1.2 },
  battery: {
    cell: battery.cells.power18650,
    ...{ series: 200, parallel: o.parallel ?? 60, rating: 'peak' as const, floor: o.floor ?? 0.1 },
  },
})
const multirotorOf = (o: Numbers) => {
  const { mass, lift, hotelPower, battery: pack } = craftOf(o)
  return { mass, dragArea: o.dragArea ?? 1.2, lift: { ...lift, tipSpeed: 165 }, hotelPower, battery: pack }
}
const craft = {
  mass: aboveZero(1300, 1900),
  wingArea: aboveZero(12, 20),
  maximumLift: usual(1.3, 2, { refused: [0.1, 10] }),
  diskArea: aboveZero(35, 55),
}
const day = {
  altitude: fromTo(-5000, 20_000, { box: [0, 2500], middle: 500 }),
  temperatureOffset: usual(-30, 30, { advised: [-50, 50] }),
}
const inDay = ({ altitude = 0, temperatureOffset = 0 }: Numbers) => ({ altitude, temperatureOffset })

const instants: readonly Box[] = [
  {
    name: 'mission.aircraft',
    call: (o: Numbers) => ({ ...mission.aircraft(craftOf(o)), battery: undefined }),
    sides: {
      ...craft,
      zeroLiftDrag: aboveZero(0.02, 0.08),
      inducedFactor: aboveZero(0.02, 0.06),
      figureOfMerit: share(0.6, 0.8),
      download: fromTo(0, 0.5),
      efficiency: share(0.8, 0.95),
      solidity: usual(0.06, 0.2, { refused: [1e-4, 1] }),
      propellerEfficiency: share(0.7, 0.9),
      hotelPower: notNegative(0, 3000),
      stallMargin: fromTo(1, 3),
      conversionMargin: fromTo(1, 3),
      parallel: aboveZero(40, 80),
      floor: usual(0.05, 0.2, { refused: [0, 0.99] }),
    },
  },
  {
    name: 'mission.corridor',
    call: ({ to, points, leastLift, ...o }: Numbers) =>
      mission.corridor({
        ...{ aircraft: craftOf(o), ...inDay(o), to: to ?? 0, points: points ?? 0, leastLift: leastLift ?? 0 },
      }),
    sides: {
      ...craft,
      ...day,
      // Cold air is denser and opens the corridor, so that one advisory goes as the other comes.
      temperatureOffset: usual(-30, 30),
      to: aboveZero(50, 80),
      points: usual(8, 40, { refused: [2, 2000], middle: 12 }),
      leastLift: usual(-0.2, 0.2, { refused: [-1.65, null] }),
    },
    quiet: 0,
    inAThousand: 100,
  },
  {
    name: 'mission.powerAgainstSpeed',
    call: ({ to, points, ...o }: Numbers) =>
      mission.powerAgainstSpeed({ aircraft: craftOf(o), ...inDay(o), to: to ?? 0, points: points ?? 0 }),
    sides: { ...craft, ...day, to: aboveZero(60, 90), points: usual(8, 60, { refused: [8, 2000], middle: 20 }) },
    quiet: 0,
    inAThousand: 100,
  },
  {
    name: 'mission.transition',
    call: ({ acceleration, stoppedRotors, ...o }: Numbers) =>
      mission.transition({
        ...{ aircraft: craftOf(o), ...inDay(o), acceleration: acceleration ?? 0, stoppedRotors: stoppedRotors ?? 0 },
      }),
    sides: {
      ...craft,
      ...day,
      acceleration: aboveZero(0.5, 2),
      // As many as there are would leave none to fly on.
      stoppedRotors: usual(0, 1, { refused: [0, null] }),
    },
    quiet: 0,
    inAThousand: 100,
  },
]

const flights: readonly Box[] = [
  {
    name: 'mission.segments',
    call: (o: Numbers) =>
      mission.segments([
        { kind: 'hover', time: o.time ?? 0 },
        { kind: 'vertical climb', height: o.height ?? 0, rate: o.rate ?? 0 },
        { kind: 'transition', acceleration: o.acceleration ?? 0 },
        { kind: 'cruise', distance: o.distance ?? 0, speed: o.speed ?? 0 },
      ]),
    sides: {
      time: notNegative(0, 120),
      height: notNegative(10, 100),
      rate: aboveZero(0.5, 4),
      acceleration: aboveZero(0.5, 2),
      distance: notNegative(1e4, 1e5),
      speed: aboveZero(45, 80),
    },
  },
  {
    name: 'mission.demand',
    call: ({ time, distance, ...o }: Numbers) =>
      mission.demand({
        ...{ aircraft: craftOf(o), ...inDay(o) },
        segments: [
          { kind: 'hover', time: time ?? 0 },
          { kind: 'transition' },
          { kind: 'cruise', distance: distance ?? 0 },
          { kind: 'return transition' },
          { kind: 'landing', time: 20 },
        ],
      }),
    sides: { ...craft, ...day, time: notNegative(10, 120), distance: notNegative(1e4, 1e5) },
    quiet: 0,
  },
  {
    name: 'mission.multirotor',
    call: (o: Numbers) => ({ ...mission.multirotor(multirotorOf(o)), battery: undefined }),
    sides: {
      mass: craft.mass,
      dragArea: notNegative(0.5, 2),
      diskArea: craft.diskArea,
      hotelPower: notNegative(0, 3000),
      efficiency: share(0.8, 0.95),
    },
  },
  {
    name: 'mission.demand of a multirotor',
    call: ({ distance, speed, ...o }: Numbers) =>
      mission.demand({
        ...{ aircraft: multirotorOf(o), ...inDay(o) },
        segments: [
          { kind: 'hover', time: 60 },
          { kind: 'cruise', distance: distance ?? 0, speed: speed ?? 0 },
          { kind: 'reserve', time: 600 },
        ],
      }),
    sides: {
      mass: craft.mass,
      dragArea: notNegative(0.5, 2),
      diskArea: craft.diskArea,
      ...day,
      distance: notNegative(5e3, 5e4),
      // An advance ratio of 0.3 at the tip speed of 165 m/s.
      speed: aboveZero(15, 45, { advised: [null, 49.5] }),
    },
  },
  {
    name: 'mission.fly',
    call: ({ time, distance, stateOfCharge, cellTemperature, ...o }: Numbers) =>
      mission.fly({
        ...{ aircraft: craftOf(o), ...inDay(o), steps: 'coarse' },
        ...{ stateOfCharge: stateOfCharge ?? 0, cellTemperature: cellTemperature ?? 0 },
        segments: [
          { kind: 'hover', time: time ?? 0 },
          { kind: 'transition' },
          { kind: 'climb', to: 3000, rate: 3 },
          { kind: 'cruise', distance: distance ?? 0 },
          { kind: 'return transition' },
          { kind: 'landing', time: 20 },
        ],
      }),
    sides: {
      ...craft,
      ...day,
      // Above 3000 m it is the climb that is refused, for going down.
      altitude: usual(0, 2500, { refused: [-5000, null], middle: 500 }),
      time: notNegative(10, 60),
      distance: notNegative(5e3, 3e4),
      stateOfCharge: usual(0.7, 1, { refused: [0, 1] }),
      cellTemperature: usual(280, 310, { refused: [200, 500] }),
    },
    quiet: 0,
  },
]

const build =
  ({ fixed = 0, slope = 0, bend = 0 }: Numbers) =>
  (grossMass: number) => ({ payload: fixed, structure: slope * grossMass, battery: bend * grossMass ** 1.5 })
/** Payload from 200 to 600 kg, four to seven tenths in proportion: closes everywhere. */
const closing = { fixed: usual(200, 600), slope: usual(0.4, 0.65), bend: usual(0, 5e-4) }

const closures: readonly Box[] = [
  {
    name: 'sizing.close',
    // To read the gross mass fails where there is none.
    call: (o: Numbers) => {
      const sized = sizing.close({ requiredMass: build(o), from: o.from ?? 0, tolerance: o.tolerance ?? 0 })
      return { ...sized, grossMass: sized.grossMass }
    },
    sides: { ...closing, from: aboveZero(100, 3000), tolerance: usual(1e-12, 1e-6, { refused: [1e-15, 0.1] }) },
  },
  {
    name: 'sizing.close beyond what closes',
    // Beyond what closes it answers that it does not, and why: the slope goes past 1.
    call: (o: Numbers) => sizing.close({ requiredMass: build(o), from: o.from ?? 0, tolerance: o.tolerance ?? 0 }),
    sides: {
      ...closing,
      slope: usual(0.4, 1.2),
      from: aboveZero(100, 3000),
      tolerance: usual(1e-12, 1e-6, { refused: [1e-15, 0.1] }),
    },
    quiet: 0.5,
  },
  {
    name: 'sizing.growthFactor',
    call: (o: Numbers) =>
      sizing.growthFactor({ requiredMass: build(o), grossMass: (o.fixed ?? 0) / (1 - (o.slope ?? 0)) }),
    sides: { fixed: usual(200, 600), slope: usual(0.2, 0.7) },
  },
  {
    name: 'sizing.sensitivity',
    call: ({ fixed = 0, slope = 0 }: Numbers) =>
      sizing.sensitivity({
        ...{ name: 'payload', value: fixed, grossMass: fixed / (1 - slope) },
        requiredMass: (grossMass, value) => value + slope * grossMass,
      }),
    sides: { fixed: usual(200, 600), slope: usual(0.2, 0.7) },
  },
  {
    name: 'sizing.fold',
    call: ({ value = 0, from = 0, slope = 0, bend = 0 }: Numbers) =>
      sizing.fold({
        ...{ name: 'payload', value, from },
        requiredMass: (grossMass, payload) => payload + slope * grossMass + bend * grossMass ** 2,
      }),
    sides: {
      value: usual(200, 600),
      from: aboveZero(500, 2000),
      slope: usual(0.3, 0.6),
      bend: usual(5e-5, 2e-4),
    },
    inAThousand: 100,
  },
  {
    name: 'sizing.payloadRange',
    call: ({ perMass = 0, energy = 0, ...rest }: Numbers) =>
      sizing.payloadRange({
        ...rest,
        evaluate: (payload: number, range: number) => (1 + perMass * payload) * range - energy,
      } as never),
    sides: {
      mostPayload: aboveZero(300, 600),
      leastPayload: usual(0, 100, { refused: [0, 450] }),
      mostRange: aboveZero(5e5, 2e6),
      points: usual(2, 40, { refused: [2, 200] }),
      perMass: usual(0, 2e-3),
      energy: usual(5e4, 2e5),
    },
  },
  {
    name: 'sizing.constraintDiagram',
    call: ({ speed, maximumLift, margin, climbSpeed, density, wingLoading, specificPower, ...o }: Numbers) =>
      sizing.constraintDiagram({
        polar: { zeroLiftDrag: o.zeroLiftDrag ?? 0, inducedFactor: o.inducedFactor ?? 0 },
        propellerEfficiency: o.propellerEfficiency ?? 0,
        constraints: [
          { kind: 'stall', density: density ?? 0, speed: 45, maximumLift: maximumLift ?? 0, margin: margin ?? 0 },
          { kind: 'cruise', density: density ?? 0, speed: speed ?? 0 },
          { kind: 'climb', density: density ?? 0, climbSpeed: climbSpeed ?? 0 },
        ],
        design: { wingLoading: wingLoading ?? 0, specificPower: specificPower ?? 0 },
      }),
    sides: {
      zeroLiftDrag: aboveZero(0.02, 0.08),
      inducedFactor: aboveZero(0.02, 0.06),
      propellerEfficiency: share(0.7, 0.9),
      density: aboveZero(0.8, 1.3),
      speed: aboveZero(45, 80),
      maximumLift: aboveZero(1.2, 2.2),
      margin: usual(1, 1.4),
      climbSpeed: aboveZero(1, 6),
      wingLoading: aboveZero(600, 1500),
      specificPower: aboveZero(30, 150),
    },
    quiet: 0,
  },
]

export const boxes: readonly Box[] = [...instants, ...flights, ...closures]

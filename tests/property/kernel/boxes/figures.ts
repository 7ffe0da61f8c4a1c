/** The boxes of figures, each of what another function answers, and of evidence. */
import { preloaded } from '../../../../kernel/library/index.js'
import { boxes as aircraft } from './aircraft.js'
import { aboveZero, type Box, notNegative, usual } from './engine.js'
import { boxes as layouts } from './layouts.js'
import { boxes as limiting } from './limiting.js'
import { boxes as losses } from './losses.js'
import { boxes as missions } from './missions.js'
import { boxes as parts } from './parts.js'

const { assumption, authority, battery, figure, layout, limits, mass, mission, requirement, result } = preloaded
const { rotor, table } = preloaded

type Numbers = Readonly<Record<string, number>>
const drawable = [...aircraft, ...layouts, ...limiting, ...losses, ...missions, ...parts]

/** Draws what the box of another function answers; inside that box, ends aside, a figure must come of nearly every answer. */
function drawn(name: string, from: string, draw: (answer: never) => unknown, inAThousand = 20): Box {
  const found = drawable.find((box) => box.name === from)
  if (found === undefined) throw new RangeError(`There is no box "${from}" for ${name} to draw.`)
  const sides = Object.fromEntries(
    Object.entries(found.sides).map(([path, { box, middle, whole = false }]) => [
      path,
      { box, ...(middle === undefined ? {} : { middle }), whole },
    ]),
  )
  return {
    ...{ name, sides, quiet: 0, inAThousand },
    ...(found.fixed === undefined ? {} : { fixed: found.fixed }),
    call: (options) => draw(found.call(options) as never),
  }
}

const ofNumbers: readonly Box[] = [
  {
    name: 'figure.bars',
    call: ({ one, other, start }: Numbers) =>
      figure.bars({ caption: 'c', names: ['a', 'b'], values: [one ?? 0, other ?? 0], start: [0, start ?? 0] }),
    sides: { one: usual(-1e5, 1e6), other: usual(0, 1e6), start: usual(0, 1e5) },
  },
  {
    name: 'figure.line',
    call: ({ x, y, from, to, at }: Numbers) =>
      figure.line({
        caption: 'c',
        x: { label: 'speed', values: [0, x ?? 0], unit: 'm/s', from: from ?? 0, to: to ?? 0 },
        y: { label: 'power', values: [y ?? 0, 1e4], unit: 'kW' },
        rules: [{ axis: 'y', at: at ?? 0 }],
      }),
    sides: { x: usual(1, 90), y: usual(-1e5, 1e6), from: usual(-10, 0), to: usual(90, 100), at: usual(0, 1e5) },
  },
  {
    name: 'figure.dragBreakdown',
    call: ({ dragAreas, other }: Numbers) =>
      figure.dragBreakdown({ dragAreas: { wing: dragAreas ?? 0, body: other ?? 0 } }),
    sides: { dragAreas: usual(0, 0.5), other: usual(0.01, 0.5) },
  },
  {
    name: 'figure.massBreakdown',
    call: ({ masses, other }: Numbers) => figure.massBreakdown({ masses: { wing: masses ?? 0, body: other ?? 0 } }),
    sides: { masses: notNegative(0, 500), other: usual(1, 500) },
  },
  {
    name: 'figure.dragPolar',
    call: ({ zeroLiftDrag, inducedFactor, upTo, lift, drag: at }: Numbers) =>
      figure.dragPolar({
        polar: { zeroLiftDrag: zeroLiftDrag ?? 0, inducedFactor: inducedFactor ?? 0 },
        points: { lift: [0, lift ?? 0], drag: [0.03, at ?? 0] },
        upTo: upTo ?? 0,
      }),
    sides: {
      zeroLiftDrag: aboveZero(0.02, 0.08),
      inducedFactor: aboveZero(0.02, 0.06),
      upTo: aboveZero(1, 2),
      lift: usual(-0.5, 2),
      drag: usual(0.02, 0.2),
    },
  },
  {
    name: 'figure.rotorPolar',
    call: ({ chord, collective }: Numbers) => {
      const turned = { radius: 1.3, chord: chord ?? 0, blades: 3, tipSpeed: 160, elements: 8 }
      const held = { density: 1.225, dynamicViscosity: 1.8e-5, speedOfSound: 340 }
      const loads = [0, 0.05].map((more) =>
        rotor.bladeElement({
          ...{ ...turned, ...held, collective: (collective ?? 0) + more },
          section: { liftSlope: 5.9, minimumDrag: 0.01 },
        }),
      )
      return figure.rotorPolar({ rotors: [{ label: 'three blades', loads }] })
    },
    sides: { chord: usual(0.08, 0.2), collective: usual(0.05, 0.2) },
    inAThousand: 100,
    quiet: 0,
  },
  {
    name: 'figure.massSpread',
    call: ({ grossMass }: Numbers) =>
      figure.massSpread({ spreads: { gear: mass.spread('gear', { grossMass: grossMass ?? 0 }) } }),
    sides: { grossMass: usual(400, 5000) },
  },
  {
    name: 'figure.lossPlan',
    call: ({ arm, radius, weight }: Numbers) => {
      const rotors = [1, -1].flatMap((x) =>
        [1, -1].map((y) => ({
          ...{ x: x * (arm ?? 0), y: y * (arm ?? 0), spin: x * y, radius: radius ?? 0 },
          ...{ maxThrust: 9000, torqueRatio: 0.1 },
        })),
      )
      return figure.lossPlan({ rotors, trim: authority.trim({ rotors, weight: weight ?? 0 }) })
    },
    sides: { arm: usual(1, 4), radius: aboveZero(0.5, 1), weight: usual(5e3, 3e4) },
    inAThousand: 100,
  },
]

const planOf = (rotorRadius: number) =>
  layout.liftPlusCruise({
    ...{ rotorRadius, wing: { area: 15, aspectRatio: 11 }, body: { length: 6.6, width: 1.5, height: 1.5 } },
    ...{ tail: { area: 3.2, arm: 6.4 }, propellers: [{ radius: 0.95 }] },
  })
const cell = battery.cells.power18650
const craft = {
  ...{ mass: 1600, wingArea: 15, maximumLift: 1.6, polar: { zeroLiftDrag: 0.04, inducedFactor: 0.04 } },
  lift: { diskArea: 42, figureOfMerit: 0.72, efficiency: 0.9 },
  cruise: { propellerEfficiency: 0.83, efficiency: 0.9 },
  battery: { cell, series: 200, parallel: 60, rating: 'peak' as const },
}

const ofLayouts: readonly Box[] = [
  {
    name: 'figure.planView',
    call: ({ rotorRadius, x, y }: Numbers) =>
      figure.planView({ layout: planOf(rotorRadius ?? 0), centreOfGravity: { x: x ?? 0, y: y ?? 0 }, lost: [0] }),
    sides: { rotorRadius: usual(0.7, 1.5), x: usual(-1, 1), y: usual(-0.5, 0.5) },
    inAThousand: 50,
  },
  {
    name: 'figure.frontView',
    call: ({ rotorRadius, z }: Numbers) =>
      figure.frontView({ layout: planOf(rotorRadius ?? 0), centreOfGravity: { x: 0, y: 0, z: z ?? 0 } }),
    sides: { rotorRadius: usual(0.7, 1.5), z: usual(-1, 1) },
    inAThousand: 50,
  },
  {
    name: 'figure.loadingEnvelope',
    call: ({ mass: one, x, greatestMass }: Numbers) =>
      figure.loadingEnvelope({
        loading: layout.loading({
          fixed: [{ name: 'empty', mass: 1300, x: 0, y: 0 }],
          loads: [{ name: 'seat', mass: one ?? 0, x: x ?? 0, y: 0 }],
        }),
        limits: [{ label: 'hover trim', forward: 0.3, aft: -0.3 }],
        greatestMass: greatestMass ?? 0,
      }),
    sides: { mass: usual(0, 150), x: usual(-2, 2), greatestMass: aboveZero(1400, 1800) },
  },
]

const ofAnswers: readonly Box[] = [
  drawn('figure.authorityMap', 'authority.attainable', (map) => figure.authorityMap({ maps: [map] })),
  drawn('figure.peakPerLoss', 'authority.losses', (found) => figure.peakPerLoss({ losses: found })),
  drawn('figure.countTrade', 'authority.countTrade', (rows) => figure.countTrade({ rows })),
  drawn('figure.spinUp', 'layout.spinUp', (spinUp) => figure.spinUp({ spinUp })),
  drawn('figure.constraintDiagram', 'sizing.constraintDiagram', (diagram) => figure.constraintDiagram({ diagram })),
  drawn('figure.diskLoadingWindow', 'sizing.diskLoadingWindow', (window) => figure.diskLoadingWindow({ window })),
  drawn('figure.payloadRange', 'sizing.payloadRange', (reach) => figure.payloadRange({ aircraft: { a: reach } })),
  drawn('figure.whatSizesWhat', 'limits.whatSizesWhat', (rows) => figure.whatSizesWhat({ rows }), 100),
  drawn('figure.routeReach', 'limits.routeReach', (route) => figure.routeReach({ route }), 100),
  drawn('figure.day', 'limits.day', (day) => figure.day({ day })),
  drawn('figure.conversionCorridor', 'mission.corridor', (corridor) => figure.conversionCorridor({ corridor })),
  drawn('figure.powerAgainstSpeed', 'mission.powerAgainstSpeed', (curve) => figure.powerAgainstSpeed({ curve })),
  drawn('figure.efficiencyMap', 'propeller.efficiencyMap', (map) => figure.efficiencyMap({ map })),
  drawn('figure.ragone', 'battery.ragone', (curve) => figure.ragone({ curves: { a: curve } })),
  drawn(
    'figure.stowageComparison',
    'drag.compareStowage',
    (comparison) => figure.stowageComparison({ comparison }),
    100,
  ),
  {
    name: 'figure.massAgainstLoss',
    call: ({ unitFailure, weight }: Numbers) =>
      figure.massAgainstLoss({
        rows: authority.countTrade({
          ...{ counts: [4, 6], arrangements: ['ring'], footprint: { length: 11, width: 11 } },
          ...{ weight: weight ?? 0, density: 1.1, figureOfMerit: 0.7, tipSpeed: 150, unitFailure: unitFailure ?? 0 },
        }),
      }),
    sides: { unitFailure: usual(1e-7, 1e-3), weight: usual(1e4, 2e4) },
    inAThousand: 20,
    quiet: 0,
  },
  {
    name: 'figure.discharge',
    call: ({ power, minimumVoltage }: Numbers) =>
      figure.discharge({
        runs: { a: battery.run({ cell, series: 1, parallel: 1, profile: [{ power: power ?? 0, duration: 300 }] }) },
        minimumVoltage: minimumVoltage ?? 0,
      }),
    sides: { power: usual(5, 40), minimumVoltage: usual(2, 3) },
    quiet: 0,
    inAThousand: 100,
  },
  {
    name: 'figure.packPower',
    call: ({ temperature, stateOfCharge, specificPower }: Numbers) =>
      figure.packPower({
        curves: { a: battery.availablePower({ cell, temperature: temperature ?? 0, points: 8 }) },
        needed: [{ name: 'landing', stateOfCharge: stateOfCharge ?? 0, specificPower: specificPower ?? 0 }],
      }),
    sides: { temperature: usual(275, 330), stateOfCharge: usual(0.1, 1), specificPower: usual(100, 1000) },
    inAThousand: 100,
  },
  {
    name: 'figure.hotAndHigh',
    call: ({ altitude, shaftPower }: Numbers) =>
      figure.hotAndHigh({
        grid: limits.hotAndHigh({
          ...{ altitudes: [0, altitude ?? 0], temperatureOffsets: [-20, 0, 20] },
          margins: ({ density }) =>
            limits.margins({
              ...{ grossMass: 1637, density },
              lift: { diskArea: 42.5, figureOfMerit: 0.72, shaftPower: shaftPower ?? 0 },
            }),
        }),
      }),
    sides: { altitude: usual(500, 4000), shaftPower: usual(2e5, 5e5) },
    inAThousand: 100,
  },
  {
    name: 'figure.missionProfile',
    call: ({ time, distance }: Numbers) =>
      figure.missionProfile({
        flown: mission.fly({
          aircraft: craft,
          segments: [
            { kind: 'hover', time: time ?? 0 },
            { kind: 'transition' },
            { kind: 'cruise', distance: distance ?? 0 },
          ],
        }),
        show: 'power',
      }),
    sides: { time: usual(10, 60), distance: usual(5e3, 3e4) },
    quiet: 0,
    inAThousand: 20,
  },
]

const evidence: readonly Box[] = [
  {
    name: 'assumption',
    call: ({ value, low, high }: Numbers) => assumption('a', value ?? 0, { range: [low ?? 0, high ?? 0] }),
    sides: { value: usual(150, 250, { advised: [100, 300] }), low: usual(80, 120), high: usual(280, 320) },
  },
  {
    name: 'requirement',
    call: ({ actual, low, high }: Numbers) => requirement('a', { actual: actual ?? 0, within: [low ?? 0, high ?? 0] }),
    sides: { actual: usual(-1e3, 1e3), low: usual(-10, 0), high: usual(1, 10) },
  },
  {
    name: 'result',
    call: ({ value }: Numbers) => result('a', value ?? 0, { unit: 'kg' }),
    sides: { value: usual(-1e6, 1e6) },
  },
  {
    name: 'table',
    call: ({ mass: one }: Numbers) => table('a', [{ part: 'wing', mass: one ?? 0 }], { units: { mass: 'kg' } }),
    sides: { mass: usual(0, 500) },
  },
]

export const boxes: readonly Box[] = [...ofNumbers, ...ofLayouts, ...ofAnswers, ...evidence]

/** The boxes of what takes lists and records: section tables, propellers at a thrust, drag by parts, cells and their curves. */
import { preloaded } from '../../../../kernel/library/index.js'
import { aboveZero, type Box, fromTo, notNegative, usual, wholeFromTo } from './engine.js'

const { air, battery, drag, powertrain, propeller, rotor, section, wing } = preloaded

const twist: readonly (readonly [number, number])[] = [
  [0.2, 1.08],
  [0.5, 0.63],
  [0.75, 0.47],
  [1, 0.37],
]
const blade = {
  ...air.standard(0),
  ...{ chord: 0.12, blades: 3, twist, elements: 10 },
  section: { liftSlope: 5.9, minimumDrag: 0.009 },
}
const cell = battery.cells.power18650
const motor = powertrain.motor({ continuousTorque: 250, ratedSpeed: 125, efficiency: 0.94 })
const still = { speed: aboveZero(30, 80), density: aboveZero(0.7, 1.3), dynamicViscosity: aboveZero(1.5e-5, 2e-5) }

const bladed: readonly Box[] = [
  {
    name: 'section.table',
    call: ({ angle, lift, drag: least, mach, aspectRatio }: Record<string, number>) =>
      section.table({
        polars: [
          {
            angle: [-(angle ?? 0), 0, angle ?? 0],
            lift: [-(lift ?? 0), 0.1, lift ?? 0],
            drag: [0.03, least ?? 0, 0.03],
          },
        ],
        ...{ mach: mach ?? 0, aspectRatio: aspectRatio ?? 0 },
      }),
    sides: {
      angle: usual(0.15, 0.3, { refused: [0.02, 1.4] }),
      lift: usual(0.5, 1.6),
      drag: aboveZero(0.006, 0.02),
      mach: usual(0, 0.5, { refused: [0, 0.8] }),
      aspectRatio: aboveZero(5, 20),
    },
  },
  {
    name: 'rotor.overlap',
    call: ({ radius, spacing }: { radius: number; spacing: number }) =>
      rotor.overlap({
        radius,
        positions: [
          [0, 0],
          [spacing, 0],
        ],
      }),
    sides: { radius: aboveZero(0.7, 1.3), spacing: usual(1.4, 4) },
  },
  {
    name: 'propeller.bladeAngleForThrust',
    call: propeller.bladeAngleForThrust,
    sides: {
      radius: aboveZero(0.85, 1.1),
      tipSpeed: aboveZero(170, 210),
      speed: notNegative(40, 65),
      thrust: aboveZero(500, 1300),
    },
    fixed: blade,
    inAThousand: 100,
  },
  {
    name: 'propeller.tipSpeedForThrust',
    call: propeller.tipSpeedForThrust,
    sides: {
      radius: aboveZero(0.85, 1.1),
      speed: notNegative(40, 65),
      thrust: aboveZero(500, 1300),
    },
    fixed: blade,
    inAThousand: 100,
  },
  {
    name: 'propeller.efficiencyMap',
    call: ({ advanceRatio, bladeAngle, radius, tipSpeed }: Record<string, number>) =>
      propeller.efficiencyMap({
        ...blade,
        ...{ radius: radius ?? 0, tipSpeed: tipSpeed ?? 0 },
        advanceRatios: [0.4, advanceRatio ?? 0],
        bladeAngles: [0.3, bladeAngle ?? 0],
      }),
    sides: {
      radius: aboveZero(0.85, 1.1),
      tipSpeed: aboveZero(170, 210),
      advanceRatio: usual(0.5, 1.3, { refused: [0.4, null] }),
      bladeAngle: usual(0.35, 0.7, { refused: [0.3, Math.PI / 2] }),
    },
    quiet: 0,
    inAThousand: 100,
  },
  {
    name: 'wing.thinAerofoil',
    call: ({ camber, place }: { camber: number; place: number }) =>
      wing.thinAerofoil({ section: `${camber}${place}12` }),
    sides: { camber: usual(1, 6, { whole: true }), place: usual(2, 6, { whole: true }) },
  },
]

const places = [
  ...([
    'body',
    'wing, high or mid',
    'wing, low and filleted',
    'wing, low without fillet',
    'tail, conventional',
  ] as const),
  ...(['tail, V', 'tail, H', 'pod on wing or body', 'pod within one diameter', 'pod beyond one diameter'] as const),
]
const record = (name: string, dragArea: number, mechanismMass: number) =>
  drag.stowageRecord({ name, dragArea, mechanismMass, source: 'drawn' })

const dragged: readonly Box[] = [
  {
    name: 'drag.interference',
    call: ({ place }: { place: number }) => drag.interference({ place: places[place] as (typeof places)[number] }),
    sides: { place: wholeFromTo(0, places.length - 1) },
  },
  {
    name: 'drag.fixedGear',
    call: ({ frontalArea, count, interference }: Record<string, number>) =>
      drag.fixedGear({
        parts: [
          { kind: 'wheel and tyre', frontalArea: frontalArea ?? 0, count: count ?? 0 },
          { kind: 'flat spring leg', frontalArea: 0.03, count: 2 },
        ],
        interference: interference ?? 0,
      }),
    sides: {
      frontalArea: aboveZero(0.02, 0.08),
      count: usual(1, 4, { whole: true, refused: [1, null] }),
      interference: fromTo(1, 2.5),
    },
  },
  {
    name: 'drag.buildUp',
    call: ({ wettedArea, length, formFactor, interference, dragArea, ...conditions }: Record<string, number>) =>
      drag.buildUp(
        [
          {
            ...{ name: 'wing', wettedArea: wettedArea ?? 0, length: length ?? 0 },
            ...{ formFactor: formFactor ?? 0, interference: interference ?? 0 },
          },
          { name: 'gear', dragArea: dragArea ?? 0 },
        ],
        conditions as never,
      ),
    sides: {
      ...still,
      wettedArea: aboveZero(5, 40),
      length: aboveZero(0.8, 8),
      formFactor: usual(1, 2, { refused: [0.5, 10] }),
      interference: usual(1, 1.5, { refused: [0.5, 5] }),
      dragArea: notNegative(0, 0.3),
      wingArea: aboveZero(8, 30),
      leakageShare: notNegative(0, 0.2),
    },
  },
  {
    name: 'drag.fitPolar',
    call: ({ zeroLiftDrag, inducedFactor, away }: Record<string, number>) => {
      const lift = [0, 0.4, 0.8, 1.2]
      const coefficients = lift.map((one) => (zeroLiftDrag ?? 0) + (inducedFactor ?? 0) * one * one)
      coefficients[2] = (coefficients[2] ?? 0) + (away ?? 0)
      return drag.fitPolar({ lift, drag: coefficients })
    },
    // A fit of no drag at all is refused: the sides are of the polar behind the points.
    sides: {
      zeroLiftDrag: usual(0.02, 0.08),
      inducedFactor: usual(0.02, 0.06),
      away: usual(-5e-4, 5e-4),
    },
  },
  {
    name: 'drag.stowageRecord',
    call: drag.stowageRecord,
    sides: {
      dragArea: notNegative(0.01, 0.5),
      mechanismMass: notNegative(0, 80),
      complexity: fromTo(0, 20),
    },
    fixed: { name: 'own', source: 'drawn' },
  },
  {
    name: 'drag.stowageOptions',
    call: drag.stowageOptions,
    sides: {
      ...still,
      count: usual(4, 12, { whole: true, refused: [1, null] }),
      blades: usual(2, 4, { whole: true, refused: [1, 12] }),
      radius: usual(0.8, 2, { refused: [0.125, null] }),
      chord: aboveZero(0.1, 0.15),
      hubDiameter: aboveZero(0.1, 0.2),
      hubHeight: aboveZero(0.05, 0.15),
      rotorMass: aboveZero(8, 25),
      ductHeight: aboveZero(0.2, 0.6),
    },
    // Always says that its records are untested.
    quiet: 0,
  },
  {
    name: 'drag.compareStowage',
    call: ({ dragArea, mechanismMass, ...rest }: Record<string, number>) =>
      drag.compareStowage({
        records: [record('bare', 0.3, 0), record('hidden', dragArea ?? 0, mechanismMass ?? 0)],
        ...rest,
      } as never),
    sides: {
      dragArea: usual(0.01, 0.3),
      mechanismMass: usual(0, 80),
      // Growth of mass ends at twenty times: twice the high end of 40 kg and 40 % over it.
      mass: usual(1000, 3000, { refused: [(2 * 40 * 1.4) / 20, null] }),
      airframeDragArea: aboveZero(0.2, 0.8),
      wingArea: aboveZero(10, 25),
      aspectRatio: aboveZero(6, 16),
      spanEfficiency: usual(0.6, 0.95, { refused: [0, 1] }),
      density: aboveZero(0.8, 1.3),
      speed: aboveZero(45, 80),
      growthFactor: usual(1, 3, { refused: [0.1, 100] }),
    },
    quiet: 0,
  },
]

const stored: readonly Box[] = [
  {
    name: 'battery.cell',
    call: ({ openCircuitVoltage, ...rest }: Record<string, number>) =>
      battery.cell({ ...rest, openCircuitVoltage: [openCircuitVoltage ?? 0, 4.2] } as never),
    sides: {
      capacity: aboveZero(5e3, 3e4),
      mass: aboveZero(0.03, 0.1),
      openCircuitVoltage: aboveZero(2.6, 3.6, { refused: [0, 4.2] }),
      resistance: aboveZero(0.005, 0.05),
      minimumVoltage: usual(2, 3, { refused: [0, 4.2] }),
      activationTemperature: notNegative(0, 4000),
      specificHeat: aboveZero(800, 1100),
    },
  },
  {
    name: 'battery.availablePower',
    call: battery.availablePower,
    sides: {
      cellShare: usual(0.6, 1, { refused: [0, 1] }),
      temperature: usual(275, 330, { refused: [200, 500] }),
      points: usual(2, 40, { refused: [2, 500] }),
    },
    fixed: { cell },
    inAThousand: 100,
  },
  {
    name: 'battery.ragone',
    call: battery.ragone,
    sides: {
      cellShare: usual(0.6, 1, { refused: [0, 1] }),
      temperature: usual(275, 330, { refused: [200, 500] }),
      from: usual(0.8, 1, { refused: [null, 1] }),
      floor: usual(0, 0.3, { refused: [0, null] }),
    },
    fixed: { cell, points: 6 },
    inAThousand: 100,
  },
  {
    name: 'powertrain.efficiencyMap',
    call: ({ torque, speed }: { torque: number; speed: number }) =>
      powertrain.efficiencyMap({ motor, torque: [torque, 400], speed: [60, speed] }),
    sides: { torque: notNegative(10, 390), speed: notNegative(70, 150) },
  },
]

export const boxes: readonly Box[] = [...bladed, ...dragged, ...stored]

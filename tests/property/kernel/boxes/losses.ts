/** The boxes of lost rotors and of their chances. */
import type { LiftRotor } from '../../../../kernel/library/authority/index.js'
import { preloaded } from '../../../../kernel/library/index.js'
import { aboveZero, type Box, notNegative, usual, wholeFromTo } from './engine.js'

const { authority, reliability } = preloaded

type Numbers = Readonly<Record<string, number>>

/** Eight rotors on a ring, turning in turn: every first loss can be trimmed. */
const ring = (o: Numbers, count = 8): LiftRotor[] =>
  Array.from({ length: count }, (_, at) => ({
    x: 3 * Math.cos((2 * Math.PI * at) / count),
    y: 3 * Math.sin((2 * Math.PI * at) / count),
    spin: at % 2 === 0 ? 1 : -1,
    maxThrust: o.maxThrust ?? 6000,
    torqueRatio: o.torqueRatio ?? 0.1,
    cant: o.cant ?? 0,
    radius: o.radius ?? 1,
  }))
const hoverOf = (o: Numbers, count = 8) => ({ rotors: ring(o, count), weight: o.weight ?? 0 })
const inertiaOf = ({ roll = 4000, pitch = 4000, yaw = 7000 }: Numbers) => ({ roll, pitch, yaw })

const weight = usual(1e4, 2e4, { refused: [1e-3, 1e9] })
const rotor = {
  maxThrust: usual(5000, 8000, { refused: [0, 1e9] }),
  torqueRatio: usual(0.05, 0.15, { refused: [0, 1e4] }),
  cant: usual(-0.1, 0.1, { refused: [-1.2, 1.2] }),
}
const inertia = usual(2000, 8000, { refused: [1e-9, 1e12] })

const trims: readonly Box[] = [
  {
    name: 'authority.effectiveness',
    call: (o: Numbers) => authority.effectiveness({ rotors: ring(o), centreOfGravity: { x: o.x ?? 0, y: 0.1 } }),
    sides: { ...rotor, x: usual(-0.5, 0.5, { refused: [-1e4, 1e4] }) },
  },
  {
    name: 'authority.losses',
    call: (o: Numbers) =>
      authority.losses({ ...hoverOf(o), density: o.density ?? 0, figureOfMerit: o.figureOfMerit ?? 0 }),
    sides: {
      ...rotor,
      weight,
      radius: aboveZero(0.8, 1.5),
      density: aboveZero(0.9, 1.3),
      figureOfMerit: usual(0.6, 0.8, { refused: [0, 1] }),
    },
    inAThousand: 100,
  },
  {
    name: 'authority.margin',
    call: (o: Numbers) =>
      authority.margin({
        ...hoverOf(o),
        inertia: inertiaOf(o),
        required: { yaw: o.required ?? 0 },
        disturbances: [{ roll: o.disturbance ?? 0 }],
      }),
    sides: {
      weight,
      roll: inertia,
      pitch: inertia,
      yaw: inertia,
      required: usual(0, 0.2, { refused: [0, 1e6] }),
      disturbance: usual(-500, 500, { refused: [-1e12, 1e12] }),
    },
    quiet: 0,
    inAThousand: 50,
  },
  {
    name: 'authority.rating',
    call: (o: Numbers) =>
      authority.rating({
        ...hoverOf(o),
        inertia: inertiaOf(o),
        acceleration: { roll: o.acceleration ?? 0 },
        usableShare: o.usableShare ?? 0,
      }),
    sides: {
      weight,
      roll: inertia,
      acceleration: usual(0, 0.2, { refused: [0, 1e6] }),
      usableShare: usual(0.7, 1, { refused: [0.01, 1] }),
    },
    inAThousand: 50,
  },
  {
    name: 'authority.attainable',
    call: (o: Numbers) => authority.attainable({ ...hoverOf(o), directions: o.directions ?? 0 }),
    sides: { weight, directions: usual(8, 72, { whole: true, refused: [8, 720], middle: 24 }) },
    inAThousand: 50,
  },
  {
    name: 'authority.electricalLosses',
    call: (o: Numbers) =>
      authority.electricalLosses({
        ...hoverOf(o),
        feeds: [0, 1, 2, 3, 0, 1, 2, 3].map((bus) => [0, 1, 2, 3].map((at) => (at === bus ? (o.feeds ?? 0) : 0))),
      }),
    // A rotor that nothing feeds is refused, so that 0 is no end of its own.
    sides: { weight: usual(1e4, 1.4e4, { refused: [1e-3, 1e9] }), feeds: usual(0.5, 1, { refused: [null, 1] }) },
    inAThousand: 50,
  },
  {
    name: 'authority.pairing',
    call: (o: Numbers) => authority.pairing({ ...hoverOf(o, 6), rotorsPerBus: 2 }),
    sides: { weight: usual(5e3, 1e4, { refused: [1e-3, 1e9] }), maxThrust: rotor.maxThrust },
    inAThousand: 50,
  },
  {
    name: 'authority.search',
    call: (o: Numbers) =>
      authority.search({
        ...hoverOf(o, 6),
        patterns: [[1, -1, 1, -1, 1, -1]],
        stretches: [{ x: o.x ?? 0, y: 1 }],
        outwardCants: [0, o.outwardCants ?? 0],
      }),
    sides: {
      weight,
      x: aboveZero(0.7, 1.4),
      outwardCants: usual(-0.2, 0.2, { refused: [-1.2, 1.2] }),
    },
    inAThousand: 50,
  },
]

const responses: readonly Box[] = [
  {
    name: 'authority.rotorResponse',
    call: authority.rotorResponse,
    sides: {
      thrust: aboveZero(1000, 2000),
      thrustAfter: aboveZero(2000, 2500),
      radius: aboveZero(0.9, 1.3),
      tipSpeed: aboveZero(130, 150),
      solidity: aboveZero(0.1, 0.2),
      density: aboveZero(1, 1.3),
      speedOfSound: aboveZero(320, 345),
      torque: aboveZero(100, 300),
      rotorInertia: aboveZero(0.5, 2),
    },
    fixed: { control: 'speed' },
    quiet: 0.5,
  },
  {
    name: 'authority.countTrade',
    call: ({ length, width, ...rest }: Numbers) =>
      authority.countTrade({
        counts: [4],
        arrangements: ['ring'],
        footprint: { length: length ?? 0, width: width ?? 0 },
        ...rest,
      } as never),
    sides: {
      length: usual(9, 13, { refused: [0.01, 1000] }),
      width: usual(9, 13, { refused: [0.01, 1000] }),
      weight: usual(1e4, 2e4, { refused: [0.01, 1e8] }),
      density: usual(0.9, 1.3, { refused: [0.01, 100] }),
      figureOfMerit: usual(0.6, 0.8, { refused: [0.01, 1] }),
      tipSpeed: usual(120, 180, { refused: [1, 400] }),
      gap: usual(0, 0.2, { refused: [0, 2] }),
      usableShare: usual(0.7, 1, { refused: [0.1, 1] }),
      partsPerUnit: usual(2, 8, { refused: [0, 1e6] }),
    },
    quiet: 0,
    inAThousand: 20,
  },
]

const chances: readonly Box[] = [
  {
    name: 'reliability.chain',
    call: ({ rate, repair, time }: Numbers) =>
      reliability.chain({
        generator: [
          [-(rate ?? 0), repair ?? 0],
          [rate ?? 0, -(repair ?? 0)],
        ],
        time: time ?? 0,
      }),
    sides: { rate: usual(1e-8, 1e-4), repair: usual(0, 1e-3), time: notNegative(0, 1e5) },
  },
  {
    name: 'reliability.lossChain',
    call: ({ of, rate, time, upTo }: Numbers) =>
      reliability.lossChain({
        ...{ of: of ?? 0, rate: rate ?? 0, time: time ?? 0, upTo: upTo ?? 0 },
        survives: (lost) => lost.length <= 1,
      }),
    sides: {
      of: wholeFromTo(2, 24, { box: [4, 8], middle: 6 }),
      rate: usual(1e-9, 1e-6, { refused: [0, 1e6] }),
      time: notNegative(0, 1e5),
      upTo: usual(1, 4, { whole: true, refused: [1, null], middle: 2 }),
    },
    inAThousand: 100,
  },
]

export const boxes: readonly Box[] = [...trims, ...responses, ...chances]

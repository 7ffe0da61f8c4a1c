/** Calls on lost rotors and on reliability with any numbers. */
import type { LiftRotor } from '../../../../kernel/library/authority/index.js'
import { preloaded } from '../../../../kernel/library/index.js'
import { type AnyCall, type V, v } from '../any-input.js'

const { authority, figure, reliability } = preloaded

const rotorsOf = (x: V, count = 4): LiftRotor[] =>
  Array.from({ length: count }, (_, at) => ({
    x: v(x, at) * (at % 2 === 0 ? 1 : -1),
    y: v(x, at + 1) * (at % 4 < 2 ? 1 : -1),
    spin: at % 3 === 0 ? 1 : -1,
    maxThrust: 100 * v(x, at + 2),
    torqueRatio: v(x, at + 3) / 10,
    cant: v(x, at + 1) / 30,
  }))
const hoverOf = (x: V) => ({ rotors: rotorsOf(x), weight: 100 * v(x, 7) })
const inertiaOf = (x: V) => ({ roll: v(x, 8), pitch: v(x, 9), yaw: v(x, 10) })
const square = [1, -1].flatMap((x) => [1, -1].map((y) => ({ x, y, spin: x * y, maxThrust: 500, torqueRatio: 0.1 })))
const sound = { rotors: square, weight: 1000 }

export const calls: readonly AnyCall[] = [
  [
    'authority.effectiveness',
    10,
    (x) => authority.effectiveness({ rotors: rotorsOf(x), centreOfGravity: { x: v(x, 8), y: v(x, 9) } }),
  ],
  [
    'authority.trim',
    12,
    (x) => authority.trim({ ...hoverOf(x), lost: [1], disturbance: { yaw: v(x, 8), roll: v(x, 9) } }),
  ],
  [
    'authority.trim of a sound plan',
    4,
    (x) =>
      authority.trim({
        ...sound,
        weight: v(x, 0),
        centreOfGravity: { x: v(x, 1), y: v(x, 2) },
        disturbance: { pitch: v(x, 3) },
      }),
  ],
  [
    'authority.losses',
    11,
    (x) =>
      authority.losses({
        ...hoverOf(x),
        rotors: rotorsOf(x).map((one) => ({ ...one, radius: v(x, 8) })),
        density: v(x, 9),
        figureOfMerit: v(x, 10),
      }),
  ],
  [
    'authority.margin',
    14,
    (x) =>
      authority.margin({
        ...hoverOf(x),
        inertia: inertiaOf(x),
        required: { yaw: v(x, 11) },
        disturbances: [{ roll: v(x, 12) }],
        simultaneous: 0,
      }),
  ],
  [
    'authority.rating',
    13,
    (x) =>
      authority.rating({
        ...hoverOf(x),
        inertia: inertiaOf(x),
        acceleration: { roll: v(x, 11) },
        usableShare: v(x, 12) / 3,
      }),
  ],
  ['authority.attainable', 10, (x) => authority.attainable({ ...hoverOf(x), directions: 5 * v(x, 8) })],
  [
    'authority.electricalLosses',
    10,
    (x) =>
      authority.electricalLosses({
        ...hoverOf(x),
        feeds: [
          [1, 0],
          [v(x, 8) / 3, 1],
          [0, 1],
          [1, v(x, 9) / 3],
        ],
      }),
  ],
  ['authority.pairing', 9, (x) => authority.pairing({ ...hoverOf(x), rotorsPerBus: v(x, 8) })],
  ['authority.pairing of a sound plan', 1, (x) => authority.pairing({ ...sound, weight: 1000 * v(x, 0) })],
  [
    'authority.search',
    10,
    (x) =>
      authority.search({
        ...hoverOf(x),
        stretches: [{ x: v(x, 8), y: 1 }],
        outwardCants: [v(x, 9) / 10],
        patterns: [[1, -1, 1, -1]],
      }),
  ],
  [
    'authority.windMoments',
    6,
    (x) =>
      authority.windMoments({
        speed: v(x, 0),
        density: v(x, 1),
        frontDragArea: v(x, 2),
        sideDragArea: v(x, 3),
        sideCentre: { x: v(x, 4) },
        directions: 3 * v(x, 5),
      }),
  ],
  [
    'authority.rotorResponse',
    9,
    (x) =>
      authority.rotorResponse({
        control: 'speed',
        thrust: v(x, 0),
        thrustAfter: v(x, 1),
        radius: v(x, 2),
        tipSpeed: 100 * v(x, 3),
        solidity: v(x, 4),
        density: v(x, 5),
        speedOfSound: 300 * v(x, 6),
        torque: v(x, 7),
        rotorInertia: v(x, 8),
      }),
  ],
  [
    'authority.countTrade',
    7,
    (x) =>
      authority.countTrade({
        counts: [4],
        arrangements: ['ring'],
        footprint: { length: 5 * v(x, 0), width: 5 * v(x, 1) },
        weight: 1e4 * v(x, 2),
        density: v(x, 3),
        figureOfMerit: v(x, 4) / 3,
        tipSpeed: 100 * v(x, 5),
        unitFailure: v(x, 6) / 1e3,
      }),
  ],
  ['figure.lossPlan', 8, (x) => figure.lossPlan({ rotors: rotorsOf(x), trim: authority.trim(hoverOf(x)) })],
  [
    'reliability.kOfN',
    4,
    (x) =>
      reliability.kOfN({
        needed: Math.round(v(x, 0)),
        of: Math.round(3 * v(x, 1)),
        unitFailure: v(x, 2) / 3,
        commonCause: v(x, 3) / 3,
      }),
  ],
  [
    'reliability.requiredUnitFailure',
    3,
    (x) => reliability.requiredUnitFailure({ needed: 3, of: 5, target: v(x, 0) / 10, commonCause: v(x, 1) / 3 }),
  ],
  [
    'reliability.unitFailure',
    4,
    (x) =>
      reliability.unitFailure({
        rate: v(x, 0) / 10,
        time: v(x, 1),
        startFailure: v(x, 2) / 30,
        latentFailure: v(x, 3) / 30,
      }),
  ],
  ['reliability.maintenance', 2, (x) => reliability.maintenance({ of: Math.round(v(x, 0)), unitFailure: v(x, 1) / 3 })],
  [
    'reliability.chain',
    3,
    (x) =>
      reliability.chain({
        generator: [
          [-v(x, 0), v(x, 1)],
          [v(x, 0), -v(x, 1)],
        ],
        time: v(x, 2),
      }),
  ],
  [
    'reliability.lossChain',
    3,
    (x) => reliability.lossChain({ of: 4, rate: v(x, 0), time: v(x, 1), survives: (lost) => lost.length < v(x, 2) }),
  ],
]

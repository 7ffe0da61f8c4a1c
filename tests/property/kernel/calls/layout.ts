/** Calls on layouts with any numbers. */
import { preloaded } from '../../../../kernel/library/index.js'
import { type AnyCall, type V, v } from '../any-input.js'

const { figure, layout } = preloaded

const sign = (value: number) => (value > 1 ? 1 : -1)
const anyRotor = (x: V) => ({
  x: v(x, 0) - 1,
  y: v(x, 1) - 1,
  z: -v(x, 2) / 2,
  radius: v(x, 3),
  spin: sign(v(x, 4)),
  cant: { lateral: v(x, 5) / 5, longitudinal: v(x, 6) / 5 },
})
export const anyRecord = (x: V) =>
  layout.record({
    rotors: [anyRotor(x), { x: -2 * v(x, 7), y: 1, radius: v(x, 3), spin: 1, role: 'tilt' }],
    booms: [{ from: { x: 3, y: v(x, 1) - 1, z: 0 }, to: { x: -3, y: v(x, 8), z: 0 }, diameter: v(x, 9) / 10 }],
    wing: {
      x: v(x, 8),
      z: v(x, 9) / 3,
      span: 4 * v(x, 10),
      rootChord: v(x, 11),
      tipChord: v(x, 9),
      sweep: v(x, 5) / 5,
    },
    body: { x: 2, length: 3 * v(x, 11), width: v(x, 10), height: v(x, 8) },
    propellers: [{ x: -3, radius: v(x, 7) }],
    ground: v(x, 6),
  })
const anyWinged = (x: V) => ({
  rotorRadius: v(x, 0),
  rotorGap: v(x, 1) / 5,
  boomOffset: 2 * v(x, 2),
  rotorHeight: v(x, 3) / 3,
  cant: { lateral: v(x, 4) / 5, longitudinal: -v(x, 5) / 5 },
  wing: { area: 8 * v(x, 6), aspectRatio: 5 * v(x, 7), taper: v(x, 8) / 3, sweep: v(x, 9) / 5 },
  tail: { area: v(x, 10), arm: 3 * v(x, 11) },
  body: { length: 4 * v(x, 11), width: v(x, 10), height: v(x, 9) },
})
const anyLoading = (x: V) =>
  layout.loading({
    fixed: [{ name: 'empty', mass: 1e3 * v(x, 0), x: v(x, 1) - 1, y: v(x, 2) - 1 }],
    loads: [
      { name: 'a', mass: 50 * v(x, 3), x: v(x, 4), y: v(x, 5) },
      { name: 'b', mass: 50 * v(x, 6), x: -v(x, 7), y: v(x, 8) },
    ],
  })
const anyLimits = (x: V) => [
  { label: 'fixed', forward: v(x, 9), aft: -v(x, 10) },
  { label: 'over mass', mass: [1e3 * v(x, 11), 2e3 * v(x, 11)], forward: [v(x, 9), v(x, 10)] },
]
const anySpinUp = (x: V) =>
  layout.spinUp({
    blades: 1 + Math.floor(v(x, 0)),
    operating: [50 * v(x, 1), 50 * v(x, 1) + 50 * v(x, 2)],
    modes: [{ name: 'boom', frequency: 10 * v(x, 3), stiffening: v(x, 4) }],
    wanted: v(x, 5) / 10,
  })

const ofTwelve: readonly [name: string, call: (x: V) => unknown, inAThousand?: number][] = [
  ['layout.record', anyRecord],
  ['layout.liftPlusCruise', (x) => layout.liftPlusCruise(anyWinged(x))],
  ['layout.vectoredThrust', (x) => layout.vectoredThrust({ ...anyWinged(x), rowsAhead: 1, columns: 2 })],
  ['layout.mixedThrust', (x) => layout.mixedThrust({ ...anyWinged(x), rowsAhead: Math.round(v(x, 3)), rowsBehind: 1 })],
  [
    'layout.multirotor',
    (x) => layout.multirotor({ rotorRadius: v(x, 0), count: 2 + Math.round(v(x, 1)), rotorGap: v(x, 2) }),
  ],
  [
    'layout.multirotor grid',
    (x) => layout.multirotor({ rotorRadius: v(x, 0), plan: 'grid', rows: Math.round(v(x, 1)), columns: 2 }),
  ],
  ['layout.units', (x) => layout.units(anyRecord(x), { maxThrust: 1e3 * v(x, 4), torqueRatio: [v(x, 5), v(x, 6)] })],
  ['layout.pad', (x) => layout.pad(anyRecord(x))],
  ['layout.blockedArea', (x) => layout.blockedArea(anyRecord(x))],
  [
    'layout.enclosingCircle',
    (x) => layout.enclosingCircle([0, 3, 6, 9].map((at) => ({ x: v(x, at), y: v(x, at + 1), radius: v(x, at + 2) }))),
  ],
  ['layout.loading', anyLoading],
  [
    'layout.hoverLimits',
    (x) =>
      layout.hoverLimits({
        units: layout.units(anyRecord(x), { maxThrust: 1e4 * v(x, 0), torqueRatio: 0.1 }),
        masses: [500 * v(x, 1), 500 * v(x, 1) + 100 * v(x, 2)],
        thrustFactor: 1 + v(x, 3) / 10,
        usableShare: v(x, 4) / 3,
        across: v(x, 5) - 1,
      }),
  ],
  [
    'layout.cruiseLimits',
    (x) =>
      layout.cruiseLimits(anyRecord(x), { neutralPoint: v(x, 0), leastMargin: v(x, 1) / 20, greatestMargin: v(x, 2) }),
  ],
  ['layout.gravityMargins', (x) => layout.gravityMargins({ loading: anyLoading(x), limits: anyLimits(x) })],
  [
    'layout.outwash',
    (x) =>
      layout.outwash({
        ...{ thrust: 1e4 * v(x, 0), diskArea: 20 * v(x, 1), density: v(x, 2) },
        ...{ distance: 10 * v(x, 3), height: v(x, 4) },
      }),
  ],
  [
    'layout.hubMoment',
    (x) =>
      layout.hubMoment({
        ...{ thrust: 1e3 * v(x, 0), speed: 20 * v(x, 1), radius: v(x, 2), density: v(x, 3) },
        ...{ tipSpeed: 100 * v(x, 4), solidity: v(x, 5) / 10, spin: sign(v(x, 6)) },
        ...{ flapFrequency: 1 + v(x, 7), lockNumber: 3 * v(x, 8) },
      }),
  ],
  [
    'layout.boomLoads',
    (x) =>
      layout.boomLoads({
        rotors: [
          { arm: v(x, 0), mass: 10 * v(x, 1), maxThrust: 1e3 * v(x, 2) },
          {
            ...{ arm: 2 * v(x, 3), mass: 10 * v(x, 4), maxThrust: 1e3 * v(x, 5), transitionThrust: 1e3 * v(x, 6) },
            ...{ hubMoment: { roll: 100 * v(x, 7), pitch: -100 * v(x, 8) }, stoppedForce: 100 * v(x, 9) },
          },
        ],
        manoeuvreFactor: 2 * v(x, 10),
        landingFactor: 2 * v(x, 11),
      }),
  ],
  ['layout.spinUp', anySpinUp],
  [
    'figure.planView',
    (x) => figure.planView({ layout: anyRecord(x), centreOfGravity: { x: v(x, 0), y: v(x, 1) }, lost: [0] }),
  ],
  ['figure.frontView', (x) => figure.frontView({ layout: anyRecord(x), centreOfGravity: { x: v(x, 0), y: v(x, 1) } })],
  [
    'figure.loadingEnvelope',
    (x) => figure.loadingEnvelope({ loading: anyLoading(x), limits: anyLimits(x), greatestMass: 2e3 * v(x, 11) }),
  ],
  ['figure.spinUp', (x) => figure.spinUp({ spinUp: anySpinUp(x) })],
  ['layout.checks', (x) => layout.checks(anyRecord(x), { footprint: 4 * v(x, 0), wanted: { wing: v(x, 1) } }), 100],
  [
    'layout.lossLimits',
    (x) =>
      layout.lossLimits({
        units: layout.units(layout.multirotor({ count: 8, rotorRadius: v(x, 0) }), {
          maxThrust: 3e3 * v(x, 1),
          torqueRatio: v(x, 2) / 10,
        }),
        masses: [200 * v(x, 3)],
        usableShare: v(x, 4) / 1.5,
        across: v(x, 5) / 10,
      }),
    30,
  ],
]

export const calls: readonly AnyCall[] = ofTwelve.map(([name, call, inAThousand = 500]) => [
  name,
  12,
  call,
  inAThousand,
])

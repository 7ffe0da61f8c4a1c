/** The boxes of layouts: each kind built, measured, checked, loaded and held against limits. */
import { preloaded } from '../../../../kernel/library/index.js'
import { aboveZero, type Box, fromTo, notNegative, usual } from './engine.js'

const { layout } = preloaded

type Numbers = Readonly<Record<string, number>>
const thin = 1e-4
const body = { length: 6.6, width: 1.5, height: 1.5 }
const size = (low: number, high: number, most = 1000) => usual(low, high, { refused: [thin, most] })
const rows = (low: number, high: number, least: number) =>
  usual(low, high, { whole: true, refused: [least, 16], middle: 1 })
const angle = usual(-0.2, 0.2, { refused: [-1.2, 1.2] })
/** Rows ahead may be none where there is one behind. */
const winged = {
  rotorRadius: usual(0.7, 1.5, { refused: [thin, 100] }),
  rowsAhead: rows(1, 2, 0),
  rowsBehind: rows(1, 2, 0),
  columns: rows(1, 2, 1),
  rotorGap: usual(0, 0.3, { refused: [-100, 100] }),
  'cant.lateral': angle,
  'cant.longitudinal': angle,
  'wing.area': aboveZero(10, 20),
  'wing.aspectRatio': aboveZero(8, 14),
  'body.length': usual(5, 8, { refused: [thin, 500] }),
}
const withBody = { body: { width: 1.5, height: 1.5 } }

const built: readonly Box[] = [
  {
    name: 'layout.liftPlusCruise',
    call: layout.liftPlusCruise,
    sides: { ...winged, 'tail.area': size(2, 4), 'tail.arm': size(5, 7, 500) },
    fixed: { ...withBody, propellers: [{ radius: 0.9 }] },
  },
  { name: 'layout.vectoredThrust', call: layout.vectoredThrust, sides: winged, fixed: withBody },
  {
    name: 'layout.mixedThrust',
    call: layout.mixedThrust,
    sides: { ...winged, rowsAhead: rows(1, 2, 1) },
    fixed: withBody,
  },
  {
    name: 'layout.record',
    call: ({ x, radius, cant, span, length, ground }: Numbers) =>
      layout.record({
        rotors: [{ x: x ?? 0, y: 2, radius: radius ?? 0, spin: 1, cant: { lateral: cant ?? 0 } }],
        wing: { x: 0.5, span: span ?? 0, rootChord: 1.4, tipChord: 1 },
        body: { x: 3, length: length ?? 0, width: 1.5, height: 1.5 },
        ground: ground ?? 0,
      }),
    sides: {
      x: usual(-4, 4, { refused: [-1000, 1000] }),
      radius: size(0.5, 2),
      cant: angle,
      span: size(8, 14),
      length: size(4, 8),
      ground: usual(0.5, 2, { refused: [-1000, 1000] }),
    },
  },
]

const plan = (rotorRadius: number, gap = 0.3) =>
  layout.liftPlusCruise({
    ...{ rotorRadius, rotorGap: gap, body, wing: { area: 15, aspectRatio: 11 } },
    ...{ tail: { area: 3.2, arm: 6.4 }, propellers: [{ radius: 0.95 }] },
  })
const lifting = (maxThrust: number) => layout.units(plan(1.3), { maxThrust, torqueRatio: 0.1 })
const six = layout.units(layout.multirotor({ count: 8, rotorRadius: 1 }), { maxThrust: 6000, torqueRatio: 0.1 })
const rotorRadius = usual(0.7, 1.5, { refused: [thin, 100] })

const measured: readonly Box[] = [
  {
    name: 'layout.blockedArea',
    call: (o: Numbers) => layout.blockedArea(plan(o.rotorRadius ?? 0)),
    sides: { rotorRadius },
    inAThousand: 100,
  },
  {
    name: 'layout.pad',
    call: (o: Numbers) => layout.pad(plan(o.rotorRadius ?? 0)),
    sides: { rotorRadius },
    inAThousand: 100,
  },
  {
    name: 'layout.checks',
    call: ({ rotorRadius: radius, rotorGap, footprint, overall, body: clear }: Numbers) =>
      layout.checks(plan(radius ?? 0, rotorGap), {
        ...{ footprint: footprint ?? 0, overall: overall ?? 0, wanted: { body: clear ?? 0 } },
      }),
    sides: {
      rotorRadius,
      rotorGap: usual(0.1, 0.5, { refused: [-100, 100] }),
      footprint: aboveZero(16, 20),
      overall: aboveZero(16, 20),
      body: notNegative(0, 0.1),
    },
    // What is said depends on all of them together.
    quiet: 0,
    inAThousand: 50,
  },
  {
    name: 'layout.enclosingCircle',
    call: ({ x, y, radius }: Numbers) =>
      layout.enclosingCircle([
        { x: x ?? 0, y: y ?? 0, radius: radius ?? 0 },
        { x: 0, y: 0, radius: 1 },
        { x: -2, y: 3 },
      ]),
    sides: {
      x: usual(-5, 5, { refused: [-1e6, 1e6] }),
      y: usual(-5, 5, { refused: [-1e6, 1e6] }),
      radius: usual(0, 2, { refused: [0, 1e6] }),
    },
  },
  {
    name: 'layout.units',
    call: (o: Numbers) => layout.units(plan(1.3), o as never),
    sides: { maxThrust: aboveZero(1000, 6000), torqueRatio: aboveZero(0.05, 0.2) },
  },
]

/** That a limit of the centre of gravity may be missed by [m]. */
const rounding = 1e-9

const held: readonly Box[] = [
  {
    name: 'layout.hoverLimits',
    call: ({ maxThrust, mass, thrustFactor, usableShare, across }: Numbers) =>
      layout.hoverLimits({
        units: lifting(maxThrust ?? 0),
        masses: [mass ?? 0, 2500],
        ...{ thrustFactor: thrustFactor ?? 0, usableShare: usableShare ?? 0, across: across ?? 0 },
      }),
    sides: {
      maxThrust: usual(3000, 6000, { refused: [0, 1e9] }),
      mass: usual(500, 2000, { refused: [0, 2500] }),
      thrustFactor: fromTo(1, 2),
      usableShare: usual(0.5, 1, { refused: [0, 1] }),
      across: usual(-0.5, 0.5),
    },
  },
  {
    name: 'layout.lossLimits',
    call: ({ mass, thrustFactor, usableShare, across }: Numbers) =>
      layout.lossLimits({
        units: six,
        masses: [mass ?? 0],
        ...{ thrustFactor: thrustFactor ?? 0, usableShare: usableShare ?? 0, across: across ?? 0 },
      }),
    sides: {
      mass: aboveZero(500, 1200, { refused: [0, 1e9] }),
      thrustFactor: fromTo(1, 2, { box: [1, 1.3], middle: 1.1 }),
      usableShare: usual(0.8, 1, { refused: [0, 1] }),
      across: usual(-0.2, 0.2),
    },
    inAThousand: 10,
  },
  {
    name: 'layout.cruiseLimits',
    call: (o: Numbers) => layout.cruiseLimits(plan(1.3), o as never),
    sides: {
      neutralPoint: usual(0.2, 0.6, { refused: [-100, 100] }),
      // Above the greatest it is the greatest that is refused.
      leastMargin: usual(0, 0.1, { refused: [-1, null] }),
      greatestMargin: usual(0.2, 0.4, { refused: [0.05, 2] }),
    },
  },
  {
    name: 'layout.loading',
    call: ({ fixed, mass, x, y }: Numbers) =>
      layout.loading({
        fixed: [{ name: 'empty', mass: fixed ?? 0, x: 0, y: 0 }],
        loads: [
          { name: 'seat', mass: mass ?? 0, x: x ?? 0, y: y ?? 0 },
          { name: 'bag', mass: 20, x: -1, y: 0.2 },
        ],
      }),
    sides: { fixed: usual(800, 1500), mass: notNegative(0, 120), x: usual(-2, 2), y: usual(-0.6, 0.6) },
  },
  {
    name: 'layout.gravityMargins',
    call: ({ x, forward, aft }: Numbers) =>
      layout.gravityMargins({
        loading: layout.loading({ fixed: [{ name: 'all', mass: 1000, x: x ?? 0, y: 0 }], loads: [] }),
        limits: [{ label: 'trim', forward: forward ?? 0, aft: aft ?? 0 }],
      }),
    sides: {
      x: usual(-0.1, 0.1, { advised: [-0.3 - rounding, 0.3 + rounding] }),
      forward: usual(0.2, 0.4, { refused: [-1e6, 1e6], advised: [-rounding, null] }),
      aft: usual(-0.4, -0.2, { refused: [-1e6, 1e6], advised: [null, rounding] }),
    },
  },
]

/** Distance of the mode in the middle of the box from twice per turn, at the least speed of work. */
const nearest = 1 - Math.hypot(27, (Math.sqrt(0.05) * 110) / (2 * Math.PI)) / ((2 * 110) / (2 * Math.PI))

const loaded: readonly Box[] = [
  {
    name: 'layout.boomLoads',
    call: ({ arm, mass, maxThrust, transitionThrust, stoppedForce, roll, pitch, ...rest }: Numbers) =>
      layout.boomLoads({
        rotors: [
          {
            ...{ arm: arm ?? 0, mass: mass ?? 0, maxThrust: maxThrust ?? 0 },
            ...{ transitionThrust: transitionThrust ?? 0, stoppedForce: stoppedForce ?? 0 },
            hubMoment: { roll: roll ?? 0, pitch: pitch ?? 0 },
          },
        ],
        ...rest,
      }),
    sides: {
      arm: usual(1, 3, { refused: [-1000, 1000] }),
      mass: notNegative(10, 30),
      maxThrust: notNegative(1000, 5000),
      transitionThrust: notNegative(0, 3000),
      stoppedForce: notNegative(0, 300),
      roll: usual(-300, 300, { refused: [-1e12, 1e12] }),
      pitch: usual(-300, 300, { refused: [-1e12, 1e12] }),
      manoeuvreFactor: aboveZero(2, 4.5),
      landingFactor: aboveZero(2, 4),
    },
  },
  {
    name: 'layout.spinUp',
    call: ({ blades, low, high, frequency, stiffening, wanted }: Numbers) =>
      layout.spinUp({
        ...{ blades: blades ?? 0, operating: [low ?? 0, high ?? 0], wanted: wanted ?? 0 },
        modes: [{ name: 'boom', frequency: frequency ?? 0, stiffening: stiffening ?? 0 }],
      }),
    sides: {
      blades: usual(2, 6, { whole: true, refused: [1, 100], middle: 2 }),
      low: usual(100, 120),
      high: usual(125, 140),
      frequency: aboveZero(24.5, 29.5, { refused: [0, 1e6] }),
      stiffening: usual(0, 0.1, { refused: [0, 1000] }),
      wanted: notNegative(0.05, 0.25, { advised: [null, nearest] }),
    },
    quiet: 0,
  },
]

export const boxes: readonly Box[] = [...built, ...measured, ...held, ...loaded]

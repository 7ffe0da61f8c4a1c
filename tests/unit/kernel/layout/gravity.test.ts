import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import type { Layout } from '../../../../kernel/library/layout/parts.js'
import { seededChance } from '../../../lab/seeded.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { skerryLink } from './skerry-link.js'

const { layout, mass, u, wing } = preloaded
const empty = { name: 'empty', mass: 1200, x: 0.1, y: 0, z: 0, size: [6, 1, 1] as const }
const loads = [
  { name: 'front left', mass: 90, x: 1.3, y: -0.4 },
  { name: 'front right', mass: 95, x: 1.3, y: 0.4 },
  { name: 'rear', mass: 80, x: -0.2, y: 0 },
  { name: 'bags', mass: 45, x: -1.1, y: 0.1 },
]
const aboard = layout.loading({ fixed: [empty], loads })

function ordersOf<T>(items: readonly T[]): T[][] {
  if (items.length <= 1) return [[...items]]
  return items.flatMap((item, index) =>
    ordersOf(items.filter((_, other) => other !== index)).map((rest) => [item, ...rest]),
  )
}

describe('layout.loading(options)', () => {
  it('holds every state of every loading order, and touches the extremes', () => {
    const seen = { foremost: -9, aftmost: 9, leftmost: 9, rightmost: -9 }
    let orders = 0
    for (const order of ordersOf(loads)) {
      orders += 1
      for (let count = 0; count <= order.length; count += 1) {
        const { x, y } = mass.properties([empty, ...order.slice(0, count)])
        seen.foremost = Math.max(seen.foremost, x)
        seen.aftmost = Math.min(seen.aftmost, x)
        seen.leftmost = Math.min(seen.leftmost, y)
        seen.rightmost = Math.max(seen.rightmost, y)
      }
    }
    expect(aboard.orders).toBe(orders)
    for (const key of ['foremost', 'aftmost', 'leftmost', 'rightmost'] as const)
      expectClose(aboard[key], seen[key], 1e-12)
  })

  it('bounds the centre of gravity at every mass in between, parts of loads included (seed 3)', () => {
    const chance = seededChance(3)
    const moments = (states: typeof aboard.forward) =>
      states.map((state) => [state.mass, state.mass * state.x] as const)
    const at = (path: readonly (readonly [number, number])[], wanted: number) => {
      const next = path.findIndex(([one]) => one >= wanted - 1e-9)
      const [high, low] = [path[Math.max(1, next)], path[Math.max(1, next) - 1]] as const
      if (high === undefined || low === undefined) throw new Error('no such mass')
      return low[1] + ((wanted - low[0]) / (high[0] - low[0])) * (high[1] - low[1])
    }
    for (let turn = 0; turn < 500; turn += 1) {
      const parts = loads.map((load) => ({ ...load, mass: load.mass * chance.next() }))
      const { mass: whole, x } = mass.properties([empty, ...parts])
      expect(whole * x).toBeLessThanOrEqual(at(moments(aboard.forward), whole) + 1e-6)
      expect(whole * x).toBeGreaterThanOrEqual(at(moments(aboard.aft), whole) - 1e-6)
    }
  })

  it('begins empty, ends full, with inertia of both from mass.properties', () => {
    expect(aboard.forward.map(({ added }) => added)).toEqual(['', 'front left', 'front right', 'rear', 'bags'])
    expect(aboard.full).toEqual(mass.properties([empty, ...loads]))
    expect(aboard.empty.Iyy).toBe(mass.properties([empty]).Iyy)
    expectClose(aboard.aft.at(-1)?.x ?? 0, aboard.full.x, 1e-12)
  })
})

describe('layout.hoverLimits(options)', () => {
  const four = layout.multirotor({ count: 4, rotorRadius: 1, rotorGap: 0 })
  const limitsOf = (maxThrust: number | number[], masses: number[], more = {}) =>
    layout.hoverLimits({ units: layout.units(four, { maxThrust, torqueRatio: 0.1 }), masses, ...more })

  it('is the hull of the hubs where one rotor alone could lift all', () => {
    const weight = 1000 * u.g0
    const { forward, aft, region } = limitsOf(weight, [1000])
    expectClose(forward[0] ?? 0, 1, 1e-9)
    expectClose(aft[0] ?? 0, -1, 1e-9)
    expect(region.flatMap(({ x, y }) => [Math.abs(x), Math.abs(y)]).every((size) => Math.abs(size - 1) < 1e-9)).toBe(
      true,
    )
  })

  it('shrinks to the middle as the mass nears what the rotors lift, and is empty beyond', () => {
    const limit = 3000
    const most = (4 * limit) / u.g0
    const {
      mass: masses,
      forward,
      spareThrust,
    } = limitsOf(limit, [0.5 * most, 0.75 * most, most * (1 - 1e-12), 1.2 * most])
    expect(masses).toHaveLength(3)
    // Two rotors at their limits lift half of all; a third of the rest comes from behind at three quarters.
    expectClose(forward[0] ?? 0, 1, 1e-9)
    expectClose(forward[1] ?? 0, (2 * 1 - 1 * 1) / 3, 1e-9)
    expect(Math.abs(forward[2] ?? 1)).toBeLessThan(1e-9)
    expectClose(spareThrust, -0.2 * 4 * limit, 1e-9)
    expect(limitsOf(limit, [2 * most])).toMatchObject({ mass: [], forward: [], aft: [], region: [] })
  })

  it('holds the trim of any thrusts that lift the weight (seed 9)', () => {
    const chance = seededChance(9)
    const units = layout.units(skerryLink, {
      maxThrust: [3, 4, 3, 4, 5, 3, 4, 3].map((k) => 1000 * k),
      torqueRatio: 0.1,
    })
    const lift = 16_000
    const { region } = layout.hoverLimits({ units, masses: [lift / u.g0] })
    for (let turn = 0; turn < 300; turn += 1) {
      const raw = units.map(({ maxThrust }) => maxThrust * chance.next())
      const scale = lift / raw.reduce((sum, one) => sum + one, 0)
      if (raw.some((one, index) => one * scale > (units[index]?.maxThrust ?? 0))) continue
      const x = raw.reduce((sum, one, index) => sum + (one * scale * (units[index]?.x ?? 0)) / lift, 0)
      const y = raw.reduce((sum, one, index) => sum + (one * scale * (units[index]?.y ?? 0)) / lift, 0)
      region.forEach((a, index) => {
        const b = region[(index + 1) % region.length] as typeof a
        expect((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x)).toBeGreaterThan(-1e-6)
      })
    }
  })

  it('gives way to download, to a share kept for control and to a centre of gravity off the middle', () => {
    const plain = limitsOf(3000, [900]).forward[0] ?? 0
    expect(limitsOf(3000, [900], { thrustFactor: 1.1 }).forward[0]).toBeLessThan(plain)
    expect(limitsOf(3000, [900], { usableShare: 0.8 }).forward[0]).toBeLessThan(plain)
    // With one rotor nearly enough the region is the square with its corners cut: less room off the middle.
    expect(limitsOf(3000, [400], { across: 0.9 }).forward[0]).toBeLessThan(limitsOf(3000, [400]).forward[0] ?? 0)
    expect(limitsOf(3000, [900], { across: 3 })).toMatchObject({ mass: [], forward: [] })
  })
})

describe('layout.cruiseLimits(layout, options)', () => {
  it('are where wing.staticMargin gives the margins asked for', () => {
    const neutralPoint = 0.52
    const limit = layout.cruiseLimits(skerryLink, { neutralPoint, leastMargin: 0.06, greatestMargin: 0.4 })
    for (const [x, wanted] of [
      [limit.aft, 0.06],
      [limit.forward ?? 0, 0.4],
    ] as const) {
      const centreOfGravity = (limit.leadingEdge - x) / limit.chord
      expectClose(wing.staticMargin({ centreOfGravity, neutralPoint }).margin, wanted, 1e-12)
    }
    expect(layout.cruiseLimits(skerryLink, { neutralPoint }).forward).toBeUndefined()
  })
})

describe('layout.gravityMargins(options)', () => {
  it('names the tightest limit, its side and the loading that comes nearest', () => {
    const limits = [
      { label: 'wide', forward: 2, aft: -2 },
      { label: 'narrow', aft: -0.05 },
      { label: 'over mass', mass: [1000, 1400, 1600], forward: [1, 0.5, 0.3] },
    ]
    const margins = layout.gravityMargins({ loading: aboard, limits })
    expect(margins.map(({ limit, side }) => `${limit} ${side}`)).toEqual([
      'narrow aft',
      'over mass forward',
      'wide forward',
      'wide aft',
    ])
    expectClose(margins[0]?.margin ?? 0, aboard.aftmost + 0.05, 1e-12)
    const states = [...aboard.forward, ...aboard.aft]
    const hand = Math.min(
      ...states.map((s) => (s.mass < 1400 ? 1 - (s.mass - 1000) / 800 : 0.5 - (s.mass - 1400) / 1000) - s.x),
    )
    expectClose(margins[1]?.margin ?? 0, hand, 1e-9)
  })

  it('says what lies beyond a limit, or is heavier than it reaches, and advises of it', () => {
    const { advisories } = listenWhile(() => {
      const [first, second] = layout.gravityMargins({
        loading: aboard,
        limits: [
          { label: 'rotor lost', forward: 0.1 },
          { label: 'hover trim', mass: [1200, 1300], aft: [-1, -1] },
        ],
      })
      expect([first?.met, second?.met]).toEqual([false, false])
      expect(first?.text).toMatch(
        /^rotor lost: at \d+ kg the centre of gravity can lie 0\.\d+ m ahead of the forward limit\.$/,
      )
      expect(second?.text).toBe('hover trim: 1510 kg is more than the 1300 kg it reaches to.')
    })
    expect(advisories.map(({ code }) => code)).toEqual(['CENTRE_OF_GRAVITY', 'CENTRE_OF_GRAVITY'])
    const [none] = layout.gravityMargins({ loading: aboard, limits: [{ label: 'none', mass: [], aft: [] }] })
    expect(none?.text).toBe('none: 1510 kg is more than any mass it holds for.')
  })
})

const units = layout.units(skerryLink, { maxThrust: 4000, torqueRatio: 0.1 })
const margins = (limit: object) => layout.gravityMargins({ loading: aboard, limits: [limit as { label: string }] })

it.each<[string, () => unknown, RegExp]>([
  ['loads that are no list', () => layout.loading({ fixed: [empty], loads: 5 as unknown as [] }), /loads is 5/],
  ['no fixed mass', () => layout.loading({ fixed: [{ ...empty, mass: 0 }], loads: [] }), /no mass in all/],
  [
    'a layout without a wing',
    () => layout.cruiseLimits(layout.multirotor({ count: 4, rotorRadius: 1 }), { neutralPoint: 0.4 }),
    /a layout with a wing/,
  ],
  [
    'a neutral point that is no number',
    () => layout.cruiseLimits(skerryLink, { neutralPoint: Number.NaN }),
    /neutralPoint/,
  ],
  [
    'margins in the wrong order',
    () => layout.cruiseLimits(skerryLink, { neutralPoint: 0.4, leastMargin: 0.3, greatestMargin: 0.1 }),
    /greatestMargin/,
  ],
  ['no units', () => layout.hoverLimits({ units: [], masses: [1] }), /units is a list of 0/],
  [
    'units that are none',
    () => layout.hoverLimits({ units: [{}] as unknown as typeof units, masses: [1] }),
    /units\[0\]\.x/,
  ],
  ['no masses', () => layout.hoverLimits({ units, masses: [] }), /masses is a list of 0/],
  ['masses that fall', () => layout.hoverLimits({ units, masses: [2, 1] }), /masses\[1\]/],
  ['a share above 1', () => layout.hoverLimits({ units, masses: [1], usableShare: 2 }), /usableShare/],
  ['a thrust factor below 1', () => layout.hoverLimits({ units, masses: [1], thrustFactor: 0.5 }), /thrustFactor/],
  ['no limits', () => layout.gravityMargins({ loading: aboard, limits: [] }), /limits is a list of 0/],
  [
    'a limit that is none',
    () => layout.gravityMargins({ loading: aboard, limits: [5 as unknown as { label: string }] }),
    /limits\[0\]/,
  ],
  ['a limit without a name', () => margins({ label: '', aft: 1 }), /label/],
  ['masses of a limit that fall', () => margins({ label: 'a', mass: [2, 1], aft: [0, 0] }), /masses that rise/],
  [
    'ends that do not fit their masses',
    () => margins({ label: 'a', mass: [1, 2], aft: [0] }),
    /a list of 2, one per mass/,
  ],
  ['a list without masses', () => margins({ label: 'a', aft: [0, 1] }), /masses beside it/],
  [
    'what is no loading',
    () => layout.gravityMargins({ loading: {} as typeof aboard, limits: [{ label: 'a', aft: 0 }] }),
    /what layout\.loading returns/,
  ],
  ['what is no layout', () => layout.cruiseLimits(null as unknown as Layout, { neutralPoint: 0.4 }), /layout is null/],
])('methods of the centre of gravity refuse %s', (_, call, message) => {
  expect(call).toThrow(InvalidInput)
  expect(call).toThrow(message)
})

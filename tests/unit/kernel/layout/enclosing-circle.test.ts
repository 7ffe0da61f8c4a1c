import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { seededChance } from '../../../lab/seeded.js'
import { expectClose } from '../close-to.js'

const { enclosingCircle } = preloaded.layout

interface Round {
  readonly x: number
  readonly y: number
  readonly radius: number
}

const excess = (around: Round, one: Round) =>
  Math.hypot(one.x - around.x, one.y - around.y) + one.radius - around.radius

/** Radius by trying every pair and every triple of points: circle over the pair as diameter, and through the three. */
function bruteForce(points: readonly Round[]): number {
  const candidates: Round[] = []
  points.forEach((a, i) => {
    points.slice(0, i).forEach((b, j) => {
      candidates.push({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, radius: Math.hypot(a.x - b.x, a.y - b.y) / 2 })
      for (const c of points.slice(0, j)) candidates.push(circumcircle(a, b, c))
    })
  })
  const sound = candidates.filter((circle) => points.every((one) => excess(circle, one) <= 1e-9))
  return Math.min(...sound.map((circle) => circle.radius))
}

function circumcircle(a: Round, b: Round, c: Round): Round {
  const d = 2 * (a.x * (b.y - c.y) + b.x * (c.y - a.y) + c.x * (a.y - b.y))
  const [sa, sb, sc] = [a, b, c].map((p) => p.x * p.x + p.y * p.y) as [number, number, number]
  const x = (sa * (b.y - c.y) + sb * (c.y - a.y) + sc * (a.y - b.y)) / d
  const y = (sa * (c.x - b.x) + sb * (a.x - c.x) + sc * (b.x - a.x)) / d
  return { x, y, radius: Math.hypot(a.x - x, a.y - y) }
}

/** Least radius around circles by search: the farthest reach from a centre is convex in it. */
function bySearch(circles: readonly Round[]): number {
  const reach = (x: number, y: number) =>
    Math.max(...circles.map((one) => Math.hypot(one.x - x, one.y - y) + one.radius))
  return least((x) => least((y) => reach(x, y)))
}

function least(f: (x: number) => number): number {
  const share = (Math.sqrt(5) - 1) / 2
  let [low, high] = [-20, 20]
  for (let step = 0; step < 70; step += 1) {
    const [left, right] = [high - share * (high - low), low + share * (high - low)]
    if (f(left) < f(right)) high = right
    else low = left
  }
  return f((low + high) / 2)
}

describe('layout.enclosingCircle(circles)', () => {
  it('is the brute-force circle of random points (seed 4)', () => {
    const random = seededChance(4).next
    for (let turn = 0; turn < 150; turn += 1) {
      const points = Array.from({ length: 2 + Math.floor(9 * random()) }, () => ({
        x: 10 * random() - 5,
        y: 10 * random() - 5,
        radius: 0,
      }))
      const found = enclosingCircle(points)
      expectClose(found.radius, bruteForce(points), 1e-9, `turn ${turn}`)
      for (const one of points) expect(excess(found, one)).toBeLessThan(1e-9)
    }
  })

  it('is the circle that a search finds around random circles of different sizes (seed 11)', () => {
    const random = seededChance(11).next
    for (let turn = 0; turn < 12; turn += 1) {
      const circles = Array.from({ length: 2 + Math.floor(9 * random()) }, () => ({
        x: 10 * random() - 5,
        y: 10 * random() - 5,
        radius: 3 * random() * random(),
      }))
      const found = enclosingCircle(circles)
      expectClose(found.radius, bySearch(circles), 1e-7, `turn ${turn}`)
      for (const one of circles) expect(excess(found, one)).toBeLessThan(1e-9)
    }
  })

  it('does not depend on the order and takes many, equal and collinear points', () => {
    const random = seededChance(7).next
    const many = Array.from({ length: 2000 }, () => ({ x: random(), y: random() }))
    const found = enclosingCircle(many)
    expectClose(enclosingCircle([...many].reverse()).radius, found.radius, 1e-12)
    expect(enclosingCircle([{ x: 3, y: 4 }])).toEqual({ x: 3, y: 4, radius: 0 })
    expect(
      enclosingCircle([
        { x: 3, y: 4 },
        { x: 3, y: 4 },
      ]),
    ).toEqual({ x: 3, y: 4, radius: 0 })
    expectClose(enclosingCircle([0, 1, 2, 7].map((x) => ({ x, y: 2 * x }))).radius, 3.5 * Math.sqrt(5), 1e-12)
  })

  it('is the largest circle alone where the others lie inside it', () => {
    expect(
      enclosingCircle([
        { x: 0, y: 0, radius: 5 },
        { x: 1, y: 1, radius: 1 },
      ]),
    ).toEqual({ x: 0, y: 0, radius: 5 })
  })

  it('solves the touching of three circles: three of radius 1 around a middle (Descartes’ circle theorem, from memory)', () => {
    const hubs = [90, 210, 330].map((degrees) => (degrees * Math.PI) / 180)
    const three = hubs.map((angle) => ({
      x: (2 / Math.sqrt(3)) * Math.cos(angle),
      y: (2 / Math.sqrt(3)) * Math.sin(angle),
      radius: 1,
    }))
    expectClose(enclosingCircle(three).radius, 1 + 2 / Math.sqrt(3), 1e-12)
  })

  it.each<[string, readonly object[], RegExp]>([
    ['an empty list', [], /circles is a list of 0/],
    ['a place that is no number', [{ x: Number.NaN, y: 0 }], /circles\[0\]\.x/],
    ['a negative radius', [{ x: 0, y: 0, radius: -1 }], /circles\[0\]\.radius/],
    ['a place beyond all aircraft', [{ x: 1e9, y: 0 }], /circles\[0\]\.x/],
    ['an unknown option', [{ x: 0, y: 0, size: 1 }], /option "size"/],
  ])('refuses %s', (_, circles, message) => {
    const call = () => enclosingCircle(circles as Parameters<typeof enclosingCircle>[0])
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

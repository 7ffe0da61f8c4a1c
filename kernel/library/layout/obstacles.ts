/** Parts of a layout as convex shapes, each by the signed distance of a point from it: below 0 inside. */
import type { Layout, LayoutBody, LayoutBoom, LayoutPropeller, Surface } from './parts.js'

export type ObstacleKind = 'boom' | 'wing' | 'tail' | 'fin' | 'body' | 'propeller'

export interface Obstacle {
  readonly kind: ObstacleKind
  /** In a sentence: `the wing`, `boom 2`. */
  readonly name: string
  /** [m]; convex in (x, y, z), and never changes faster than the point moves. */
  readonly distance: (x: number, y: number, z: number) => number
}

export function obstaclesOf({ booms, wing, tail, fins, body, propellers }: Layout): readonly Obstacle[] {
  return [
    ...booms.map((boom, index): Obstacle => ({ kind: 'boom', name: `boom ${index + 1}`, distance: fromBoom(boom) })),
    ...(wing === undefined ? [] : panels(wing, 'wing')),
    ...(tail === undefined ? [] : panels(tail, 'tail')),
    ...fins.map((fin, index): Obstacle => ({ kind: 'fin', name: `fin ${index + 1}`, distance: fromFin(fin) })),
    ...(body === undefined ? [] : [{ kind: 'body' as const, name: 'the body', distance: fromBody(body) }]),
    ...propellers.map(
      (propeller, index): Obstacle => ({
        kind: 'propeller',
        name: propellers.length === 1 ? 'the propeller' : `propeller ${index + 1}`,
        distance: fromPropeller(propeller),
      }),
    ),
  ]
}

/** A round bar with hemispheres at its ends. */
export function fromBoom({ from, to, diameter }: LayoutBoom): Obstacle['distance'] {
  const [dx, dy, dz] = [to.x - from.x, to.y - from.y, to.z - from.z]
  const square = dx * dx + dy * dy + dz * dz
  return (x, y, z) => {
    const [px, py, pz] = [x - from.x, y - from.y, z - from.z]
    const share = square === 0 ? 0 : clamp((px * dx + py * dy + pz * dz) / square, 0, 1)
    return Math.hypot(px - share * dx, py - share * dy, pz - share * dz) - diameter / 2
  }
}

function panels(surface: Surface, kind: 'wing' | 'tail'): readonly Obstacle[] {
  return [-1, 1].map((side) => ({ kind, name: `the ${kind}`, distance: fromPanel(surface, side) }))
}

/** One half of a level surface: a flat trapezium with the half thickness of the root around it. */
export function fromPanel(surface: Surface, side: number): Obstacle['distance'] {
  const { x, y, z, span, rootChord, tipChord, sweep, dihedral, thicknessRatio } = surface
  const half = span / 2
  const trapezium = {
    ...{ front: x, sweep: Math.tan(sweep) * Math.cos(dihedral), half, rootChord, tipChord },
  }
  const thick = (thicknessRatio * rootChord) / 2
  const [cosine, sine] = [Math.cos(dihedral), Math.sin(dihedral)]
  return (px, py, pz) => {
    const out = side * (py - y)
    const up = z - pz
    return fromTrapezium(trapezium, px, out * cosine + up * sine, up * cosine - out * sine) - thick
  }
}

function fromFin({ x, y, z, span, rootChord, tipChord, sweep, thicknessRatio }: Surface): Obstacle['distance'] {
  const trapezium = { front: x, sweep: Math.tan(sweep), half: span, rootChord, tipChord }
  const thick = (thicknessRatio * rootChord) / 2
  return (px, py, pz) => fromTrapezium(trapezium, px, z - pz, py - y) - thick
}

interface Trapezium {
  readonly front: number
  readonly sweep: number
  readonly half: number
  readonly rootChord: number
  readonly tipChord: number
}

/** Distance from a flat trapezium: `x` along the chords, `out` from root to tip, `off` its plane. */
function fromTrapezium(t: Trapezium, x: number, out: number, off: number): number {
  const tip = t.front - t.half * t.sweep
  const corners = [t.front, 0, tip, t.half, tip - t.tipChord, t.half, t.front - t.rootChord, 0] as const
  let inside = true
  let nearest = Number.POSITIVE_INFINITY
  for (let k = 0; k < 8; k += 2) {
    const [ax, ay] = [corners[k] as number, corners[k + 1] as number]
    const [bx, by] = [corners[(k + 2) % 8] as number, corners[(k + 3) % 8] as number]
    const [ex, ey, px, py] = [bx - ax, by - ay, x - ax, out - ay]
    // Corners run from the front of the root to the tip and back: the inside lies to one side of every edge.
    if (ex * py - ey * px < 0) inside = false
    const share = clamp((px * ex + py * ey) / (ex * ex + ey * ey), 0, 1)
    nearest = Math.min(nearest, Math.hypot(px - share * ex, py - share * ey))
  }
  return inside ? Math.abs(off) : Math.hypot(nearest, off)
}

/** The box around the body with its edges rounded as far as the smaller of width and height allows. */
export function fromBody({ x, z, length, width, height }: LayoutBody): Obstacle['distance'] {
  const round = Math.min(width, height, length) / 2
  const half = [length / 2 - round, width / 2 - round, height / 2 - round] as const
  return (px, py, pz) => {
    const over = [Math.abs(px - x + length / 2) - half[0], Math.abs(py) - half[1], Math.abs(pz - z) - half[2]] as const
    const outside = Math.hypot(Math.max(0, over[0]), Math.max(0, over[1]), Math.max(0, over[2]))
    return outside + Math.min(0, Math.max(...over)) - round
  }
}

/** A disk square to the stream, a twentieth of its radius thick to either side: blades have chord. */
function fromPropeller({ x, y, z, radius }: LayoutPropeller): Obstacle['distance'] {
  return (px, py, pz) => Math.hypot(px - x, Math.max(0, Math.hypot(py - y, pz - z) - radius)) - 0.05 * radius
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value))
}

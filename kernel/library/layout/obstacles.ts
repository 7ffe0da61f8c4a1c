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
    const px = x - from.x
    const py = y - from.y
    const pz = z - from.z
    const share = square === 0 ? 0 : clamp((px * dx + py * dy + pz * dz) / square, 0, 1)
    return length(px - share * dx, py - share * dy, pz - share * dz) - diameter / 2
  }
}

function panels(surface: Surface, kind: 'wing' | 'tail'): readonly Obstacle[] {
  return [-1, 1].map((side) => ({ kind, name: `the ${kind}`, distance: fromPanel(surface, side) }))
}

/** One half of a level surface: a flat trapezium with the half thickness of the root around it. */
export function fromPanel(surface: Surface, side: number): Obstacle['distance'] {
  const { x, y, z, span, rootChord, tipChord, sweep, dihedral, thicknessRatio } = surface
  const fromFlat = fromTrapezium({
    ...{ front: x, sweep: Math.tan(sweep) * Math.cos(dihedral), half: span / 2, rootChord, tipChord },
  })
  const thick = (thicknessRatio * rootChord) / 2
  const [cosine, sine] = [Math.cos(dihedral), Math.sin(dihedral)]
  return (px, py, pz) => {
    const out = side * (py - y)
    const up = z - pz
    return fromFlat(px, out * cosine + up * sine, up * cosine - out * sine) - thick
  }
}

function fromFin({ x, y, z, span, rootChord, tipChord, sweep, thicknessRatio }: Surface): Obstacle['distance'] {
  const fromFlat = fromTrapezium({ front: x, sweep: Math.tan(sweep), half: span, rootChord, tipChord })
  const thick = (thicknessRatio * rootChord) / 2
  return (px, py, pz) => fromFlat(px, z - pz, py - y) - thick
}

interface Trapezium {
  readonly front: number
  readonly sweep: number
  readonly half: number
  readonly rootChord: number
  readonly tipChord: number
}

/**
 * Distance from a flat trapezium: `x` along the chords, `out` from root to tip, `off` its plane. Asked thousands of times for each pair
 * of disk and panel, so the corners are laid out once and nothing is allocated after.
 */
function fromTrapezium(t: Trapezium): (x: number, out: number, off: number) => number {
  const tip = t.front - t.half * t.sweep
  const corners = Float64Array.of(
    t.front,
    0,
    tip,
    t.half,
    tip - t.tipChord,
    t.half,
    t.front - t.rootChord,
    0,
    t.front,
    0,
  )
  return (x, out, off) => {
    let inside = true
    let nearest = Number.POSITIVE_INFINITY
    for (let k = 0; k < 8; k += 2) {
      const ax = corners[k] as number
      const ay = corners[k + 1] as number
      const ex = (corners[k + 2] as number) - ax
      const ey = (corners[k + 3] as number) - ay
      const px = x - ax
      const py = out - ay
      // Corners run from the front of the root to the tip and back: the inside lies to one side of every edge.
      if (ex * py - ey * px < 0) inside = false
      const share = clamp((px * ex + py * ey) / (ex * ex + ey * ey), 0, 1)
      const along = px - share * ex
      const across = py - share * ey
      nearest = Math.min(nearest, along * along + across * across)
    }
    return inside ? Math.abs(off) : Math.sqrt(nearest + off * off)
  }
}

/** The box around the body with its edges rounded as far as the smaller of width and height allows. */
export function fromBody({ x, z, length: long, width, height }: LayoutBody): Obstacle['distance'] {
  const round = Math.min(width, height, long) / 2
  return (px, py, pz) => {
    const ahead = Math.abs(px - x + long / 2) - long / 2 + round
    const aside = Math.abs(py) - width / 2 + round
    const above = Math.abs(pz - z) - height / 2 + round
    const outside = length(Math.max(0, ahead), Math.max(0, aside), Math.max(0, above))
    return outside + Math.min(0, Math.max(ahead, aside, above)) - round
  }
}

/** A disk square to the stream, a twentieth of its radius thick to either side: blades have chord. */
function fromPropeller({ x, y, z, radius }: LayoutPropeller): Obstacle['distance'] {
  return (px, py, pz) => length(px - x, Math.max(0, length(0, py - y, pz - z) - radius), 0) - 0.05 * radius
}

/** Lengths of metres neither overflow nor vanish when squared, and this is several times quicker than `Math.hypot`. */
function length(x: number, y: number, z: number): number {
  return Math.sqrt(x * x + y * y + z * z)
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value))
}

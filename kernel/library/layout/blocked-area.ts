import type { Area } from '../quantity.js'
import { bodyOutline, boomOutline, type Point, surfaceOutline } from './outlines.js'
import type { Layout } from './parts.js'
import { requireLayout } from './record.js'

export interface BlockedArea {
  /** Wing, tail, booms and body under disks, together [m^2]. */
  readonly total: Area
  /** [m^2] */
  readonly wing: Area
  /** [m^2] */
  readonly tail: Area
  /** [m^2] */
  readonly booms: Area
  /** [m^2] */
  readonly body: Area
  /** Of all disks [m^2]. */
  readonly diskArea: Area
}

const method = 'layout.blockedArea'

/**
 * Area of wing, tail, booms and body that lies under the disks in plan: what the wakes blow upon in hover.
 *
 * @equation sum over disks and parts of the area that disk and outline have in common
 * @param layout - what a builder of layouts returns
 * @returns `total`, `wing`, `tail`, `booms`, `body`, `diskArea` [m^2]; `rotor.download` takes `total` as `blockedArea`, and `diskArea`
 * @throws InvalidInput for what is no layout
 * @method Exact intersection of circle and polygon. Where two disks overlap, or two parts lie above each other under one disk, both count.
 * @validity Disks straight above what they blow upon: the wake's contraction (to 0.7 of the radius far below) is not followed, which makes the area somewhat large at the disk's rim.
 * @source Geometry.
 * @example
 * const six = layout.multirotor({ count: 6, rotorRadius: 1 * u.m })
 * layout.blockedArea(six).booms // 0.72
 */
export function blockedArea(layout: Layout): BlockedArea {
  requireLayout(method, layout)
  const { rotors, wing, tail, booms, body } = layout
  const under = (outline: readonly Point[]) =>
    rotors.reduce((sum, { x, y, radius }) => sum + commonArea(outline, x, y, radius), 0)
  const areas = {
    wing: wing === undefined ? 0 : under(surfaceOutline(wing)),
    tail: tail === undefined ? 0 : under(surfaceOutline(tail)),
    booms: booms.reduce((sum, boom) => sum + under(boomOutline(boom)), 0),
    body: body === undefined ? 0 : under(bodyOutline(body)),
  }
  return {
    total: areas.wing + areas.tail + areas.booms + areas.body,
    ...areas,
    diskArea: rotors.reduce((sum, { radius }) => sum + Math.PI * radius * radius, 0),
  }
}

/** Area that a polygon and a circle have in common: over each edge, triangles where it runs inside and sectors where outside. */
export function commonArea(outline: readonly Point[], x: number, y: number, radius: number): number {
  let sum = 0
  outline.forEach(([px, py], index) => {
    const [qx, qy] = outline[(index + 1) % outline.length] as Point
    sum += edgeArea(px - x, py - y, qx - x, qy - y, radius)
  })
  // What rounding leaves of parts that the circle does not reach.
  return Math.abs(sum) > 1e-12 * radius * radius ? Math.abs(sum) : 0
}

/** Signed area between the centre, an edge from p to q, and the circle. */
function edgeArea(px: number, py: number, qx: number, qy: number, radius: number): number {
  const dx = qx - px
  const dy = qy - py
  const square = dx * dx + dy * dy
  if (square === 0) return 0
  const middle = -(px * dx + py * dy) / square
  const nearest = (px * dy - py * dx) ** 2 / square
  const half = nearest < radius * radius ? Math.sqrt((radius * radius - nearest) / square) : 0
  const enter = Math.min(1, Math.max(0, middle - half))
  const leave = Math.min(1, Math.max(0, middle + half))
  const at = (share: number) => [px + share * dx, py + share * dy] as const
  const [ax, ay] = at(enter)
  const [bx, by] = at(leave)
  return (radius * radius * (angleBetween(px, py, ax, ay) + angleBetween(bx, by, qx, qy))) / 2 + (ax * by - ay * bx) / 2
}

function angleBetween(ax: number, ay: number, bx: number, by: number): number {
  return Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
}

/** Outlines of a layout's parts seen from above, as closed polygons: what the plan view draws and the wakes blow upon. */
import type { Layout, LayoutBody, LayoutBoom, Surface } from './parts.js'

export type Point = readonly [x: number, y: number]

/** Streamlined: an elliptic nose over the first 30 % of the length, a tail that narrows over the last 45 %. */
export function bodyWidthShare(share: number): number {
  if (share < 0.3) return Math.sqrt(1 - ((0.3 - share) / 0.3) ** 2)
  if (share <= 0.55) return 1
  const back = (share - 0.55) / 0.45
  return 1 - 0.8 * back * back
}

/** Points along the body at which its outline is drawn; closer at the nose, where it is round. */
const bodyShares = [
  0, 0.004, 0.015, 0.035, 0.065, 0.1, 0.15, 0.2, 0.25, 0.3, 0.42, 0.55, 0.62, 0.7, 0.78, 0.86, 0.93, 1,
]

export function bodyOutline({ x, length, width }: LayoutBody): readonly Point[] {
  const side = (sign: number): Point[] =>
    bodyShares.map((share) => [x - share * length, (sign * bodyWidthShare(share) * width) / 2])
  return [...side(1), ...side(-1).reverse()]
}

/** A level surface, both sides as one. */
export function surfaceOutline({ x, y, span, rootChord, tipChord, sweep, dihedral }: Surface): readonly Point[] {
  const half = (span / 2) * Math.cos(dihedral)
  const tip = x - half * Math.tan(sweep)
  return [
    [tip, y - half],
    [x, y],
    [tip, y + half],
    [tip - tipChord, y + half],
    [x - rootChord, y],
    [tip - tipChord, y - half],
  ]
}

export function boomOutline({ from, to, diameter }: LayoutBoom): readonly Point[] {
  const along = Math.hypot(to.x - from.x, to.y - from.y)
  if (along === 0) return []
  const across = [((from.y - to.y) / along) * (diameter / 2), ((to.x - from.x) / along) * (diameter / 2)] as const
  return [
    [from.x + across[0], from.y + across[1]],
    [to.x + across[0], to.y + across[1]],
    [to.x - across[0], to.y - across[1]],
    [from.x - across[0], from.y - across[1]],
  ]
}

/** All points that the aircraft at rest reaches in plan but for its rotors: corners and ends. */
export function cornersOf({ booms, wing, tail, fins, body, propellers }: Layout): readonly Point[] {
  return [
    ...booms.flatMap(boomOutline),
    ...[wing, tail].flatMap((surface) => (surface === undefined ? [] : surfaceOutline(surface))),
    ...fins.flatMap((fin): Point[] => [
      [fin.x, fin.y],
      [fin.x - fin.rootChord, fin.y],
      [fin.x - fin.span * Math.tan(fin.sweep), fin.y],
      [fin.x - fin.span * Math.tan(fin.sweep) - fin.tipChord, fin.y],
    ]),
    ...(body === undefined ? [] : bodyOutline(body)),
    ...propellers.flatMap(({ x, y, radius }): Point[] => [
      [x, y - radius],
      [x, y + radius],
    ]),
  ]
}

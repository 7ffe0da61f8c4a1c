/** Lines of equal value over a full grid of points, by marching over the two triangles of each grid square. */
import type { MarkOf, Point } from './series.js'

export interface ContourLevel {
  readonly level: number
  readonly segments: readonly (readonly [Point, Point])[]
}

type Corner = readonly [x: number, y: number, value: number]

/** Segments per level, in the units of the mark's x and y; null when the points do not make a full grid. */
export function contourLevels(mark: MarkOf<'contour'>): ContourLevel[] | null {
  const xs = [...new Set(mark.x)].sort((a, b) => a - b)
  const ys = [...new Set(mark.y)].sort((a, b) => a - b)
  if (xs.length < 2 || ys.length < 2 || xs.length * ys.length !== mark.value.length) return null
  const grid = new Map(mark.value.map((value, index) => [`${mark.x[index]} ${mark.y[index]}`, value]))
  if (grid.size !== mark.value.length) return null
  const corner = (i: number, j: number): Corner => {
    const x = xs[i] ?? 0
    const y = ys[j] ?? 0
    return [x, y, grid.get(`${x} ${y}`) ?? Number.NaN]
  }
  return mark.levels.map((level) => {
    const segments: [Point, Point][] = []
    for (let i = 0; i + 1 < xs.length; i++)
      for (let j = 0; j + 1 < ys.length; j++) {
        const [a, b, c, d] = [corner(i, j), corner(i + 1, j), corner(i + 1, j + 1), corner(i, j + 1)]
        for (const triangle of [[a, b, c] as const, [a, c, d] as const]) {
          const segment = crossing(triangle, level)
          if (segment !== null) segments.push(segment)
        }
      }
    return { level, segments }
  })
}

/** Where the plane through a triangle's corners takes the level: one segment or nothing. */
function crossing(triangle: readonly [Corner, Corner, Corner], level: number): [Point, Point] | null {
  const points: Point[] = []
  for (const [from, to] of [
    [0, 1],
    [1, 2],
    [2, 0],
  ] as const) {
    const [x1, y1, v1] = triangle[from]
    const [x2, y2, v2] = triangle[to]
    if (v1 >= level === v2 >= level) continue
    const share = (level - v1) / (v2 - v1)
    points.push([x1 + share * (x2 - x1), y1 + share * (y2 - y1)])
  }
  return points[0] !== undefined && points[1] !== undefined ? [points[0], points[1]] : null
}

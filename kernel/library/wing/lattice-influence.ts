/** Velocity along the normal at a panel's control point from the horseshoe vortices of another panel and of its mirror image. */
import type { Panels } from './lattice-panels.js'

/**
 * Fills the influence matrix, one row per control point: normal velocity [1/m] per unit circulation.
 *
 * The image of a panel is reached by asking for the velocity at the mirrored point and turning its sideward part round, so that one
 * formula serves both halves. About 100 operations a pair and no allocation.
 */
export function fillInfluence(panels: Panels, matrix: Float64Array): void {
  const { count, cx, cy, cz, ny, nz, surface, core } = panels
  for (let at = 0; at < count; at += 1) {
    const x = cx[at] as number
    const y = cy[at] as number
    const z = cz[at] as number
    const sideward = ny[at] as number
    const upward = nz[at] as number
    for (let of = 0; of < count; of += 1) {
      const smoothing = surface[at] === surface[of] ? 0 : (core[of] as number)
      matrix[at * count + of] =
        horseshoe(panels, of, x, y, z, sideward, upward, smoothing) +
        horseshoe(panels, of, x, -y, z, -sideward, upward, smoothing)
    }
  }
}

/**
 * Velocity of one horseshoe along a direction in the cross plane: bound segment A to B, legs from A and B downstream without end.
 *
 * Biot-Savart: a segment gives (r1 x r2)/|r1 x r2|^2 r0 (r1/|r1| - r2/|r2|)/(4 pi), a leg (1 + x/|r|)/(4 pi h^2) across it.
 */
function horseshoe(
  panels: Panels,
  of: number,
  x: number,
  y: number,
  z: number,
  sideward: number,
  upward: number,
  smoothing: number,
): number {
  const x1 = x - (panels.ax[of] as number)
  const y1 = y - (panels.ay[of] as number)
  const z1 = z - (panels.az[of] as number)
  const x2 = x - (panels.bx[of] as number)
  const y2 = y - (panels.by[of] as number)
  const z2 = z - (panels.bz[of] as number)
  const length1 = Math.sqrt(x1 * x1 + y1 * y1 + z1 * z1)
  const length2 = Math.sqrt(x2 * x2 + y2 * y2 + z2 * z2)
  const crossX = y1 * z2 - z1 * y2
  const crossY = z1 * x2 - x1 * z2
  const crossZ = x1 * y2 - y1 * x2
  const x0 = x1 - x2
  const y0 = y1 - y2
  const z0 = z1 - z2
  const square = crossX * crossX + crossY * crossY + crossZ * crossZ + smoothing * (x0 * x0 + y0 * y0 + z0 * z0)
  // On the segment's own line the velocity is none; the threshold is far below any panel's size squared.
  const along =
    square > 1e-24 * length1 * length1 * length2 * length2
      ? ((x0 * x1 + y0 * y1 + z0 * z1) / length1 - (x0 * x2 + y0 * y2 + z0 * z2) / length2) / square
      : 0
  const bound = along * (crossY * sideward + crossZ * upward)
  const leg1 = (1 + x1 / length1) / (y1 * y1 + z1 * z1 + smoothing)
  const leg2 = (1 + x2 / length2) / (y2 * y2 + z2 * z2 + smoothing)
  const legs = leg2 * (y2 * upward - z2 * sideward) - leg1 * (y1 * upward - z1 * sideward)
  return (bound + legs) / (4 * Math.PI)
}

/** Induced drag from the wake far behind, where the vortices are lines along the stream and only their trace matters. */
import type { Panels } from './lattice-panels.js'

/**
 * Sum over the strips of one half of circulation times downwash times width [m^2], for a stream of 1 m/s: C_Di is twice this over the
 * reference area.
 *
 * Munk: the drag of a lifting system is half the density times the integral of circulation times the velocity across the wake trace.
 * Circulation is a strip's sum; the velocity is taken in its middle, from all strips and their images.
 */
export function wakeDrag(panels: Panels, circulation: Float64Array): number {
  const { count, chordwise, cy, cz, ny, nz, ay, az, by, bz, surface, core } = panels
  let drag = 0
  for (let at = 0; at < count; at += chordwise) {
    const y = cy[at] as number
    const z = cz[at] as number
    const sideward = ny[at] as number
    const upward = nz[at] as number
    let velocity = 0
    for (let of = 0; of < count; of += chordwise) {
      const smoothing = surface[at] === surface[of] ? 0 : (core[of] as number)
      const across =
        line(y - (by[of] as number), z - (bz[of] as number), sideward, upward, smoothing) -
        line(y - (ay[of] as number), z - (az[of] as number), sideward, upward, smoothing) +
        line(-y - (by[of] as number), z - (bz[of] as number), -sideward, upward, smoothing) -
        line(-y - (ay[of] as number), z - (az[of] as number), -sideward, upward, smoothing)
      velocity += stripCirculation(circulation, of, chordwise) * across
    }
    const width = Math.hypot((by[at] as number) - (ay[at] as number), (bz[at] as number) - (az[at] as number))
    drag -= stripCirculation(circulation, at, chordwise) * velocity * width
  }
  return drag
}

/** Velocity of a line vortex along the stream, along a direction in the cross plane. */
function line(y: number, z: number, sideward: number, upward: number, smoothing: number): number {
  return (y * upward - z * sideward) / (2 * Math.PI * (y * y + z * z + smoothing))
}

/** Circulation of a strip: the sum of its panels. */
export function stripCirculation(circulation: Float64Array, first: number, chordwise: number): number {
  let sum = 0
  for (let row = 0; row < chordwise; row += 1) sum += circulation[first + row] as number
  return sum
}

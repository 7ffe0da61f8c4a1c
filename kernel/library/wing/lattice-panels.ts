/** Panels of one half of all surfaces, field by field, so that the influence loops read plain numbers. */
import type { SurfaceShape } from './lattice-surface.js'

export interface Panels {
  readonly count: number
  /** Ends of the bound vortex: A inboard, B outboard [m]. */
  readonly ax: Float64Array
  readonly ay: Float64Array
  readonly az: Float64Array
  readonly bx: Float64Array
  readonly by: Float64Array
  readonly bz: Float64Array
  /** Control point [m]. */
  readonly cx: Float64Array
  readonly cy: Float64Array
  readonly cz: Float64Array
  /** Unit normal; its part along the stream is the incidence. */
  readonly ny: Float64Array
  readonly nz: Float64Array
  readonly incidence: Float64Array
  /** Number of the surface a panel belongs to. */
  readonly surface: Int32Array
  /** Square of the smoothing radius that the panel's vortices have for other surfaces [m^2]. */
  readonly core: Float64Array
  readonly spanwise: number
  readonly chordwise: number
}

/**
 * Lays panels on the surfaces: strips of equal width from the plane of symmetry, the last one ending `tipInset` of a strip short of
 * the tip; panels of equal share of the local chord. Vortex at a quarter of the panel, control point at three quarters.
 */
export function layPanels(
  shapes: readonly SurfaceShape[],
  spanwise: number,
  chordwise: number,
  tipInset: number,
): Panels {
  const panels = emptyPanels(shapes.length * spanwise * chordwise, spanwise, chordwise)
  let at = 0
  shapes.forEach((shape, surface) => {
    const width = shape.semiSpan / (spanwise + tipInset)
    for (let strip = 0; strip < spanwise; strip += 1) {
      layStrip(panels, at, shape, strip * width, width)
      for (let row = 0; row < chordwise; row += 1) {
        panels.surface[at + row] = surface
        // Half a strip: a vortex of another surface that passes this near stands for a sheet, not for a line.
        panels.core[at + row] = 0.25 * width * width
      }
      at += chordwise
    }
  })
  return panels
}

function layStrip(panels: Panels, at: number, shape: SurfaceShape, inner: number, width: number): void {
  const outer = inner + width
  const middle = inner + 0.5 * width
  const atThree = (values: Float64Array) => [inner, outer, middle].map((y) => read(values, shape.y, y))
  const [edgeA = 0, edgeB = 0, edgeC = 0] = atThree(shape.leadingEdge)
  const [chordA = 0, chordB = 0, chordC = 0] = atThree(shape.chord)
  const [zA = 0, zB = 0, zC = 0] = atThree(shape.z)
  const slant = Math.hypot(width, zB - zA)
  const incidence = read(shape.twist, shape.y, middle)
  const { chordwise } = panels
  for (let row = 0; row < chordwise; row += 1) {
    const panel = at + row
    const bound = (row + 0.25) / chordwise
    panels.ax[panel] = edgeA + bound * chordA
    panels.ay[panel] = inner
    panels.az[panel] = zA
    panels.bx[panel] = edgeB + bound * chordB
    panels.by[panel] = outer
    panels.bz[panel] = zB
    panels.cx[panel] = edgeC + ((row + 0.75) / chordwise) * chordC
    panels.cy[panel] = middle
    panels.cz[panel] = zC
    panels.ny[panel] = -(zB - zA) / slant
    panels.nz[panel] = width / slant
    panels.incidence[panel] = incidence
  }
}

/** Value at y, straight between stations. */
function read(values: Float64Array, stations: Float64Array, y: number): number {
  let right = 1
  while (right < stations.length - 1 && (stations[right] as number) < y) right += 1
  const [from, to] = [stations[right - 1] as number, stations[right] as number]
  const share = (y - from) / (to - from)
  return (values[right - 1] as number) * (1 - share) + (values[right] as number) * share
}

function emptyPanels(count: number, spanwise: number, chordwise: number): Panels {
  const column = () => new Float64Array(count)
  return {
    count,
    ax: column(),
    ay: column(),
    az: column(),
    bx: column(),
    by: column(),
    bz: column(),
    cx: column(),
    cy: column(),
    cz: column(),
    ny: column(),
    nz: column(),
    incidence: column(),
    surface: new Int32Array(count),
    core: column(),
    spanwise,
    chordwise,
  }
}

/** Evaluates a table section: linear in angle and in the logarithm of the Reynolds number, the flat plate past the ends. */
import { prandtlGlauert } from './compressibility.js'
import { wrap } from './linear-polar.js'
import type { Polar } from './polar.js'
import { dragPastStall, liftPastStall, type StallPoint } from './post-stall.js'
import type { TableSection } from './table.js'

interface Rows {
  readonly logReynolds: number
  readonly angle: Float64Array
  readonly lift: Float64Array
  readonly drag: Float64Array
  readonly least: number
}

export class TablePolar implements Polar {
  lift = 0
  drag = 0
  stalled = false
  readonly leastReynolds: number
  readonly greatestReynolds: number
  readonly #rows: readonly Rows[]
  readonly #tableFactor: number
  readonly #stall: StallPoint

  constructor(section: TableSection) {
    this.#rows = section.polars.map((polar) => ({
      logReynolds: Math.log(polar.reynolds),
      angle: Float64Array.from(polar.angle),
      lift: Float64Array.from(polar.lift),
      drag: Float64Array.from(polar.drag),
      least: Math.min(...polar.drag),
    }))
    this.#tableFactor = 1 / prandtlGlauert(section.mach)
    this.#stall = { angle: 0, lift: 0, drag: 0, plate: section.plateDrag, least: 0 }
    const bounded = (section.polars[0]?.reynolds ?? 0) > 0
    this.leastReynolds = bounded ? (section.polars[0]?.reynolds ?? 0) : 0
    this.greatestReynolds = bounded
      ? (section.polars[section.polars.length - 1]?.reynolds ?? 0)
      : Number.POSITIVE_INFINITY
  }

  evaluate(angle: number, reynolds: number, mach: number): void {
    const rows = this.#rows
    const factor = this.#tableFactor * prandtlGlauert(mach)
    const wrapped = wrap(angle)
    let above = 0
    if (rows.length > 1) {
      const log = Math.log(reynolds)
      while (above < rows.length && (rows[above] as Rows).logReynolds < log) above += 1
      if (above > 0 && above < rows.length) {
        this.#between(rows[above - 1] as Rows, rows[above] as Rows, log, wrapped, factor)
        return
      }
      if (above === rows.length) above -= 1
    }
    this.#within(rows[above] as Rows, wrapped, factor)
  }

  #between(low: Rows, high: Rows, logReynolds: number, angle: number, factor: number): void {
    const share = (logReynolds - low.logReynolds) / (high.logReynolds - low.logReynolds)
    this.#within(low, angle, factor)
    const { lift, drag, stalled } = this
    this.#within(high, angle, factor)
    this.lift = lift + share * (this.lift - lift)
    this.drag = drag + share * (this.drag - drag)
    this.stalled = stalled || this.stalled
  }

  #within(rows: Rows, angle: number, factor: number): void {
    const { angle: angles } = rows
    const last = angles.length - 1
    if (angle > (angles[last] as number) || angle < (angles[0] as number)) {
      this.#beyond(rows, angle > 0 ? last : 0, angle, factor)
      return
    }
    let low = 0
    let high = last
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if ((angles[middle] as number) <= angle) low = middle
      else high = middle
    }
    const share = (angle - (angles[low] as number)) / ((angles[high] as number) - (angles[low] as number))
    const { lift, drag } = rows
    this.lift = factor * ((lift[low] as number) + share * ((lift[high] as number) - (lift[low] as number)))
    this.drag = (drag[low] as number) + share * ((drag[high] as number) - (drag[low] as number))
    this.stalled = false
  }

  #beyond(rows: Rows, end: number, angle: number, factor: number): void {
    const stall = this.#stall
    stall.angle = Math.abs(rows.angle[end] as number)
    stall.lift = Math.abs(factor * (rows.lift[end] as number))
    stall.drag = rows.drag[end] as number
    stall.least = rows.least
    const past = Math.abs(angle)
    this.lift = Math.sign(angle) * liftPastStall(past, stall)
    this.drag = dragPastStall(past, stall)
    this.stalled = true
  }
}

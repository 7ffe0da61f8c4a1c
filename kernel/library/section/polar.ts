/** What blade elements see of a section: a polar that is asked many times. */

/** Answers in its own fields, so that a blade may ask ten thousand times without allocating. */
export interface Polar {
  /** Lift coefficient of the last question. */
  lift: number
  /** Drag coefficient of the last question. */
  drag: number
  /** True when the last angle was past the stall. */
  stalled: boolean
  /** Reynolds numbers between which the polar is more than a held end. */
  readonly leastReynolds: number
  readonly greatestReynolds: number
  /** Angle of attack [rad], Reynolds and Mach number. */
  evaluate(angle: number, reynolds: number, mach: number): void
}

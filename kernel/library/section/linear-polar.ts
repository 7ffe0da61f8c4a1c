/** Evaluates a linear section: attached flow in the common case, the flat plate past the stall. */
import { prandtlGlauert, waveDrag } from './compressibility.js'
import type { LinearSection } from './linear.js'
import type { Polar } from './polar.js'
import { dragPastStall, liftPastStall, type StallPoint } from './post-stall.js'

/** The Reynolds factor is held between these: outside them the power law has no support. */
const leastFactor = 0.5
const greatestFactor = 1.5

export class LinearPolar implements Polar {
  lift = 0
  drag = 0
  stalled = false
  readonly leastReynolds: number
  readonly greatestReynolds: number
  readonly #slope: number
  readonly #zeroLiftAngle: number
  readonly #minimumDrag: number
  readonly #middle: number
  readonly #halfWidth: number
  readonly #rise: number
  readonly #maximumLift: number
  readonly #minimumLift: number
  readonly #referenceReynolds: number
  readonly #exponent: number
  readonly #thickness: number
  readonly #stall: StallPoint

  constructor(section: LinearSection) {
    this.#slope = section.liftSlope
    this.#zeroLiftAngle = section.zeroLiftAngle
    this.#minimumDrag = section.minimumDrag
    this.#middle = section.liftAtMinimumDrag
    this.#halfWidth = section.bucketHalfWidth
    this.#rise = section.dragRise
    this.#maximumLift = section.maximumLift
    this.#minimumLift = section.minimumLift
    this.#referenceReynolds = section.referenceReynolds ?? 0
    this.#exponent = section.reynoldsExponent
    this.#thickness = section.thickness ?? 0
    const width = this.#exponent > 0 ? greatestFactor ** (1 / this.#exponent) : Number.POSITIVE_INFINITY
    const bounded = this.#referenceReynolds > 0
    this.leastReynolds = bounded ? this.#referenceReynolds / width : 0
    this.greatestReynolds = bounded ? this.#referenceReynolds * width : Number.POSITIVE_INFINITY
    this.#stall = { angle: 0, lift: 0, drag: 0, plate: section.plateDrag, least: 0 }
  }

  evaluate(angle: number, reynolds: number, mach: number): void {
    const factor = this.#reynoldsFactor(reynolds)
    const slope = this.#slope * prandtlGlauert(mach)
    const fromZero = wrap(angle - this.#zeroLiftAngle)
    const lift = slope * fromZero
    const bound = factor * (fromZero >= 0 ? this.#maximumLift : this.#minimumLift)
    this.stalled = Math.abs(lift) > Math.abs(bound)
    if (!this.stalled) {
      this.lift = lift
      this.drag = this.#attachedDrag(lift, factor, mach)
      return
    }
    const stall = this.#stall
    stall.angle = Math.abs(bound / slope)
    stall.lift = Math.abs(bound)
    stall.drag = this.#attachedDrag(bound, factor, mach)
    stall.least = this.#minimumDrag / factor
    const past = Math.abs(fromZero)
    this.lift = Math.sign(fromZero) * liftPastStall(past, stall)
    this.drag = dragPastStall(past, stall)
  }

  #reynoldsFactor(reynolds: number): number {
    if (this.#referenceReynolds === 0 || this.#exponent === 0) return 1
    const factor = (reynolds / this.#referenceReynolds) ** this.#exponent
    return Math.min(Math.max(factor, leastFactor), greatestFactor)
  }

  #attachedDrag(lift: number, factor: number, mach: number): number {
    const outside = Math.abs(lift - this.#middle) - this.#halfWidth
    const bucket = outside > 0 ? this.#minimumDrag + this.#rise * outside * outside : this.#minimumDrag
    const wave = this.#thickness > 0 ? waveDrag(mach, this.#thickness, lift) : 0
    return bucket / factor + wave
  }
}

/** The same angle between -pi and pi. */
export function wrap(angle: number): number {
  if (angle >= -Math.PI && angle <= Math.PI) return angle
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI))
}

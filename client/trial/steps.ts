/** Steps of a slider or a field, in the unit shown: sensible in size, and rounded so that no digit stands there for nothing. */

/** Ends of a stated range, in the unit shown. */
export interface Scale {
  readonly low: number
  readonly high: number
}

/** A hundredth of the range; without a range a round number of about a hundredth of the value. */
export function stepOf(value: number, scale: Scale | undefined): number {
  if (scale !== undefined && scale.high > scale.low) return (scale.high - scale.low) / 100
  const magnitude = Math.abs(value)
  return magnitude === 0 || !Number.isFinite(magnitude) ? 0.01 : 10 ** Math.floor(Math.log10(magnitude) - 2)
}

/** So many steps on, ten times a step when it is large. */
export function stepped(value: number, scale: Scale | undefined, steps: number): number {
  const step = stepOf(value, scale)
  return roundedTo(value + steps * step, step / 10)
}

/** Where a slider was dragged to, in parts that can be told apart by eye; its ends are the ends of the range. */
export function dragged(position: number, scale: Scale): number {
  if (position <= scale.low) return scale.low
  if (position >= scale.high) return scale.high
  const to = roundedTo(position, (scale.high - scale.low) / 200)
  return Math.min(scale.high, Math.max(scale.low, to))
}

/** To the power of ten at or below the grain. */
function roundedTo(value: number, grain: number): number {
  const digits = Math.min(100, Math.max(0, -Math.floor(Math.log10(grain))))
  return Math.abs(value) < 1e21 ? Number(value.toFixed(digits)) : value
}

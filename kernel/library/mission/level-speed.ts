/** Speeds of level wing-borne flight that are best for something, with wind and hotel power. No checks, no allocation. */
import type { Moment } from './moment.js'

/**
 * Battery power of level flight is `cubic` V^3 + `inverse`/V + `constant`. Where a static thrust raises the propeller's power at low
 * speed (below any floor, as a rule) the best speeds do not see it.
 */
export interface LevelPower {
  cubic: number
  inverse: number
  constant: number
}

export function setLevelPower(to: LevelPower, moment: Moment): void {
  const { cruise, hotelPower } = moment.craft
  const efficiency = cruise.efficiency * cruise.propellerEfficiency
  to.cubic = moment.parasite / efficiency
  to.inverse = (moment.induced * moment.weight * moment.weight) / efficiency
  to.constant = hotelPower
}

/** Of least power: hotel power and wind do not move it. */
export function leastPowerSpeed({ cubic, inverse }: LevelPower): number {
  return (inverse / (3 * cubic)) ** 0.25
}

/**
 * Of least energy per ground distance: P/(V + w) least, w from behind. With P convex, g = P' (V + w) - P rises from below zero at V = -w
 * and has one zero; Newton's steps are kept inside their bracket.
 */
export function bestRangeSpeed(power: LevelPower, tailwind: number): number {
  const { cubic, inverse, constant } = power
  let low = Math.max(0, -tailwind)
  let high = Number.MAX_VALUE
  // Still air without hotel power has a closed form, and a headwind only adds to it.
  let speed = (inverse / cubic) ** 0.25 + low
  for (let step = 0; step < 60; step += 1) {
    const square = speed * speed
    const slope = 3 * cubic * square - inverse / square
    const g = slope * (speed + tailwind) - (cubic * square * speed + inverse / speed + constant)
    if (g > 0) high = speed
    else low = speed
    const next = speed - g / ((6 * cubic * speed + (2 * inverse) / (square * speed)) * (speed + tailwind))
    const kept = next > low && next < high ? next : high < Number.MAX_VALUE ? 0.5 * (low + high) : 2 * speed
    if (Math.abs(kept - speed) <= 1e-13 * speed) return kept
    speed = kept
  }
  return speed
}

/** Greatest at which a battery power (hotel power included) suffices; 0 where it never does. */
export function greatestSpeed(power: LevelPower, available: number): number {
  const { cubic, inverse, constant } = power
  const least = leastPowerSpeed(power)
  const excess = (speed: number) => cubic * speed * speed * speed + inverse / speed + constant - available
  if (!(excess(least) <= 0)) return 0
  // Above the speed of least power the excess is convex and rising: from beyond the root Newton comes down to it.
  let speed = Math.max(least, Math.cbrt(Math.max(0, available - constant) / cubic))
  for (let step = 0; step < 60; step += 1) {
    const slope = 3 * cubic * speed * speed - inverse / (speed * speed)
    if (!(slope > 0)) return speed
    const next = Math.max(least, speed - excess(speed) / slope)
    if (Math.abs(next - speed) <= 1e-13 * speed) return next
    speed = next
  }
  return speed
}

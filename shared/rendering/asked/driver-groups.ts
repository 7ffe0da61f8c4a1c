/** Which drivers stand where: what does not compute first, so that nobody overlooks it, then by size. */
import { type Driver, type Drivers, largestChange } from '../../contracts/index.js'

/** Below this share of the largest change a driver is folded away. House convention. */
const worthARow = 0.01

export interface DriverGroups {
  /** An end, or a value close by, does not compute. */
  readonly failing: readonly Driver[]
  readonly moving: readonly Driver[]
  readonly slight: readonly Driver[]
  /** The largest change of all [SI]. */
  readonly largest: number
}

export function driverGroups({ drivers }: Drivers): DriverGroups {
  const largest = Math.max(0, ...drivers.map(largestChange))
  const failing = drivers.filter(({ unsteady }) => unsteady === 'failure')
  const others = drivers.filter(({ unsteady }) => unsteady !== 'failure')
  const slight = others.filter((driver) => largestChange(driver) < worthARow * largest)
  return { failing, moving: others.filter((driver) => !slight.includes(driver)), slight, largest }
}

/** How many assumptions were asked about. */
export function askedCount({ drivers, without, unvaried, left }: Drivers): number {
  return drivers.length + without.length + unvaried.length + left.length
}

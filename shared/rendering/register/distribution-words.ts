/** A distribution in words, wherever the register is read. */
import type { Distribution, ResultNumber } from '../../contracts/index.js'

/** `normal, deviation 5 kg`; `shown` gives a number in the unit of the row. */
export function distributionWords(distribution: Distribution, shown: (si: ResultNumber) => string): string {
  switch (distribution.kind) {
    case 'normal':
      return `normal, deviation ${shown(distribution.deviation)}`
    case 'uniform':
    case 'triangular':
      return `${distribution.kind}, ${shown(distribution.low)} to ${shown(distribution.high)}`
    case 'lognormal':
      return `lognormal, factor ${distribution.factor}`
  }
}

import { requirePositive } from '../check.js'
import { checkOptions } from '../errors.js'
import { adviseOutside, requireChoice } from '../outside.js'
import type { Mass, Ratio } from '../quantity.js'

export interface ManoeuvreLoadFactorOptions {
  /** Design maximum mass [kg]. */
  readonly mass: Mass
  /** `'normal'` when left out. */
  readonly category?: 'normal' | 'utility' | 'acrobatic'
}

export interface ManoeuvreLoadFactor {
  /** Largest limit load factor; structure must carry 1.5 times as much. */
  readonly positive: Ratio
  /** Least limit load factor, below 0. */
  readonly negative: Ratio
}

const method = 'wing.manoeuvreLoadFactor'
const known = new Set(['mass', 'category'])
const categories = ['normal', 'utility', 'acrobatic'] as const
const pound = 0.45359237
/** The rules end here [kg]: 12,500 lb. */
const heaviest = 12_500 * pound

/**
 * Limit manoeuvring load factors of the small-aeroplane rules.
 *
 * @equation normal: n = min(3.8, 2.1 + 24000/(W[lb] + 10000)), -0.4 n; utility 4.4, -0.4 n; acrobatic 6.0, -0.5 n
 * @param options - `mass` [kg]; optional `category` ('normal')
 * @returns `positive` and `negative` limit load factors
 * @throws InvalidInput for a mass that is not positive, an unknown category, and an unknown option
 * @method As printed; pounds of mass.
 * @validity Aeroplanes up to 12,500 lb (5669.9 kg; advisory above). No rule for powered lift is meant: the rules that apply, and licensed engineers,
 * decide.
 * @source 14 CFR 23.337 before its revision of 2017, CS-23 Amendment 4 (normal category read, the others from memory).
 * @example
 * const limit = wing.manoeuvreLoadFactor({ mass: 2000 * u.kg })
 * limit.positive // 3.765597
 */
export function manoeuvreLoadFactor(options: ManoeuvreLoadFactorOptions): ManoeuvreLoadFactor {
  checkOptions(method, options, known)
  const { mass, category = 'normal' } = options
  requirePositive(method, 'mass', mass, 'kg')
  requireChoice(method, 'category', category, categories)
  adviseOutside(mass, {
    code: 'MANOEUVRE_MASS',
    method,
    quantity: 'mass',
    high: heaviest,
    because: 'above 5669.9 kg (12,500 lb) these rules do not apply',
  })
  if (category === 'acrobatic') return { positive: 6, negative: -3 }
  const positive = category === 'utility' ? 4.4 : Math.min(3.8, 2.1 + 24_000 / (mass / pound + 10_000))
  return { positive, negative: -0.4 * positive }
}

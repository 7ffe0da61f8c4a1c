import { requireNonNegative, requireRepresentable, requireText, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Mass, Ratio } from '../quantity.js'

/** How far an item's mass is known. */
export type Maturity = 'guessed' | 'estimated' | 'drawn' | 'calculated' | 'weighed'

export interface GrowthItem {
  readonly name: string
  /** As known today [kg]. */
  readonly mass: Mass
  readonly maturity: Maturity
  /** Share by which it will grow, in place of the table's. */
  readonly allowance?: Ratio
}

export interface Growth {
  /** As known today [kg]. */
  readonly basicMass: Mass
  /** Sum of the allowances [kg]. */
  readonly growth: Mass
  /** [kg] */
  readonly predictedMass: Mass
  /** Growth over basic mass. */
  readonly growthShare: Ratio
  readonly items: readonly {
    readonly name: string
    readonly mass: Mass
    readonly allowance: Ratio
    readonly predictedMass: Mass
  }[]
}

const method = 'mass.growth'
const knownItem = new Set(['name', 'mass', 'maturity', 'allowance'])
const allowances: Readonly<Record<Maturity, number>> = Object.freeze({
  guessed: 0.3,
  estimated: 0.2,
  drawn: 0.12,
  calculated: 0.06,
  weighed: 0,
})

/**
 * What a list of masses will have grown to when the aircraft is built: an allowance for each item by how far it is known.
 *
 * @equation m_predicted = sum of m (1 + a), a by maturity: guessed 0.30, estimated 0.20, drawn 0.12, calculated 0.06, weighed 0
 * @param items - list of `{ name, mass [kg], maturity, allowance }`; `allowance` takes the place of the table's
 * @returns `basicMass`, `growth`, `predictedMass` [kg], `growthShare`, `items` with their `allowance` and `predictedMass`
 * @throws InvalidInput for an empty list, an item without a name, a negative mass, a maturity it does not know, an allowance outside 0 to 2, and an unknown option
 * @method House table in the order of size of standards for space and aircraft mass properties. It is growth, not scatter: methods differ besides (`mass.spread`), and what is forgotten altogether
 * is not in any list.
 * @validity Concept studies: everything is guessed or estimated, bought equipment weighed.
 * @source Idea: ANSI/AIAA S-120A, Mass Properties Control for Space Systems (from memory). Numbers: common practice, no source.
 * @example
 * const grown = mass.growth([
 *   { name: 'wing', mass: 180 * u.kg, maturity: 'estimated' }, { name: 'camera', mass: 4 * u.kg, maturity: 'weighed' },
 * ])
 * grown.predictedMass // 220
 */
export function growth(items: readonly GrowthItem[]): Growth {
  if (!Array.isArray(items) || items.length === 0)
    throw new InvalidInput({
      method,
      argument: 'items',
      value: describeValue(items),
      accepted: 'a list of at least one { name, mass, maturity }',
    })
  const grown = items.map((item, index) => grow(item, `items[${index}]`))
  const basicMass = grown.reduce((sum, item) => sum + item.mass, 0)
  const predictedMass = grown.reduce((sum, item) => sum + item.predictedMass, 0)
  requireRepresentable(method, basicMass + predictedMass)
  const added = predictedMass - basicMass
  return { basicMass, growth: added, predictedMass, growthShare: basicMass > 0 ? added / basicMass : 0, items: grown }
}

function grow(item: GrowthItem, at: string) {
  checkOptions(`${method} ${at}`, item, knownItem)
  const { name, mass, maturity } = item
  requireText(method, `${at}.name`, name)
  requireNonNegative(method, `${at}.mass`, mass, 'kg')
  if (!Object.hasOwn(allowances, maturity))
    throw new InvalidInput({
      method,
      argument: `${at}.maturity`,
      value: describeValue(maturity),
      accepted: `one of ${Object.keys(allowances).join(', ')}`,
    })
  const allowance = item.allowance ?? allowances[maturity]
  requireWithin(method, `${at}.allowance`, allowance, '1', 0, 2)
  return { name, mass, allowance, predictedMass: mass * (1 + allowance) }
}

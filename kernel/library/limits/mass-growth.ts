/** Mass growth by item and maturity, apart from the scatter of methods, and what both do to the gross mass. */
import { requireNonNegative, requirePositive, requireRepresentable, requireText, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Mass, Ratio } from '../quantity.js'
import { requireList } from '../shapes.js'

/** What an item is, in the words of the standard. */
export type GrowthCategory =
  | 'structure'
  | 'fittings'
  | 'battery'
  | 'thermal control'
  | 'mechanism'
  | 'propulsion'
  | 'wire harness'
  | 'electronics'
  | 'instrumentation'

/** How far the design of an item is, in the words of the standard. */
export type DesignMaturity = 'estimated' | 'layout' | 'pre-release' | 'released' | 'existing' | 'actual'

export interface MassAllowanceOptions {
  readonly category: GrowthCategory
  readonly maturity: DesignMaturity
}

export interface GrowingItem {
  readonly name: string
  /** As known today [kg]. */
  readonly mass: Mass
  /** Growth as a share of the mass; in place of category and maturity. */
  readonly allowance?: Ratio
  readonly category?: GrowthCategory
  readonly maturity?: DesignMaturity
  /** What methods give at the least and at the most, as `mass.spread` has it [kg]; the mass itself when left out. */
  readonly low?: Mass
  readonly high?: Mass
}

export interface MassGrowthOptions {
  readonly items: readonly GrowingItem[]
  /** d(gross)/d(fixed mass), as `sizing.growthFactor` gives it; 1 when left out. */
  readonly growthFactor?: Ratio
}

export interface MassGrowthRow {
  readonly item: string
  /** [kg] */
  readonly mass: Mass
  readonly allowance: Ratio
  /** [kg] */
  readonly growth: Mass
  /** Of the methods, against the mass [kg]. */
  readonly scatterLow: Mass
  /** [kg] */
  readonly scatterHigh: Mass
  /** Of the aircraft, for the growth of this item [kg]. */
  readonly grossGrowth: Mass
}

export interface MassGrowth {
  /** As known today [kg]. */
  readonly basicMass: Mass
  /** [kg] */
  readonly growth: Mass
  /** [kg] */
  readonly predictedMass: Mass
  /** Of the aircraft: growth times growth factor [kg]. */
  readonly grossGrowth: Mass
  /** Of methods, independent of each other: root of the sum of squares [kg]. */
  readonly scatterLow: Mass
  /** [kg] */
  readonly scatterHigh: Mass
  /** The item that adds most first. */
  readonly rows: readonly MassGrowthRow[]
}

const method = 'limits.massGrowth'
const known = new Set(['items', 'growthFactor'])
const knownItem = new Set(['name', 'mass', 'allowance', 'category', 'maturity', 'low', 'high'])
const knownAllowance = new Set(['category', 'maturity'])
const maturities = ['estimated', 'layout', 'pre-release', 'released', 'existing', 'actual'] as const
/** In the order of the maturities. */
const allowances: Readonly<Record<GrowthCategory, readonly number[]>> = Object.freeze({
  structure: [0.25, 0.15, 0.1, 0.05, 0.03, 0],
  fittings: [0.3, 0.2, 0.15, 0.06, 0.03, 0],
  battery: [0.25, 0.15, 0.1, 0.05, 0.03, 0],
  'thermal control': [0.25, 0.2, 0.15, 0.05, 0.02, 0],
  mechanism: [0.25, 0.15, 0.1, 0.05, 0.03, 0],
  propulsion: [0.25, 0.15, 0.1, 0.05, 0.03, 0],
  'wire harness': [0.55, 0.3, 0.25, 0.1, 0.05, 0],
  electronics: [0.25, 0.2, 0.15, 0.05, 0.03, 0],
  instrumentation: [0.55, 0.3, 0.25, 0.1, 0.05, 0],
})
const categories = Object.keys(allowances) as GrowthCategory[]

/**
 * Mass growth allowance of an item by what it is and how far its design is.
 *
 * @equation table of shares, by category and maturity
 * @param options - `category` (`'structure'`, `'fittings'`, `'battery'`, `'thermal control'`, `'mechanism'`, `'propulsion'`, `'wire harness'`, `'electronics'`, `'instrumentation'`) and `maturity` (`'estimated'`,
 * `'layout'`, `'pre-release'`, `'released'`, `'existing'`, `'actual'`)
 * @returns share of the mass by which it will grow
 * @throws InvalidInput for a category or maturity it does not know, and an unknown option
 * @method Table lookup. `electronics` is the middle of the standard's three sizes of box.
 * @validity Written for spacecraft; aircraft of a new kind grow at least as much. It is growth of what is listed, not of what was forgotten.
 * @source ANSI/AIAA S-120-2006, Mass Properties Control for Space Systems, table of mass growth allowance (all numbers from memory: look them up before citing).
 * @example
 * limits.massAllowance({ category: 'wire harness', maturity: 'layout' }) // 0.3
 */
export function massAllowance(options: MassAllowanceOptions): Ratio {
  const caller = 'limits.massAllowance'
  checkOptions(caller, options, knownAllowance)
  return lookUp(caller, '', options.category, options.maturity)
}

/**
 * Mass growth of a list of items, the scatter of methods beside it and never mixed with it, and the gross mass that both cost.
 *
 * @equation growth_i = a_i m_i; gross growth = G sum of growth_i; scatter = sqrt(sum of (high_i - m_i)^2), and the same below
 * @param options - `items`: list of `{ name, mass [kg], category, maturity, allowance, low [kg], high [kg] }` (`allowance` in place of category and maturity); optional `growthFactor` G (1)
 * @returns `basicMass`, `growth`, `predictedMass`, `grossGrowth`, `scatterLow`, `scatterHigh` [kg], `rows` by item, the greatest growth first
 * @throws InvalidInput for an empty list, an item without a name, neither allowance nor category and maturity, a negative mass, a mass outside its own `low` to `high`, and an unknown option
 * @method Growth is a bias, always up: what is drawn later weighs more. Scatter is what methods disagree about today, either way; items are taken as independent of each other in it.
 * @validity Concept studies: nearly everything is "estimated" or "layout". Methods that share a data base err together, so the scatter is the least it can be.
 * @source Allowances as `limits.massAllowance`. Keeping the two apart: common practice of mass properties engineering, no source.
 * @example
 * const grown = limits.massGrowth({
 *   growthFactor: 2.5, items: [
 *     { name: 'wing', mass: 180 * u.kg, category: 'structure', maturity: 'estimated', low: 150 * u.kg, high: 220 * u.kg },
 *     { name: 'camera', mass: 4 * u.kg, category: 'instrumentation', maturity: 'actual' },
 *   ],
 * })
 * grown.grossGrowth // 112.5
 */
export function massGrowth(options: MassGrowthOptions): MassGrowth {
  checkOptions(method, options, known)
  const { items, growthFactor = 1 } = options
  requirePositive(method, 'growthFactor', growthFactor, '1')
  requireList(method, 'items', items, '{ name, mass, category, maturity }')
  const rows = items.map((item, index) => rowOf(item, `items[${index}]`, growthFactor))
  const sum = (of: (row: MassGrowthRow) => number) => rows.reduce((total, row) => total + of(row), 0)
  const basicMass = sum((row) => row.mass)
  const growth = sum((row) => row.growth)
  const grossGrowth = growthFactor * growth
  const scatterLow = Math.sqrt(sum((row) => row.scatterLow ** 2))
  const scatterHigh = Math.sqrt(sum((row) => row.scatterHigh ** 2))
  requireRepresentable(method, basicMass + growth + grossGrowth + scatterLow + scatterHigh)
  return {
    basicMass,
    growth,
    predictedMass: basicMass + growth,
    grossGrowth,
    scatterLow,
    scatterHigh,
    rows: rows.sort((a, b) => b.growth - a.growth),
  }
}

function rowOf(item: GrowingItem, at: string, growthFactor: number): MassGrowthRow {
  checkOptions(`${method} ${at}`, item, knownItem)
  const { name, mass, low = mass, high = mass } = item
  requireText(method, `${at}.name`, name)
  requireNonNegative(method, `${at}.mass`, mass, 'kg')
  requireWithin(method, `${at}.low`, low, 'kg', 0, mass)
  requireWithin(method, `${at}.high`, high, 'kg', mass, Number.MAX_VALUE)
  const allowance = allowanceOf(item, at)
  const growth = allowance * mass
  return {
    item: name,
    mass,
    allowance,
    growth,
    scatterLow: mass - low,
    scatterHigh: high - mass,
    grossGrowth: growthFactor * growth,
  }
}

function allowanceOf(item: GrowingItem, at: string): number {
  if (item.allowance !== undefined) {
    requireWithin(method, `${at}.allowance`, item.allowance, '1', 0, 2)
    return item.allowance
  }
  return lookUp(method, `${at}.`, item.category, item.maturity)
}

function lookUp(
  caller: string,
  at: string,
  category: GrowthCategory | undefined,
  maturity: DesignMaturity | undefined,
): number {
  if (category === undefined || maturity === undefined)
    throw new InvalidInput({
      method: caller,
      argument: `${at}${category === undefined ? 'category' : 'maturity'}`,
      value: 'missing',
      accepted: 'given, both of category and maturity',
    })
  requireChoice(caller, `${at}category`, category, categories)
  requireChoice(caller, `${at}maturity`, maturity, maturities)
  return allowances[category][maturities.indexOf(maturity)] as number
}

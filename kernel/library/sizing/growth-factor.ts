/** What a kilogram costs: the growth of gross mass per fixed mass added, and per anything else that the build-up depends on. */
import { requireFinite, requirePositive, requireRepresentable, requireText, requireUnit } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { writeNumber } from '../number-text.js'
import { derivative } from '../numerics/index.js'
import type { Mass, Ratio } from '../quantity.js'
import { advise, isListening, silently } from '../recorder.js'
import { requireFunction } from '../shapes.js'
import { itemsOf, type MassItems, totalMass } from './build-up.js'

export interface GrowthFactorOptions {
  /** As for `sizing.close`. */
  readonly requiredMass: (grossMass: Mass) => Mass | MassItems
  /** That closes: `sizing.close` gives it [kg]. */
  readonly grossMass: Mass
}

export interface GrowthShare {
  readonly item: string
  /** Gained by this item per fixed mass added [kg/kg]. */
  readonly growth: Ratio
}

export interface GrowthFactor {
  /** d(gross)/d(fixed mass) [kg/kg]. */
  readonly growthFactor: Ratio
  /** The same from the lighter side alone and the heavier side alone; they differ where a limit changes at this very mass. */
  readonly lighter: Ratio
  readonly heavier: Ratio
  /** Where the growth goes, the greatest first: with the added mass itself they sum to the growth factor. */
  readonly items: readonly GrowthShare[]
}

export interface SensitivityOptions {
  /** The build-up at a gross mass [kg] and a value of the variable [SI]. */
  readonly requiredMass: (grossMass: Mass, value: number) => Mass | MassItems
  /** That closes at the value [kg]. */
  readonly grossMass: Mass
  readonly name: string
  /** Of the variable in the design at hand [SI]. */
  readonly value: number
  /** Unit text for sentences. */
  readonly unit?: string
}

export interface Sensitivity {
  readonly name: string
  /** d(gross)/d(value) [kg per SI unit of the variable]. */
  readonly slope: number
  /** Relative change of gross mass per relative change of the variable. */
  readonly elasticity: Ratio
  /** 1/(1 - d required/d gross): what multiplies the direct effect. */
  readonly growthFactor: Ratio
}

const method = 'sizing.growthFactor'
const known = new Set(['requiredMass', 'grossMass'])
const knownSensitivity = new Set(['requiredMass', 'grossMass', 'name', 'value', 'unit'])
const closeEnough = 1e-4
const firstStep = 0.02
/** Slopes of the two sides that differ by more than this are two slopes. */
const kink = 1e-3

/**
 * Growth factor: how much heavier the closed aircraft becomes for each kilogram of fixed mass added to it.
 *
 * @equation G = d(gross)/d(fixed) = 1/(1 - d required/d gross); item i takes G d(item_i)/d(gross)
 * @param options - `requiredMass` (gross mass [kg]) to mass [kg] or masses by item [kg], `grossMass` at which it closes [kg]
 * @returns `growthFactor`, from the `lighter` and the `heavier` side, and `items` with their `growth`, the greatest first
 * @throws InvalidInput for a gross mass at which the build-up does not close, a slope of 1 or more (the heavier of two roots, or the fold), answers that are not masses, and an unknown option
 * @method Implicit differentiation of m = required(m) + x; the slope by Ridders' extrapolated differences. Where the sides differ by a thousandth a limit changes at this mass and an advisory says so.
 * @validity Small changes: near the fold the factor grows without bound and a kilogram is no longer small.
 * @source Implicit function theorem; growth factor as in Raymer, D. P., Aircraft Design: A Conceptual Approach, chapter on sizing (from memory). Numerics: Ridders, C. J. F., 1982 (from memory).
 * @example
 * const growth = sizing.growthFactor({
 *   grossMass: 1000 * u.kg, requiredMass: (grossMass) => ({ payload: 400 * u.kg, structure: 0.32 * grossMass, battery: 0.28 * grossMass }),
 * })
 * growth.growthFactor // 2.5
 */
export function growthFactor(options: GrowthFactorOptions): GrowthFactor {
  checkOptions(method, options, known)
  const { requiredMass, grossMass } = options
  requireFunction(method, 'requiredMass', requiredMass, 'a function that gives the required mass at a gross mass')
  requirePositive(method, 'grossMass', grossMass, 'kg')
  const total = (mass: number) => totalMass(method, requiredMass(mass), mass)
  requireClosed(
    method,
    silently(() => total(grossMass)),
    grossMass,
  )
  const step = firstStep * grossMass
  const slopes = silently(() => [-1, 0, 1].map((side) => derivative(total, grossMass, step, side as -1 | 0 | 1).value))
  const [lighter = 0, central = 0, heavier = 0] = slopes
  const items = silently(() => sharesOf(requiredMass, grossMass, step, factorOf(method, central)))
  const answer = {
    growthFactor: factorOf(method, central),
    lighter: sideFactor(lighter),
    heavier: sideFactor(heavier),
    items,
  }
  if (isListening() && Math.abs(lighter - heavier) > kink * Math.max(1, Math.abs(central)))
    adviseKink(answer, grossMass)
  return answer
}

/**
 * Slope of gross mass along any variable of the build-up, by implicit differentiation: no new closure is needed.
 *
 * @equation d(gross)/dx = (d required/dx)/(1 - d required/d gross); elasticity = (x/m) d(gross)/dx
 * @param options - `requiredMass` (gross mass [kg], value [SI]) to mass [kg] or masses by item, `grossMass` at which it closes [kg], `name` and `value` [SI] of the variable; optional `unit` (text)
 * @returns `name`, `slope` [kg per SI unit], `elasticity`, `growthFactor`
 * @throws InvalidInput as `sizing.growthFactor`, and for a value of 0, about which no relative step can be taken
 * @method Ridders' extrapolated central differences in both arguments.
 * @validity As `sizing.growthFactor`: a slope, good for changes over which it does not itself change.
 * @source Implicit function theorem. Numerics: Ridders, C. J. F., 1982 (from memory).
 * @example
 * const payload = sizing.sensitivity({
 *   name: 'payload', value: 400 * u.kg, unit: 'kg', grossMass: 1000 * u.kg, requiredMass: (grossMass, load) => load + 0.6 * grossMass,
 * })
 * payload.elasticity // 1
 */
export function sensitivity(options: SensitivityOptions): Sensitivity {
  const caller = 'sizing.sensitivity'
  checkOptions(caller, options, knownSensitivity)
  const { requiredMass, grossMass, name, value, unit } = options
  requireFunction(caller, 'requiredMass', requiredMass, 'a function of gross mass and the variable')
  requirePositive(caller, 'grossMass', grossMass, 'kg')
  requireText(caller, 'name', name)
  if (unit !== undefined) requireUnit(caller, 'unit', unit)
  requireFinite(caller, 'value', value, '1')
  if (value === 0) throw new InvalidInput({ method: caller, argument: 'value', value, accepted: 'other than 0' })
  const total = (mass: number, x: number) => totalMass(caller, requiredMass(mass, x), mass)
  requireClosed(
    caller,
    silently(() => total(grossMass, value)),
    grossMass,
  )
  const along = silently(() => derivative((x) => total(grossMass, x), value, firstStep * Math.abs(value)).value)
  const over = silently(() => derivative((mass) => total(mass, value), grossMass, firstStep * grossMass).value)
  const factor = factorOf(caller, over)
  const slope = factor * along
  const elasticity = (slope * value) / grossMass
  requireRepresentable(caller, slope + elasticity + factor)
  return { name, slope, elasticity, growthFactor: factor }
}

function requireClosed(caller: string, required: number, grossMass: number): void {
  if (Math.abs(required - grossMass) <= closeEnough * grossMass) return
  throw new InvalidInput({
    method: caller,
    argument: 'grossMass',
    value: grossMass,
    unit: 'kg',
    accepted: `a mass at which the build-up closes; it asks for ${writeNumber(required)} kg there`,
    remedy: 'sizing.close finds one.',
  })
}

function factorOf(caller: string, slope: number): number {
  if (slope < 1 - 1e-9) return 1 / (1 - slope)
  throw new InvalidInput({
    method: caller,
    argument: 'the growth of the build-up with gross mass',
    value: slope,
    accepted: 'below 1 kg per kg',
    remedy: 'This is the fold, or the heavier of two masses that close; sizing.close gives the lighter.',
  })
}

/** On one side of a kink alone the design may not close at all; as in `sizing.close` that is 1e9. */
function sideFactor(slope: number): number {
  return slope < 1 - 1e-9 ? 1 / (1 - slope) : 1e9
}

function sharesOf(
  requiredMass: (grossMass: Mass) => Mass | MassItems,
  grossMass: number,
  step: number,
  factor: number,
): GrowthShare[] {
  const names = Object.keys(itemsOf(requiredMass(grossMass)))
  return names
    .map((item) => ({
      item,
      growth: factor * derivative((mass) => itemsOf(requiredMass(mass))[item] ?? 0, grossMass, step).value,
    }))
    .sort((a, b) => b.growth - a.growth)
}

function adviseKink(answer: GrowthFactor, grossMass: number): void {
  const { lighter, heavier } = answer
  advise({
    code: 'GROWTH_KINK',
    method,
    quantity: 'growthFactor',
    value: answer.growthFactor,
    range: [Math.min(lighter, heavier), Math.max(lighter, heavier)],
    message: `At ${writeNumber(grossMass)} kg what sizes the aircraft changes: a kilogram taken off is worth ${writeNumber(lighter)} kg, one put on ${writeNumber(heavier)} kg.`,
  })
}

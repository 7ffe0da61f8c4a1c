/** What a build-up answers: one mass, or a record of the masses of its items. */
import { describeValue, InvalidInput } from '../errors.js'
import { writeNumber } from '../number-text.js'
import type { Mass } from '../quantity.js'

/** Masses by the name of their item [kg]. */
export type MassItems = Readonly<Record<string, Mass>>

/** Total mass [kg] of what a build-up answered at a gross mass; refuses what is not a mass. */
export function totalMass(method: string, answer: unknown, grossMass: number): number {
  if (typeof answer === 'number') {
    if (!Number.isFinite(answer)) refuse(method, 'requiredMass', answer, grossMass)
    return answer
  }
  if (typeof answer !== 'object' || answer === null || Array.isArray(answer))
    refuse(method, 'requiredMass', answer, grossMass)
  let total = 0
  for (const item in answer) {
    const mass = (answer as Record<string, unknown>)[item]
    if (typeof mass !== 'number' || !Number.isFinite(mass)) refuse(method, `item "${item}"`, mass, grossMass)
    total += mass
  }
  return total
}

/** Items of an answer; the total stands as one item where it gave a single mass. */
export function itemsOf(answer: Mass | MassItems): MassItems {
  return typeof answer === 'number' ? { total: answer } : answer
}

export interface ItemGrowth {
  readonly item: string
  /** Mass gained per gross mass. */
  readonly growth: number
}

/** The item that grows fastest with gross mass at a point, by central difference. */
export function fastestItem(requiredMass: (grossMass: Mass) => Mass | MassItems, grossMass: number): ItemGrowth {
  const step = 1e-4 * grossMass
  const above = itemsOf(requiredMass(grossMass + step))
  const below = itemsOf(requiredMass(grossMass - step))
  let fastest: ItemGrowth = { item: 'total', growth: Number.NEGATIVE_INFINITY }
  for (const item in above) {
    const growth = ((above[item] ?? 0) - (below[item] ?? 0)) / (2 * step)
    if (growth > fastest.growth) fastest = { item, growth }
  }
  return fastest
}

function refuse(method: string, argument: string, value: unknown, grossMass: number): never {
  throw new InvalidInput({
    method,
    argument: `${argument} at a gross mass of ${writeNumber(grossMass)} kg`,
    value: describeValue(value),
    unit: 'kg',
    accepted: 'a finite mass, or a record of finite masses by item',
  })
}

import type { Figure } from '../../../shared/contracts/figure.js'
import { requireFinite } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Mass } from '../quantity.js'
import { bars } from './bars.js'

export interface MassBreakdownOptions {
  /** Masses by item [kg], for instance `sized.masses`. */
  readonly masses: Readonly<Record<string, Mass>>
  readonly caption?: string
  readonly description?: string
}

const method = 'figure.massBreakdown'
const known = new Set(['masses', 'caption', 'description'])

/**
 * Where the mass goes: one bar per item, heaviest first, with its share of the total.
 *
 * @equation share = item mass / sum of item masses
 * @param options - `masses` by item [kg], `caption` ("Mass breakdown" when left out), `description`
 * @returns a figure of horizontal bars in kilograms; the names carry mass and share
 * @throws InvalidInput for a mass that is not finite or is negative, for no items, for items that add up to nothing, and for an
 * unknown option
 * @method Sums what is given; the shares are of that sum.
 * @validity Any masses that are not negative.
 * @source House convention, no publication.
 * @example
 * const breakdown = figure.massBreakdown({ masses: { payload: 400 * u.kg, battery: 411 * u.kg, rotors: 52 * u.kg } })
 */
export function massBreakdown(options: MassBreakdownOptions): Figure {
  checkOptions(method, options, known)
  const { masses, caption = 'Mass breakdown', description } = options
  const items = readItems(masses)
  const total = items.reduce((sum, [, mass]) => sum + mass, 0)
  if (!(total > 0))
    throw new InvalidInput({
      method,
      argument: 'masses',
      value: 'nothing in sum',
      accepted: 'at least one mass above 0',
    })
  items.sort(([, a], [, b]) => b - a)
  return bars({
    caption,
    ...(description === undefined ? {} : { description }),
    names: items.map(
      ([item, mass]) => `${spellOut(item)} (${writeMass(mass)}, ${((100 * mass) / total).toFixed(1)} %)`,
    ),
    values: items.map(([, mass]) => mass),
    unit: 'kg',
    label: 'mass',
    ink: 'accent',
  })
}

function readItems(masses: Readonly<Record<string, number>>): [string, number][] {
  if (typeof masses !== 'object' || masses === null || Array.isArray(masses))
    throw new InvalidInput({
      method,
      argument: 'masses',
      value: describeValue(masses),
      accepted: 'a record of masses by item, such as the masses that sizing.close returns',
    })
  const items = Object.entries(masses)
  for (const [item, mass] of items) {
    requireFinite(method, `masses.${item}`, mass, 'kg')
    if (mass < 0)
      throw new InvalidInput({ method, argument: `masses.${item}`, value: mass, unit: 'kg', accepted: '0 kg or more' })
  }
  return items
}

/** `rotorHubs` is a name in a cell; `rotor hubs` is what a reader reads. */
function spellOut(item: string): string {
  return item.replace(/([a-z0-9])([A-Z])/g, (_, before: string, after: string) => `${before} ${after.toLowerCase()}`)
}

/** Whole kilograms for aircraft that carry people, tenths for small ones, grams below one. */
function writeMass(mass: number): string {
  if (mass < 1 && mass > 0) return `${(mass * 1000).toFixed(0)} g`
  return `${mass.toFixed(mass < 100 ? 1 : 0)} kg`
}

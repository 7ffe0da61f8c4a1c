/**
 * Several published equations for one item behind one call: the choice, the checks, the advisories and the spread.
 *
 * An item is data: which options it has and how each is checked, and its methods with what each needs. So that every item
 * behaves alike and a new equation is one entry.
 */
import { requireFinite, requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { writeNumber } from '../number-text.js'
import type { Mass, Ratio } from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export type Check = (method: string, argument: string, value: number) => void

export const positive =
  (unit: string): Check =>
  (method, argument, value) =>
    requirePositive(method, argument, value, unit)
export const nonNegative =
  (unit: string): Check =>
  (method, argument, value) =>
    requireNonNegative(method, argument, value, unit)
export const within =
  (unit: string, low: number, high: number): Check =>
  (method, argument, value) =>
    requireWithin(method, argument, value, unit, low, high)
export const finite =
  (unit: string): Check =>
  (method, argument, value) =>
    requireFinite(method, argument, value, unit)
export const flag: Check = (method, argument, value) => {
  if (typeof value !== 'boolean')
    throw new InvalidInput({ method, argument, value: describeValue(value), accepted: 'true or false' })
}

/** Options with nothing left out: what an equation reads once its needs are met. */
export type Filled<Options> = { readonly [Key in keyof Options]-?: NonNullable<Options[Key]> }

/** The same before the needs of a method are known to be met. */
export type Loose<Options> = { readonly [Key in Exclude<keyof Options, 'method'>]-?: Options[Key] | undefined }

export interface MassMethod<Options> {
  readonly name: string
  /** Options that it cannot do without. */
  readonly needs: readonly (keyof Options & string)[]
  /** [kg] */
  readonly mass: (options: Filled<Options>) => number
  /** Something a reader must know whenever this method is used. */
  readonly caution?: string
}

export interface MassItem<Options> {
  /** `mass.wing` */
  readonly call: string
  readonly checks: { readonly [Key in Exclude<keyof Options, 'method'> & string]-?: Check }
  /** Options with their defaults, as one literal of fixed shape: copying them key by key took ten times as long as an equation. */
  readonly fill: (options: Options) => Loose<Options>
  /** The first is used when none is named. */
  readonly methods: readonly MassMethod<Options>[]
  /** Gross masses of the aircraft behind the equations [kg]. */
  readonly grossMass?: readonly [low: number, high: number]
}

/** Mass [kg] of an item by the method that its options name. */
export function massOf<Options extends { readonly method?: string }>(item: MassItem<Options>, options: Options): Mass {
  const filled = readOptions(item, options)
  const name = options.method ?? (item.methods[0] as MassMethod<Options>).name
  const chosen = item.methods.find((one) => one.name === name)
  if (chosen === undefined)
    throw new InvalidInput({
      method: item.call,
      argument: 'method',
      value: describeValue(options.method),
      accepted: `one of ${item.methods.map((one) => `"${one.name}"`).join(', ')}`,
    })
  const lacking = missing(chosen, filled)
  if (lacking.length > 0)
    throw new InvalidInput({
      method: item.call,
      argument: lacking[0] as string,
      value: 'missing',
      accepted: `given for the method "${chosen.name}", which needs ${chosen.needs.join(', ')}`,
    })
  const mass = chosen.mass(filled)
  requireRepresentable(item.call, mass)
  if (isListening()) adviseMass(item, chosen, filled, mass)
  return Math.max(mass, 0)
}

export interface Spread {
  /** One per method whose needs are met. */
  readonly methods: readonly { readonly method: string; readonly mass: Mass }[]
  /** [kg] */
  readonly low: Mass
  /** [kg] */
  readonly high: Mass
  /** [kg] */
  readonly mean: Mass
  /** Highest over lowest. */
  readonly ratio: Ratio
  /** Methods left out, with what they lack. */
  readonly leftOut: readonly { readonly method: string; readonly needs: string }[]
}

/** All methods of an item on the same options. */
export function spreadOf<Options extends { readonly method?: string }>(
  item: MassItem<Options>,
  options: Options,
): Spread {
  const filled = readOptions(item, options)
  const usable = item.methods.filter((one) => missing(one, filled).length === 0)
  const methods = usable.map((one) => ({ method: one.name, mass: Math.max(one.mass(filled), 0) }))
  if (methods.length === 0)
    throw new InvalidInput({
      method: item.call,
      argument: 'the options',
      value: 'too few for any method',
      accepted: item.methods.map((one) => `${one.needs.join(', ')} for "${one.name}"`).join('; '),
    })
  const masses = methods.map((one) => one.mass)
  const low = Math.min(...masses)
  const high = Math.max(...masses)
  const mean = masses.reduce((sum, mass) => sum + mass, 0) / masses.length
  const ratio = low > 0 ? high / low : 1
  requireRepresentable(item.call, low + high + mean + ratio)
  if (isListening()) adviseGrossMass(item, filled)
  const leftOut = item.methods
    .filter((one) => !usable.includes(one))
    .map((one) => ({ method: one.name, needs: missing(one, filled).join(', ') }))
  return { methods, low, high, mean, ratio, leftOut }
}

function readOptions<Options extends { readonly method?: string }>(
  item: MassItem<Options>,
  options: Options,
): Filled<Options> {
  const checks = item.checks as Readonly<Record<string, Check>>
  checkOptions(item.call, options, knownOf(item))
  for (const key in options) {
    const value = options[key]
    if (value !== undefined) checks[key]?.(item.call, key, value as number)
  }
  return item.fill(options) as unknown as Filled<Options>
}

/** Names of an item's options; kept, because building the set at each call cost as much as the equation ten times over. */
const known = new WeakMap<object, ReadonlySet<string>>()

function knownOf(item: { readonly checks: object }): ReadonlySet<string> {
  const kept = known.get(item)
  if (kept !== undefined) return kept
  const names = new Set(['method', ...Object.keys(item.checks)])
  known.set(item, names)
  return names
}

function missing<Options>(method: MassMethod<Options>, filled: Filled<Options>): string[] {
  return method.needs.filter((key) => (filled as Readonly<Record<string, unknown>>)[key] === undefined)
}

function adviseMass<Options>(
  item: MassItem<Options>,
  chosen: MassMethod<Options>,
  filled: Filled<Options>,
  mass: number,
): void {
  adviseGrossMass(item, filled)
  if (chosen.caution !== undefined)
    advise({ code: 'MASS_METHOD', method: item.call, quantity: 'method', message: chosen.caution })
  if (mass < 0)
    advise({
      code: 'NEGATIVE_MASS',
      method: item.call,
      quantity: 'mass',
      value: mass,
      range: [0, null],
      message: `The method "${chosen.name}" gives ${writeNumber(mass)} kg here, which is outside its range; 0 kg is taken.`,
    })
}

function adviseGrossMass<Options>(item: MassItem<Options>, filled: Filled<Options>): void {
  const { grossMass } = filled as { readonly grossMass?: number }
  if (item.grossMass === undefined || grossMass === undefined) return
  const [low, high] = item.grossMass
  if (grossMass >= low && grossMass <= high) return
  advise({
    code: 'OUTSIDE_FIT',
    method: item.call,
    quantity: 'grossMass',
    value: grossMass,
    range: [low, high],
    message: `A gross mass of ${writeNumber(grossMass)} kg is outside the light aircraft (${low} to ${high} kg) behind the mass equations.`,
  })
}

/** Light aircraft of the published equations: below some 300 kg nothing structural is published, above 5670 kg others apply. */
export const lightAircraft: readonly [number, number] = [300, 5670]

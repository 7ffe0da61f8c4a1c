/** How an author says how sure an assumption is, read into the record that spread samples from. */
import type { Distribution } from '../../../shared/contracts/results.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'

/** Around the value of the assumption: its mean, mode or median is the value itself, so that it is written once. */
export type DistributionOption =
  | { readonly normal: number }
  | { readonly uniform: readonly [low: number, high: number] }
  | { readonly triangular: readonly [low: number, high: number] }
  | { readonly lognormal: number }

const method = 'assumption'
const kinds = ['normal', 'uniform', 'triangular', 'lognormal'] as const
const forms = '{ normal: deviation }, { uniform: [low, high] }, { triangular: [low, high] } or { lognormal: factor }'

/**
 * Reads the `distribution` of an assumption.
 *
 * @throws InvalidInput for another form, a deviation that is not above 0, bounds that do not ascend, a triangle without the value, a factor of 1 or less, a lognormal around a value that is not above 0
 */
export function readDistribution(name: string, value: number, option: DistributionOption): Distribution {
  const given: Readonly<Record<string, unknown>> = isRecord(option) ? option : {}
  checkOptions(method, given, new Set(kinds))
  const stated = kinds.filter((kind) => given[kind] !== undefined)
  const kind = stated[0]
  if (kind === undefined || stated.length > 1)
    return refuse(name, isRecord(option) ? `with ${stated.length} kinds` : describeValue(option), `one of ${forms}`)
  const form = given[kind]
  if (kind === 'normal') return { kind, mean: value, deviation: readDeviation(name, form) }
  if (kind === 'lognormal') return { kind, median: value, factor: readFactor(name, value, form) }
  const [low, high] = readBounds(name, kind, form)
  if (kind === 'uniform') return { kind, low, high }
  if (value < low || value > high)
    refuse(name, `triangular: [${low}, ${high}]`, `bounds with the value ${value} between them`)
  return { kind, low, mode: value, high }
}

/**
 * Reads the `correlated` of an assumption. That the other names are assumptions with a distribution is seen when spread is asked for.
 *
 * @throws InvalidInput for what is no record of numbers between -1 and 1
 */
export function readCorrelations(
  name: string,
  correlated: Readonly<Record<string, number>>,
): Readonly<Record<string, number>> {
  const accepted = 'a record of rank correlations, each above -1 and below 1, by name of another assumption'
  if (!isRecord(correlated)) return refuse(name, describeValue(correlated), accepted, 'correlation')
  for (const [other, value] of Object.entries(correlated))
    if (typeof value !== 'number' || !(Math.abs(value) < 1) || other === name)
      refuse(name, `${other}: ${describeValue(value)}`, accepted, 'correlation')
  return { ...correlated }
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function readDeviation(name: string, form: unknown): number {
  if (isFinitePositive(form)) return form
  return refuse(name, `normal: ${describeValue(form)}`, 'a standard deviation above 0, in the unit of the value')
}

function readFactor(name: string, value: number, form: unknown): number {
  if (!(value > 0)) refuse(name, `lognormal around ${value}`, 'lognormal for a value above 0 only')
  if (isFinitePositive(form) && form > 1) return form
  return refuse(
    name,
    `lognormal: ${describeValue(form)}`,
    'a factor above 1; 68 % lie within value / factor to value * factor',
  )
}

function readBounds(name: string, kind: string, form: unknown): readonly [number, number] {
  const [low, high] = Array.isArray(form) && form.length === 2 ? (form as [unknown, unknown]) : [undefined, undefined]
  if (Number.isFinite(low) && Number.isFinite(high) && (low as number) < (high as number))
    return [low as number, high as number]
  const given = Array.isArray(form) ? `[${form.map(String).join(', ')}]` : describeValue(form)
  return refuse(name, `${kind}: ${given}`, '[low, high], two finite numbers in ascending order')
}

function isFinitePositive(value: unknown): value is number {
  return typeof value === 'number' && value > 0 && Number.isFinite(value)
}

function refuse(name: string, value: string | number, accepted: string, what = 'distribution'): never {
  throw new InvalidInput({ method, argument: `the ${what} of "${name}"`, value, accepted })
}

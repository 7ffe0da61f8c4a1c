/** The number that is asked about, as the sheet shows it. */
import { formatQuantity } from '../quantity/format-quantity.js'
import { numberOf } from '../quantity/number.js'
import { humaniseName } from '../quantity/words.js'
import type { SheetView } from '../view.js'
import { dimensionOf, marginsOf } from './margins.js'

/** A bound that a requirement puts on the number itself. */
export interface Limit {
  readonly requirement: string
  readonly bound: 'at least' | 'at most'
  /** In the document [SI]; it may move with the assumptions. */
  readonly value: number
}

export interface AskedSubject {
  readonly name: string
  readonly label: string
  /** In base units; null where not known. */
  readonly dimension: string | null
  readonly unit?: string
  /** In the document [SI]. */
  readonly value: number
  readonly limits: readonly Limit[]
}

/** Undefined where no cell has a number of that name, nor a requirement whose margin is called so. */
export function askedSubject(view: SheetView, name: string): AskedSubject | undefined {
  for (const { result } of view.cells) {
    const named = result?.values.find((one) => one.name === name)
    if (named?.value.kind !== 'number') continue
    const value = numberOf(named.value.si)
    const { label, unit, dimension } = named
    return {
      name,
      label: label ?? humaniseName(name),
      dimension: dimension ?? dimensionOf(unit),
      ...(unit === undefined ? {} : { unit }),
      value,
      limits: limitsOn(view, value),
    }
  }
  return marginSubject(view, name)
}

/** A margin has to be 0 or more, whatever the bound. */
function marginSubject(view: SheetView, name: string): AskedSubject | undefined {
  const found = marginsOf(view).find(({ value }) => value.name === name)
  if (found === undefined) return undefined
  const { requirement, value } = found
  const { label = name, dimension, unit } = value
  return {
    name,
    label,
    dimension,
    ...(unit === undefined ? {} : { unit }),
    value: numberOf(requirement.margin),
    limits: [{ requirement: requirement.name, bound: 'at least', value: 0 }],
  }
}

/** Requirements whose actual is this very number. */
function limitsOn(view: SheetView, value: number): readonly Limit[] {
  return view.cells
    .flatMap(({ result }) => result?.requirements ?? [])
    .filter(({ actual }) => numberOf(actual) === value)
    .flatMap(({ name, atLeast, atMost }) => [
      ...(atLeast === undefined ? [] : [{ requirement: name, bound: 'at least' as const, value: numberOf(atLeast) }]),
      ...(atMost === undefined ? [] : [{ requirement: name, bound: 'at most' as const, value: numberOf(atMost) }]),
    ])
}

/** A value of the number in the unit that the sheet shows it in. */
export function showValue({ dimension, unit }: AskedSubject, value: number): string {
  return formatQuantity(value, dimension, unit).text
}

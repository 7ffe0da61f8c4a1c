/** The number that is asked about, as the sheet shows it. */

import { formatDimension, parseUnit } from '../../contracts/index.js'
import { formatQuantity } from '../quantity/format-quantity.js'
import { numberOf } from '../quantity/number.js'
import { humaniseName } from '../quantity/words.js'
import type { SheetView } from '../view.js'

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

/** Undefined where no cell has a number of that name. */
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
  return undefined
}

/** The author's unit says what the number is before the check does, and where the check cannot tell. */
function dimensionOf(unit: string | undefined): string | null {
  const reading = unit === undefined ? undefined : parseUnit(unit)
  return reading?.ok === true ? formatDimension(reading.unit.dimension) : null
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

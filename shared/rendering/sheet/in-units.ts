/**
 * The sheet in the units of the reader's system. The unit in which a value is shown is data of the value, so changing it there reaches whatever
 * draws from a view: results, requirements, tables, figures, hand calculations, the drawer, paper and files.
 */
import {
  type AssumptionRecord,
  type CellResult,
  formatDimension,
  type NamedValue,
  parseUnit,
  type RequirementRecord,
  type ResultNumber,
  type ResultValue,
} from '../../contracts/index.js'
import { figureInUnits } from '../figure/in-units.js'
import { numberOf, type UnitSystem, unitFor } from '../quantity/index.js'
import type { SheetView } from '../view.js'

/** The view itself where the system is `as written`. */
export function viewInUnits(view: SheetView, system: UnitSystem): SheetView {
  if (system === 'as written') return view
  const cells = view.cells.map((cell) =>
    cell.result === undefined ? cell : { ...cell, result: resultInUnits(cell.result, system) },
  )
  return { ...view, cells, units: system }
}

/** Results that were put into a system, by the results they were made of: an unchanged one stays the same object. */
const made: Record<Exclude<UnitSystem, 'as written'>, WeakMap<CellResult, CellResult>> = {
  SI: new WeakMap(),
  aviation: new WeakMap(),
}

/** The results from which others were made. */
const written = new WeakMap<CellResult, CellResult>()

/** The result with the units that its author wrote: what an edit of the source begins from. */
export function resultAsWritten(result: CellResult): CellResult {
  return written.get(result) ?? result
}

export function resultInUnits(result: CellResult, system: UnitSystem): CellResult {
  if (system === 'as written') return result
  const known = made[system].get(result)
  if (known !== undefined) return known
  const dimensions = new Map(result.values.map(({ name, dimension }) => [name, dimension]))
  const fresh: CellResult = {
    ...result,
    values: result.values.map((value) => valueInUnits(value, system)),
    assumptions: result.assumptions.map((one) => assumptionInUnits(one, dimensions.get(one.name) ?? null, system)),
    requirements: result.requirements.map((one) => requirementInUnits(one, system)),
    figures: result.figures.map((figure) => figureInUnits(figure, system)),
  }
  made[system].set(result, fresh)
  written.set(fresh, result)
  return fresh
}

function valueInUnits(named: NamedValue, system: UnitSystem): NamedValue {
  const { name, value, dimension, unit, columns = {}, units = {} } = named
  if (value.kind === 'number') {
    // An author who gives a power a unit of length is told so by the checker; a number is never shown under a wrong unit.
    const fitting = fits(unit, dimension) ? unit : undefined
    return withUnit(named, unitFor(system, { unit: fitting, dimension, name, largest: magnitude(value.si) }))
  }
  const fields = [...new Set([...Object.keys(columns), ...Object.keys(units)])]
  const shown = fields.flatMap((field) => {
    const largest = Math.max(0, ...numbersOf(value, field))
    const chosen = unitFor(system, { unit: units[field], dimension: columns[field] ?? null, name: field, largest })
    return chosen === undefined ? [] : [[field, chosen] as const]
  })
  return shown.length === 0 ? named : { ...named, units: Object.fromEntries(shown) }
}

function fits(unit: string | undefined, dimension: string | null): boolean {
  const reading = unit === undefined ? undefined : parseUnit(unit)
  if (reading?.ok !== true) return false
  return dimension === null || formatDimension(reading.unit.dimension) === dimension
}

/** Magnitudes of a field, of a record or of the records in a list. */
function numbersOf(value: ResultValue, field: string): readonly number[] {
  const records = value.kind === 'list' ? value.items : [value]
  return records.flatMap((record) => {
    const entry = record.kind === 'record' ? record.entries.find(([name]) => name === field)?.[1] : undefined
    return entry?.kind === 'number' ? [magnitude(entry.si)] : []
  })
}

/** Value, range and trial stand beside one another, so they share the unit of the value. */
export function assumptionInUnits(
  record: AssumptionRecord,
  dimension: string | null,
  system: UnitSystem,
): AssumptionRecord {
  const { name, unit, value } = record
  return withUnit(record, unitFor(system, { unit, dimension, name, largest: magnitude(value) }))
}

/** Its dimension is that of its unit; without one it is a pure number. */
export function requirementInUnits(record: RequirementRecord, system: UnitSystem): RequirementRecord {
  const { name, unit, actual, atLeast = 0, atMost = 0 } = record
  const largest = Math.max(...[actual, atLeast, atMost].map(magnitude))
  return withUnit(record, unitFor(system, { unit, dimension: null, name, largest }))
}

/** 0 for what is not finite: it has no size. */
function magnitude(si: ResultNumber): number {
  const value = Math.abs(numberOf(si))
  return Number.isFinite(value) ? value : 0
}

function withUnit<T extends { readonly unit?: string | undefined }>(of: T, unit: string | undefined): T {
  return unit === of.unit || unit === undefined ? of : { ...of, unit }
}

/** Margins of requirements as numbers with names: whatever is asked of a number can be asked of them. */
import {
  formatDimension,
  marginName,
  type NamedValue,
  parseUnit,
  type RequirementRecord,
} from '../../contracts/index.js'
import type { CellView, SheetView } from '../view.js'

/** The margin of a requirement, as a value of the cell that states it. */
export function marginValue({ name, margin, unit = '1' }: RequirementRecord): NamedValue {
  const called = marginName(name)
  return { name: called, label: called, value: { kind: 'number', si: margin }, dimension: dimensionOf(unit), unit }
}

export interface Margin {
  readonly cell: CellView
  readonly requirement: RequirementRecord
  readonly value: NamedValue
}

/** Of those whose name no other requirement has: else there is no telling which is meant. */
export function marginsOf(view: SheetView): readonly Margin[] {
  const all = view.cells.flatMap((cell) =>
    (cell.result?.requirements ?? []).map((requirement) => ({ cell, requirement, value: marginValue(requirement) })),
  )
  const count = new Map<string, number>()
  for (const { requirement } of all) count.set(requirement.name, (count.get(requirement.name) ?? 0) + 1)
  return all.filter(({ requirement }) => count.get(requirement.name) === 1)
}

/** The author's unit says what a number is before the check does, and where the check cannot tell. */
export function dimensionOf(unit: string | undefined): string | null {
  const reading = unit === undefined ? undefined : parseUnit(unit)
  return reading?.ok === true ? formatDimension(reading.unit.dimension) : null
}

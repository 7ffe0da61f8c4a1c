/** The numbers of a sheet, margins of requirements among them, that can be asked where they came from, what moves them and how sure they are. */
import type { CellId, NamedValue } from '../../shared/contracts/index.js'
import {
  type CellView,
  humaniseName,
  type Margin,
  marginsOf,
  type SheetView,
  splitValues,
} from '../../shared/rendering/page.js'

export interface Askable {
  readonly name: string
  readonly label: string
  readonly cell: CellId
  /** Number of the cell on the sheet. */
  readonly place: string
  readonly value: NamedValue
}

/** The numbers of one cell, in the order in which its result column shows them. */
export function askableIn({ id, number, result }: CellView): readonly Askable[] {
  if (result === undefined) return []
  const { shown, folded } = splitValues(result.values, new Set(result.assumptions.map(({ name }) => name)))
  return [...shown, ...folded].flatMap((value) =>
    value.value.kind === 'number'
      ? [{ name: value.name, label: value.label ?? humaniseName(value.name), cell: id, place: number, value }]
      : [],
  )
}

/** All numbers, cell by cell, margins behind them. A name that two cells state is asked of the first. */
export function allAskable(view: SheetView): readonly Askable[] {
  const met = new Set<string>()
  const margins = marginsOf(view)
  return view.cells.flatMap((cell) =>
    [...askableIn(cell), ...margins.filter((one) => one.cell === cell).map(askableMargin)].filter(({ name }) => {
      if (met.has(name)) return false
      met.add(name)
      return true
    }),
  )
}

function askableMargin({ cell: { id, number }, value }: Margin): Askable {
  return { name: value.name, label: value.label ?? value.name, cell: id, place: number, value }
}

export function askable(view: SheetView, name: string): Askable | undefined {
  return allAskable(view).find((one) => one.name === name)
}

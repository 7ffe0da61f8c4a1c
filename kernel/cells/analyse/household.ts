/** All cells of a notebook as read, with who declares what: what the rules between cells look at. */
import type { CellId } from '../../../shared/contracts/index.js'
import type { Declaration } from '../program/index.js'
import type { Problem } from './problem.js'
import type { CellReading } from './read-cell.js'

export interface ReadCell {
  readonly id: CellId
  readonly source: string
  readonly reading: CellReading
}

export interface Declarer {
  readonly cell: CellId
  readonly declaration: Declaration
}

export interface CellProblem {
  readonly cell: CellId
  readonly problem: Problem
}

export interface Household {
  /** In page order. */
  readonly cells: readonly ReadCell[]
  readonly kernelNames: ReadonlySet<string>
  /** Who declares a name, in page order; guesses about unreadable cells only where no readable cell has the name. */
  readonly declarers: ReadonlyMap<string, readonly Declarer[]>
  /** The one declarer of a name that has one. */
  readonly owner: ReadonlyMap<string, CellId>
}

export function keepHousehold(cells: readonly ReadCell[], kernelNames: ReadonlySet<string>): Household {
  const declarers = new Map<string, Declarer[]>()
  const add = (cell: ReadCell, declaration: Declaration) =>
    declarers.set(declaration.name, [...(declarers.get(declaration.name) ?? []), { cell: cell.id, declaration }])
  for (const cell of cells)
    if (cell.reading.code !== undefined) for (const declaration of cell.reading.declares) add(cell, declaration)
  for (const cell of cells)
    if (cell.reading.code === undefined)
      for (const declaration of cell.reading.declares)
        if (!declarers.has(declaration.name) && !kernelNames.has(declaration.name)) add(cell, declaration)
  const owner = new Map<string, CellId>()
  for (const [name, list] of declarers) if (list.length === 1 && list[0] !== undefined) owner.set(name, list[0].cell)
  return { cells, kernelNames, declarers, owner }
}

/** How messages speak of a cell; a page may put its number in the place of these words. */
export function cellName(cell: CellId): string {
  return `cell "${cell}"`
}

/** Dimensions come from the checker, values from the evaluator; here they meet. */
import type { CellResult, NameDimension } from '../../shared/contracts/index.js'

export type DimensionTable = ReadonlyMap<string, Pick<NameDimension, 'dimension' | 'columns'>>

export function dimensionTable(names: readonly NameDimension[]): DimensionTable {
  return new Map(names.map((one) => [key(one.cell, one.name), one]))
}

/** One filled-in object per result and table, so that an unchanged result is recognised by identity. */
const filled = new WeakMap<DimensionTable, WeakMap<CellResult, CellResult>>()

/** The result with every dimension filled in that the table knows; the same object when nothing was added. */
export function withDimensions(result: CellResult, table: DimensionTable): CellResult {
  const known = filled.get(table)?.get(result)
  if (known !== undefined) return known
  const made = fillIn(result, table)
  const byResult = filled.get(table) ?? new WeakMap<CellResult, CellResult>()
  filled.set(table, byResult.set(result, made))
  return made
}

function fillIn(result: CellResult, table: DimensionTable): CellResult {
  let added = false
  const values = result.values.map((value) => {
    const known = table.get(key(result.cell, value.name))
    const dimension = value.dimension ?? known?.dimension ?? null
    const columns = value.columns ?? known?.columns
    if (dimension === value.dimension && columns === value.columns) return value
    added = true
    return { ...value, dimension, ...(columns === undefined ? {} : { columns }) }
  })
  return added ? { ...result, values } : result
}

const key = (cell: string, name: string) => `${cell} ${name}`

/** Dimensions come from the checker, values from the evaluator; whoever has both puts them together here. */
import type { CellResult, NameDimension } from '../../shared/contracts/index.js'

/** The results with every dimension that the checker knows; others stay null. */
export function withDimensions(results: readonly CellResult[], names: readonly NameDimension[]): CellResult[] {
  const known = new Map(names.map((one) => [`${one.cell} ${one.name}`, one]))
  return results.map((result) => ({
    ...result,
    values: result.values.map((value) => {
      const { dimension = null, columns } = known.get(`${result.cell} ${value.name}`) ?? {}
      return { ...value, dimension: value.dimension ?? dimension, ...(columns === undefined ? {} : { columns }) }
    }),
  }))
}

/** Until the checker has read the text, a trial shows its values in the units that the document's result of the same text came with. */
import type { CellResult } from '../../shared/contracts/index.js'
import { dimensionTable, withDimensions } from '../compute/dimensions.js'

const tables = new WeakMap<CellResult, ReturnType<typeof dimensionTable>>()

/** `own` is the document's result, absent while that is not known. */
export function borrowDimensions(tried: CellResult, own: CellResult | undefined): CellResult {
  if (own === undefined || own.fingerprint !== tried.fingerprint) return tried
  const table = tables.get(own) ?? tableOf(own)
  tables.set(own, table)
  return withDimensions(tried, table)
}

function tableOf({ cell, values }: CellResult): ReturnType<typeof dimensionTable> {
  const known = values.flatMap(({ name, dimension, columns }) =>
    dimension === null ? [] : [{ cell, name, dimension, ...(columns === undefined ? {} : { columns }) }],
  )
  return dimensionTable(known)
}

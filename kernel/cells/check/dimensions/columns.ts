/** What heads the columns of a table: the dimensions of the fields of a record, or of the records in a list. */
import { formatDimension } from '../../../../shared/contracts/index.js'
import type { Inference } from './inference.js'
import type { Shape } from './shape.js'

/** A table wider than this is no table that anybody reads. */
const mostColumns = 60

/** By field, in base units; absent where no field is known to be a number. */
export function columnsOf(inference: Inference, shape: Shape): Readonly<Record<string, string>> | undefined {
  if (shape.kind !== 'list' && shape.kind !== 'record' && shape.kind !== 'typed') return undefined
  const record = recordIn(inference, shape)
  if (record === undefined) return undefined
  const columns = fieldNames(record).flatMap((name) => {
    const field = inference.property(record, name)
    return field.kind === 'number' ? [[name, formatDimension(field.dimension)] as const] : []
  })
  return columns.length === 0 ? undefined : Object.fromEntries(columns)
}

/** The records of a list, or the record itself. */
function recordIn(inference: Inference, shape: Shape): Shape | undefined {
  if (shape.kind === 'record') return shape
  if (shape.kind === 'typed') {
    if (inference.checker.getIndexTypeOfType(shape.type, inference.typescript.IndexKind.Number) === undefined)
      return shape
  }
  const element = inference.elementOf(shape)
  return element.kind === 'record' || element.kind === 'typed' ? element : undefined
}

function fieldNames(record: Shape): readonly string[] {
  if (record.kind === 'record') return [...record.fields.keys()].slice(0, mostColumns)
  if (record.kind !== 'typed') return []
  return record.type
    .getProperties()
    .slice(0, mostColumns)
    .map((property) => property.name)
}

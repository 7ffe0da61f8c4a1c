/** The compliance matrix as CSV: each requirement with the rule it answers, how it is shown, and by how much it is met. */
import type { Provenance, RequirementRecord } from '../../shared/contracts/index.js'
import { type CsvCell, numberOf, type RequirementRow } from '../../shared/rendering/index.js'
import { inSi, inUnit, tableFile, tableUnit } from './table-file.js'

const heads = [
  'requirement',
  'rule paragraph',
  'means',
  'cell',
  'actual',
  'bound',
  'limit',
  'margin',
  'unit',
  'SI actual',
  'SI limit',
  'SI margin',
  'SI unit',
  'met',
  'source',
  'owner',
  'state',
]

export function complianceCsv(rows: readonly RequirementRow[], provenance: Provenance): string {
  return tableFile(provenance, heads, rows.map(complianceRow))
}

function complianceRow({ record, number, state }: RequirementRow): readonly CsvCell[] {
  const unit = tableUnit(record.unit, null)
  const { bound, limit } = nearestBound(record)
  return [
    record.name,
    record.paragraph ?? null,
    record.means ?? null,
    number,
    inUnit(record.actual, unit),
    bound,
    inUnit(limit, unit),
    inUnit(record.margin, unit),
    unit.text,
    inSi(record.actual),
    inSi(limit),
    inSi(record.margin),
    unit.si,
    record.met ? 'met' : 'not met',
    record.source ?? null,
    record.owner ?? null,
    state,
  ]
}

type Bound = { readonly bound: string; readonly limit: RequirementRecord['actual'] | undefined }

/** The bound that the margin is measured from: of two the nearer one. */
function nearestBound({ actual, atLeast, atMost }: RequirementRecord): Bound {
  const below: Bound = { bound: 'at least', limit: atLeast }
  const above: Bound = { bound: 'at most', limit: atMost }
  if (atLeast === undefined || atMost === undefined) return atLeast === undefined ? above : below
  const value = numberOf(actual)
  return value - numberOf(atLeast) <= numberOf(atMost) - value ? below : above
}

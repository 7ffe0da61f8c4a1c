/** The register of assumptions as CSV: each with its value as shown and in SI, what it rests on, and where it is read. */
import type { AssumptionRecord, Provenance } from '../../shared/contracts/index.js'
import { type AssumptionRow, type CsvCell, distributionWords } from '../../shared/rendering/index.js'
import { inSi, inUnit, type TableUnit, tableFile, tableUnit } from './table-file.js'

const heads = [
  'name',
  'value',
  'unit',
  'low',
  'high',
  'SI value',
  'SI unit',
  'SI low',
  'SI high',
  'distribution',
  'source',
  'note',
  'owner',
  'cell',
  'used in',
  'state',
]

export function registerCsv(rows: readonly AssumptionRow[], provenance: Provenance): string {
  return tableFile(provenance, heads, rows.map(registerRow))
}

function registerRow({ record, dimension, number, usedIn, state }: AssumptionRow): readonly CsvCell[] {
  const unit = tableUnit(record.unit, dimension)
  const { name, value, low, high, source, note, owner } = record
  return [
    name,
    inUnit(value, unit),
    unit.text,
    inUnit(low, unit),
    inUnit(high, unit),
    inSi(value),
    unit.si,
    inSi(low),
    inSi(high),
    sureness(record, unit),
    source ?? null,
    note ?? null,
    owner ?? null,
    number,
    usedIn.map((cell) => cell.number).join(', '),
    state,
  ]
}

/** `normal, deviation 5; correlated with pack mass 0.4`, in the unit of the row; empty for a bare range, which is no distribution. */
export function sureness({ distribution, correlated = {} }: AssumptionRecord, unit: TableUnit): string {
  const others = Object.entries(correlated).map(([name, value]) => `correlated with ${name} ${value}`)
  if (distribution === undefined) return others.join('; ')
  return [distributionWords(distribution, (si) => String(inUnit(si, unit))), ...others].join('; ')
}

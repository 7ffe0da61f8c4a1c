/**
 * A table of evidence as a CSV file: RFC 4180, UTF-8 with a byte order mark (without it spreadsheets read accents and ² wrongly), one line of
 * caution and provenance above the heads.
 */
import {
  cautionLine,
  formatDimension,
  type Provenance,
  parseUnit,
  type ResultNumber,
} from '../../shared/contracts/index.js'
import { type CsvCell, numberOf, siUnit, writeCsv } from '../../shared/rendering/index.js'

const byteOrderMark = '\ufeff'

export function tableFile(
  provenance: Provenance,
  heads: readonly string[],
  rows: readonly (readonly CsvCell[])[],
): string {
  const { title, revision, fingerprint } = provenance
  const above: CsvCell[] = [cautionLine, title, `revision ${revision}`, `fingerprint ${fingerprint}`]
  const padding = heads.slice(above.length).map(() => null)
  return byteOrderMark + writeCsv([[...above, ...padding], heads, ...rows])
}

/** The unit in which a table states values: the author's, else SI. */
export interface TableUnit {
  readonly factor: number
  readonly text: string
  readonly si: string
}

/** `unit` is the author's text; `dimension` is known from the checker. A unit that cannot be read leaves SI. */
export function tableUnit(unit: string | undefined, dimension: string | null): TableUnit {
  const reading = unit === undefined ? undefined : parseUnit(unit)
  if (reading?.ok === true)
    return { factor: reading.unit.factor, text: unit ?? '', si: siUnit(formatDimension(reading.unit.dimension)) }
  const si = dimension === null ? '' : siUnit(dimension)
  return { factor: 1, text: si, si }
}

/** A value in SI in the unit of the table, without the noise of the division; what is not finite by its name. */
export function inUnit(si: ResultNumber | undefined, { factor }: TableUnit): CsvCell {
  if (si === undefined) return null
  const value = numberOf(si) / factor
  return Number.isFinite(value) ? Number(value.toPrecision(15)) : String(value)
}

export function inSi(si: ResultNumber | undefined): CsvCell {
  return inUnit(si, { factor: 1, text: '', si: '' })
}

/** Numbers and their changes as a comparison words them. */
import type { AssumptionRecord, NumberChange, RequirementRecord, ResultNumber } from '../../contracts/index.js'
import { formatNumber, formatQuantity, numberOf } from '../quantity/index.js'

export interface Shown {
  readonly dimension: string | null
  readonly unit?: string | undefined
}

/** `+12.5 kg`, `−3 m`, `no change`. */
export function changeWords(si: number, { dimension, unit }: Shown): string {
  if (si === 0) return 'no change'
  return `${si < 0 ? '−' : '+'}${formatQuantity(Math.abs(si), dimension, unit).text}`
}

/** `+3.2 %`; nothing where there is no number to compare with. */
export function percentWords(percent: number | undefined): string {
  if (percent === undefined || !Number.isFinite(percent)) return ''
  return `${percent < 0 ? '−' : '+'}${formatNumber(Number(Math.abs(percent).toPrecision(3)))} %`
}

export function sideWords(si: ResultNumber | undefined, { dimension, unit }: Shown): string {
  return si === undefined ? 'none' : formatQuantity(si, dimension, unit).text
}

export function numberRow(change: NumberChange): readonly [from: string, to: string, change: string, percent: string] {
  return [
    sideWords(change.from, change),
    sideWords(change.to, change),
    change.change === undefined ? '' : changeWords(change.change, change),
    percentWords(change.percent),
  ]
}

/** One part of an assumption as it reads on a side. */
export function partWords(part: string, record: AssumptionRecord | undefined, dimension: string | null): string {
  if (record === undefined) return 'none'
  const shown = { dimension, unit: record.unit }
  switch (part) {
    case 'value':
      return sideWords(record.value, shown)
    case 'range':
      return record.low === undefined ? 'none' : `${sideWords(record.low, shown)} to ${sideWords(record.high, shown)}`
    case 'distribution':
      return record.distribution === undefined ? 'none' : distributionWords(record.distribution, shown)
    case 'source':
      return record.source ?? 'none'
    case 'note':
      return record.note ?? 'none'
    case 'owner':
      return record.owner ?? 'none'
    default:
      return record.unit ?? 'none'
  }
}

function distributionWords(distribution: NonNullable<AssumptionRecord['distribution']>, shown: Shown): string {
  const parts = Object.entries(distribution).flatMap(([key, value]) =>
    key === 'kind'
      ? []
      : [`${key} ${key === 'factor' ? formatNumber(value as ResultNumber) : sideWords(value as ResultNumber, shown)}`],
  )
  return `${distribution.kind}: ${parts.join(', ')}`
}

/** `met, margin 2 min`, `not met, misses by 0.6 m`, `none`. */
export function marginSide(requirement: RequirementRecord | undefined): string {
  if (requirement === undefined) return 'none'
  const distance = formatQuantity(Math.abs(numberOf(requirement.margin)), null, requirement.unit ?? '1').text
  return requirement.met ? `met, margin ${distance}` : `not met, misses by ${distance}`
}

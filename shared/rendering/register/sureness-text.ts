/** Range, distribution and unit of an assumption as its owner types them, in the words in which they are shown. */
import { describeDimension, endSentence, parseUnit, sameDimension, suggest } from '../../contracts/index.js'
import { numberOf } from '../quantity/index.js'
import type { AssumptionRow } from './assumption-rows.js'
import { dimensionOf, numberText, plain, readNumber, unitOf, valueText } from './value-text.js'

type Pair = readonly [low: number, high: number]

/** Around the value, in SI. */
export type StatedDistribution =
  | { readonly normal: number }
  | { readonly uniform: Pair }
  | { readonly triangular: Pair }
  | { readonly lognormal: number }

/** What was typed; `null` where nothing was, which takes it out. */
export type Reading<T> =
  | { readonly ok: true; readonly stated: T | null }
  /** A sentence: what came, what would be accepted. */
  | { readonly ok: false; readonly message: string }

/** `200 to 265`, empty where none is stated. */
export function rangeText(row: AssumptionRow): string {
  const { low, high } = row.record
  return low === undefined || high === undefined ? '' : pairText(row, [numberOf(low), numberOf(high)])
}

/** Reads `200 to 265`, in the unit shown or with one. */
export function readRange(text: string, row: AssumptionRow): Reading<Pair> {
  const typed = text.trim().replace(/^range\b/i, '')
  if (typed.trim() === '') return nothing
  const reading = readPair(typed, row)
  if (reading.ok && reading.pair[0] <= reading.pair[1]) return { ok: true, stated: reading.pair }
  const why = reading.ok ? fallen(typed) : reading.message
  return refuse(`${why} Accepted is a range such as "${example(row)}"${inUnit(row)}, or nothing, which takes it out.`)
}

/** `normal, deviation 10`, `triangular, 200 to 265`; empty where none is stated. */
export function distributionText(row: AssumptionRow): string {
  const { distribution } = row.record
  if (distribution === undefined) return ''
  switch (distribution.kind) {
    case 'normal':
      return `normal, deviation ${numberText(numberOf(distribution.deviation), row)}`
    case 'uniform':
    case 'triangular':
      return `${distribution.kind}, ${pairText(row, [numberOf(distribution.low), numberOf(distribution.high)])}`
    case 'lognormal':
      return `lognormal, factor ${distribution.factor}`
  }
}

/** Reads a distribution in the words that `distributionText` gives, in the unit shown or with one. */
export function readDistribution(text: string, row: AssumptionRow): Reading<StatedDistribution> {
  const typed = text.trim()
  if (typed === '') return nothing
  const [, kind = '', rest = ''] = /^([\p{L}-]+)\s*[,:]?\s*(.*)$/su.exec(typed) ?? []
  const read = Object.hasOwn(forms, kind.toLowerCase()) ? forms[kind.toLowerCase()] : undefined
  const reading =
    read === undefined
      ? refuse(endSentence(`"${kind === '' ? typed : kind}" is no distribution${suggest(kind, Object.keys(forms))}`))
      : read(rest, row)
  if (reading.ok) return reading
  const ends = example(row)
  return refuse(
    `${reading.message} Accepted is "normal, deviation ${deviationExample(row)}", "uniform, ${ends}", "triangular, ${ends}" or "lognormal, factor 1.2"${inUnit(row)}, or nothing, which takes it out.`,
  )
}

/** Reads the text of a unit of the same quantity. */
export function readUnit(text: string, row: AssumptionRow): Reading<string> {
  const typed = text.trim()
  if (typed === '') return nothing
  const reading = parseUnit(typed)
  if (!reading.ok) return reading
  const wanted = dimensionOf(row)
  if (wanted === null || sameDimension(wanted, reading.unit.dimension)) return { ok: true, stated: typed }
  const [came, accepted] = [describeDimension(reading.unit.dimension), describeDimension(wanted)]
  return refuse(
    `"${typed}" is a unit of ${came}, and "${row.name}" is in ${accepted}. Accepted is a unit of the latter.`,
  )
}

const forms: Readonly<Record<string, (text: string, row: AssumptionRow) => Reading<StatedDistribution>>> = {
  normal(text, row) {
    const reading = readNumber(text.replace(/^deviation\b/i, ''), row)
    if (!reading.ok) return reading
    return reading.si > 0 ? { ok: true, stated: { normal: reading.si } } : refuse('A deviation is above 0.')
  },
  uniform(text, row) {
    const reading = readPair(text, row)
    if (!reading.ok) return reading
    return reading.pair[0] < reading.pair[1] ? { ok: true, stated: { uniform: reading.pair } } : refuse(fallen(text))
  },
  triangular(text, row) {
    const reading = readPair(text, row)
    if (!reading.ok) return reading
    const [low, high] = reading.pair
    const value = numberOf(row.record.value)
    if (low >= high) return refuse(fallen(text))
    if (value < low || value > high)
      return refuse(
        `The value ${valueText(row)} does not lie between "${text.trim()}", and a triangle has its peak there.`,
      )
    return { ok: true, stated: { triangular: reading.pair } }
  },
  lognormal(text, row) {
    const typed = plain(text.replace(/^factor\b/i, ''))
    const factor = /^\d+(\.\d+)?$/.test(typed) ? Number(typed) : Number.NaN
    if (!(numberOf(row.record.value) > 0)) return refuse('A lognormal distribution is about a value above 0.')
    if (factor > 1 && Number.isFinite(factor)) return { ok: true, stated: { lognormal: factor } }
    return refuse(`"${typed}" is no factor above 1, within which 68 % lie.`)
  },
}

const nothing = { ok: true, stated: null } as const

const refuse = (message: string) => ({ ok: false, message }) as const

/** Both in the unit shown; a unit that stands behind the second alone is that of both. */
function readPair(
  text: string,
  row: AssumptionRow,
): { readonly ok: true; readonly pair: Pair } | { readonly ok: false; readonly message: string } {
  const parts = plain(text).split(/\s+to\s+|\s*–\s*/)
  const [first, second] = parts
  if (first === undefined || second === undefined || parts.length > 2)
    return refuse(`"${text.trim()}" is not two numbers parted by "to".`)
  const unit = /^[+-]?[\d._]+(?:e[+-]?\d+)?\s*(.*)$/is.exec(second.trim())?.[1] ?? ''
  const bare = /^[+-]?[\d._]+(?:e[+-]?\d+)?$/i.test(first.trim())
  const low = readNumber(bare ? `${first} ${unit}` : first, row)
  const high = readNumber(second, row)
  if (!low.ok) return low
  return high.ok ? { ok: true, pair: [low.si, high.si] } : high
}

const fallen = (text: string) => `"${text.trim()}" does not rise from the lower end to the upper.`

const pairText = (row: AssumptionRow, [low, high]: Pair) => `${numberText(low, row)} to ${numberText(high, row)}`

/** A tenth either way, in the unit shown. */
function example(row: AssumptionRow): string {
  const value = Number(valueText(row)) || 1
  const tenth = Math.abs(value) / 10
  return `${rounded(value - tenth)} to ${rounded(value + tenth)}`
}

const deviationExample = (row: AssumptionRow) => rounded(Math.abs(Number(valueText(row)) || 1) / 20)

const rounded = (value: number) => String(Number(value.toPrecision(3)))

function inUnit(row: AssumptionRow): string {
  const { symbol } = unitOf(row)
  return symbol === '' ? '' : ` in ${symbol}`
}

/** Values of a cell as the data a reader is shown: cut to size, free of getters and functions, safe to print as JSON. */
import type { Figure, ResultNumber, ResultValue } from '../../../../shared/contracts/index.js'
import { bounds } from '../protocol.js'
import { CrossingError, type TypedArray, typedArrayName } from './crossing.js'

/** JSON has no NaN or infinity. */
export function encodeNumber(value: number): ResultNumber {
  return Number.isFinite(value) ? value : (String(value) as ResultNumber)
}

export function isFigure(value: unknown): boolean {
  return typeof value === 'object' && value !== null && 'figure' in value && typeof value.figure === 'string'
}

/** Encodes the value of one name. Figures found on the way, at the top or in lists and records, are added to `figures`. */
export function encodeValue(name: string, value: unknown, figures: Figure[]): ResultValue {
  if (typeof value === 'string' && value.length > bounds.text)
    throw new CrossingError(
      'OUTPUT_TOO_LARGE',
      `"${name}" is a text of ${value.length} characters; at most ${bounds.text} can be shown. Keep long texts inside a function.`,
    )
  return encodeAt(name, value, figures, 0)
}

function encodeAt(name: string, value: unknown, figures: Figure[], depth: number): ResultValue {
  if (typeof value === 'number') return { kind: 'number', si: encodeNumber(value) }
  if (typeof value === 'string') return { kind: 'text', text: depth === 0 ? value : cut(value, bounds.nestedText) }
  if (typeof value === 'boolean') return { kind: 'truth', value }
  if (typeof value === 'function') return { kind: 'function' }
  if (typeof value !== 'object' || value === null) return { kind: 'nothing' }
  if (isFigure(value)) {
    addFigure(name, value, figures)
    return { kind: 'figure' }
  }
  if (Array.isArray(value) || typedArrayName(value) !== undefined)
    return encodeList(name, value as readonly unknown[] | TypedArray, figures, depth)
  return encodeRecord(name, value as Record<string, unknown>, figures, depth)
}

function encodeList(name: string, list: ArrayLike<unknown>, figures: Figure[], depth: number): ResultValue {
  const items: ResultValue[] = []
  const shown = depth < bounds.depth ? Math.min(list.length, bounds.items) : 0
  for (let index = 0; index < shown; index += 1) {
    const item = list[index]
    items.push(encodeAt(name, typeof item === 'bigint' ? Number(item) : item, figures, depth + 1))
  }
  return { kind: 'list', length: list.length, items }
}

function encodeRecord(name: string, record: Record<string, unknown>, figures: Figure[], depth: number): ResultValue {
  const keys = Object.keys(record)
  const shown = depth < bounds.depth ? keys.slice(0, bounds.items) : []
  const entries = shown.map(
    (key) => [cut(key, bounds.nestedText), encodeAt(name, record[key], figures, depth + 1)] as const,
  )
  return { kind: 'record', entries, more: keys.length - entries.length }
}

function addFigure(name: string, value: object, figures: Figure[]): void {
  if (figures.length >= bounds.figures)
    throw new CrossingError(
      'OUTPUT_TOO_LARGE',
      `"${name}" brings the cell to more than ${bounds.figures} figures; show fewer, or split the cell.`,
    )
  figures.push(plainData(name, value, 0) as Figure)
}

/** A figure's data without functions and accessors. Its shape is judged outside, against the contract of figures. */
function plainData(name: string, value: unknown, depth: number): unknown {
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value
  if (typeof value !== 'object' || value === null || depth > 8) return null
  if (Array.isArray(value) || typedArrayName(value) !== undefined) {
    const list = value as ArrayLike<unknown>
    if (list.length > bounds.series)
      throw new CrossingError(
        'OUTPUT_TOO_LARGE',
        `The figure "${name}" has a series of ${list.length} points; at most ${bounds.series} can be drawn.`,
      )
    return Array.from(list, (item) => plainData(name, item, depth + 1))
  }
  const copy: Record<string, unknown> = {}
  for (const [key, item] of Object.entries(value))
    if (item !== undefined && typeof item !== 'function') copy[key] = plainData(name, item, depth + 1)
  return copy
}

/** Cuts a text and marks the cut. */
export function cut(text: string, length: number): string {
  return text.length <= length ? text : `${text.slice(0, length - 1)}…`
}

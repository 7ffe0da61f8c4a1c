/** `console.log` of cells: lines of the cell that is running, limited in number and length. */
import { bounds } from '../protocol.js'
import { cut } from './encode.js'

/** The lines of the running cell; the first line too many says that the rest was dropped. */
export class Log {
  readonly lines: string[] = []
  #characters = 0
  #full = false

  add(values: readonly unknown[]): void {
    if (this.#full) return
    if (this.lines.length >= bounds.logLines - 1 || this.#characters > bounds.logCharacters) {
      this.#full = true
      this.lines.push('… more lines were logged than are kept')
      return
    }
    const line = cut(values.slice(0, 100).map(describeForLog).join(' '), bounds.logLineCharacters)
    this.#characters += line.length
    this.lines.push(line)
  }
}

/** A value on one line, three levels deep, without calling anything of the value's own. */
export function describeForLog(value: unknown): string {
  return typeof value === 'string' ? cut(value, bounds.logLineCharacters) : describeAt(value, 0)
}

function describeAt(value: unknown, depth: number): string {
  if (typeof value === 'string') return JSON.stringify(cut(value, bounds.nestedText))
  if (typeof value === 'function') return 'a function'
  if (typeof value === 'bigint') return cut(`${value}n`, bounds.nestedText)
  if (typeof value !== 'object' || value === null) return String(value)
  if (value instanceof Error) return cut(`${value.name}: ${value.message}`, bounds.nestedText)
  if (Array.isArray(value) || ArrayBuffer.isView(value)) return describeList(value as unknown as unknown[], depth)
  if (value instanceof Map || value instanceof Set)
    return `${value instanceof Map ? 'Map' : 'Set'} of ${value.size} ${describeList([...value].slice(0, 21), depth)}`
  return describeRecord(value, depth)
}

function describeList(list: ArrayLike<unknown>, depth: number): string {
  if (depth >= 3) return `[${list.length} items]`
  const shown = Array.from({ length: Math.min(list.length ?? 0, 20) }, (_, index) => describeAt(list[index], depth + 1))
  return `[${shown.join(', ')}${list.length > 20 ? `, … ${list.length - 20} more` : ''}]`
}

function describeRecord(record: object, depth: number): string {
  if (depth >= 3) return '{…}'
  const keys = Object.keys(record)
  const shown = keys.slice(0, 20).map((key) => {
    const descriptor = Reflect.getOwnPropertyDescriptor(record, key)
    return `${cut(key, 60)}: ${describeAt(descriptor?.get === undefined ? descriptor?.value : undefined, depth + 1)}`
  })
  return `{ ${shown.join(', ')}${keys.length > 20 ? `, … ${keys.length - 20} more` : ''} }`
}

/** A line about one point, judged before anything in it is believed: length, JSON, shape, and how many names were asked for. */
import { type CellId, NumbersBody, type NumbersOutcome } from '../../../../shared/contracts/index.js'
import type { NumbersMessage } from '../protocol.js'
import { longestLine } from './replies.js'

/** The outcome, or why the line is not one. */
export function readNumbers(
  line: string,
  { names, needed }: Pick<NumbersMessage, 'names' | 'needed'>,
): NumbersOutcome | string {
  if (line === 'fault') return 'it reported a fault of its own'
  if (line.length > longestLine) return 'it sent more than it may'
  if (!line.startsWith('numbers ')) return 'it sent something unknown'
  const body = readBody(line.slice('numbers '.length))
  if (body === undefined || body.n.length !== names.length) return 'its numbers cannot be read'
  if (body.f !== undefined && !needed.includes(body.f[0] as CellId)) return 'it blamed another cell'
  return outcomeOf(body, names)
}

function readBody(text: string): NumbersBody | undefined {
  try {
    return NumbersBody.safeParse(JSON.parse(text)).data
  } catch {
    return undefined
  }
}

function outcomeOf({ n, r, f }: NumbersBody, names: NumbersMessage['names']): NumbersOutcome {
  const numbers: Record<string, number> = {}
  for (const [at, { name }] of names.entries()) {
    const value = n[at]
    if (value !== null && value !== undefined) put(numbers, name, Number(value))
  }
  const requirements: Record<string, { actual: number; margin: number }> = {}
  for (const [name, actual, margin] of r)
    put(requirements, freeKey(requirements, name), { actual: Number(actual), margin: Number(margin) })
  if (f === undefined) return { ok: true, numbers, requirements }
  return { ok: false, cell: f[0] as CellId, code: f[1], message: f[2], numbers, requirements }
}

/** As an own property, whatever the name is. */
function put<T>(record: Record<string, T>, name: string, value: T): void {
  Object.defineProperty(record, name, { value, enumerable: true, configurable: true, writable: true })
}

/** The second requirement of a name is `NAME (2)`. */
function freeKey(record: object, name: string): string {
  let key = name
  for (let turn = 2; Object.hasOwn(record, key); turn += 1) key = `${name} (${turn})`
  return key
}

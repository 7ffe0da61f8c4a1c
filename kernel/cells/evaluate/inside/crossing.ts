/**
 * Values on their way from one cell to others: what may cross, and how it is made safe to share.
 *
 * Records and lists are frozen in place, all the way down (iteratively, so depth and cycles do no harm, and within a bound on
 * work). Typed arrays cannot be frozen, so a value that holds one is copied: once when it leaves its cell, and again for each
 * cell that reads it.
 */
import { bounds } from '../protocol.js'

export interface Crossing {
  readonly value: unknown
  /** Holds a typed array somewhere: every reader gets a copy of its own. */
  readonly copied: boolean
  /** Items walked: a measure of memory. */
  readonly weight: number
}

/** A value that may not cross; the message says which name, what came and what is accepted. */
export class CrossingError extends Error {
  readonly code: 'NOT_SHAREABLE' | 'OUTPUT_TOO_LARGE'
  constructor(code: 'NOT_SHAREABLE' | 'OUTPUT_TOO_LARGE', message: string) {
    super(message)
    this.code = code
  }
}

const accepted =
  'numbers, text, true or false, undefined, null, lists, plain records, typed arrays, figures and functions'

const typedArrayPrototype = Object.getPrototypeOf(Uint8Array.prototype)
const typedArrayTag = Reflect.getOwnPropertyDescriptor(typedArrayPrototype, Symbol.toStringTag)?.get as () => unknown
const typedArrays = {
  Float32Array,
  Float64Array,
  Int8Array,
  Int16Array,
  Int32Array,
  Uint8Array,
  Uint8ClampedArray,
  Uint16Array,
  Uint32Array,
  BigInt64Array,
  BigUint64Array,
} as const
type TypedArrayName = keyof typeof typedArrays
export type TypedArray = InstanceType<(typeof typedArrays)[TypedArrayName]>

/** `Float64Array` and so on, or undefined; cannot be fooled by properties of the value. */
export function typedArrayName(value: object): TypedArrayName | undefined {
  return Reflect.apply(typedArrayTag, value, []) as TypedArrayName | undefined
}

/** Values already frozen by an earlier crossing, so that passing a record on costs nothing. */
const settled = new WeakSet<object>()

/** Checks and freezes (or copies) the value of a top-level name. */
export function crossOver(name: string, value: unknown): Crossing {
  const walk: Walk = { name, weight: 0, copied: false, waiting: [], seen: new Set() }
  visit(walk, value, '')
  while (walk.waiting.length > 0) {
    const [container, path] = walk.waiting.pop() as [object, string]
    if (Array.isArray(container)) visitList(walk, container, path)
    else visitRecord(walk, container as Record<string, unknown>, path)
  }
  if (walk.copied) return { value: copyValue(value), copied: true, weight: walk.weight }
  for (const container of walk.seen) {
    Object.freeze(container)
    settled.add(container)
  }
  return { value, copied: false, weight: walk.weight }
}

interface Walk {
  readonly name: string
  weight: number
  copied: boolean
  readonly waiting: [object, string][]
  readonly seen: Set<object>
}

function visit(walk: Walk, value: unknown, path: string): void {
  const type = typeof value
  if (type === 'symbol' || type === 'bigint') throw refuse(walk, path, `a ${type}`)
  if (type === 'function') {
    freezeFunction(walk, value as object)
    return
  }
  if (type !== 'object' || value === null) return
  const container = value as object
  if (walk.seen.has(container) || settled.has(container)) return
  if (typedArrayName(container) !== undefined) {
    walk.copied = true
    weigh(walk, (container as TypedArray).length)
    return
  }
  if (!isPlain(container)) throw refuse(walk, path, describeClass(container))
  walk.seen.add(container)
  walk.waiting.push([container, path])
}

/** Functions and what they carry, frozen already; apart from `settled`, since what is carried was not judged fit to cross by itself. */
const carriedFrozen = new WeakSet<object>()

/**
 * A function with its prototype and the lists and records that it carries (static fields of a class): another cell that changed them would
 * change what a third one reads of them, in an order that no text shows. Anything else that it carries is its own business.
 */
function freezeFunction(walk: Walk, root: object): void {
  const waiting: object[] = [root]
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (carriedFrozen.has(next)) continue
    carriedFrozen.add(next)
    Object.freeze(next)
    const { prototype } = next as { prototype?: unknown }
    if (typeof next === 'function' && typeof prototype === 'object' && prototype !== null) Object.freeze(prototype)
    const keys = Object.keys(next)
    weigh(walk, keys.length)
    for (const key of keys) {
      const carried: unknown = Reflect.getOwnPropertyDescriptor(next, key)?.value
      if (typeof carried === 'function' || (typeof carried === 'object' && carried !== null && isPlain(carried)))
        waiting.push(carried)
    }
  }
}

function isPlain(container: object): boolean {
  const prototype = Object.getPrototypeOf(container)
  return Array.isArray(container) ? prototype === Array.prototype : prototype === Object.prototype || prototype === null
}

function visitList(walk: Walk, list: readonly unknown[], path: string): void {
  weigh(walk, list.length)
  for (let index = 0; index < list.length; index += 1) {
    const item = list[index]
    if (typeof item !== 'number') visit(walk, item, `${path}[${index}]`)
  }
}

function visitRecord(walk: Walk, record: Record<string, unknown>, path: string): void {
  const keys = Object.keys(record)
  weigh(walk, keys.length + 1)
  for (const key of keys) {
    const descriptor = Reflect.getOwnPropertyDescriptor(record, key)
    if (descriptor?.get !== undefined || descriptor?.set !== undefined)
      throw refuse(walk, `${path}.${key}`, 'a computed property (get or set)')
    visit(walk, descriptor?.value, `${path}.${key}`)
  }
}

function weigh(walk: Walk, items: number): void {
  walk.weight += items
  if (walk.weight > bounds.crossing)
    throw new CrossingError(
      'OUTPUT_TOO_LARGE',
      `"${walk.name}" holds more than ${bounds.crossing} items; keep large tables inside a function and give what readers need of them.`,
    )
}

function refuse(walk: Walk, path: string, what: string): CrossingError {
  const shortPath = path.length > 80 ? `${path.slice(0, 80)}...` : path
  return new CrossingError(
    'NOT_SHAREABLE',
    `"${walk.name}${shortPath}" is ${what}, which a cell cannot give to others. Accepted are ${accepted}; keep anything else inside a function or a block { ... }.`,
  )
}

function describeClass(value: object): string {
  for (const [kind, words] of [
    [Map, 'a Map'],
    [Set, 'a Set'],
    [RegExp, 'a regular expression'],
    [Error, 'an Error'],
    [ArrayBuffer, 'an ArrayBuffer'],
  ] as const)
    if (value instanceof kind) return words
  const maker = (value as { constructor?: unknown }).constructor
  const name = typeof maker === 'function' ? maker.name : undefined
  return typeof name === 'string' && name !== '' ? `an object of class ${name.slice(0, 60)}` : 'an object of a class'
}

/** A deep copy in which shared and circular references stay so; records and lists of the copy are frozen, typed arrays are fresh. */
export function copyValue(root: unknown): unknown {
  const copies = new Map<object, object>()
  const waiting: [object, object][] = []
  const copyOf = (value: unknown): unknown => {
    if (typeof value !== 'object' || value === null || settled.has(value)) return value
    const known = copies.get(value)
    if (known !== undefined) return known
    const fresh = emptyCopy(value)
    copies.set(value, fresh)
    if (typedArrayName(value) === undefined) waiting.push([value, fresh])
    return fresh
  }
  const result = copyOf(root)
  while (waiting.length > 0) {
    const [from, to] = waiting.pop() as [Record<string, unknown>, Record<string, unknown>]
    for (const key of Object.keys(from))
      Object.defineProperty(to, key, { value: copyOf(from[key]), enumerable: true, writable: true, configurable: true })
    copyTraps(from, to)
  }
  for (const fresh of copies.values()) if (typedArrayName(fresh) === undefined) Object.freeze(fresh)
  return result
}

/** What throws when read in place of a number that there is none of (a design that does not close) throws in the copy too. */
function copyTraps(from: object, to: object): void {
  if (Array.isArray(from)) return
  for (const key of Object.getOwnPropertyNames(from)) {
    const descriptor = Reflect.getOwnPropertyDescriptor(from, key)
    if (descriptor?.get !== undefined) Object.defineProperty(to, key, descriptor)
  }
}

function emptyCopy(value: object): object {
  const name = typedArrayName(value)
  if (name !== undefined) return new typedArrays[name](value as never)
  return Array.isArray(value) ? new Array(value.length) : {}
}

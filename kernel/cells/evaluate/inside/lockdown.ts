/**
 * Turns a JavaScript realm into one that holds nothing but the language and the kernel, and in which nothing shared can be
 * changed. Runs once, before any cell; afterwards harness and kernel may use built-in methods without fear of tampering,
 * because every intrinsic is frozen.
 *
 * Freezing has one known drawback: after `Object.freeze(Error.prototype)` the plain assignment `this.name = 'X'` in a subclass
 * fails, because the inherited property is read-only. `allowOverride` cures it for the prototypes on which such assignments
 * are usual (objects, functions, errors). For the others (`list.map = ...`) use `Object.defineProperty` or a class field.
 */
import { languageNames } from '../../program/language.js'

type Bag = Record<PropertyKey, unknown>
const realm = globalThis as unknown as Bag

/**
 * The globals that stay. Everything else the platform offers (clock, randomness, locale, network, storage, timers, messages,
 * code generation) is deleted, whatever it is called: a list of what is allowed cannot miss a newcomer. `Proxy` is not on it, so
 * that a value is what it looks like, nor `Promise`, because cells are synchronous.
 */
const allowed: ReadonlySet<PropertyKey> = new Set([...languageNames].filter((name) => name !== 'console'))

/** Removes, replaces, freezes; then puts `extras` (the kernel and `console`) on the global as constants. */
export function lockDown(extras: Readonly<Record<string, unknown>>): void {
  const anonymous = anonymousIntrinsics()
  const overridable = overridablePrototypes()
  disarmFunctionConstructors()
  makeIndependentOfLocale(Object.getPrototypeOf(Uint8Array))
  makeDeterministic()
  removeGlobals()
  for (const prototype of overridable) allowOverride(prototype)
  const roots: unknown[] = [...Object.values(anonymous), ...Object.values(extras)]
  for (const name of allowed) roots.push(realm[name])
  freezeDeep(roots)
  for (const [name, value] of Object.entries(extras))
    Object.defineProperty(realm, name, { value, writable: false, configurable: false, enumerable: true })
  closeGlobal()
}

/** Intrinsics that have no global name but that every program can reach by syntax. */
function anonymousIntrinsics(): Record<string, object> {
  const prototypeOf = (value: unknown): object => Object.getPrototypeOf(value)
  return {
    typedArray: prototypeOf(Uint8Array) as object,
    generator: prototypeOf(function* () {}),
    asyncFunction: prototypeOf(async () => {}),
    asyncGenerator: prototypeOf(async function* () {}),
    arrayIterator: prototypeOf([][Symbol.iterator]()),
    mapIterator: prototypeOf(new Map()[Symbol.iterator]()),
    setIterator: prototypeOf(new Set()[Symbol.iterator]()),
    stringIterator: prototypeOf(''[Symbol.iterator]()),
    matchIterator: prototypeOf('a'.matchAll(/a/g)),
    promise: prototypeOf((async () => {})()),
    asyncIteration: prototypeOf((async function* () {})()),
  }
}

/** `Function`, and its async and generator kin, can turn text into code; each is replaced by one that refuses. */
function disarmFunctionConstructors(): void {
  const kinds = [() => {}, function* () {}, async () => {}, async function* () {}]
  for (const kind of kinds) {
    const prototype = Object.getPrototypeOf(kind)
    const name = prototype.constructor.name
    const refusing = function refusing() {
      throw new TypeError('Text cannot be turned into code in a cell; write the function out.')
    }
    Object.defineProperty(refusing, 'name', { value: name })
    Object.defineProperty(refusing, 'prototype', { value: prototype, writable: false })
    Object.defineProperty(prototype, 'constructor', { value: refusing, writable: false, configurable: false })
    if (name === 'Function') Object.defineProperty(realm, 'Function', { value: refusing, configurable: true })
  }
}

/** The same notebook gives the same text on every machine: methods that follow the locale follow the language's default instead. */
function makeIndependentOfLocale(typedArray: object): void {
  const replace = (prototype: object, name: string, method: (this: unknown, ...rest: unknown[]) => unknown) =>
    Object.defineProperty(prototype, name, { value: method, writable: true, configurable: true })
  const { asText } = {
    asText(this: unknown) {
      return (this as { toString(): string }).toString()
    },
  }
  const typedArrayPrototype = (typedArray as { prototype: object }).prototype
  for (const prototype of [Object.prototype, Array.prototype, Number.prototype, BigInt.prototype, typedArrayPrototype])
    replace(prototype, 'toLocaleString', asText)
  replace(String.prototype, 'toLocaleUpperCase', function toLocaleUpperCase(this: unknown) {
    return String(this).toUpperCase()
  })
  replace(String.prototype, 'toLocaleLowerCase', function toLocaleLowerCase(this: unknown) {
    return String(this).toLowerCase()
  })
  replace(String.prototype, 'localeCompare', function localeCompare(this: unknown, other: unknown) {
    const a = String(this)
    const b = String(other)
    return a < b ? -1 : a > b ? 1 : 0
  })
}

function makeDeterministic(): void {
  Object.defineProperty(Math, 'random', {
    value: function random() {
      throw new TypeError(
        'Math.random is not available in a cell, because the same notebook must give the same numbers everywhere.',
      )
    },
  })
  // The last match, RegExp.$1 and so on, would be a channel between cells.
  for (const name of Object.getOwnPropertyNames(RegExp))
    if (!['prototype', 'length', 'name', 'escape'].includes(name)) Reflect.deleteProperty(RegExp, name)
  Object.defineProperty(Error, 'stackTraceLimit', { value: 40, writable: false, configurable: false })
  Object.defineProperty(Error, 'prepareStackTrace', { value: undefined, writable: false, configurable: false })
}

/** Deletes everything not allowed from the global and from what it inherits (a worker's global inherits its platform's methods). */
function removeGlobals(): void {
  for (let holder: object | null = realm; holder !== null; holder = Object.getPrototypeOf(holder)) {
    if (holder === Object.prototype) break
    for (const key of Reflect.ownKeys(holder)) {
      if (holder === realm && allowed.has(key)) continue
      if (Reflect.deleteProperty(holder, key)) continue
      Reflect.defineProperty(holder, key, { value: undefined, writable: false })
      const left = Reflect.getOwnPropertyDescriptor(holder, key)
      if (left !== undefined && !isHarmless(left))
        throw new Error(`The evaluator cannot start: "${String(key)}" cannot be removed from the global scope.`)
    }
    if (holder !== realm) Object.freeze(holder)
  }
}

/** Some platforms have numbers on their global (`TEMPORARY`, `PERSISTENT`) that can be neither deleted nor changed. */
function isHarmless(left: PropertyDescriptor): boolean {
  return left.get === undefined && left.set === undefined && Object(left.value) !== left.value && left.writable !== true
}

function overridablePrototypes(): object[] {
  const errors = [Error, AggregateError, EvalError, RangeError, ReferenceError, SyntaxError, TypeError, URIError]
  return [Object.prototype, Function.prototype, ...errors.map((kind) => kind.prototype)]
}

/** Makes each plain property of a prototype an accessor whose setter defines the property on the object assigned to. */
function allowOverride(prototype: object): void {
  for (const key of Reflect.ownKeys(prototype)) {
    const descriptor = Reflect.getOwnPropertyDescriptor(prototype, key)
    if (descriptor === undefined || !('value' in descriptor) || !descriptor.configurable) continue
    const { value } = descriptor
    Object.defineProperty(prototype, key, {
      get: () => value,
      set(this: unknown, replacement: unknown) {
        if (this === prototype) throw new TypeError(`"${String(key)}" of a built-in cannot be changed in a cell.`)
        Object.defineProperty(this as object, key, {
          value: replacement,
          writable: true,
          enumerable: true,
          configurable: true,
        })
      },
      enumerable: descriptor.enumerable === true,
      configurable: false,
    })
  }
}

/** Freezes everything that can be reached from the roots through properties, accessors and prototypes. */
export function freezeDeep(roots: readonly unknown[]): void {
  const seen = new Set<unknown>([realm])
  const waiting: unknown[] = [...roots]
  while (waiting.length > 0) {
    const value = waiting.pop()
    if ((typeof value !== 'object' && typeof value !== 'function') || value === null || seen.has(value)) continue
    seen.add(value)
    if (elementPrototypes.has(value)) freezeKeepingStoresQuick(value)
    else if (!ArrayBuffer.isView(value)) Object.freeze(value)
    waiting.push(Object.getPrototypeOf(value))
    if (ArrayBuffer.isView(value)) continue
    for (const key of Reflect.ownKeys(value)) {
      const descriptor = Reflect.getOwnPropertyDescriptor(value, key)
      if (descriptor !== undefined) waiting.push(descriptor.value, descriptor.get, descriptor.set)
    }
  }
}

/** Prototypes of everything that has numbered elements. */
const elementPrototypes: ReadonlySet<unknown> = new Set(
  [
    Object.prototype,
    Array.prototype,
    Object.getPrototypeOf(Uint8Array.prototype),
    ...[Float64Array, Float32Array, Int8Array, Int16Array, Int32Array, BigInt64Array, BigUint64Array],
    ...[Uint8Array, Uint8ClampedArray, Uint16Array, Uint32Array],
  ].map((one) => (typeof one === 'function' ? one.prototype : one)),
)

/**
 * As `Object.freeze`, property by property. Where V8 finds a prototype frozen by `Object.freeze` it looks through all of them at every
 * store into a list or typed array: growing a list takes 13 times as long, a linear program 3 times.
 *
 * @throws Error for what is not frozen by this, so that the evaluator does not start
 */
function freezeKeepingStoresQuick(prototype: object): void {
  Object.preventExtensions(prototype)
  for (const key of Reflect.ownKeys(prototype)) {
    const descriptor = Reflect.getOwnPropertyDescriptor(prototype, key)
    const constant = descriptor !== undefined && 'value' in descriptor ? { writable: false } : {}
    Reflect.defineProperty(prototype, key, { ...constant, configurable: false })
  }
  if (!Object.isFrozen(prototype)) throw new Error('The evaluator cannot start: a prototype cannot be frozen.')
}

/** No cell can leave anything on the global for another to find. */
function closeGlobal(): void {
  for (const key of Reflect.ownKeys(realm)) Reflect.defineProperty(realm, key, { writable: false, configurable: false })
  Object.preventExtensions(realm)
}

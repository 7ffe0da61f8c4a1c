/**
 * What of the language a cell may use without asking, and what it may not and why. The analyser judges free names by these
 * lists; an evaluator must offer at least `languageNames` and none of `absentNames`.
 */

/** Names of the language that every cell sees. `Math` comes without `random`, `console` with `log` only. */
export const languageNames: ReadonlySet<string> = new Set([
  ...['undefined', 'NaN', 'Infinity', 'isNaN', 'isFinite', 'parseFloat', 'parseInt'],
  ...['Math', 'Number', 'String', 'Boolean', 'Array', 'Object', 'JSON', 'Map', 'Set', 'WeakMap', 'WeakSet'],
  ...['Symbol', 'BigInt', 'RegExp', 'ArrayBuffer', 'DataView', 'console', 'Reflect'],
  ...['Float64Array', 'Float32Array', 'Int8Array', 'Int16Array', 'Int32Array', 'BigInt64Array', 'BigUint64Array'],
  ...['Uint8Array', 'Uint8ClampedArray', 'Uint16Array', 'Uint32Array'],
  ...['Error', 'RangeError', 'TypeError', 'SyntaxError', 'ReferenceError', 'EvalError', 'URIError', 'AggregateError'],
  ...['encodeURIComponent', 'decodeURIComponent', 'encodeURI', 'decodeURI'],
])

const absences: readonly (readonly [reason: string, names: readonly string[]])[] = [
  [
    'the same notebook must give the same numbers at any time.',
    ['Date', 'performance', 'Temporal', 'crypto', 'WeakRef', 'FinalizationRegistry'],
  ],
  ['the same notebook must give the same numbers in any country.', ['Intl']],
  [
    'cells are synchronous, so there is nothing to wait for; call the function directly.',
    ['Promise', 'setTimeout', 'setInterval', 'clearTimeout', 'clearInterval', 'setImmediate', 'queueMicrotask'],
  ],
  [
    'cells are synchronous, so there is nothing to wait for; call the function directly.',
    ['requestAnimationFrame', 'requestIdleCallback', 'MessageChannel', 'BroadcastChannel', 'postMessage'],
  ],
  [
    'cells reach no network; write the data into the notebook.',
    ['fetch', 'XMLHttpRequest', 'WebSocket', 'EventSource', 'WebTransport', 'RTCPeerConnection', 'navigator'],
  ],
  [
    'cells reach no page, files or storage; they only compute.',
    ['window', 'document', 'self', 'globalThis', 'global', 'parent', 'top', 'location', 'localStorage'],
  ],
  [
    'cells reach no page, files or storage; they only compute.',
    ['sessionStorage', 'indexedDB', 'caches', 'process', 'Buffer', 'Worker', 'alert', 'prompt', 'confirm'],
  ],
  ['everything a cell sees is preloaded; it loads nothing.', ['require', 'module', 'exports', 'importScripts']],
  [
    'code is not made from text in cells, so that what runs is what is shown.',
    ['eval', 'Function', 'WebAssembly', 'AsyncFunction', 'GeneratorFunction'],
  ],
  [
    'values that cross cells are plain data that nothing changes behind their back.',
    ['SharedArrayBuffer', 'Atomics', 'Proxy', 'structuredClone'],
  ],
  ['a cell is not a function; name the values it needs.', ['arguments']],
]

/** Names that programmers expect and cells do not have, each with the reason as the end of a sentence. */
export const absentNames: ReadonlyMap<string, string> = new Map(
  absences.flatMap(([reason, names]) => names.map((name) => [name, reason] as const)),
)

/**
 * Names that no cell may own, because the language would go on meaning its own by them, or because a record cannot carry
 * them. Names of a platform (`top`, `performance`, `location`) are good names for a sizing and stay free.
 */
export function belongsToLanguage(name: string): boolean {
  return languageNames.has(name) || ownedByLanguage.has(name)
}

const ownedByLanguage: ReadonlySet<string> = new Set([
  ...['Date', 'Intl', 'Promise', 'Function', 'eval', 'arguments', 'globalThis', 'WebAssembly', 'SharedArrayBuffer'],
  ...['Atomics', 'Proxy', 'WeakRef', 'FinalizationRegistry', '__proto__'],
])

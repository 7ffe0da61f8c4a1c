/** Runs the built command: as a user does, in another process, or within this one, where the compiler is warm and the answer the same. */
import { spawn } from 'node:child_process'
import { fileURLToPath, pathToFileURL } from 'node:url'

export const root = fileURLToPath(new URL('../..', import.meta.url))

export interface CommandOutcome {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

/** In another process. */
export function spawnHoverfolio(...args: string[]): Promise<CommandOutcome> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [`${root}server/bin/hoverfolio.js`, ...args], { cwd: root })
    let out = ''
    let err = ''
    child.stdout.on('data', (chunk: Buffer) => {
      out += chunk.toString()
    })
    child.stderr.on('data', (chunk: Buffer) => {
      err += chunk.toString()
    })
    child.once('error', reject)
    child.once('close', (code) => resolve({ code, out, err }))
  })
}

let turn: Promise<unknown> = Promise.resolve()

/** In this process, one call after another: what they write is told apart by time alone. */
export function runHoverfolio(...args: string[]): Promise<CommandOutcome> {
  const outcome = turn.then(() => runHere(args))
  turn = outcome.catch(() => {})
  return outcome
}

async function runHere(args: readonly string[]): Promise<CommandOutcome> {
  const command = pathToFileURL(`${root}.build/server/command/index.js`).href
  const { runCommand } = (await import(command)) as typeof import('../../server/command/index.js')
  const written = { out: '', err: '' }
  const { stdout, stderr } = process
  const [writeOut, writeErr] = [stdout.write, stderr.write]
  stdout.write = (chunk: string | Uint8Array) => {
    written.out += chunk.toString()
    return true
  }
  stderr.write = (chunk: string | Uint8Array) => {
    written.err += chunk.toString()
    return true
  }
  try {
    return { code: await runCommand(args), ...written }
  } finally {
    stdout.write = writeOut
    stderr.write = writeErr
  }
}

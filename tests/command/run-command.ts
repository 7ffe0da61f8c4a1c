/** Runs the built command as a user does: another process, text in and out, an exit code. */
import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../..', import.meta.url))

export interface CommandOutcome {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

export function runHoverfolio(...args: string[]): Promise<CommandOutcome> {
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

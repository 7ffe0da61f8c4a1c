/** `hoverfolio`: the command's entry. Each subcommand is a file of its own with one shape: usage, options, run. */
import { cautionInFull, endSentence, suggest } from '../../shared/contracts/index.js'
import { check } from './check.js'
import { compute } from './compute.js'
import { drivers } from './drivers.js'
import { exportNotebook } from './export.js'
import { serve } from './serve.js'
import { spread } from './spread.js'
import { type Subcommand, WrongCall } from './subcommand.js'
import { trace } from './trace.js'

const subcommands: readonly Subcommand[] = [compute, check, trace, drivers, spread, exportNotebook, serve]

/** Runs one call and returns its exit code: 0 good, 1 a cell failed or a requirement is not met, 2 a wrong call. */
export async function runCommand(args: readonly string[]): Promise<number> {
  const [name, ...rest] = args
  if (name === undefined || name === 'help' || name === '--help') {
    process.stdout.write(usage())
    return name === undefined ? 2 : 0
  }
  const subcommand = subcommands.find((candidate) => candidate.name === name)
  if (subcommand === undefined) {
    const names = subcommands.map((candidate) => candidate.name)
    process.stderr.write(`${endSentence(`There is no "hoverfolio ${name}"${suggest(name, names)}`)}\n${usage()}`)
    return 2
  }
  try {
    return await subcommand.run(rest)
  } catch (error) {
    if (!(error instanceof WrongCall)) throw error
    process.stderr.write(`${error.message}\nUsage: hoverfolio ${subcommand.usage}\n`)
    return 2
  }
}

function usage(): string {
  const lines = subcommands.map((subcommand) => `  hoverfolio ${subcommand.usage}\n      ${subcommand.about}`)
  return `Usage:\n${lines.join('\n')}\n\nCautions in full:\n${cautionInFull.map((sentence) => `  ${sentence}\n`).join('')}`
}

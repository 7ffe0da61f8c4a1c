/** The shape all subcommands share, and how a wrong call is reported. */
import { type ParseArgsConfig, parseArgs } from 'node:util'
import { endSentence, suggest } from '../../shared/contracts/index.js'

export interface Subcommand {
  readonly name: string
  readonly usage: string
  readonly about: string
  run(args: readonly string[]): Promise<number>
}

/** A call that cannot be understood: printed with the usage, exit code 2. */
export class WrongCall extends Error {
  override readonly name = 'WrongCall'
}

/** `parseArgs` of Node with its complaints turned into wrong calls. */
export function readArguments<T extends ParseArgsConfig>(config: T): ReturnType<typeof parseArgs<T>> {
  try {
    return parseArgs(config)
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error)
    const unknown = /^Unknown option '([^']+)'/.exec(message)?.[1]
    throw new WrongCall(unknown === undefined ? message : unknownOption(unknown, config))
  }
}

function unknownOption(option: string, { options = {} }: ParseArgsConfig): string {
  const known = Object.keys(options).map((name) => `--${name}`)
  return `${endSentence(`There is no option ${option}${suggest(option, known)}`)} Options are ${known.join(', ')}.`
}

/** The one file name a subcommand takes. */
export function onlyFile(positionals: readonly string[], name: string): string {
  const [file, ...others] = positionals
  if (file === undefined)
    throw new WrongCall(`${name} needs a notebook file, for instance notebooks/worked-sizing.json.`)
  if (others.length > 0)
    throw new WrongCall(`${name} takes one notebook file; it got ${positionals.length}: ${positionals.join(', ')}.`)
  return file
}

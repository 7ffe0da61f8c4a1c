/** Reads case files and says what kind of check each case is, so that external checks and re-evaluations are told apart. */
import { readFileSync } from 'node:fs'

export interface Case {
  readonly id: string
  readonly quantity: string
  readonly inputs: Readonly<Record<string, number>>
  readonly expected: number
  readonly tolerance_rel: number
  readonly source: string
  readonly provenance: 'read' | 'memory'
  /** Where the expected number comes from, in the words of the file. */
  readonly number: string
}

/**
 * `external`: the expected number was printed by somebody else. `re-evaluated`: a published formula worked out again, which
 * checks the arithmetic of the kernel and not its physics.
 */
export type Kind = 'external' | 're-evaluated'

export function kindOf(one: Case): Kind {
  return /^(printed|published[ _]number)|same value was also read/.test(one.number) ? 'external' : 're-evaluated'
}

export function readCases(file: string): readonly Case[] {
  return JSON.parse(readFileSync(new URL(file, import.meta.url), 'utf8')) as readonly Case[]
}

/** The files hold eight significant digits; half a unit of the last of them is not the kernel's error. */
export const storedDigits = 5e-8

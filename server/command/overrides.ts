/** `--set NAME="VALUE UNIT"`: trial values for assumptions, checked against what the notebook declares. */
import type { Overrides } from '../../kernel/cells/program/index.js'
import {
  describeDimension,
  endSentence,
  type NameDimension,
  parseDimension,
  parseQuantity,
  sameDimension,
  suggest,
} from '../../shared/contracts/index.js'
import { WrongCall } from './subcommand.js'

/** Reads every `--set`; an unknown name, an unreadable number or a wrong dimension is a wrong call. */
export function readOverrides(
  settings: readonly string[],
  assumptions: readonly string[],
  names: readonly NameDimension[],
): Overrides {
  const overrides: Record<string, number> = {}
  for (const setting of settings) {
    const { name, text } = split(setting)
    if (!assumptions.includes(name)) throw new WrongCall(unknownName(name, assumptions))
    if (Object.hasOwn(overrides, name)) throw new WrongCall(`--set gives ${name} twice; give it once.`)
    const reading = parseQuantity(text)
    if (!reading.ok) throw new WrongCall(`--set ${name}: ${reading.message}`)
    const declared = names.find((entry) => entry.name === name)?.dimension ?? null
    const wanted = declared === null ? null : parseDimension(declared)
    if (wanted !== null && !sameDimension(wanted, reading.unit.dimension))
      throw new WrongCall(
        `--set ${name}: "${text}" is ${describeDimension(reading.unit.dimension)}, but ${name} is ${describeDimension(wanted)}.`,
      )
    overrides[name] = reading.si
  }
  return overrides
}

function split(setting: string): { name: string; text: string } {
  const equals = setting.indexOf('=')
  if (equals < 1)
    throw new WrongCall(`--set wants NAME="VALUE UNIT", for instance --set range="60 km"; it got "${setting}".`)
  return { name: setting.slice(0, equals).trim(), text: setting.slice(equals + 1).trim() }
}

function unknownName(name: string, assumptions: readonly string[]): string {
  if (assumptions.length === 0) return `--set ${name}: this notebook declares no assumptions.`
  const refusal = endSentence(
    `--set ${name}: this notebook has no assumption of that name${suggest(name, assumptions)}`,
  )
  return `${refusal} Its assumptions are ${assumptions.join(', ')}.`
}

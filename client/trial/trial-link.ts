/** A trial as a link: `#trial=NAME:VALUE,NAME:VALUE`, values in SI. What a link holds is a stranger's word and is read as such. */
import { endSentence, type Point, suggest } from '../../shared/contracts/index.js'

export type LinkReading =
  | { readonly ok: true; readonly point: Point }
  /** A sentence: what came, what would be accepted. */
  | { readonly ok: false; readonly message: string }

const most = { characters: 16_000, values: 500, name: 200 }

const accepted =
  'Accepted is #trial=NAME:VALUE, several parted by commas, each value a number in SI. Nothing of it is tried.'

/** The fragment with its sign; `''` when nothing is tried. */
export function trialFragment(point: Point): string {
  const parts = Object.entries(point).map(([name, value]) => `${encodeURIComponent(name)}:${numberText(value)}`)
  return parts.length === 0 ? '' : `#trial=${parts.join(',')}`
}

/** `undefined` for a fragment that is about something else. */
export function readTrialFragment(fragment: string): LinkReading | undefined {
  const text = /^#?trial=(.*)$/s.exec(fragment)?.[1]
  if (text === undefined) return undefined
  const refuse = (why: string): LinkReading => ({ ok: false, message: `The link to a trial ${why}. ${accepted}` })
  if (text.length > most.characters) return refuse(`has ${text.length} characters; at most ${most.characters} are read`)
  const point = new Map<string, number>()
  const parts = text.split(',')
  if (parts.length > most.values) return refuse(`has ${parts.length} values; at most ${most.values} are read`)
  for (const part of parts) {
    const [, encoded = '', number = ''] = /^([^:]*):([^:]*)$/s.exec(part) ?? []
    const name = decoded(encoded)
    if (name === undefined || name.length > most.name) return refuse('is damaged: a name in it cannot be read')
    if (name === '') return refuse('is damaged: a name and a value parted by a colon are wanted in it')
    const value = decoded(number) ?? ''
    if (!/^-?\d+(\.\d+)?(e[+-]?\d+)?$/i.test(value) || !Number.isFinite(Number(value)))
      return refuse(`gives no number for ${quoted(name)}`)
    if (point.has(name)) return refuse(`gives ${quoted(name)} twice`)
    point.set(name, Number(value))
  }
  return { ok: true, point: Object.fromEntries(point) }
}

/** What of a point fits the assumptions, and a sentence on what does not. */
export function fitToAssumptions(
  point: Point,
  known: readonly string[],
): { readonly point: Point; readonly message: string | null } {
  const names = new Set(known)
  const strange = Object.keys(point).filter((name) => !names.has(name))
  const [first] = strange
  if (first === undefined) return { point, message: null }
  const fitting = Object.fromEntries(Object.entries(point).filter(([name]) => names.has(name)))
  const more = strange.length === 1 ? '' : ` and ${strange.length - 1} more`
  const rest = Object.keys(fitting).length === 0 ? 'Nothing is tried.' : 'Only the rest of the link is tried.'
  return {
    point: fitting,
    message: `${endSentence(`The link to a trial names what is no assumption here: ${quoted(first)}${more}${suggest(first, known)}`)} ${rest}`,
  }
}

/** A name as text that is safe to read: nothing that turns the sentence around or runs out of the page. */
function quoted(name: string): string {
  return /^[\p{ID_Start}$_][\p{ID_Continue}$]{0,59}$/u.test(name) ? `"${name}"` : 'a name that no assumption can have'
}

function decoded(text: string): string | undefined {
  try {
    return decodeURIComponent(text)
  } catch {
    return undefined
  }
}

const numberText = (value: number) => String(value).replace('e+', 'e')

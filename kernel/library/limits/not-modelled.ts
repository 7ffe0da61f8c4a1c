import { requireText } from '../check.js'
import { checkOptions } from '../errors.js'
import { requireChoice } from '../outside.js'
import { requireList } from '../shapes.js'
import { type Effect, type Omission, type OmissionSubject, omissionSubjects, omissions } from './omissions.js'

export interface NotModelledOptions {
  /** Names of the kernel that the notebook uses; all when left out. */
  readonly subjects?: readonly OmissionSubject[]
  /** The notebook's own omissions, before those of the kernel. */
  readonly also?: readonly OwnOmission[]
  /** Of the kernel's list: what the notebook does model itself, by `notModelled`. */
  readonly except?: readonly string[]
}

export interface OwnOmission {
  readonly notModelled: string
  /** What it bears on. */
  readonly on: string
  readonly effect: Effect
  /** In words. */
  readonly likelySize: string
  /** `'house estimate'` when left out. */
  readonly source?: string
  /** `'this notebook'` when left out. */
  readonly subject?: string
}

const method = 'limits.notModelled'
const known = new Set(['subjects', 'also', 'except'])
const knownOwn = new Set(['notModelled', 'on', 'effect', 'likelySize', 'source', 'subject'])
const effects = ['flatters', 'penalises', 'either way'] as const

/**
 * The limits section of a notebook: what is not modelled, which way its absence errs, and how much it is likely to be worth.
 *
 * @equation none: a table
 * @param options - all optional: `subjects` (list of `'air'`, `'rotor'`, `'propeller'`, `'wing'`, `'drag'`, `'mass'`, `'battery'`, `'powertrain'`, `'mission'`, `'layout'`, `'authority'`, `'sizing'`; all when left out),
 * `also`: list of `{ notModelled, on, effect, likelySize, source }` of the notebook's own, `except`: list of what it does model
 * @returns a list of records, a table on the sheet: `subject`, `notModelled`, `on`, `effect` (`'flatters'`: the aircraft looks better without it; `'penalises'`; `'either way'`), `likelySize`, `source`
 * @throws InvalidInput for a subject, effect or exception it does not know, empty texts, and an unknown option
 * @method The house's list of what its methods leave out. Sizes are orders of magnitude for a reader's judgement and enter no number.
 * @validity Concept studies. Most omissions flatter: a design that closes with nothing to spare does not close.
 * @source Sizes: common practice, no source, except where the row names one.
 * @example
 * const left = limits.notModelled({ subjects: ['rotor', 'battery'], except: ['ground effect'] })
 * left.length // 7
 */
export function notModelled(options: NotModelledOptions = {}): Omission[] {
  checkOptions(method, options, known)
  const { subjects = omissionSubjects, also = [], except = [] } = options
  requireList(method, 'subjects', subjects, 'subject')
  subjects.forEach((subject, index) => {
    requireChoice(method, `subjects[${index}]`, subject, omissionSubjects)
  })
  if (except.length !== 0) requireList(method, 'except', except, 'text')
  const names = omissions.map((one) => one.notModelled)
  except.forEach((name, index) => {
    requireChoice(method, `except[${index}]`, name, names)
  })
  if (also.length !== 0) requireList(method, 'also', also, '{ notModelled, on, effect, likelySize }')
  const own = also.map((one, index) => readOwn(one, `also[${index}]`))
  const wanted = new Set<string>(subjects)
  const left = new Set<string>(except)
  return [...own, ...omissions.filter((one) => wanted.has(one.subject) && !left.has(one.notModelled))]
}

function readOwn(one: OwnOmission, at: string): Omission {
  checkOptions(`${method} ${at}`, one, knownOwn)
  const { subject = 'this notebook', notModelled: what, on, effect, likelySize, source = 'house estimate' } = one
  for (const [key, text] of Object.entries({ subject, notModelled: what, on, likelySize, source }))
    requireText(method, `${at}.${key}`, text)
  requireChoice(method, `${at}.effect`, effect, effects)
  return { subject, notModelled: what, on, effect, likelySize, source }
}

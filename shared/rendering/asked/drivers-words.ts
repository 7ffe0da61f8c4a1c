/** What moves a number, in sentences. */
import {
  type Driver,
  type DriverEnd,
  type Drivers,
  type EndsFrom,
  largestChange,
  type Unsteadiness,
  type Unvaried,
} from '../../contracts/index.js'
import { displayUnit, joinUnit } from '../quantity/format-quantity.js'
import { formatNumber, narrowSpace } from '../quantity/number.js'
import { countOf } from '../quantity/words.js'
import { type AssumptionNames, type NamedAssumption, showAssumption } from './assumption-names.js'
import { askedCount } from './driver-groups.js'
import { type AskedSubject, showValue } from './subject.js'

/** Rounding in the last digits is no change. */
const rounding = 1e-12

/** Named in the sentence: more would not be read. */
const namedNext = 2
const namedFailures = 2

/** `gross mass, 2 069 kg, is moved most by pack specific energy: +310 kg at 200 Wh/kg, −205 kg at 265 Wh/kg ...` */
export function driversSentence(subject: AskedSubject, drivers: Drivers, names: AssumptionNames): string {
  if (Number.isNaN(drivers.base)) return 'Stopped before anything was varied.'
  return [mostWords(subject, drivers, names), ...failureWords(drivers, names), withoutWords(drivers)]
    .filter((words) => words !== '')
    .join(' ')
}

function mostWords(subject: AskedSubject, { base, drivers, left }: Drivers, names: AssumptionNames): string {
  const number = `${subject.label}, ${showValue(subject, base)},`
  const soFar = left.length > 0 ? ' so far' : ''
  const [most, ...others] = drivers.filter((driver) => largestChange(driver) > 0)
  if (most === undefined)
    return drivers.length > 0
      ? `${number} is moved by nothing at the ends that compute${soFar}.`
      : `${number} is moved by nothing that was varied${soFar}.`
  const ends = endsBySize(most)
    .map((end) => `${changeText(subject, base, end.change)} at ${showAssumption(names(most.name), end.at)}`)
    .join(', ')
  const next = others.slice(0, namedNext).map(({ name }) => names(name).label)
  const then = next.length === 0 ? '' : `; then by ${next.join(' and ')}`
  return `${number} is moved most${soFar} by ${names(most.name).label}: ${ends}${then}.`
}

type Computed = DriverEnd & { readonly change: number }

/** The ends that compute, the one that moves the number more first. */
function endsBySize({ low, high }: Driver): readonly Computed[] {
  const computed = [low, high].filter((end): end is Computed => end.change !== undefined)
  return computed.sort((one, other) => Math.abs(other.change) - Math.abs(one.change))
}

/** The first with its reason, as far as that is one sentence; the others by their ends. */
function failureWords({ drivers }: Drivers, names: AssumptionNames): readonly string[] {
  const failures = drivers.flatMap((driver) => failingEnds(driver).map((end) => ({ driver, end })))
  const [first, ...others] = failures.map(({ driver, end }) => ({ driver, end, assumption: names(driver.name) }))
  if (first === undefined) return []
  const said = others.slice(0, namedFailures).map(({ driver, end, assumption }) => endWords(driver, end, assumption))
  const more = others.length - said.length
  const nor = [...said, ...(more === 0 ? [] : [countOf(more, 'more end')])].map((words) => `at ${words}`)
  return [
    `At ${endWords(first.driver, first.end, first.assumption)}, it does not compute: ${firstSentence(reasonOf(first.end))}.`,
    ...(nor.length === 0 ? [] : [`Nor does it ${nor.join(', nor ')}.`]),
  ]
}

export function failingEnds({ low, high }: Driver): readonly DriverEnd[] {
  return [low, high].filter(({ value }) => value === undefined)
}

/** `At the low end of sector length, 165 km, gross mass does not compute: the mass runs away.` */
export function failureSentence(
  { label }: AskedSubject,
  driver: Driver,
  end: DriverEnd,
  assumption: NamedAssumption,
): string {
  return `At ${endWords(driver, end, assumption)}, ${label} does not compute: ${reasonOf(end)}.`
}

/** `the low end of sector length, 165 km` */
function endWords(driver: Driver, end: DriverEnd, assumption: NamedAssumption): string {
  return `the ${end === driver.low ? 'low' : 'high'} end of ${assumption.label}, ${showAssumption(assumption, end.at)}`
}

function firstSentence(text: string): string {
  return text.split(/\.\s/, 1)[0] ?? text
}

function reasonOf({ failure = 'no reason was given' }: DriverEnd): string {
  return failure.replace(/\.\s*$/, '')
}

function withoutWords(drivers: Drivers): string {
  const { without } = drivers
  if (without.length === 0) return ''
  return `${without.length} of ${countOf(askedCount(drivers), 'assumption')} ${without.length === 1 ? 'has' : 'have'} no effect.`
}

/** `+35.2 kg`, `−35.2 kg`, `no change`: in the unit that the number itself is shown in. */
export function changeText({ dimension, unit }: AskedSubject, base: number, change: number): string {
  if (Math.abs(change) <= rounding * Math.abs(base)) return 'no change'
  const { factor, symbol } = displayUnit(base, dimension, unit)
  return `${change > 0 ? '+' : ''}${joinUnit(formatNumber(change / factor), symbol)}`
}

/** `+0.79 %`; nothing where there is no slope. */
export function elasticityText({ elasticity }: Driver): string {
  if (elasticity === undefined) return 'none'
  const digits = formatNumber(elasticity, 3)
  return `${elasticity > 0 ? '+' : ''}${digits}${narrowSpace}%`
}

export const endsFromWords: Readonly<Record<EndsFrom, string>> = {
  range: 'ends of its stated range',
  distribution: 'ends at 5 and 95 % of its distribution',
  'ten percent': `ends ±10${narrowSpace}%, as it states no range`,
}

/** What a number that is not smooth means for whoever reads the changes. A failing end is told by `failureSentence`. */
export const unsteadyWords: Readonly<Record<Unsteadiness, string>> = {
  failure:
    'Close to the value it does not compute, so there is no telling what 1 % does: it stands at the edge of what works.',
  bend: 'Its effect turns or jumps close to the value: a limit, a choice or a step lies there. What it does to one side says nothing of the other, and must not be scaled.',
  threshold:
    'Small changes do nothing: a limit has to be reached first. Beyond it the number moves, so these changes must not be scaled.',
}

export const unvariedWords: Readonly<Record<Unvaried['reason'], string>> = {
  'zero without a range': 'is 0 and states no range, so there is no telling how far it might go; give it a range',
  'not finite': 'is no finite number',
}

/** What was varied and how: it stands below every answer. */
export function driversBasis(subject: AskedSubject, drivers: Drivers, trials: boolean): string {
  const { runs } = drivers
  const asked = countOf(askedCount(drivers), 'assumption')
  const held = trials ? 'in the document or on trial' : 'in the document'
  return `${asked} can reach ${subject.label}; each was varied alone, all else as ${held}: ${countOf(runs, 'run')}. Per 1 %: by how many per cent ${subject.label} changes when the assumption alone grows by 1 %, from steps of 1 % to either side. Changes of several assumptions at once do not simply add up.`
}

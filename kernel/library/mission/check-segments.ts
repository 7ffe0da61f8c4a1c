/** Checks of the segments of a mission. Places are spelled out only where something is refused: a sizing reads its mission many times. */
import { requireFinite, requireNonNegative, requirePositive, requireText } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { LevelSegment, Segment, SegmentKind, SpeedRule } from './segment.js'

const kinds: readonly SegmentKind[] = [
  'hover',
  'vertical climb',
  'transition',
  'climb',
  'cruise',
  'loiter',
  'descent',
  'return transition',
  'landing',
  'balked landing',
  'divert',
  'reserve',
]
const rules: readonly SpeedRule[] = ['best range', 'best endurance', 'power limit']
const named = ['kind', 'name', 'massChange']
const flown = [...named, 'speed', 'tailwind']
const level = new Set([...flown, 'time', 'distance', 'altitude'])
const transition = new Set([...flown, 'acceleration', 'stoppedRotors'])
const sloping = new Set([...flown, 'to', 'rate'])
const vertical = new Set([...named, 'time', 'height', 'rate'])

const knownByKind: Readonly<Record<SegmentKind, ReadonlySet<string>>> = {
  hover: new Set([...named, 'time']),
  'vertical climb': new Set([...named, 'height', 'rate']),
  transition,
  'return transition': transition,
  climb: sloping,
  descent: sloping,
  cruise: level,
  loiter: level,
  divert: level,
  reserve: level,
  landing: new Set([...vertical, 'stoppedRotors']),
  'balked landing': vertical,
}

type Check = (method: string, argument: string, value: number, unit: string) => void
const most = 200

/** Checks a list of segments and returns it. */
export function requireSegments(method: string, segments: readonly Segment[]): readonly Segment[] {
  if (!Array.isArray(segments) || segments.length === 0 || segments.length > most)
    throw new InvalidInput({
      method,
      argument: 'segments',
      value: describeValue(segments),
      accepted: `a list of 1 to ${most} segments, such as { kind: "hover", time: 60 }`,
    })
  for (let index = 0; index < segments.length; index += 1) checkSegment(method, index, segments[index] as Segment)
  return segments
}

function checkSegment(method: string, index: number, segment: Segment): void {
  if (typeof segment !== 'object' || segment === null) checkOptions(`${method} segments[${index}]`, segment, level)
  const known = knownByKind[segment.kind]
  if (known === undefined) requireChoice(method, `segments[${index}].kind`, segment.kind, kinds)
  for (const key in segment)
    if (!known.has(key)) checkOptions(`${method} segments[${index}] (${segment.kind})`, segment, known)
  if (segment.name !== undefined) requireText(method, `segments[${index}].name`, segment.name)
  checkNumbers(method, index, segment)
  if ('speed' in segment) checkSpeed(method, index, segment)
  if (segment.kind === 'cruise' || segment.kind === 'loiter' || segment.kind === 'divert' || segment.kind === 'reserve')
    checkLength(method, index, segment)
}

/** Every number a segment may carry, by the check that it must pass; [needed by these kinds]. */
const numbers: readonly (readonly [key: string, unit: string, check: Check, needed: readonly SegmentKind[]])[] = [
  ['time', 's', requireNonNegative, ['hover']],
  ['height', 'm', requireNonNegative, ['vertical climb']],
  ['rate', 'm/s', requirePositive, ['vertical climb']],
  ['acceleration', 'm/s^2', requirePositive, []],
  ['to', 'm', requireFinite, ['climb', 'descent']],
  ['distance', 'm', requireNonNegative, []],
  ['altitude', 'm', requireFinite, []],
  ['tailwind', 'm/s', requireFinite, []],
  ['massChange', 'kg', requireFinite, []],
  ['stoppedRotors', '1', requireNonNegative, []],
]

function checkNumbers(method: string, index: number, segment: Segment): void {
  const values = segment as unknown as Readonly<Record<string, number | undefined>>
  for (const [key, unit, check, needed] of numbers) {
    const value = values[key]
    if (value === undefined) {
      if (!needed.includes(segment.kind)) continue
    } else if (typeof value === 'number' && value > 0 && value < 1e12) continue
    check(method, `segments[${index}].${key}`, value as number, unit)
  }
}

function checkSpeed(method: string, index: number, segment: Segment & { readonly speed?: unknown }): void {
  const { speed } = segment
  if (speed === undefined) return
  if (typeof speed === 'number') {
    if (!(speed > 0 && speed < 1e12)) requirePositive(method, `segments[${index}].speed`, speed, 'm/s')
    return
  }
  if (segment.kind === 'transition' || segment.kind === 'return transition')
    requirePositive(method, `segments[${index}].speed`, speed as number, 'm/s')
  requireChoice(method, `segments[${index}].speed`, speed as SpeedRule, rules)
}

/** A time or a distance, not both; a cruise may leave both to the distance of the mission. */
function checkLength(method: string, index: number, segment: LevelSegment): void {
  const { time, distance, kind } = segment
  if ((time === undefined) !== (distance === undefined)) return
  if (time === undefined && kind === 'cruise') return
  throw new InvalidInput({
    method,
    argument: `segments[${index}].time or .distance`,
    value: time === undefined ? 'missing' : 'given together with the other',
    accepted: 'one of the two',
  })
}

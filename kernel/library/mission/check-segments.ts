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
  const values = segment as unknown as Readonly<Record<string, unknown>>
  for (const key in segment) {
    if (!known.has(key)) checkOptions(`${method} segments[${index}] (${segment.kind})`, segment, known)
    const value = values[key]
    if (value !== undefined && !(typeof value === 'number' && value > 0 && value < 1e12))
      checkValue(method, index, segment, key, value)
  }
  for (const key of neededByKind[segment.kind] ?? [])
    if (values[key] === undefined) checkValue(method, index, segment, key, undefined)
  if (segment.kind === 'cruise' || segment.kind === 'loiter' || segment.kind === 'divert' || segment.kind === 'reserve')
    checkLength(method, index, segment)
}

/** Every number a segment may carry: its unit, and the check that it must pass. */
const numbers: Readonly<Record<string, readonly [unit: string, check: Check]>> = {
  time: ['s', requireNonNegative],
  height: ['m', requireNonNegative],
  rate: ['m/s', requirePositive],
  acceleration: ['m/s^2', requirePositive],
  to: ['m', requireFinite],
  distance: ['m', requireNonNegative],
  altitude: ['m', requireFinite],
  tailwind: ['m/s', requireFinite],
  massChange: ['kg', requireFinite],
  stoppedRotors: ['1', requireNonNegative],
}
const neededByKind: Readonly<Partial<Record<SegmentKind, readonly string[]>>> = {
  hover: ['time'],
  'vertical climb': ['height', 'rate'],
  climb: ['to'],
  descent: ['to'],
}

/** What is not plainly a positive number of usual size. */
function checkValue(method: string, index: number, segment: Segment, key: string, value: unknown): void {
  const at = `segments[${index}].${key}`
  const number = numbers[key]
  if (number !== undefined) number[1](method, at, value as number, number[0])
  else if (key === 'name') requireText(method, at, value as string)
  else if (key === 'speed') checkSpeed(method, at, segment.kind, value)
}

function checkSpeed(method: string, at: string, kind: SegmentKind, speed: unknown): void {
  if (typeof speed === 'number' || kind === 'transition' || kind === 'return transition')
    requirePositive(method, at, speed as number, 'm/s')
  else requireChoice(method, at, speed as SpeedRule, rules)
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

/**
 * Validity boxes: for each argument of a function the range that its doc comment declares, and where it says that refusal and
 * advice begin. Inside the box nearly every call must be answered; each end is found by bisection and held against the words.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InvalidInput, KernelError } from '../../../../kernel/library/index.js'
import { listenWhile } from '../../../unit/kernel/recorder-stub.js'
import { finiteNumbersOf } from '../any-input.js'
import { slowRuns } from '../runs.js'

/** Where something begins below and above; null where nothing does. */
export type Ends = readonly [low: number | null, high: number | null]

export interface Side {
  /** Ends of the box: the declared validity, or what aircraft have where none is declared. */
  readonly box: readonly [number, number]
  /** Where the other sides are bisected from; the mean of the box when left out. */
  readonly middle?: number
  /** Beyond these the argument is refused by name. */
  readonly refused?: Ends
  /** Beyond these the answer carries an advisory. */
  readonly advised?: Ends
  /** Only whole numbers. */
  readonly whole?: boolean
}

export interface Box {
  /** The function, and in what use where it has several boxes. */
  readonly name: string
  readonly call: (options: never) => unknown
  /** By path in the options: `polar.zeroLiftDrag`. */
  readonly sides: Readonly<Record<string, Side>>
  /** Options that stay. */
  readonly fixed?: object
  /** Least share of the answers without an advisory; lower where what is advised about follows from several arguments at once. */
  readonly quiet?: number
  /** Of how many inputs in a thousand a slow call is tried; 400 when left out. */
  readonly inAThousand?: number
}

/** Any number; the box says which are usual. */
export const usual = (low: number, high: number, more: Partial<Side> = {}): Side => ({ box: [low, high], ...more })
/** Refused at 0 and below, or below 0. */
export const aboveZero = (low: number, high: number, more: Partial<Side> = {}): Side =>
  usual(low, high, { refused: [0, null], ...more })
/** Accepted from end to end of the box and nowhere else. */
export const fromTo = (low: number, high: number, more: Partial<Side> = {}): Side =>
  usual(low, high, { refused: [low, high], ...more })
/** Refused below 0. */
export const notNegative = (low: number, high: number, more: Partial<Side> = {}): Side =>
  usual(low, high, { refused: [0, null], ...more })
/** Whole numbers from end to end and no others. */
export const wholeFromTo = (low: number, high: number, more: Partial<Side> = {}): Side =>
  fromTo(low, high, { whole: true, ...more })

/** Registers the tests of a subject's boxes. */
export function holdBoxes(title: string, boxes: readonly Box[], seed: number): void {
  describe(`${title} (seed ${seed})`, () => {
    for (const box of boxes) {
      it(`${box.name} answers at least 95 of 100 calls inside its box`, () => answersInside(box, seed))
      if (Object.values(box.sides).every(({ refused, advised }) => refused === undefined && advised === undefined))
        continue
      it(`${box.name} begins to refuse and to advise where its doc comment says`, () => {
        for (const [path, side] of Object.entries(box.sides)) holdEnds(box, path, side)
      })
    }
  })
}

function answersInside(box: Box, seed: number): void {
  const paths = Object.entries(box.sides)
  let [tried, answered, quiet] = [0, 0, 0]
  fc.assert(
    fc.property(fc.tuple(...paths.map(([, side]) => evenly(...side.box))), (values) => {
      const options = optionsAt(
        box,
        paths.map(([path, side], at) => [path, side.whole === true ? Math.round(values[at] ?? 0) : (values[at] ?? 0)]),
      )
      const { advisories } = listenWhile(() => {
        if (finiteNumbersOf(() => box.call(options as never)).length > 0) answered += 1
        tried += 1
      })
      if (advisories.length === 0) quiet += 1
    }),
    { numRuns: slowRuns(box.inAThousand ?? 400), seed },
  )
  expect(answered / tried, 'share of calls that are answered').toBeGreaterThanOrEqual(0.95)
  expect(quiet / tried, 'share of calls without an advisory').toBeGreaterThanOrEqual(box.quiet ?? 0.95)
}

/** Even over its range, unlike `fc.double`, which is even over floating-point numbers and so mostly next to 0. */
const evenly = (low: number, high: number) => fc.nat(1_000_000).map((part) => low + ((high - low) * part) / 1_000_000)

/** Bisects each end of one side, the others at their middle. */
function holdEnds(box: Box, path: string, side: Side): void {
  const middle = middleOf(side)
  const name = path.split('.').at(-1) ?? path
  const heard = outcomeAt(box, path, middle)
  expect(heard.refusedFor, `${path} in the middle`).toBeUndefined()
  // Refused for another argument that no longer fits is not refused for this one.
  const accepted = (value: number) => outcomeAt(box, path, value).refusedFor?.includes(name) !== true
  const silent = (value: number) => {
    const { refusedFor, advisories } = outcomeAt(box, path, value)
    return refusedFor === undefined && advisories <= heard.advisories
  }
  const ends = [
    [side.refused, accepted, 'refusal'],
    [side.advised, silent, 'advice'],
  ] as const
  for (const [documented, good, what] of ends)
    for (const [at, sign] of [[0, -1] as const, [1, 1] as const]) {
      const end = documented?.[at] ?? null
      if (end === null) continue
      const beyond =
        what === 'advice' ? justBeyond(end, sign, side.refused?.[at] ?? null) : end + sign * (1 + Math.abs(end))
      const slack = 1e-9 * (Math.abs(end) + Math.abs(middle))
      const found =
        side.whole === true ? wholeEdge(good, middle, sign, beyond) : edge(good, [middle, beyond], slack / 10)
      expect(Math.abs(found - end), `${what} of ${path} begins at ${found}, documented ${end}`).toBeLessThanOrEqual(
        slack,
      )
    }
}

/** Outside advice begins and inside refusal. */
function justBeyond(end: number, sign: number, refused: number | null): number {
  return refused === null ? end + sign * (0.5 * Math.abs(end) + 0.01) : (end + refused) / 2
}

/** Where `good` turns, between a value at which it holds and one at which it does not; found as closely as asked for. */
function edge(good: (value: number) => boolean, [inside, outside]: readonly [number, number], closely: number): number {
  if (good(outside)) return outside
  let [held, lost] = [inside, outside]
  while (Math.abs(lost - held) > closely) {
    const between = held + (lost - held) / 2
    if (between === held || between === lost) break
    if (good(between)) held = between
    else lost = between
  }
  return held
}

/** The last whole number at which `good` holds. */
function wholeEdge(good: (value: number) => boolean, inside: number, sign: number, outside: number): number {
  let [held, lost] = [Math.round(inside), Math.round(outside) + sign]
  while (Math.abs(lost - held) > 1) {
    const between = Math.round((held + lost) / 2)
    if (good(between)) held = between
    else lost = between
  }
  return held
}

/** What one call comes to: how many advisories, or the argument it was refused for. */
interface Outcome {
  readonly advisories: number
  readonly refusedFor?: string
}

/** With one argument moved from the middle. */
function outcomeAt(box: Box, path: string, value: number): Outcome {
  let refusedFor: string | undefined
  const { advisories } = listenWhile(() => {
    try {
      box.call(optionsAt(box, [[path, value]]) as never)
    } catch (error) {
      if (!(error instanceof KernelError)) throw error
      refusedFor = error instanceof InvalidInput ? error.argument : error.code
    }
  })
  return { advisories: advisories.length, ...(refusedFor === undefined ? {} : { refusedFor }) }
}

const middleOf = (side: Side): number => {
  const mean = side.middle ?? (side.box[0] + side.box[1]) / 2
  return side.whole === true ? Math.round(mean) : mean
}

/** The options in the middle of the box, with these put in their places. */
function optionsAt(box: Box, placed: readonly (readonly [path: string, value: number])[]): object {
  const options: Record<string, unknown> = { ...box.fixed }
  for (const [path, side] of Object.entries(box.sides)) place(options, path.split('.'), middleOf(side))
  for (const [path, value] of placed) place(options, path.split('.'), value)
  return options
}

function place(into: Record<string, unknown>, path: readonly string[], value: number): void {
  const [first = '', ...rest] = path
  if (rest.length === 0) into[first] = value
  else {
    into[first] ??= {}
    place(into[first] as Record<string, unknown>, rest, value)
  }
}

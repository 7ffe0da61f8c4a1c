/** From which value of its own on a quantity that stands still begins to move the number. */
import type { Waking } from '../../../../shared/contracts/index.js'
import { answerOf, type Probe, questionOf, type Reading } from './probe.js'
import { isPromised, pointsFar, type Quantity } from './scan.js'

/** Between two values of one quantity the number begins to move. */
export interface Bracket {
  readonly still: number
  readonly moving: number
  readonly fails: boolean
}

/** The value is found to this part of the bracket: no more digits are shown. */
const finest = 2 ** -15

/** The nearest bracket on either side, among the points that were evaluated. */
export function bracketsOf(quantity: Quantity, base: number, probe: Probe): readonly Bracket[] {
  const { above, below } = pointsFar(quantity)
  return [below, above].flatMap((points) => {
    let still = quantity.value
    for (const at of points) {
      const reading = probe.reading(questionOf(quantity, at))
      const goes = goesOn(quantity, at, base, probe)
      if (reading === undefined) return []
      if (reading === 'fails' && !isPromised(quantity, at)) {
        if (goes) continue
        return []
      }
      if (!goes) return [{ still, moving: at, fails: reading === 'fails' }]
      still = at
    }
    return []
  })
}

/** Whether to look farther out than here: neither does it move the number nor is what lies beyond out of reach. */
export function goesOn(quantity: Quantity, at: number, base: number, probe: Probe): boolean {
  const reading = probe.reading(questionOf(quantity, at))
  if (reading === undefined) return false
  // A count may go on where its fractions are refused; what is beyond other refusals is out of reach.
  if (reading === 'fails' && !isPromised(quantity, at)) return quantity.isCount
  return !movesAt(reading, base)
}

export function movesAt(reading: Reading, base: number): boolean {
  const answer = answerOf(reading, base)
  return answer === 'moved' || answer === 'fails'
}

/** Whether the number moves there; undefined where that was not found out. */
export type Test = (at: number) => boolean | undefined

export interface Narrowing {
  readonly bracket: Bracket
  /** Asks for what the test needs. */
  readonly questions: (at: number) => readonly ReturnType<typeof questionOf>[]
  readonly test: Test
}

/** Narrows all brackets together, so that each round is one call; the moving end of each. */
export async function narrowAll(narrowings: readonly Narrowing[], probe: Probe): Promise<readonly number[]> {
  const brackets = narrowings.map(({ bracket: { still, moving } }) => ({ still, moving }))
  // Halving needs the fewest evaluations; where there is one bracket, another worker has nothing else to do.
  const inner = narrowings.length > 1 ? [1 / 2] : [1 / 3, 2 / 3]
  const rounds = Math.ceil(Math.log(finest) / -Math.log(inner.length + 1))
  for (let round = 0; round < rounds && !probe.stopped; round += 1) {
    const points = brackets.map(({ still, moving }) => inner.map((share) => still + share * (moving - still)))
    await probe.ask(narrowings.flatMap(({ questions }, at) => (points[at] ?? []).flatMap(questions)))
    for (const [at, bracket] of brackets.entries()) {
      const tried = points[at] ?? []
      const first = tried.findIndex((value) => narrowings[at]?.test(value) === true)
      if (first < 0) bracket.still = tried.at(-1) ?? bracket.still
      else {
        bracket.moving = tried[first] ?? bracket.moving
        if (first > 0) bracket.still = tried[first - 1] ?? bracket.still
      }
    }
  }
  return brackets.map(({ moving }) => moving)
}

/** Each bracket of a quantity as a waking value, in the order given. */
export async function ownWakings(
  found: readonly { readonly quantity: Quantity; readonly bracket: Bracket }[],
  base: number,
  probe: Probe,
): Promise<readonly Waking[]> {
  const values = await narrowAll(
    found.map(({ quantity, bracket }) => ({
      bracket,
      questions: (at: number) => [questionOf(quantity, at)],
      test: (at: number) => {
        const reading = probe.reading(questionOf(quantity, at))
        return reading === undefined ? undefined : movesAt(reading, base) && isLike(reading, bracket)
      },
    })),
    probe,
  )
  return found.map(({ quantity, bracket }, at) => ({
    by: quantity.name,
    // Of one more or one less nothing between is worth telling.
    from:
      quantity.isCount && Math.abs(bracket.moving - quantity.value) === 1
        ? bracket.moving
        : (values[at] ?? bracket.moving),
    fails: bracket.fails,
  }))
}

/** Inside a bracket whose end computes, a failure is a refused fraction. */
function isLike(reading: Reading, { fails }: Bracket): boolean {
  return fails || reading !== 'fails'
}

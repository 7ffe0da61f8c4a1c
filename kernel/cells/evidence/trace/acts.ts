/** What each quantity does to the number when it alone is changed. */
import type { Acts, Waking } from '../../../../shared/contracts/index.js'
import { findDeciders } from './deciders.js'
import { type Answer, answerOf, type Probe, questionOf } from './probe.js'
import { isPromised, pointsClose, pointsFar, pointsNear, type Quantity } from './scan.js'
import { type Bracket, bracketsOf, goesOn, ownWakings } from './wake.js'

export interface Effect {
  readonly acts: Acts
  readonly wakes: readonly Waking[]
}

/** In stages, each for what the one before has left open: most quantities move the number at the first step. */
export async function findEffects(
  quantities: readonly Quantity[],
  base: number,
  probe: Probe,
): Promise<ReadonlyMap<Quantity, Effect>> {
  await askAt(quantities, (quantity) => pointsNear(quantity).slice(0, quantity.isSwitch ? 2 : 1), probe)
  await askAt(without(quantities, base, probe), pointsNear, probe)
  const still = quantities.filter((quantity) => !movesClose(quantity, base, probe))
  await askFar(still, base, probe)
  const wakes = await wakingsOf(still, base, probe)
  const idle = still.filter(
    (quantity) => actsOf(quantity, base, probe) === 'inactive' && wakes.get(quantity)?.length === 0,
  )
  const deciders = await findDeciders(
    idle,
    quantities.filter(({ handled }) => !handled),
    base,
    probe,
  )
  return new Map(
    quantities.map((quantity) => {
      const acts = actsOf(quantity, base, probe)
      const decider = deciders.get(quantity)
      // Of a count that moves the number there is no nearer value to tell.
      const own = acts === 'moves' && refusesFractions(quantity, base, probe) ? [] : (wakes.get(quantity) ?? [])
      return [quantity, { acts, wakes: decider === undefined ? own : [decider] }]
    }),
  )
}

async function askAt(
  quantities: readonly Quantity[],
  points: (quantity: Quantity) => readonly number[],
  probe: Probe,
): Promise<void> {
  await probe.ask(quantities.flatMap((quantity) => points(quantity).map((at) => questionOf(quantity, at))))
}

/** Outwards on both sides of all at once, on each no farther than to where its bracket ends. */
async function askFar(quantities: readonly Quantity[], base: number, probe: Probe): Promise<void> {
  let open = quantities.flatMap((quantity) =>
    Object.values(pointsFar(quantity)).map((points) => ({ quantity, points })),
  )
  for (let place = 0; open.length > 0 && !probe.stopped; place += 1) {
    open = open.filter(({ points }) => place < points.length)
    await probe.ask(open.map(({ quantity, points }) => questionOf(quantity, points[place] ?? quantity.value)))
    open = open.filter(({ quantity, points }) => goesOn(quantity, points[place] ?? quantity.value, base, probe))
  }
}

function without(quantities: readonly Quantity[], base: number, probe: Probe): readonly Quantity[] {
  return quantities.filter((quantity) => !movesClose(quantity, base, probe))
}

/** A step of 1 % either way moves it, or the other position of a switch. */
function movesClose(quantity: Quantity, base: number, probe: Probe): boolean {
  const points = quantity.isSwitch ? [1 - quantity.value] : pointsClose(quantity)
  return answersAt(quantity, points, base, probe).some(({ answer }) => answer === 'moved')
}

interface Answered {
  readonly at: number
  readonly answer: Answer | undefined
}

function answersAt(quantity: Quantity, points: readonly number[], base: number, probe: Probe): readonly Answered[] {
  return points.map((at) => {
    const reading = probe.reading(questionOf(quantity, at))
    return { at, answer: reading === undefined ? undefined : answerOf(reading, base) }
  })
}

function actsOf(quantity: Quantity, base: number, probe: Probe): Acts {
  const near = answersAt(quantity, pointsNear(quantity), base, probe)
  if (near.some(({ answer }) => answer === 'moved')) return 'moves'
  if (refusesFractions(quantity, base, probe)) return countActs(quantity, base, probe)
  const close = answersAt(quantity, pointsClose(quantity), base, probe)
  if (close.some(({ at, answer }) => answer === 'fails' && isNews(quantity, at))) return 'moves'
  if (near.some(({ answer }) => answer === undefined)) return 'not known'
  return near.some(({ answer }) => answer === 'hardly') ? 'hardly' : 'inactive'
}

function refusesFractions(quantity: Quantity, base: number, probe: Probe): boolean {
  return (
    quantity.isCount && answersAt(quantity, pointsClose(quantity), base, probe).some(({ answer }) => answer === 'fails')
  )
}

/** Of a count whose fractions are refused: one more and one less; where neither computes it cannot be changed without losing the number. */
function countActs(quantity: Quantity, base: number, probe: Probe): Acts {
  const { value, isSwitch } = quantity
  const points = isSwitch ? [1 - value] : [value - 1, value + 1]
  const answers = answersAt(quantity, points, base, probe).map(({ answer }) => answer)
  if (answers.includes('moved') || answers.every((answer) => answer === 'fails')) return 'moves'
  if (answers.includes(undefined)) return 'not known'
  return answers.includes('hardly') ? 'hardly' : 'inactive'
}

/** What has been found out so far; `not known` where that is nothing yet. */
export function effectsSoFar(
  quantities: readonly Quantity[],
  base: number,
  probe: Probe,
): ReadonlyMap<Quantity, Effect> {
  return new Map(quantities.map((quantity) => [quantity, { acts: actsOf(quantity, base, probe), wakes: [] }]))
}

/** A failure beyond the stated ends says nothing about what lies between them. */
function isNews(quantity: Quantity, at: number): boolean {
  return quantity.ends === undefined || isPromised(quantity, at)
}

async function wakingsOf(
  still: readonly Quantity[],
  base: number,
  probe: Probe,
): Promise<ReadonlyMap<Quantity, readonly Waking[]>> {
  const found = still.flatMap((quantity) =>
    bracketsOf(quantity, base, probe).map((bracket: Bracket) => ({ quantity, bracket })),
  )
  const wakings = await ownWakings(found, base, probe)
  return new Map(
    still.map((quantity) => [
      quantity,
      found.flatMap((one, at) => (one.quantity === quantity && wakings[at] !== undefined ? [wakings[at]] : [])),
    ]),
  )
}

/** For what moves nothing by itself, however far: the value of another assumption at which it would. */
import type { Point, Waking } from '../../../../shared/contracts/index.js'
import { answerOf, type Probe, type Question, questionOf } from './probe.js'
import type { Quantity } from './scan.js'
import { narrowAll } from './wake.js'

/** Another assumption at a value at which the number is another. */
interface Decider {
  readonly quantity: Quantity
  readonly at: number
}

/** Values of other assumptions that are tried at most: what a reader may still wait for. */
const mostDeciders = 48

/** Of which the pairs are evaluated together. */
const atOnce = 12

/**
 * Tries all that are idle together where another assumption stands elsewhere, and one by one only where something moved. Switches are tried
 * first; the first decider found is told.
 */
export async function findDeciders(
  idle: readonly Quantity[],
  assumptions: readonly Quantity[],
  base: number,
  probe: Probe,
): Promise<ReadonlyMap<Quantity, Waking>> {
  const found = new Map<Quantity, Waking>()
  if (idle.length === 0) return found
  const deciders = await movingPoints(assumptions, base, probe)
  for (const [place, decider] of deciders.entries()) {
    if (found.size === idle.length || probe.stopped) break
    // Some at once keep all workers busy, and not all: most are told by the first.
    if (place % atOnce === 0)
      await probe.ask(deciders.slice(place, place + atOnce).flatMap((one) => together(idle, one).flat()))
    const { quantity, at } = decider
    const rest = idle.filter((one) => !found.has(one) && one !== quantity)
    if (rest.length === 0 || !together(idle, decider).some((pair) => pairMoves(pair, probe))) continue
    const beside = { [quantity.name]: at }
    await probe.ask(rest.flatMap((one) => pairOf([one], beside)))
    const woken = rest.filter((one) => pairMoves(pairOf([one], beside), probe))
    const values = await narrow(woken, decider, probe)
    for (const [index, one] of woken.entries())
      found.set(one, { by: quantity.name, from: values[index] ?? at, fails: false })
  }
  return found
}

/** Switches turned over, then stated ends, then counts a few more or less and the rest half as much either way. */
async function movingPoints(assumptions: readonly Quantity[], base: number, probe: Probe): Promise<readonly Decider[]> {
  const rank = ({ isSwitch, ends }: Quantity) => (isSwitch ? 0 : ends !== undefined ? 1 : 2)
  const ordered = [...assumptions].sort((one, other) => rank(one) - rank(other))
  const all = ordered.flatMap((quantity) => farthest(quantity).map((at): Decider => ({ quantity, at })))
  const tried = all.slice(0, mostDeciders)
  await probe.ask(tried.map(({ quantity, at }) => questionOf(quantity, at)))
  return tried.filter(({ quantity, at }) => {
    const reading = probe.reading(questionOf(quantity, at))
    return reading !== undefined && answerOf(reading, base) === 'moved'
  })
}

function farthest(quantity: Quantity): readonly number[] {
  const { value, isSwitch, ends } = quantity
  if (isSwitch) return [1 - value]
  if (ends !== undefined) return ends.filter((end) => end !== value)
  if (quantity.isCount) return [value - 1, value + 1, Math.round(0.5 * value), Math.round(1.5 * value)]
  return value === 0 ? [-1, 1] : [0.5 * value, 1.5 * value]
}

/** Numbers on the way are set in another program, so that they are a pair of their own. */
function together(idle: readonly Quantity[], { quantity, at }: Decider): readonly (readonly Question[])[] {
  const others = idle.filter((one) => one !== quantity)
  return [false, true]
    .map((handled) => others.filter((one) => one.handled === handled))
    .filter((some) => some.length > 0)
    .map((some) => pairOf(some, { [quantity.name]: at }))
}

/**
 * The same point twice but for these quantities. Of assumptions one is the point as it stands but for what is beside, which is known already;
 * a number on the way would not stand there, so both set it.
 */
function pairOf(quantities: readonly Quantity[], beside: Point): readonly Question[] {
  const handled = quantities.some((one) => one.handled)
  const point = (turn: 0 | 1): Point => ({
    ...beside,
    ...Object.fromEntries(quantities.map((one) => [one.name, pairValues(one)[turn]])),
  })
  return [
    { point: handled ? point(0) : beside, handled },
    { point: point(1), handled },
  ]
}

function pairValues({ value, isSwitch, isCount }: Quantity): readonly [number, number] {
  if (isSwitch) return [value, 1 - value]
  if (isCount) return [value, value + 1]
  return value === 0 ? [0.01, 0.02] : [1.01 * value, 1.02 * value]
}

function pairMoves(pair: readonly Question[], probe: Probe): boolean {
  const [one, other] = pair.map((question) => probe.reading(question))
  return typeof one === 'number' && typeof other === 'number' && answerOf(one, other) === 'moved'
}

async function narrow(woken: readonly Quantity[], { quantity, at }: Decider, probe: Probe): Promise<readonly number[]> {
  if (quantity.isSwitch || quantity.isCount) return woken.map(() => at)
  const { name, value } = quantity
  return narrowAll(
    woken.map((one) => ({
      bracket: { still: value, moving: at, fails: false },
      questions: (there: number) => pairOf([one], { [name]: there }),
      test: (there: number) => pairMoves(pairOf([one], { [name]: there }), probe),
    })),
    probe,
  )
}

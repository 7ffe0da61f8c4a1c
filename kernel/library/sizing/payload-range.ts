/** Payload against range: how far each payload can be flown with the reserve kept, and which limit ends it. */
import { requireFinite, requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, InvalidInput } from '../errors.js'
import { brentRoot } from '../numerics/index.js'
import type { Length, Mass, Ratio } from '../quantity.js'
import { silently } from '../recorder.js'
import { requireFunction, requireNumbers } from '../shapes.js'

/** What is lacking by the name of the limit, each in its own unit: positive cannot be flown, zero or negative can. */
export type Lacking = Readonly<Record<string, number>>

export interface PayloadRangeOptions {
  /** What a payload [kg] and a range [m] lack: a number, or a record of numbers by limit. The reserve belongs in it. */
  readonly evaluate: (payload: Mass, range: Length) => number | Lacking
  /** That structure and cabin take [kg]. */
  readonly mostPayload: Mass
  /** [kg]; 0 (a ferry flight) when left out. */
  readonly leastPayload?: Mass
  /** Beyond which nothing is looked for [m]; 2000 km when left out. */
  readonly mostRange?: Length
  /** Payloads between the ends, 2 to 200; 21 when left out. */
  readonly points?: Ratio
}

export interface PayloadRangeCorner {
  /** `'full payload'`, `'trade'` where another limit begins to bind, `'ferry'` at the least payload. */
  readonly corner: 'full payload' | 'trade' | 'ferry'
  /** [kg] */
  readonly payload: Mass
  /** [m] */
  readonly range: Length
  /** The limit that ends the flight there. */
  readonly binds: string
}

export interface PayloadRange {
  /** From the greatest to the least [kg]. */
  readonly payload: readonly Mass[]
  /** Greatest that each can be flown, 0 where it cannot take off [m]. */
  readonly range: readonly Length[]
  /** The limit that ends each. */
  readonly binds: readonly string[]
  /** Full payload, every trade, ferry. */
  readonly corners: readonly PayloadRangeCorner[]
}

const method = 'sizing.payloadRange'
const known = new Set(['evaluate', 'mostPayload', 'leastPayload', 'mostRange', 'points'])
const halvings = 40

interface Reach {
  readonly range: number
  readonly binds: string
}

/**
 * Payload-range diagram of a given aircraft: the greatest range for each payload, the limit that ends it, and the corners.
 *
 * @equation range(payload) = first r > 0 where the greatest of the limits' lacking(payload, r) is 0
 * @param options - `evaluate` (payload [kg], range [m]) to what is lacking: a number, or a record by limit, for instance `{ energy: used + reserve - usable, 'landing power': asked - limit,
 * 'gross mass': mass - greatest }`; `mostPayload` [kg]; optional `leastPayload` (0 kg), `mostRange` (2000 km), `points` (21)
 * @returns lists `payload` [kg], `range` [m], `binds`; `corners`: full payload, a trade wherever the binding limit changes, ferry
 * @throws InvalidInput for an `evaluate` that is no function or answers something else than finite numbers, payloads out of order, and an unknown option
 * @method Range by doubling steps and Brent's root, payload of a trade by halving between neighbouring points. A limit that is lacking at no range gives range 0 and binds; where nothing binds
 * up to `mostRange` the range is that and `binds` is "nothing". The reserve is honoured because `evaluate` counts it as needed: a diagram without one is a brochure.
 * @validity What is lacking grows with range. Two changes of limit between neighbouring points show as one.
 * @source Corners: Raymer, D. P., Aircraft Design: A Conceptual Approach, chapter on performance (from memory). With a fixed battery there is no exchange of payload for fuel, only a lighter aircraft.
 * @example
 * const reach = sizing.payloadRange({
 *   mostPayload: 400 * u.kg,
 *   evaluate: (payload, range) => ({ energy: (1200 * u.kg + payload) * u.g0 / (12 * 0.75) * (range + 60 * u.km) - 60 * u.kWh }),
 * })
 * reach.range[0] / u.km // 63.9
 */
export function payloadRange(options: PayloadRangeOptions): PayloadRange {
  checkOptions(method, options, known)
  const { mostPayload, leastPayload = 0, mostRange = 2e6, points = 21 } = options
  requireFunction(method, 'evaluate', options.evaluate, 'a function of payload and range')
  requirePositive(method, 'mostPayload', mostPayload, 'kg')
  requireNonNegative(method, 'leastPayload', leastPayload, 'kg')
  requirePositive(method, 'mostRange', mostRange, 'm')
  requireWithin(method, 'points', points, '1', 2, 200)
  if (leastPayload >= mostPayload)
    throw new InvalidInput({
      method,
      argument: 'leastPayload',
      value: leastPayload,
      unit: 'kg',
      accepted: 'below mostPayload',
    })
  const reachOf = (payload: number) => silently(() => reach(options, payload, mostRange))
  const count = Math.round(points)
  const payload = Array.from(
    { length: count },
    (_, index) => mostPayload + ((leastPayload - mostPayload) * index) / (count - 1),
  )
  const reaches = payload.map(reachOf)
  requireRepresentable(
    method,
    reaches.reduce((sum, one) => sum + one.range, 0),
  )
  return {
    payload,
    range: reaches.map((one) => one.range),
    binds: reaches.map((one) => one.binds),
    corners: cornersOf(payload, reaches, reachOf),
  }
}

/** Greatest range of a payload. */
function reach(options: PayloadRangeOptions, payload: number, mostRange: number): Reach {
  const lacking = (range: number) => worst(options, payload, range)
  const atRest = lacking(0)
  if (atRest.lack > 0) return { range: 0, binds: atRest.name }
  let near = 0
  let valueNear = atRest.lack
  for (let far = mostRange / 1024; ; far *= 2) {
    const there = lacking(far)
    if (there.lack > 0) {
      const root = brentRoot((range) => lacking(range).lack, near, far, valueNear, there.lack, 1e-12)
      return { range: root.x, binds: lacking(root.x + 1e-6 * (far - near)).name }
    }
    if (far >= mostRange) return { range: mostRange, binds: 'nothing' }
    near = far
    valueNear = there.lack
  }
}

/** The limit that lacks most; before any does, the one nearest to it. */
function worst(options: PayloadRangeOptions, payload: number, range: number): { lack: number; name: string } {
  const answer = options.evaluate(payload, range)
  if (typeof answer === 'number') {
    requireFinite(method, 'the answer of evaluate', answer, '1')
    return { lack: answer, name: 'evaluate' }
  }
  requireNumbers(method, 'the answer of evaluate', answer, 'a number, or a record of what is lacking by limit')
  let most = { lack: Number.NEGATIVE_INFINITY, name: '' }
  for (const name in answer) {
    const lack = answer[name] as number
    if (lack > most.lack) most = { lack, name }
  }
  return most
}

function cornersOf(
  payload: readonly number[],
  reaches: readonly Reach[],
  reachOf: (payload: number) => Reach,
): PayloadRangeCorner[] {
  const corners: PayloadRangeCorner[] = []
  const add = (corner: PayloadRangeCorner['corner'], at: number, { range, binds }: Reach) =>
    corners.push({ corner, payload: at, range, binds })
  reaches.forEach((here, index) => {
    const before = reaches[index - 1]
    if (index === 0) add('full payload', payload[0] as number, here)
    else if (before !== undefined && before.binds !== here.binds) {
      const trade = changeBetween(payload[index - 1] as number, payload[index] as number, before.binds, reachOf)
      add('trade', trade, reachOf(trade))
    }
    if (index === reaches.length - 1) add('ferry', payload[index] as number, here)
  })
  return corners
}

/** Payload at which the limit that binds at the heavier end gives way to another. */
function changeBetween(heavy: number, light: number, binds: string, reachOf: (payload: number) => Reach): number {
  let [same, other] = [heavy, light]
  for (let step = 0; step < halvings; step += 1) {
    const middle = 0.5 * (same + other)
    if (reachOf(middle).binds === binds) same = middle
    else other = middle
  }
  return other
}

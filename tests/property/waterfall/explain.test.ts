/** Shares against closed forms: of linear models, of models whose changes act upon each other, and what must hold of any. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Change, explainChange } from '../../../kernel/cells/evidence/waterfall/index.js'

const numbers = (length: number) =>
  fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: length, maxLength: length })
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

/** A model by its answer for the set of changes adopted. */
const model = (count: number, answer: (has: (place: number) => boolean) => number): Change => ({
  count,
  attempt: async (adopted) => ({ ok: true, value: answer((place) => adopted.has(place)) }),
})

const sharesOf = async (change: Change) => {
  const { shares } = await explainChange(change)
  if (shares.kind === 'none') throw new Error(shares.reason)
  return shares.values
}

const runs = { numRuns: 40 }

describe('explainChange', () => {
  it('explainChange() gives each change of a linear model its own term, in every order', () =>
    fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 7 }).chain(numbers), async (terms) => {
        const linear = model(terms.length, (has) => sum(terms.map((term, place) => (has(place) ? term : 0))))
        const { forward, reverse, shares } = await explainChange(linear)
        for (const rows of [forward, reverse])
          for (const { steps, effect } of rows) expect(effect).toBeCloseTo(terms[steps[0] ?? 0] ?? 0, 9)
        if (shares.kind === 'none') throw new Error(shares.reason)
        for (const [place, share] of shares.values.entries()) expect(share).toBeCloseTo(terms[place] ?? 0, 9)
      }),
      runs,
    ))

  it('explainChange() halves what two changes give only together (closed form for pairs)', () =>
    fc.assert(
      fc.asyncProperty(numbers(4), numbers(6), async (terms, pairs) => {
        const both = [
          [0, 1],
          [0, 2],
          [0, 3],
          [1, 2],
          [1, 3],
          [2, 3],
        ] as const
        const answer = (has: (place: number) => boolean) =>
          sum(terms.map((term, place) => (has(place) ? term : 0))) +
          sum(both.map(([a, b], index) => (has(a) && has(b) ? (pairs[index] ?? 0) : 0)))
        const shares = await sharesOf(model(4, answer))
        shares.forEach((share, place) => {
          const half = sum(both.map(([a, b], index) => (a === place || b === place ? (pairs[index] ?? 0) / 2 : 0)))
          expect(share).toBeCloseTo((terms[place] ?? 0) + half, 8)
        })
      }),
      runs,
    ))

  it('explainChange() of a product of three gives the closed form of its shares', () =>
    fc.assert(
      fc.asyncProperty(numbers(3), numbers(3), async (a, b) => {
        const [a0 = 0, a1 = 0, a2 = 0] = a
        const [b0 = 0, b1 = 0, b2 = 0] = b
        const product = model(3, (has) => (has(0) ? b0 : a0) * (has(1) ? b1 : a1) * (has(2) ? b2 : a2))
        const first = (b0 - a0) * ((2 * a1 * a2 + 2 * b1 * b2 + a1 * b2 + b1 * a2) / 6)
        const scale = Math.max(1, ...a.map(Math.abs), ...b.map(Math.abs)) ** 3
        expect(((await sharesOf(product))[0] ?? 0) / scale).toBeCloseTo(first / scale, 10)
      }),
      runs,
    ))

  it('explainChange() of any model sums to the difference in both orders and in its shares, exact or sampled', () =>
    fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 11 }), fc.integer(), async (count, salt) => {
        const any = model(count, (has) => {
          let state = salt
          for (let place = 0; place < count; place += 1)
            state = Math.imul(state ^ (has(place) ? place + 1 : 77), 69_069) | 0
          return state / 2 ** 20
        })
        const { from, to, forward, reverse, shares } = await explainChange(any)
        if (shares.kind === 'none') throw new Error(shares.reason)
        expect(shares.kind).toBe(count <= 8 ? 'exact' : 'sampled')
        for (const total of [
          sum(forward.map(({ effect }) => effect)),
          sum(reverse.map(({ effect }) => effect)),
          sum(shares.values),
        ])
          expect(total).toBeCloseTo(to - from, 6)
      }),
      runs,
    ))

  it('explainChange() with some sets unanswered still sums to the difference, and says what failed', () =>
    fc.assert(
      fc.asyncProperty(
        numbers(5),
        fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { maxLength: 12 }),
        async (terms, holes) => {
          const change: Change = {
            count: 5,
            attempt: async (adopted) => {
              const set = sum([...adopted].map((place) => 2 ** place))
              if (holes.includes(set)) return { ok: false, reason: `hole ${set}.` }
              return { ok: true, value: sum([...adopted].map((place) => terms[place] ?? 0)) }
            },
          }
          const { forward, reverse, steps, shares } = await explainChange(change)
          expect(steps.flat().sort()).toEqual([0, 1, 2, 3, 4])
          for (const rows of [forward, reverse]) {
            expect(sum(rows.map(({ effect }) => effect))).toBeCloseTo(sum(terms), 8)
            expect(rows.flatMap((row) => row.steps).length).toBe(steps.length)
            for (const row of rows) expect(row.failures.length).toBe(row.steps.length - 1)
          }
          if (shares.kind !== 'none') expect(sum(shares.values)).toBeCloseTo(sum(terms), 8)
        },
      ),
      runs,
    ))

  it('explainChange() samples within its own scatter of the exact shares where pairs act upon each other', async () => {
    const answer = (has: (place: number) => boolean) =>
      Array.from({ length: 10 }, (_, place) => (has(place) ? place + 1 : 0)).reduce((total, term) => total + term, 0) **
      2
    const { shares } = await explainChange(model(10, answer), { seed: 3, pairs: 40 })
    if (shares.kind !== 'sampled') throw new Error('it is not sampled')
    // v = (sum of terms)^2, whose share is term * total; a pair of reversed orders gives exactly that.
    for (const [place, share] of shares.values.entries()) expect(share).toBeCloseTo((place + 1) * 55, 6)
    expect(shares).toMatchObject({ orders: 80, leftOut: 0, seed: 3 })
  })

  it('explainChange() takes together what cannot be answered alone, and says why', async () => {
    const needs: Change = {
      count: 3,
      attempt: async (adopted) =>
        adopted.has(0) && !adopted.has(2)
          ? { ok: false, reason: 'the law wants the new span.' }
          : { ok: true, value: [...adopted].reduce((total, place) => total + 10 ** place, 0) },
    }
    const { steps, together, shares } = await explainChange(needs)
    expect(steps).toEqual([[0, 2], [1]])
    expect(together).toEqual(['without the other: the law wants the new span.', undefined])
    expect(shares).toEqual({ kind: 'exact', values: [101, 10] })
  })

  it('explainChange() throws the reason when there is no answer before or after, and when there is no number', async () => {
    const none = (reason: string): Change => ({ count: 1, attempt: async () => ({ ok: false, reason }) })
    await expect(explainChange(none('it does not close.'))).rejects.toThrow('it does not close.')
    await expect(explainChange(model(1, () => Number.NaN))).rejects.toThrow('the result is no number.')
  })

  it('explainChange() that is stopped keeps the orders it has and gives no shares', async () => {
    let left = 14
    const slow: Change = {
      count: 6,
      attempt: async (adopted) => {
        left -= 1
        return { ok: true, value: adopted.size }
      },
    }
    const progress: number[] = []
    const { forward, shares } = await explainChange(slow, {
      isStopped: () => left <= 0,
      onProgress: (done, of) => progress.push(done / of),
    })
    expect(forward.length).toBe(6)
    expect(shares).toEqual({ kind: 'none', reason: 'it was stopped.' })
    expect(progress.every((share) => share <= 1)).toBe(true)
  })

  it('explainChange() leaves out sampled orders in which something fails, and says how many', async () => {
    const change: Change = {
      count: 9,
      attempt: async (adopted) =>
        adopted.size === 4 && adopted.has(0) && adopted.has(1)
          ? { ok: false, reason: 'it runs away.' }
          : { ok: true, value: adopted.size },
    }
    const { shares } = await explainChange(change)
    if (shares.kind !== 'sampled') throw new Error('it is not sampled')
    expect(shares.leftOut).toBeGreaterThan(0)
    expect(shares.leftOut + shares.orders).toBe(32)
    expect(sum(shares.values)).toBeCloseTo(9, 9)
    const never: Change = {
      ...change,
      attempt: async (adopted) => (adopted.size === 5 ? { ok: false, reason: 'never.' } : { ok: true, value: 1 }),
    }
    expect((await explainChange(never)).shares).toEqual({ kind: 'none', reason: 'never.' })
  })
})

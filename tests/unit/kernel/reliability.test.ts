import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { listenWhile } from './recorder-stub.js'
import { itRefuses } from './wing/refusals.js'

const { reliability, u } = preloaded

describe('reliability.kOfN(options)', () => {
  it('is the failure of the unit for one of one, of any for n of n, of all for one of n', () => {
    expect(reliability.kOfN({ needed: 1, of: 1, unitFailure: 0.3 })).toBeCloseTo(0.3, 14)
    expect(reliability.kOfN({ needed: 5, of: 5, unitFailure: 0.1 })).toBeCloseTo(1 - 0.9 ** 5, 14)
    expect(reliability.kOfN({ needed: 1, of: 5, unitFailure: 0.1 })).toBeCloseTo(1e-5, 18)
  })

  it('keeps its digits far below what a difference from 1 would show, and its ends', () => {
    expect(reliability.kOfN({ needed: 1, of: 8, unitFailure: 1e-5 }) / 1e-40).toBeCloseTo(1, 9)
    expect(reliability.kOfN({ needed: 3, of: 5, unitFailure: 0 })).toBe(0)
    expect(reliability.kOfN({ needed: 3, of: 5, unitFailure: 1 })).toBe(1)
  })

  it('is b q at least with a common cause, and the unit failure itself when all causes are common', () => {
    expect(reliability.kOfN({ needed: 1, of: 8, unitFailure: 1e-5, commonCause: 0.01 }) / 1e-7).toBeCloseTo(1, 9)
    expect(reliability.kOfN({ needed: 1, of: 8, unitFailure: 1e-5, commonCause: 1 })).toBe(1e-5)
  })

  itRefuses(reliability.kOfN, { needed: 7, of: 8, unitFailure: 1e-5 }, [
    ['more needed than there are', { needed: 9 }],
    ['half a unit', { needed: 6.5 }],
    ['no units', { of: 0 }],
    ['a probability above 1', { unitFailure: 1.1 }],
    ['a common cause below 0', { commonCause: -0.1 }],
    ['a thousand and one units', { of: 1001 }],
  ])
})

describe('reliability.requiredUnitFailure(options)', () => {
  it('is the inverse of kOfN, with a common cause too', () => {
    for (const commonCause of [0, 0.02]) {
      const unitFailure = reliability.requiredUnitFailure({ needed: 6, of: 8, target: 1e-7, commonCause })
      expect(reliability.kOfN({ needed: 6, of: 8, unitFailure, commonCause }) / 1e-7).toBeCloseTo(1, 9)
    }
  })

  it('is the target over b where the common cause decides', () => {
    const found = reliability.requiredUnitFailure({ needed: 1, of: 12, target: 1e-9, commonCause: 0.1 })
    expect(found / 1e-8).toBeCloseTo(1, 6)
  })

  itRefuses(reliability.requiredUnitFailure, { needed: 7, of: 8, target: 1e-9 }, [
    ['a target of 0', { target: 0 }],
    ['a target of 1', { target: 1 }],
    ['more needed than there are', { needed: 9 }],
  ])
})

describe('reliability.unitFailure(options)', () => {
  it('adds running, starting and half of what is hidden', () => {
    const q = reliability.unitFailure({ rate: 3.6e-5 / u.h, time: 100 * u.s, startFailure: 2e-6, latentFailure: 6e-6 })
    expect(q / 6e-6).toBeCloseTo(1, 12)
  })

  it('says when units fail so often that first order overstates it', () => {
    const heard = listenWhile(() => {
      reliability.unitFailure({ rate: 0, time: 1, startFailure: 0.3 })
    })
    expect(heard.advisories.map((one) => one.code)).toEqual(['UNIT_FAILURE_OFTEN'])
  })

  itRefuses(reliability.unitFailure, { rate: 1e-9, time: 100 }, [
    ['a negative rate', { rate: -1 }],
    ['a negative time', { time: -1 }],
    ['a start failure above 1', { startFailure: 1.5 }],
    ['a hidden failure below 0', { latentFailure: -0.1 }],
    ['a sum above 1', { startFailure: 0.9, latentFailure: 0.5 }],
    ['numbers beyond range', { rate: 1e300, time: 1e300 }],
  ])
})

describe('reliability.maintenance(options)', () => {
  it('grows with the number of units, and never comes where none fails', () => {
    const eight = reliability.maintenance({ of: 8, unitFailure: 1e-5 })
    expect(eight.expectedFailures).toBeCloseTo(8e-5, 15)
    expect(eight.between).toBeCloseTo(12_500, 6)
    expect(reliability.maintenance({ of: 12, unitFailure: 1e-5 }).anyFailure).toBeGreaterThan(eight.anyFailure)
    expect(reliability.maintenance({ of: 8, unitFailure: 0 })).toEqual({ anyFailure: 0, expectedFailures: 0 })
    expect(reliability.maintenance({ of: 8, unitFailure: 1 }).anyFailure).toBe(1)
  })

  itRefuses(reliability.maintenance, { of: 8, unitFailure: 1e-5 }, [
    ['a probability above 1', { unitFailure: 2 }],
    ['half a unit', { of: 1.5 }],
  ])
})

describe('reliability.chain(options)', () => {
  const single = [
    [-2e-5, 0],
    [2e-5, 0],
  ]

  it('is the exponential for one unit, at any time, and its mean is 1/lambda', () => {
    for (const time of [0, 1, 1e3, 5e4, 1e7]) {
      const found = reliability.chain({ generator: single, time })
      expect(found.reliability).toBeCloseTo(Math.exp(-2e-5 * time), 12)
      if (time > 0) expect(found.failure / -Math.expm1(-2e-5 * time)).toBeCloseTo(1, 11)
      expect(found.meanTime).toBeCloseTo(5e4, 6)
    }
  })

  it('keeps all digits of a probability of 1e-20', () => {
    const two = [
      [-2, 0, 0],
      [2, -1, 0],
      [0, 1, 0],
    ]
    const found = reliability.chain({ generator: two, time: 1e-10 })
    expect(found.failure / 1e-20).toBeCloseTo(1, 8)
  })

  it('has no mean time where failure may never come, none to wait where it has come, and any states as failed', () => {
    const repaired = [
      [-1, 0, 0],
      [1, 0, 0],
      [0, 0, 0],
    ]
    expect('meanTime' in reliability.chain({ generator: repaired, time: 1 })).toBe(false)
    expect('meanTime' in reliability.chain({ generator: repaired, time: 1, start: 1 })).toBe(false)
    expect(reliability.chain({ generator: single, time: 1, start: 1 })).toMatchObject({ failure: 1, meanTime: 0 })
    expect(reliability.chain({ generator: repaired, time: 1, failed: [1, 2] }).failure).toBeCloseTo(1 - 1 / Math.E, 12)
  })

  it('stays a distribution with repair and rates apart by twelve powers of ten', () => {
    const repair = [
      [-1e-6, 1e3, 0],
      [1e-6, -1e3 - 1e-6, 0],
      [0, 1e-6, 0],
    ]
    const { probabilities, failure } = reliability.chain({ generator: repair, time: 1e6 })
    expect(probabilities.reduce((sum, value) => sum + value, 0)).toBeCloseTo(1, 12)
    expect(failure / 1e-9).toBeCloseTo(1, 3)
  })

  itRefuses(reliability.chain, { generator: single, time: 1 }, [
    ['a generator that is not square', { generator: [[0, 0]] }],
    ['no generator', { generator: 5 }],
    [
      'a negative rate',
      {
        generator: [
          [1, 0],
          [-1, 0],
        ],
      },
    ],
    [
      'columns that do not sum to zero',
      {
        generator: [
          [-1, 0],
          [2, 0],
        ],
      },
    ],
    [
      'a rate that is no number',
      {
        generator: [
          [Number.NaN, 0],
          [1, 0],
        ],
      },
    ],
    ['a state that does not exist', { start: 2 }],
    ['a failed state that does not exist', { failed: [7] }],
    ['failed states that are no list', { failed: 1 }],
    ['a negative time', { time: -1 }],
  ])
})

describe('reliability.lossChain(options)', () => {
  it('is k of n where any k survive', () => {
    const found = reliability.lossChain({ of: 8, rate: 1e-5, time: 1, survives: (lost) => lost.length <= 2 })
    const q = -Math.expm1(-1e-5)
    expect(found.failure / reliability.kOfN({ needed: 6, of: 8, unitFailure: q })).toBeCloseTo(1, 8)
    expect(found.survived).toEqual([1, 1, 0])
    expect(found.generator).toHaveLength(4)
  })

  it('weighs orders of losses: a second loss survived only after some of the first', () => {
    const found = reliability.lossChain({
      of: 4,
      rate: 1,
      time: 0.1,
      survives: (lost) => lost.length === 1 || (lost.length === 2 && lost[0] === 0),
    })
    expect(found.survived[0]).toBe(1)
    // Of twelve orders of two, those with unit 0 among them: six.
    expect(found.survived[1]).toBeCloseTo(1 / 2, 12)
    expect(found.asked).toBe(4 + 6 + 3)
  })

  it('counts any loss as failure where none is survived, and stops at the losses it was told', () => {
    expect(reliability.lossChain({ of: 3, rate: 1, time: 1, survives: () => false }).generator).toEqual([
      [-3, 0],
      [3, 0],
    ])
    const all = reliability.lossChain({ of: 3, rate: 1, time: 1, survives: () => true, upTo: 1 })
    expect(all.generator).toHaveLength(3)
  })

  itRefuses(reliability.lossChain, { of: 4, rate: 1e-5, time: 1, survives: () => true }, [
    ['one unit', { of: 1 }],
    ['thirty units', { of: 30 }],
    ['a negative rate', { rate: -1 }],
    ['a negative time', { time: -1 }],
    ['no function', { survives: true }],
    ['an answer that is neither true nor false', { survives: () => 1 }],
    ['half a loss', { upTo: 0.5 }],
  ])
})

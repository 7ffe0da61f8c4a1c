/**
 * Published cases of lift rotors lost and of reliability. Where sources conflict, the requirement that each answer assumes is named:
 * the numbers agree once it is the same.
 */
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../kernel/library/index.js'
import { methods, ring, trimOf } from './authority-methods.js'
import { readCases } from './cases.js'
import { checkCases, computeCase } from './check-cases.js'

const { authority, reliability } = preloaded
const cases = readCases('cases-authority.json')

checkCases({
  subject: 'lift rotors lost and reliability',
  cases: cases.filter((one) => one.expected !== 0),
  methods,
})

describe('cases whose published answer is zero, within 1e-6', () => {
  const zero = cases.filter((one) => one.expected === 0 && one.id.startsWith('acai'))

  it.each(zero)('$id ($provenance): $quantity, $source', (one) => {
    expect(Math.abs(computeCase(one, methods))).toBeLessThan(1e-6)
    const { feasible, controllable } = trimOf(one.inputs, ['lift', 'roll', 'pitch', 'yaw'])
    expect({ feasible, controllable }).toEqual({ feasible: true, controllable: false })
  })

  it('lp-quad-f1 (analytic): no trim on four axes, yaw is what cannot be held', () => {
    const quad = cases.find((one) => one.id === 'lp-quad-f1')
    const found = trimOf(quad?.inputs ?? {}, ['lift', 'roll', 'pitch', 'yaw'])
    expect(found.feasible).toBe(false)
    expect('peakShare' in found).toBe(false)
    expect(found.cannotHold).toEqual(['yaw'])
    expect(found.degradedPeakShare).toBeCloseTo(1 / 2, 8)
  })
})

/** Two rows of four, before and behind the wing; spins and places of the plan worked by hand. */
const liftPlusCruise = [1.5, -1.5].flatMap((x) =>
  [-3, -1.5, 1.5, 3].map((y, place) => ({
    x,
    y,
    spin: (place % 2 === 0 ? 1 : -1) * (x > 0 ? -1 : 1),
    maxThrust: 100,
    torqueRatio: 0.08,
  })),
)

describe('a lift-plus-cruise plan of eight (exact linear program, worked by hand)', () => {
  const outer = [0, 3, 4, 7]

  it.each([0, 1, 2, 3, 4, 5, 6, 7])('peaks at 16/11 or 4/3 of hover after the loss of rotor %i', (lost) => {
    const found = authority.trim({ rotors: liftPlusCruise, weight: 8, lost: [lost] })
    const wanted = outer.includes(lost) ? 16 / 11 : 4 / 3
    // Four axes held: outer rotors 16/11; inner ones 4/3.
    expect(found.peakShare).toBeCloseTo(wanted / 8, 8)
  })

  it('peaks at 4/3 after any loss with yaw given up', () => {
    for (const lost of liftPlusCruise.keys()) {
      const { peakShare } = authority.trim({
        rotors: liftPlusCruise,
        weight: 8,
        lost: [lost],
        hold: ['lift', 'roll', 'pitch'],
      })
      expect(peakShare).toBeCloseTo(1 / 6, 8)
    }
  })
})

describe('index of eight rotors at a thrust of 2.443 weights (worked out again from Du et al.)', () => {
  const weight = 1.535 * 9.8
  const letters = (text: string) => [...text].map((letter) => (letter === 'P' ? 1 : -1))
  const eight = (text: string) => ring(letters(text), (2.443 * weight) / 8, 0.275)

  it.each([
    ['PNPNPNPN', 1.4968, 0.7527, 20],
    ['PPNNPPNN', 1.484, 0.5905, 24],
  ])('%s: %d intact, %d after any loss, %i of 28 pairs of losses keep it above zero', (text, intact, after, pairs) => {
    const rotors = eight(text)
    expect(authority.trim({ rotors, weight }).index).toBeCloseTo(intact, 3)
    for (const lost of rotors.keys())
      expect(authority.trim({ rotors, weight, lost: [lost] }).index).toBeCloseTo(after, 3)
    expect(authority.losses({ rotors, weight, simultaneous: 2 }).controllable).toBe(pairs)
  })
})

describe('where published sources conflict', () => {
  const letters = (text: string) => [...text].map((letter) => (letter === 'P' ? 1 : -1))
  const weight = 1.535 * 9.8
  const chainOf = (
    text: string,
    hold: readonly ('lift' | 'roll' | 'pitch' | 'yaw')[],
    by: 'feasible' | 'controllable',
  ) => {
    const rotors = ring(letters(text), 6.125, 0.275)
    const survives = (lost: readonly number[]) => authority.trim({ rotors, weight, lost, hold })[by]
    return reliability.lossChain({ of: rotors.length, rate: 1, time: 0.01, survives, upTo: 2 }).survived
  }
  const four = ['lift', 'roll', 'pitch', 'yaw'] as const
  const three = ['lift', 'roll', 'pitch'] as const

  it('PNPNPN: no first loss with steering on four axes (Du et al.), every one with yaw given up (Aslansefat et al.)', () => {
    expect(chainOf('PNPNPN', four, 'controllable')).toEqual([0])
    expect(chainOf('PNPNPN', four, 'feasible')[0]).toBe(1)
    expect(chainOf('PNPNPN', three, 'controllable')[0]).toBe(1)
  })

  it('PPNNPN: 4/6 of first losses in both; of second ones 6/20 on four axes, where the published chain has 2/5', () => {
    const [first, second] = chainOf('PPNNPN', four, 'controllable')
    expect(first).toBeCloseTo(4 / 6, 12)
    expect(second).toBeCloseTo(6 / 20, 12)
  })

  it('PPNNPPNN of eight: 6/7 of second losses, as the published chain has it', () => {
    const rotors = ring(letters('PPNNPPNN'), (2.443 * weight) / 8, 0.275)
    const { survived } = reliability.lossChain({
      of: 8,
      rate: 1,
      time: 0.01,
      survives: (lost) => authority.trim({ rotors, weight, lost }).controllable,
      upTo: 2,
    })
    expect(survived[0]).toBe(1)
    expect(survived[1]).toBeCloseTo(6 / 7, 12)
  })

  it('a common cause of 1 % of 1e-5 alone is 1e-7 whatever the number of units (textbook)', () => {
    for (const of of [6, 8, 12]) {
      const failure = reliability.kOfN({ needed: of - 1, of, unitFailure: 1e-5, commonCause: 0.01 })
      const alone = reliability.kOfN({ needed: of - 1, of, unitFailure: 0.99e-5 })
      expect((failure - alone) / 1e-7).toBeCloseTo(1, 6)
    }
  })
})

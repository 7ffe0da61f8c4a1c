/**
 * Published cases of rotors, propellers and sections. Measurements and printed numbers are the evidence; formulas worked out
 * again only check arithmetic. Known misses keep their tolerance and are listed with the error they have.
 */
import { describe, expect, it } from 'vitest'
import { type Case, kindOf, readCases, storedDigits } from './cases.js'
import { at, knightHefner, methods, settledSection } from './rotor-methods.js'

/** Computed over published, less one, where that is beyond the case's tolerance; and why. */
const knownMisses: Readonly<Record<string, { readonly error: number; readonly why: string }>> = {
  'KH-B5-th0-CQ': {
    error: 0.2758,
    why: 'five blades were measured with less torque at no thrust than four (1.19e-4 against 1.34e-4), which no section explains',
  },
  'duct-thrust-ratio-sd0.8': {
    error: -2.4835e-6,
    why: 'the expected number is rounded to six digits, 1.16961 for 1.6^(1/3) = 1.1696071, and its tolerance is 1e-6',
  },
  'pereira-max-thrust-gain': {
    error: -0.2566,
    why: 'the measured best of small models with poor open rotors exceeds momentum theory at any sensible expansion (here 1.5)',
  },
}

const cases = readCases('cases-rotors.json')

function evaluate(one: Case): number {
  const method = methods.find(([pattern]) => pattern.test(one.id))
  if (method === undefined) throw new Error(`no kernel method answers the case ${one.id}`)
  return method[1](one.inputs)
}

function checkKind(kind: 'external' | 're-evaluated'): void {
  const chosen = cases.filter((one) => kindOf(one) === kind)
  it(`there are some (${chosen.length} of ${cases.length})`, () => expect(chosen.length).toBeGreaterThan(10))
  it.each(chosen)('$id ($provenance): $quantity, $source', (one) => {
    const actual = evaluate(one)
    const error = actual / one.expected - 1
    const allowed = one.tolerance_rel + storedDigits
    const miss = knownMisses[one.id]
    const said = `${actual} for ${one.expected}, off by ${error.toExponential(2)}`
    if (miss === undefined) {
      expect(Math.abs(error), said).toBeLessThanOrEqual(allowed)
      return
    }
    expect(Math.abs(error), `${said}: no longer a miss`).toBeGreaterThan(allowed)
    const change = Math.abs(error / miss.error - 1)
    expect(change, `${said}: a known miss of ${miss.error} (${miss.why})`).toBeLessThan(0.02)
  })
}

describe('external: measured rotors and numbers printed by somebody else', () => checkKind('external'))
describe('re-evaluated: published formulas worked out again', () => checkKind('re-evaluated'))

describe('section constants of the Knight & Hefner rotors', () => {
  const settledOn = cases.filter((one) => /^KH-B[24]-/.test(one.id) && at(one.inputs, 'collective_deg') >= 4)
  const predicted = cases.filter((one) => /^KH-B[35]-/.test(one.id) && at(one.inputs, 'collective_deg') >= 4)
  const spread = (polar: typeof settledSection, chosen: readonly Case[]) => {
    const squares = chosen.map((one) => {
      const loads = knightHefner(at(one.inputs, 'blades'), at(one.inputs, 'collective_deg'), polar)
      const actual = one.id.endsWith('CT') ? loads.thrustCoefficient : loads.torqueCoefficient
      return (actual / one.expected - 1) ** 2
    })
    return Math.sqrt(squares.reduce((sum, one) => sum + one, 0) / squares.length)
  }

  it('are settled on two and four blades: a change of any fits those worse', () => {
    const least = spread(settledSection, settledOn)
    for (const [name, change] of [
      ['liftSlope', 0.35],
      ['minimumDrag', 0.001],
      ['dragRise', 0.01],
    ] as const)
      for (const sign of [-1, 1])
        expect(
          spread({ ...settledSection, [name]: settledSection[name] + sign * change }, settledOn),
          name,
        ).toBeGreaterThan(least)
    expect(least).toBeLessThan(0.06)
  })

  it('predict thrust and torque of three and five blades, 7 % in the mean from 4 degrees on', () => {
    expect(spread(settledSection, predicted)).toBeLessThan(0.09)
  })
})

describe('bounds that measurement sets', () => {
  it('propeller.ideal lies above the efficiency of 0.7404 measured by Sinnige et al. (read, second-hand)', () => {
    const bound = cases.find((one) => one.id === 'tud-prop-ideal-bound')
    expect(bound && evaluate(bound)).toBeGreaterThan((0.7963 * 0.0953) / 0.1025)
  })

  it('rotor.bladeElement lies above the rotor of Caradonna & Tung by no more than 45 % (read): the wake is not free here', () => {
    for (const one of cases.filter(({ id }) => /^CT-\d/.test(id))) {
      const ratio = evaluate(one) / one.expected
      expect(ratio).toBeGreaterThan(1)
      expect(ratio).toBeLessThan(1.45)
    }
  })
})

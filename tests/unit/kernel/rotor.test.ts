import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { expectClose } from './close-to.js'
import { listenWhile } from './recorder-stub.js'

const { rotor } = preloaded
const byMerit = { thrust: 17_000, diskArea: 42.5, density: 1.098, figureOfMerit: 0.72 }
const byBlades = {
  thrust: 17_000,
  count: 8,
  radius: 1.3,
  density: 1.098,
  tipSpeed: 180,
  solidity: 0.14,
  inducedFactor: 1.15,
  profileDrag: 0.011,
}

describe('rotor.hover({ thrust, diskArea, density, figureOfMerit })', () => {
  it('is the ideal rotor at a figure of merit of 1', () => {
    const ideal = rotor.hover({ ...byMerit, figureOfMerit: 1 })
    expect(ideal.power).toBe(ideal.idealPower)
    expectClose(ideal.inducedVelocity, Math.sqrt(400 / (2 * 1.098)), 1e-14)
  })

  it('takes 2^(3/2) the power for twice the thrust, and half for four times the disk', () => {
    const once = rotor.hover(byMerit)
    expectClose(rotor.hover({ ...byMerit, thrust: 34_000 }).power / once.power, 2 ** 1.5, 1e-14)
    expectClose(rotor.hover({ ...byMerit, diskArea: 170 }).power / once.power, 0.5, 1e-14)
  })

  it('returns the loadings', () => {
    const hover = rotor.hover(byMerit)
    expectClose(hover.diskLoading, 400, 1e-15)
    expectClose(hover.powerLoading * hover.power, 17_000, 1e-15)
  })

  it('advises above a figure of merit of 0.85', () => {
    expect(listenWhile(() => rotor.hover({ ...byMerit, figureOfMerit: 0.9 })).advisories).toMatchObject([
      { code: 'FIGURE_OF_MERIT', value: 0.9 },
    ])
    expect(listenWhile(() => rotor.hover(byMerit)).advisories).toEqual([])
  })
})

describe('rotor.hover({ thrust, radius, density, tipSpeed, solidity, inducedFactor, profileDrag })', () => {
  it('splits the power and gives back its own figure of merit', () => {
    const hover = rotor.hover(byBlades)
    expectClose(hover.inducedPower + hover.profilePower, hover.power, 1e-15)
    const same = rotor.hover({
      thrust: 17_000,
      diskArea: 8 * Math.PI * 1.3 ** 2,
      density: 1.098,
      figureOfMerit: hover.figureOfMerit,
    })
    expectClose(same.power, hover.power, 1e-14)
  })

  it('gives per-rotor torque and coefficients that belong together', () => {
    const hover = rotor.hover(byBlades)
    expectClose(hover.torque * (180 / 1.3) * 8, hover.power, 1e-14)
    // FM = C_T^1.5/(sqrt(2) C_P), the definition (Leishman, chapter 2).
    expectClose(hover.thrustCoefficient ** 1.5 / (Math.SQRT2 * hover.powerCoefficient), hover.figureOfMerit, 1e-14)
    expectClose(hover.bladeLoading, hover.thrustCoefficient / 0.14, 1e-15)
  })

  it('shares the thrust: eight rotors are eight times one with an eighth of it', () => {
    const one = rotor.hover({ ...byBlades, thrust: 17_000 / 8, count: 1 })
    const eight = rotor.hover(byBlades)
    expectClose(eight.power, 8 * one.power, 1e-14)
    expectClose(eight.torque, one.torque, 1e-14)
  })

  it('raises induced power by the tip loss alone', () => {
    const [full, less] = [rotor.hover(byBlades), rotor.hover({ ...byBlades, tipLoss: 0.97 })]
    expectClose(less.inducedPower, full.inducedPower / 0.97, 1e-15)
    expect(less.profilePower).toBe(full.profilePower)
  })

  it('returns the tip Mach number only where the speed of sound is given', () => {
    expect(rotor.hover({ ...byBlades, speedOfSound: 346 }).tipMach).toBeCloseTo(180 / 346, 12)
    expect('tipMach' in rotor.hover(byBlades)).toBe(false)
  })

  it('advises on stall and on the drag rise at the tip', () => {
    const codes = (options: object) =>
      listenWhile(() => rotor.hover({ ...byBlades, ...options })).advisories.map((advisory) => advisory.code)
    expect(codes({ tipSpeed: 130 })).toEqual(['BLADE_LOADING'])
    expect(codes({ tipSpeed: 260, speedOfSound: 340 })).toEqual(['TIP_MACH'])
    expect(codes({ speedOfSound: 340 })).toEqual([])
  })
})

describe('rotor.hover refuses', () => {
  it.each<[string, object, RegExp]>([
    ['a figure of merit above 1', { ...byMerit, figureOfMerit: 1.01 }, /no rotor beats the ideal one/],
    ['a negative thrust', { ...byMerit, thrust: -1 }, /thrust is -1 N/],
    ['no disk', { ...byMerit, diskArea: 0 }, /diskArea is 0 m\^2/],
    ['a density that is not a number', { ...byMerit, density: Number.NaN }, /density is NaN/],
    ['a misspelt option', { ...byMerit, densty: 1 }, /option "densty".*did you mean "density"/],
    ['an induced factor below 1', { ...byBlades, inducedFactor: 0.9 }, /inducedFactor.*from 1 /],
    ['half a rotor', { ...byBlades, count: 0.5 }, /count.*whole number/],
    ['a tip loss above 1', { ...byBlades, tipLoss: 1.1 }, /tipLoss/],
    ['a missing solidity', { ...byBlades, solidity: undefined }, /solidity is missing/],
    ['a speed of sound of 0', { ...byBlades, speedOfSound: 0 }, /speedOfSound/],
    ['a profile drag of 0', { ...byBlades, profileDrag: 0 }, /profileDrag/],
    ['neither form', { thrust: 5 }, /incomplete/],
    ['an unknown option in neither form', { thurst: 5 }, /did you mean "thrust"/],
    ['sizes beyond numbers', { ...byMerit, thrust: 1e300 }, /size that no aircraft has/],
  ])('%s', (_, options, message) => {
    const call = () => rotor.hover(options as typeof byMerit)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })

  it('what is not a record', () => {
    expect(() => rotor.hover(5 as unknown as typeof byMerit)).toThrow(/rotor.hover: the argument is 5/)
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitToAssumptions, readTrialFragment, trialFragment } from '../../../../client/trial/trial-link.js'

describe('trialFragment(point)', () => {
  it('writes names and values in SI, and nothing for no trial', () => {
    expect(trialFragment({ packEnergy: 900_000, rotorRadius: -1.42e-9 })).toBe(
      '#trial=packEnergy:900000,rotorRadius:-1.42e-9',
    )
    expect(trialFragment({})).toBe('')
  })

  it('gives what readTrialFragment takes back, for any names and numbers', () =>
    fc.assert(
      fc.property(
        fc.dictionary(
          fc.oneof(fc.string({ minLength: 1, maxLength: 12 }), fc.constantFrom('größe', 'a,b:c', '100 %', '\u202e')),
          fc.double({ noNaN: true, noDefaultInfinity: true }),
          { minKeys: 1, maxKeys: 8 },
        ),
        (point) => {
          const fragment = trialFragment(point)
          expect(fragment).toMatch(/^#trial=[\x21-\x7e]+$/)
          const reading = readTrialFragment(fragment)
          expect(
            reading?.ok === true && Object.entries(reading.point).map(([name, value]) => [name, value + 0]),
          ).toEqual(Object.entries(point).map(([name, value]) => [name, value + 0]))
        },
      ),
      { numRuns: 25 },
    ))
})

describe('readTrialFragment(fragment)', () => {
  it('leaves other fragments to others', () => {
    for (const fragment of ['', '#', '#register', '#cell-a', '#trial'])
      expect(readTrialFragment(fragment)).toBeUndefined()
  })

  it.each([
    ['#trial=', 'a name and a value parted by a colon are wanted'],
    ['#trial=a', 'a name and a value parted by a colon are wanted'],
    ['#trial=a:1,,b:2', 'a name and a value parted by a colon are wanted'],
    ['#trial=:1', 'a name and a value parted by a colon are wanted'],
    ['#trial=%E0%A4:1', 'a name in it cannot be read'],
    [`#trial=${'n'.repeat(201)}:1`, 'a name in it cannot be read'],
    ['#trial=a:', 'gives no number for "a"'],
    ['#trial=a:much', 'gives no number for "a"'],
    ['#trial=a:Infinity', 'gives no number for "a"'],
    ['#trial=a:1e999', 'gives no number for "a"'],
    ['#trial=a:0x10', 'gives no number for "a"'],
    ['#trial=a:%E0', 'gives no number for "a"'],
    ['#trial=a:1,a:2', 'gives "a" twice'],
    ['#trial=%3Cimg%20src%3Dx%3E:x', 'gives no number for a name that no assumption can have'],
    ['#trial=a%E2%80%AEb:x', 'gives no number for a name that no assumption can have'],
    [`#trial=${'a:1,'.repeat(5000)}`, 'has 20000 characters'],
    [`#trial=${'a:1,'.repeat(600)}`, 'has 601 values'],
  ])('answers %s with a sentence', (fragment, words) => {
    const reading = readTrialFragment(fragment)
    expect(reading).toMatchObject({ ok: false, message: expect.stringContaining(words) })
    expect(reading).toMatchObject({ message: expect.stringContaining('Accepted is #trial=NAME:VALUE') })
  })
})

describe('fitToAssumptions(point, known)', () => {
  it('takes what is known and names the rest, with what may have been meant', () => {
    expect(fitToAssumptions({ radius: 1 }, ['radius'])).toEqual({ point: { radius: 1 }, message: null })
    expect(fitToAssumptions({ radios: 1, mass: 2 }, ['radius', 'mass'])).toEqual({
      point: { mass: 2 },
      message:
        'The link to a trial names what is no assumption here: "radios"; did you mean "radius"? Only the rest of the link is tried.',
    })
    expect(fitToAssumptions({ q: 1, '<b>': 2 }, []).message).toBe(
      'The link to a trial names what is no assumption here: "q" and 1 more. Nothing is tried.',
    )
    expect(fitToAssumptions(JSON.parse('{"__proto__": 1}'), ['radius']).point).toEqual({})
  })
})

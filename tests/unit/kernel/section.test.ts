import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { expectClose } from './close-to.js'
import { listenWhile } from './recorder-stub.js'

const { section, u } = preloaded
const plain = { liftSlope: 5.7, minimumDrag: 0.01 }
const at = (options: Parameters<typeof section.linear>[0], angleOfAttack: number, rest: object = {}) =>
  section.coefficients({ section: section.linear(options), angleOfAttack, ...rest })

describe('section.linear', () => {
  it('is linear in lift and a bucket in drag below stall', () => {
    const cambered = {
      ...plain,
      zeroLiftAngle: -2 * u.deg,
      liftAtMinimumDrag: 0.4,
      bucketHalfWidth: 0.1,
      dragRise: 0.02,
    }
    expectClose(at(cambered, 4 * u.deg).lift, 5.7 * 6 * u.deg, 1e-14)
    expect(at(cambered, 2 * u.deg).drag).toBe(0.01)
    const { lift, drag } = at(cambered, 7 * u.deg)
    expectClose(drag, 0.01 + 0.02 * (lift - 0.5) ** 2, 1e-14)
  })

  it('steepens lift by Prandtl and Glauert, held from Mach 0.8 on', () => {
    expectClose(at(plain, 0.05, { mach: 0.6 }).lift / at(plain, 0.05).lift, 1.25, 1e-14)
    expect(at(plain, 0.05, { mach: 1 }).lift).toBe(at(plain, 0.05, { mach: 0.8 }).lift)
  })

  it('stretches lift and divides drag by the Reynolds factor, held between 0.5 and 1.5', () => {
    const scaled = { ...plain, referenceReynolds: 1e6 }
    expectClose(at(scaled, 0, { reynolds: 32e6 / 8 }).drag, 0.01 / 4 ** 0.2, 1e-14)
    expectClose(at(scaled, 0, { reynolds: 1e3 }).drag, 0.02, 1e-14)
    expect(at(scaled, 1.25 / 5.7, { reynolds: 1e6 }).stalled).toBe(true)
    expect(at(scaled, 1.25 / 5.7, { reynolds: 2e6 }).stalled).toBe(false)
    expect(at({ ...scaled, reynoldsExponent: 0 }, 0, { reynolds: 1e3 }).drag).toBe(0.01)
    // The reference is asked where no Reynolds number is given.
    expectClose(at(scaled, 0).drag, 0.01, 1e-12)
  })

  it('adds Lock’s drag rise past the critical Mach number of its thickness', () => {
    const thick = { ...plain, thickness: 0.12 }
    expect(at(thick, 0, { mach: 0.64 }).drag).toBe(0.01)
    // M_cr = 0.87 - 0.12 - (0.1/80)^(1/3) = 0.6423 at no lift.
    expectClose(at(thick, 0, { mach: 0.75 }).drag, 0.01 + 20 * Math.cbrt(0.1 / 80) ** 4, 1e-12)
    expect(at(plain, 0, { mach: 0.75 }).drag).toBe(0.01)
  })

  it('joins the flat plate of Viterna and Corrigan at the stall, and turns round the circle', () => {
    const stall = 1.2 / 5.7
    expectClose(at(plain, stall + 1e-9).lift, 1.2, 1e-6)
    expectClose(at(plain, 90 * u.deg).drag, 1.11 + 0.18, 1e-12)
    expect(Math.abs(at(plain, 90 * u.deg).lift)).toBeLessThan(1e-12)
    // Viterna and Corrigan's formula at 30 degrees, worked out by hand from the same stall point.
    const [s, c] = [Math.sin(stall), Math.cos(stall)]
    const a2 = ((1.2 - 1.29 * s * c) * s) / c ** 2
    expectClose(at(plain, 30 * u.deg).lift, 0.645 * Math.sin(60 * u.deg) + (a2 * 0.75) / 0.5, 1e-12)
    const b2 = (0.01 - 1.29 * s ** 2) / c
    expectClose(at(plain, 30 * u.deg).drag, 1.29 * 0.25 + b2 * Math.cos(30 * u.deg), 1e-12)
  })

  it('has twice the drag and little lift with its rear edge first (NACA TN 3361, summary, read: about twice)', () => {
    expectClose(at(plain, 180 * u.deg).drag, 0.02, 1e-9)
    expectClose(at(plain, -150 * u.deg).lift, 0.7 * at(plain, 30 * u.deg).lift, 1e-12)
    expect(at(plain, 175 * u.deg).lift).toBeLessThan(0)
  })

  it('is the same turned over when it has no camber', () => {
    for (const angle of [0.1, 0.4, 1.2, 2, 3]) {
      expectClose(at(plain, -angle).lift, -at(plain, angle).lift, 1e-14)
      expectClose(at(plain, -angle).drag, at(plain, angle).drag, 1e-14)
    }
  })

  it('is plain frozen data that crosses cells', () => {
    const made = section.linear(plain)
    expect(Object.isFrozen(made)).toBe(true)
    expect(JSON.parse(JSON.stringify(made))).toEqual(made)
  })

  it.each<[string, object, RegExp]>([
    ['no lift slope', { minimumDrag: 0.01 }, /liftSlope is missing; it must be from 0.5\d* to 12/],
    ['a slope per degree', { ...plain, liftSlope: 0.1 }, /liftSlope is 0.1/],
    ['no drag', { ...plain, minimumDrag: 0 }, /minimumDrag is 0/],
    ['an angle in degrees', { ...plain, zeroLiftAngle: -3 }, /zeroLiftAngle is -3 rad/],
    ['a lift no attached flow reaches', { ...plain, maximumLift: 5 }, /maximumLift is 5.*no section stays attached/],
    ['a positive least lift', { ...plain, minimumLift: 0.5 }, /minimumLift is 0.5\d*; it must be from -3.42 to -0.05/],
    ['a negative bucket', { ...plain, bucketHalfWidth: -1 }, /bucketHalfWidth/],
    ['a bucket far away', { ...plain, liftAtMinimumDrag: 9 }, /liftAtMinimumDrag/],
    ['a negative rise', { ...plain, dragRise: -1 }, /dragRise/],
    ['a Reynolds number of 0', { ...plain, referenceReynolds: 0 }, /referenceReynolds/],
    ['a steep exponent', { ...plain, reynoldsExponent: 2 }, /reynoldsExponent/],
    ['a thickness in per cent', { ...plain, thickness: 12 }, /thickness is 12/],
    ['no blade', { ...plain, aspectRatio: 0 }, /aspectRatio/],
    ['a misspelt option', { ...plain, liftslope: 6 }, /did you mean "liftSlope"/],
  ])('refuses %s', (_, options, message) => {
    const call = () => section.linear(options as typeof plain)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

const rows = { angle: [-0.2, 0, 0.1, 0.2], lift: [-0.9, 0.1, 0.7, 1.1], drag: [0.03, 0.01, 0.012, 0.03] }

describe('section.table', () => {
  it('is linear between its rows and meets them', () => {
    const made = section.table({ polars: [rows] })
    const of = (angleOfAttack: number) => section.coefficients({ section: made, angleOfAttack })
    expectClose(of(0.1).lift, 0.7, 1e-14)
    expectClose(of(0.15).drag, 0.021, 1e-14)
    expect(of(0.15).stalled).toBe(false)
    expect(of(0.21).stalled).toBe(true)
    expectClose(of(-0.2 - 1e-9).lift, -0.9, 1e-6)
  })

  it('is linear in the logarithm of the Reynolds number, held outside, in whatever order the polars come', () => {
    const better = { ...rows, drag: [0.03, 0.006, 0.008, 0.03] }
    const made = section.table({
      polars: [
        { ...better, reynolds: 1e6 },
        { ...rows, reynolds: 1e4 },
      ],
    })
    const of = (reynolds: number) => section.coefficients({ section: made, angleOfAttack: 0, reynolds }).drag
    expectClose(of(1e5), 0.008, 1e-12)
    expectClose(of(1e3), 0.01, 1e-14)
    expectClose(of(1e8), 0.006, 1e-14)
  })

  it('counts the Mach number at which it was measured', () => {
    const made = section.table({ polars: [rows], mach: 0.6 })
    expectClose(section.coefficients({ section: made, angleOfAttack: 0.1, mach: 0.6 }).lift, 0.7, 1e-14)
    expectClose(section.coefficients({ section: made, angleOfAttack: 0.1 }).lift, 0.7 * 0.8, 1e-14)
  })

  it('needs no flat plate where it goes all the way round', () => {
    const round = [-Math.PI, -1, 0, 1, Math.PI]
    const made = section.table({ polars: [{ angle: round, lift: [0, -1, 0, 1, 0], drag: [0.02, 1, 0.01, 1, 0.02] }] })
    expect(section.coefficients({ section: made, angleOfAttack: 3 }).stalled).toBe(false)
  })

  it('takes typed arrays', () => {
    const typed = { angle: Float64Array.from(rows.angle), lift: rows.lift, drag: Float32Array.from(rows.drag) }
    expectClose(
      section.coefficients({ section: section.table({ polars: [typed] }), angleOfAttack: 0.1 }).lift,
      0.7,
      1e-12,
    )
  })

  it.each<[string, object, RegExp]>([
    ['no polars', { polars: [] }, /polars is a list of 0; it must be a list of at least one/],
    ['what is not a list', { polars: [{ ...rows, lift: 5 }] }, /polars\[0\].lift is 5/],
    ['lists of unequal length', { polars: [{ ...rows, drag: [1, 2, 3] }] }, /a list of 3; it must be a list of 4/],
    ['two rows', { polars: [{ angle: [0, 1], lift: [0, 1], drag: [1, 1] }] }, /a list of 3 to 2000/],
    ['angles that fall', { polars: [{ ...rows, angle: [-0.2, 0.1, 0, 0.2] }] }, /angle\[2\].*above the one before/],
    ['a drag of 0', { polars: [{ ...rows, drag: [0.03, 0, 0.01, 0.03] }] }, /drag\[1\] is 0/],
    ['angles in degrees', { polars: [{ ...rows, angle: [-12, 0, 6, 12] }] }, /from 0.02 to 1.4 rad, with positive/],
    ['a first row that lifts', { polars: [{ ...rows, lift: [0.1, 0.2, 0.7, 1] }] }, /-1.4 to -0.02 rad, with negative/],
    ['a number that is none', { polars: [{ ...rows, lift: [0, Number.NaN, 1, 1] }] }, /lift\[1\] is NaN/],
    ['a size of no section', { polars: [{ ...rows, lift: [0, 1e6, 1, 1] }] }, /lift\[1\] is 1.*from -100/],
    ['several polars without Reynolds numbers', { polars: [rows, rows] }, /polars\[0\].reynolds is missing/],
    [
      'two polars at one Reynolds number',
      {
        polars: [
          { ...rows, reynolds: 1e5 },
          { ...rows, reynolds: 1e5 },
        ],
      },
      /two at a Reynolds number of 100000/,
    ],
    ['a Mach number past 0.8', { polars: [rows], mach: 0.9 }, /mach is 0.9/],
    ['no blade', { polars: [rows], aspectRatio: -1 }, /aspectRatio/],
    ['a misspelt row', { polars: [{ ...rows, lifts: [] }] }, /section.table polars\[0\]: option "lifts"/],
    ['a misspelt option', { polar: [rows] }, /did you mean "polars"/],
  ])('refuses %s', (_, options, message) => {
    const call = () => section.table(options as { polars: [] })
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('section.coefficients', () => {
  it('takes the constants of a linear section without a record', () => {
    expect(section.coefficients({ section: plain, angleOfAttack: 0.1 }).lift).toBe(at(plain, 0.1).lift)
  })

  it('advises outside the section’s Reynolds numbers and past Mach 0.7', () => {
    const codes = (options: object) =>
      listenWhile(() =>
        section.coefficients({ section: { ...plain, referenceReynolds: 1e6 }, angleOfAttack: 0, ...options }),
      ).advisories.map((one) => one.code)
    expect(codes({ reynolds: 1e6 })).toEqual([])
    expect(codes({ reynolds: 1e4 })).toEqual(['SECTION_REYNOLDS'])
    expect(codes({ mach: 0.8 })).toEqual(['SECTION_MACH'])
  })

  it.each<[string, object, RegExp]>([
    ['no section', { angleOfAttack: 0 }, /section is missing; it must be a section polar/],
    ['a record that is no section', { section: { section: 'oval' }, angleOfAttack: 0 }, /"oval".*"linear" or "table"/],
    ['an angle in degrees', { section: plain, angleOfAttack: 10 }, /angleOfAttack is 10 rad/],
    ['a Reynolds number of 0', { section: plain, angleOfAttack: 0, reynolds: 0 }, /reynolds is 0/],
    ['a supersonic section', { section: plain, angleOfAttack: 0, mach: 2 }, /mach is 2/],
    ['a forged section', { section: { section: 'linear' }, angleOfAttack: 0 }, /within the range of numbers/],
    ['a misspelt option', { section: plain, angle: 0 }, /option "angle"/],
  ])('refuses %s', (_, options, message) => {
    expect(() => section.coefficients(options as { section: typeof plain; angleOfAttack: number })).toThrow(message)
  })
})

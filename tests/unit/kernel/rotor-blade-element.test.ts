import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { expectClose } from './close-to.js'
import { listenWhile } from './recorder-stub.js'

const { air, rotor, section, u } = preloaded
const codes = (run: () => void) => listenWhile(run).advisories.map((one) => one.code)
const four = {
  ...air.standard(0),
  radius: 1.3,
  rootCutout: 0.2,
  chord: 0.14,
  blades: 4,
  collective: 10 * u.deg,
  tipSpeed: 165,
  section: section.linear({ liftSlope: 5.73, minimumDrag: 0.01, maximumLift: 1.3 }),
}

describe('rotor.bladeElement', () => {
  it('has the call shape that outside checks rely on', () => {
    const answer = rotor.bladeElement({ ...four, twist: 0, axialSpeed: 0 })
    for (const name of [
      'thrust',
      'torque',
      'power',
      'thrustCoefficient',
      'torqueCoefficient',
      'figureOfMerit',
    ] as const)
      expect(answer[name]).toBeGreaterThan(0)
    expectClose(answer.power, (answer.torque * 165) / 1.3, 1e-14)
    expectClose(answer.bladeLoading * answer.solidity, answer.thrustCoefficient, 1e-14)
    expectClose(answer.solidity, (4 * 0.14) / (Math.PI * 1.3), 1e-12)
    expectClose(answer.figureOfMerit, answer.thrustCoefficient ** 1.5 / (Math.SQRT2 * answer.torqueCoefficient), 1e-12)
  })

  it('tends to the closed form of small angles as the pitch does, with losses, swirl and drag left out', () => {
    const errors = [4, 2, 1].map((degrees) => {
      const pitch = degrees * u.deg
      const answer = rotor.bladeElement({
        ...four,
        rootCutout: 0,
        collective: pitch,
        losses: 'none',
        swirl: false,
        elements: 200,
        speedOfSound: 1e6,
        section: { liftSlope: 5.73, minimumDrag: 1e-4 },
      })
      const form = rotor.smallAngleHover({ solidity: answer.solidity, liftSlope: 5.73, pitch })
      return Math.abs(answer.thrustCoefficient / form.thrustCoefficient - 1)
    })
    // What is left is of second order in the inflow angle, and the inflow itself goes with the root of the pitch at large pitch.
    expect(errors[0]).toBeLessThan(5e-3)
    expect(errors[1]).toBeLessThan(0.6 * (errors[0] ?? 0))
    expect(errors[2]).toBeLessThan(0.6 * (errors[1] ?? 0))
  })

  it('takes the induced power of ideal twist nearly uniform (kappa 1), of an untwisted blade 8 % more (computed, formula from memory)', () => {
    const kappa = (twist: 0 | ((x: number) => number), collective: number) => {
      const { thrustCoefficient, power, profilePower } = rotor.bladeElement({
        ...four,
        rootCutout: 0.01,
        collective,
        twist,
        losses: 'none',
        swirl: false,
        elements: 200,
        speedOfSound: 1e6,
        section: { liftSlope: 5.73, minimumDrag: 1e-4, maximumLift: 3.4 },
      })
      const induced = (power - profilePower) / (1.225 * Math.PI * 1.3 ** 2 * 165 ** 3)
      return induced / (thrustCoefficient * Math.sqrt(thrustCoefficient / 2))
    }
    expectClose(kappa(0, 8 * u.deg), 1.083, 0.01)
    expectClose(
      kappa((x) => Math.min((4 * u.deg) / x, 1.5), 0),
      1,
      0.01,
    )
  })

  it('converges with the number of elements: at 24 both coefficients are within 1e-3 of 200', () => {
    const of = (elements: number) => rotor.bladeElement({ ...four, elements })
    const fine = of(200)
    for (const [elements, allowed] of [
      [24, 1e-3],
      [48, 3e-4],
      [96, 1e-4],
    ] as const) {
      expectClose(of(elements).thrustCoefficient, fine.thrustCoefficient, allowed)
      expectClose(of(elements).torqueCoefficient, fine.torqueCoefficient, allowed)
    }
  })

  it('loses thrust at tip and root, and to swirl', () => {
    const full = rotor.bladeElement({ ...four, losses: 'none', swirl: false }).thrust
    const swirling = rotor.bladeElement({ ...four, losses: 'none' }).thrust
    const lossy = rotor.bladeElement(four).thrust
    expect(swirling).toBeLessThan(full)
    expect(lossy).toBeLessThan(swirling)
    expect(rotor.bladeElement({ ...four, blades: 8, chord: 0.07 }).thrust).toBeGreaterThan(lossy)
  })

  it('is continuous in collective through no thrust, which symmetric blades have at no pitch', () => {
    const of = (collective: number) => rotor.bladeElement({ ...four, collective }).thrustCoefficient
    expect(of(0)).toBeCloseTo(0, 12)
    expect(of(1e-6)).toBeGreaterThan(0)
    expectClose(of(-0.1), -of(0.1), 1e-9)
  })

  it('autorotates: at a steep descent the air drives the rotor', () => {
    const falling = rotor.bladeElement({ ...four, collective: 0.02, axialSpeed: -25 })
    expect(falling.thrust).toBeGreaterThan(0)
    expect(falling.power).toBeLessThan(0)
    expect(falling.figureOfMerit).toBe(0)
  })

  it('takes chord and twist as number, table or function alike', () => {
    const taper = (x: number) => 0.18 - 0.06 * x
    const washout = (x: number) => -0.2 * (x - 0.75)
    const byFunction = rotor.bladeElement({ ...four, chord: taper, twist: washout })
    const byTable = rotor.bladeElement({
      ...four,
      chord: [
        [0, taper(0)],
        [0.5, taper(0.5)],
        [1, taper(1)],
      ],
      twist: [
        [0, washout(0)],
        [1, washout(1)],
      ],
    })
    const byNumber = rotor.bladeElement({ ...four, chord: taper, twist: -0.2 })
    expectClose(byTable.thrust, byFunction.thrust, 1e-12)
    expectClose(byNumber.thrust, byFunction.thrust, 1e-12)
  })

  it('holds the ends of a table where the blade goes beyond them', () => {
    const held = rotor.bladeElement({
      ...four,
      chord: [
        [0.5, 0.14],
        [0.6, 0.14],
      ],
    })
    expectClose(held.thrust, rotor.bladeElement(four).thrust, 1e-12)
  })

  it('advises on tip Mach, Reynolds number, stall and vortex ring', () => {
    const at = (options: object) => codes(() => rotor.bladeElement({ ...four, ...options }))
    expect(at({})).toEqual([])
    expect(at({ tipSpeed: 250 })).toEqual(['SECTION_MACH'])
    expect(at({ collective: 0.6 })).toEqual(['STALL'])
    expect(at({ axialSpeed: -10 })).toEqual(['VORTEX_RING'])
    const tested = { liftSlope: 5.73, minimumDrag: 0.01, referenceReynolds: 3e4 }
    expect(at({ section: tested, tipSpeed: 120 })).toEqual(['SECTION_REYNOLDS'])
  })

  it.each<[string, object, RegExp]>([
    ['no radius', { radius: 0 }, /radius is 0 m/],
    ['a root beyond the blade', { rootCutout: 1.3 }, /rootCutout is 1.3/],
    ['no chord', { chord: 0 }, /chord is 0 m/],
    ['a chord wider than the radius', { chord: 14 }, /chord is 14 m/],
    ['half a blade', { blades: 2.5 }, /blades is 2.5/],
    ['too few elements', { elements: 2 }, /elements is 2; it must be a whole number from 4 to 400/],
    ['a collective in degrees', { collective: 10 }, /collective is 10 rad/],
    ['a twist in degrees', { twist: -10 }, /twist is -10 rad/],
    ['an axial speed that is none', { axialSpeed: Number.NaN }, /axialSpeed/],
    ['a tip that stands', { tipSpeed: 0 }, /tipSpeed/],
    ['no air', { density: 0 }, /density/],
    ['no viscosity', { dynamicViscosity: 0 }, /dynamicViscosity/],
    ['no sound', { speedOfSound: 0 }, /speedOfSound/],
    ['no section', { section: undefined }, /section is missing/],
    [
      'losses of another name',
      { losses: 'goldstein' },
      /losses is the text "goldstein"; it must be 'prandtl' or 'none'/,
    ],
    ['a swirl that is a number', { swirl: 1 }, /swirl is 1; it must be true or false/],
    ['a table of one', { chord: [[0, 1]] }, /chord is a list of 1.*pairs/],
    ['a table that is none', { chord: { tip: 1 } }, /chord is a record/],
    ['a row that is no pair', { chord: [[0, 0.1], 5] }, /chord\[1\] is 5/],
    [
      'a station outside the blade',
      {
        chord: [
          [0, 0.1],
          [2, 0.1],
        ],
      },
      /chord\[1\]\[0\] is 2/,
    ],
    [
      'a chord in the table that is none',
      {
        chord: [
          [0, 0.1],
          [1, -1],
        ],
      },
      /chord\[1\]\[1\] is -1/,
    ],
    [
      'stations that fall',
      {
        chord: [
          [0.5, 0.1],
          [0.2, 0.1],
        ],
      },
      /chord\[1\]\[0\].*above the one before it, 0.5/,
    ],
    ['a function that gives nonsense', { chord: () => Number.NaN }, /chord at r\/R = .* is NaN/],
    ['sizes beyond numbers', { tipSpeed: 1e200 }, /size that no aircraft has/],
    ['a misspelt option', { colective: 0.1 }, /did you mean "collective"/],
  ])('refuses %s', (_, options, message) => {
    const call = () => rotor.bladeElement({ ...four, ...options } as typeof four)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('rotor.collectiveForThrust', () => {
  const { collective: _, ...rest } = four

  it('gives back the collective of a thrust, of cambered blades that lift at no pitch too', () => {
    const { thrust } = rotor.bladeElement(four)
    expectClose(rotor.collectiveForThrust({ ...rest, thrust }).collective, 10 * u.deg, 1e-9)
    const cambered = { ...rest, section: { liftSlope: 5.73, minimumDrag: 0.01, zeroLiftAngle: -8 * u.deg } }
    expectClose(rotor.collectiveForThrust({ ...cambered, thrust: 10 }).thrust, 10, 1e-8)
  })

  it('climbs', () => {
    const climbing = rotor.collectiveForThrust({ ...rest, thrust: 1500, axialSpeed: 20 })
    expectClose(climbing.thrust, 1500, 1e-9)
    expect(climbing.collective).toBeGreaterThan(rotor.collectiveForThrust({ ...rest, thrust: 1500 }).collective)
  })

  it('advises as rotor.bladeElement does', () => {
    expect(codes(() => rotor.collectiveForThrust({ ...rest, tipSpeed: 250, thrust: 1500 }))).toEqual(['SECTION_MACH'])
  })

  it('says the most that a rotor gives', () => {
    expect(() => rotor.collectiveForThrust({ ...rest, thrust: 1e5 })).toThrow(
      /thrust is 100000 N; it must be at most about .* N, which is all these blades give/,
    )
  })

  it.each<[string, object, RegExp]>([
    ['no thrust', { thrust: 0 }, /thrust is 0 N/],
    ['an axial speed that is none', { axialSpeed: Number.POSITIVE_INFINITY }, /axialSpeed/],
    ['a collective', { collective: 0.1 }, /option "collective"/],
  ])('refuses %s', (_, options, message) => {
    expect(() => rotor.collectiveForThrust({ ...rest, thrust: 1000, ...options })).toThrow(message)
  })
})

describe('rotor.smallAngleHover', () => {
  const blade = { solidity: 0.1, liftSlope: 5.73, pitch: 8 * u.deg }

  it('agrees with a quadrature of its own inflow', () => {
    const { thrustCoefficient, inducedFactor } = rotor.smallAngleHover(blade)
    let [thrust, power] = [0, 0]
    const n = 20_000
    for (let i = 0; i < n; i += 1) {
      const station = (i + 0.5) / n
      const slope = 0.1 * 5.73
      const inflow = (slope / 16) * (Math.sqrt(1 + (32 * blade.pitch * station) / slope) - 1)
      thrust += (4 * inflow ** 2 * station) / n
      power += (4 * inflow ** 3 * station) / n
    }
    expectClose(thrustCoefficient, thrust, 1e-7)
    expectClose(inducedFactor, power / (thrust * Math.sqrt(thrust / 2)), 1e-6)
    expectClose(inducedFactor, 1.083, 5e-4)
  })

  it.each<[string, object, RegExp]>([
    ['no solidity', { solidity: 0 }, /solidity/],
    ['no lift', { liftSlope: 0 }, /liftSlope/],
    ['no pitch', { pitch: 0 }, /pitch is 0 rad/],
    ['a pitch in degrees', { pitch: 8 }, /pitch is 8 rad/],
    ['a station beyond the tip', { station: 2 }, /station/],
    ['a twist of another name', { twist: 'some' }, /twist is the text "some"; it must be 'none' or 'ideal'/],
    ['an inflow of another name', { inflow: 'some' }, /inflow.*'local' or 'uniform'/],
    ['a misspelt option', { theta: 1 }, /option "theta"/],
  ])('refuses %s', (_, options, message) => {
    expect(() => rotor.smallAngleHover({ ...blade, ...options } as typeof blade)).toThrow(message)
  })
})

describe('rotor.tipLoss and rotor.prandtlLoss', () => {
  it('rotor.prandtlLoss goes from nothing at the tip to all well inside', () => {
    const at = (station: number) => rotor.prandtlLoss({ blades: 4, station, inflowRatio: 0.05 })
    expect(at(1)).toBe(0)
    expect(at(0.05)).toBe(1)
    expect(at(0.97)).toBeLessThan(at(0.9))
  })

  it.each<[string, () => unknown, RegExp]>([
    ['no thrust', () => rotor.tipLoss({ thrustCoefficient: 0, blades: 2 }), /thrustCoefficient/],
    ['half a blade', () => rotor.tipLoss({ thrustCoefficient: 0.01, blades: 1.5 }), /blades/],
    ['half of the radius', () => rotor.tipLoss({ thrustCoefficient: 2, blades: 2 }), /at most 1, where half/],
    ['a misspelt option', () => rotor.tipLoss({ CT: 1 } as never), /option "CT"/],
    ['no blades', () => rotor.prandtlLoss({ blades: 0, station: 0.5, inflowRatio: 0.1 }), /blades/],
    ['the axis', () => rotor.prandtlLoss({ blades: 2, station: 0, inflowRatio: 0.1 }), /station/],
    ['no inflow', () => rotor.prandtlLoss({ blades: 2, station: 0.5, inflowRatio: 0 }), /inflowRatio/],
    ['another option', () => rotor.prandtlLoss({ r: 1 } as never), /option "r"/],
  ])('refuse %s', (_, call, message) => {
    expect(call).toThrow(message)
  })
})

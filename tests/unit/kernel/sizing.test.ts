import { describe, expect, expectTypeOf, it } from 'vitest'
import { DoesNotClose, InvalidInput, NoFold, preloaded } from '../../../kernel/library/index.js'
import type { Mass, Ratio } from '../../../kernel/library/quantity.js'
import type { Closed } from '../../../kernel/library/sizing/index.js'
import { expectClose } from './close-to.js'
import { listenWhile } from './recorder-stub.js'
import { workedBuildUp } from './worked-build-up.js'

const { sizing, rotor } = preloaded

/** required = a + b m + c m^2: the smaller root and the fold have closed forms. */
const quadratic = (a: number, b: number, c: number) => (m: number) => a + b * m + c * m * m
const smallerRoot = (a: number, b: number, c: number) => (2 * a) / (1 - b + Math.sqrt((1 - b) ** 2 - 4 * a * c))

const alongRange = {
  name: 'range',
  value: 165_200,
  unit: 'km',
  requiredMass: (grossMass: number, range: number) => workedBuildUp({ range })(grossMass),
}

function failure(run: () => unknown): DoesNotClose {
  try {
    run()
  } catch (error) {
    if (error instanceof DoesNotClose) return error
    throw error
  }
  throw new Error('it closed')
}

describe('sizing.close(options)', () => {
  it('closes the worked sizing problem at 1636.9422 kg with its items', () => {
    const sized = sizing.close({ requiredMass: workedBuildUp(), from: 1000 })
    expectClose(sized.grossMass, 1636.9422, 1e-7)
    expectClose(sized.masses.battery, 411.18477, 1e-7)
    expectClose(sized.masses.motors, 110.82763, 1e-7)
    expectClose(
      Object.values(sized.masses).reduce((sum, mass) => sum + mass, 0),
      sized.grossMass,
      1e-12,
    )
    expect(sized.iterations).toBeLessThan(10)
  })

  it.each([1, 300, 1636, 1637, 2500, 8000, 8195.5, 9000, 30_000, 1e6])(
    'finds the smaller of the two gross masses from %s kg, never 8195.5 kg',
    (from) => {
      const sized = sizing.close({ requiredMass: workedBuildUp(), from })
      expectClose(sized.grossMass, 1636.9421539925918, 1e-11)
    },
  )

  it('holds the residual to rounding right up to the fold, whose root is known in closed form', () => {
    for (const distance of [0.1, 1e-3, 1e-6, 1e-9]) {
      // The fold of a + 0.5 m + 1e-4 m^2 lies at a = 625.
      const a = 625 * (1 - distance)
      const sized = sizing.close({ requiredMass: quadratic(a, 0.5, 1e-4), from: 100 })
      expectClose(sized.grossMass, smallerRoot(a, 0.5, 1e-4), 1e-14 / distance + 1e-12)
    }
  })

  it('closes at 164.9 km and does not at 165.2 km, saying where and why it stops', () => {
    const sized = sizing.close({ requiredMass: workedBuildUp({ range: 164_900 }), from: 1000, along: alongRange })
    expect(sized.grossMass).toBeLessThan(3386)
    const beyond = sizing.close({ requiredMass: workedBuildUp({ range: 165_200 }), from: 1000, along: alongRange })
    const error = failure(() => beyond.grossMass)
    expect(error.message).toContain('closes up to about 165.0 km of range')
    expect(error.message).toContain('What runs away is battery')
    expect(error).toMatchObject({ code: 'DOES_NOT_CLOSE', runsAway: 'battery', limitName: 'range', limitUnit: 'km' })
    expectClose(error.limitValue ?? 0, 165_037, 3e-6)
    expect(error.details).toMatchObject({ limitName: 'range', runsAway: 'battery' })
  })

  it('gives the growth factor: gross mass gained per fixed mass', () => {
    const [light, heavy] = [400, 401].map((payload) =>
      sizing.close({ requiredMass: workedBuildUp({ payload }), from: 1000 }),
    )
    const gained = (heavy?.grossMass ?? 0) - (light?.grossMass ?? 0)
    expect(light?.growthFactor).toBeLessThan(gained)
    expect(heavy?.growthFactor).toBeGreaterThan(gained)
    expectClose(sizing.close({ requiredMass: (m) => 100 + 0.75 * m, from: 10 }).growthFactor, 4, 1e-9)
  })

  it('takes a single mass as well as items', () => {
    const sized = sizing.close({ requiredMass: (m) => 400 + 0.5 * m, from: 100 })
    expectClose(sized.grossMass, 800, 1e-14)
    expect(sized.masses).toBeUndefined()
  })

  it.each<[string, (m: number) => number, number, number]>([
    ['the root itself', (m) => 400 + 0.5 * m, 800, 800],
    ['a build-up without growth', () => 500, 20, 500],
    ['a build-up that falls', (m) => 1000 - 0.5 * m, 100, 2000 / 3],
    ['a concave build-up, whose secants overshoot', (m) => 100 + 20 * Math.sqrt(m), 50, (10 + Math.sqrt(200)) ** 2],
    ['a build-up with whole cells', (m) => 100 + 10 * Math.ceil(m / 40), 10, 140],
    // scipy 1.17.1: brentq(lambda m: 50 + .4*m + 3*m**.6 - m, 1, 1e4, xtol=1e-13)
    ['a concave build-up with a share', (m) => 50 + 0.4 * m + 3 * m ** 0.6, 50, 205.37081640046],
    ['a kink', (m) => 300 + Math.max(0.1 * m, 0.6 * m - 200), 10, 1000 / 3],
  ])('closes from %s', (_, requiredMass, from, expected) => {
    expectClose(sizing.close({ requiredMass, from }).grossMass, expected, 1e-10)
  })

  it('takes the first of four gross masses that close', () => {
    // f = (m-1)(m-2)(m-4)(m-8)/20 in hundreds of kilograms, on required = m + f.
    const requiredMass = (mass: number) => {
      const m = mass / 100
      return mass + (100 * ((m - 1) * (m - 2) * (m - 4) * (m - 8))) / 20
    }
    for (const from of [10, 50, 150, 300, 450, 790, 1000])
      expectClose(sizing.close({ requiredMass, from }).grossMass, 100, 1e-10)
  })

  it('runs silent and replays the accepted point once', () => {
    let calls = 0
    const requiredMass = (m: number) => {
      calls += 1
      const hover = rotor.hover({ thrust: m * 9.81, diskArea: 40, density: 1.2, figureOfMerit: 0.9 })
      return 400 + 0.4 * m + hover.power / 5000
    }
    const heard = listenWhile(() => sizing.close({ requiredMass, from: 500 }))
    expect(heard.advisories).toMatchObject([{ code: 'FIGURE_OF_MERIT' }])
    expect(calls).toBeGreaterThan(5)
  })

  it('advises on an item that closed below zero', () => {
    const requiredMass = (m: number) => ({ structure: 0.5 * m, credit: -10, payload: 100 })
    const heard = listenWhile(() => sizing.close({ requiredMass, from: 100 }))
    expect(heard.advisories).toMatchObject([{ code: 'NEGATIVE_MASS', quantity: 'credit', value: -10 }])
  })

  it('lets an error of the build-up through, and speaks again afterwards', () => {
    const heard = listenWhile(() => {
      expect(() =>
        sizing.close({
          from: 10,
          requiredMass: () => {
            throw new RangeError('mine')
          },
        }),
      ).toThrow('mine')
      rotor.hover({ thrust: 1, diskArea: 1, density: 1, figureOfMerit: 0.9 })
    })
    expect(heard.advisories).toHaveLength(1)
  })

  it.each<[string, object, RegExp]>([
    ['NaN, naming the gross mass', { requiredMass: () => Number.NaN }, /gross mass of 10 kg is NaN/],
    ['an item that is not finite, naming it', { requiredMass: () => ({ battery: 1 / 0 }) }, /item "battery".*Infinity/],
    ['an item that is text', { requiredMass: () => ({ battery: 'x' }) }, /item "battery".*the text "x"/],
    ['nothing', { requiredMass: () => undefined }, /missing/],
    ['a list', { requiredMass: () => [1] }, /a list of 1/],
    ['a build-up that is no function', { requiredMass: 5 }, /requiredMass is 5/],
    ['a start at 0', { from: 0 }, /from is 0 kg/],
    ['a tolerance of 0', { tolerance: 0 }, /tolerance/],
    ['an unknown option', { fromm: 1 }, /did you mean "from"/],
    ['a variable without a name', { along: { value: 1, requiredMass: () => 1 } }, /along\.name/],
    ['a variable without a value', { along: { name: 'x', requiredMass: () => 1 } }, /along\.value/],
    [
      'a variable with a bad unit',
      { along: { name: 'x', value: 1, unit: 'kq', requiredMass: () => 1 } },
      /along\.unit/,
    ],
    ['a variable without a build-up', { along: { name: 'x', value: 1 } }, /along\.requiredMass/],
    [
      'a direction that is none',
      { along: { name: 'x', value: 1, direction: 'left', requiredMass: () => 1 } },
      /"up" or "down"/,
    ],
    ['an unknown option of a variable', { along: { nam: 'x' } }, /did you mean "name"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => sizing.close({ requiredMass: (m: number) => 100 + 0.5 * m, from: 10, ...wrong } as never)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('sizing.close(options) of a design that does not close', () => {
  const heavy = { requiredMass: (m: number) => ({ payload: 400, structure: 1.1 * m }), from: 100 }

  it('answers with the reason, and with nothing else to list, copy or write', () => {
    const sized = sizing.close(heavy)
    expect(Object.keys(sized).sort()).toEqual(
      ['atGrossMass', 'closed', 'deficits', 'folds', 'iterations', 'reason', 'runsAway', 'shortfall'].sort(),
    )
    expect(JSON.parse(JSON.stringify(sized))).toEqual({ ...sized })
    expect(Object.keys({ ...sized })).not.toContain('grossMass')
  })

  it.each(['grossMass', 'masses', 'growthFactor'] as const)(
    'throws DoesNotClose with the reason and its data where %s is read',
    (field) => {
      const sized = sizing.close({ requiredMass: workedBuildUp({ range: 165_200 }), from: 1000, along: alongRange })
      if (sized.closed) throw new Error('it closed')
      const thrown = failure(() => sized[field])
      const { closed, reason, runsAway, shortfall, atGrossMass, fold } = sized
      expect(thrown).toMatchObject({ closed, reason, runsAway, shortfall, atGrossMass })
      expect([thrown.limitName, thrown.limitValue, thrown.foldGrossMass]).toEqual([
        fold?.name,
        fold?.value,
        fold?.grossMass,
      ])
      expect(thrown.message).toBe(`sizing.close: ${reason}`)
    },
  )

  it('types as a closed design where nobody asks, and as what it is where somebody does', () => {
    const sized = sizing.close({ ...heavy, requiredMass: (m) => ({ payload: 400, structure: 0.4 * m }) })
    expectTypeOf(sized.grossMass).toEqualTypeOf<Mass>()
    expectTypeOf(sized.masses).toEqualTypeOf<{ readonly payload: Mass; readonly structure: Mass }>()
    expectTypeOf(sized.growthFactor).toEqualTypeOf<Ratio>()
    if (sized.closed) expectTypeOf(sized).toEqualTypeOf<Closed<{ payload: number; structure: number }>>()
    else expectTypeOf(sized.reason).toEqualTypeOf<string>()
  })

  it('destructures into the failure with its reason', () => {
    const massOf = () => {
      const { grossMass } = sizing.close(heavy)
      return grossMass
    }
    expect(massOf).toThrow(DoesNotClose)
    expect(massOf).toThrow(/grows faster than the gross mass.*What runs away is structure/)
  })

  it('leaves no cell a way to change what another one is told', () => {
    const sized = sizing.close(heavy)
    const trap = Object.getOwnPropertyDescriptor(sized, 'grossMass')
    expect(Object.isFrozen(trap?.get)).toBe(true)
    expect(trap?.get !== undefined && 'prototype' in trap.get).toBe(false)
    expect(() => Object.assign(sized, { grossMass: 1 })).toThrow(TypeError)
  })

  it('gives shortfall and place of the fold in closed form', () => {
    // Least of 700 + 0.5 m + 1e-4 m^2 - m at m = 2500: 75 short.
    const tried = sizing.close({ requiredMass: quadratic(700, 0.5, 1e-4), from: 100 })
    if (tried.closed) throw new Error('it closed')
    expectClose(tried.shortfall, 75, 1e-12)
    expectClose(tried.atGrossMass, 2500, 1e-6)
    expect(tried.runsAway).toBe('total')
    expect(tried.folds).toEqual([])
  })

  it.each([1, 100, 2500, 4000, 1e5])('does not close from any start (%s kg)', (from) => {
    const tried = sizing.close({ requiredMass: quadratic(625.001, 0.5, 1e-4), from })
    expect(tried.closed).toBe(false)
  })

  it('says that the build-up outgrows the gross mass from the start', () => {
    const tried = sizing.close({ requiredMass: (m) => ({ payload: 400, structure: 1.1 * m }), from: 100 })
    expect(tried).toMatchObject({ closed: false, runsAway: 'structure' })
    expect(tried.closed ? '' : tried.reason).toContain('grows faster than the gross mass')
  })

  it('says that it is still short at the heaviest mass tried', () => {
    const tried = sizing.close({ requiredMass: (m) => 400 + m - m ** 0.1, from: 100 })
    expect(tried.closed ? '' : tried.reason).toMatch(/no gross mass up to .* it still asks for/)
  })

  it('says that a fixed mass is missing where nothing is asked for', () => {
    for (const requiredMass of [() => ({}), (m: number) => 0.5 * m]) {
      const tried = sizing.close({ requiredMass, from: 100 })
      expect(tried.closed ? '' : tried.reason).toContain('is a fixed mass missing?')
    }
  })

  it('says that the build-up jumps across the gross mass', () => {
    const tried = sizing.close({ requiredMass: (m) => (m < 500 ? 600 : 400), from: 100 })
    expect(tried.closed ? '' : tried.reason).toContain('jumps')
    expectClose(tried.closed ? 0 : tried.atGrossMass, 500, 1e-9)
  })

  it('names every limit asked for, from which or up to which it closes', () => {
    const design = { range: 165_200, payload: 400, figureOfMerit: 0.72 }
    const tried = sizing.close({
      requiredMass: workedBuildUp(design),
      from: 1000,
      along: [
        alongRange,
        {
          name: 'figureOfMerit',
          value: 0.72,
          requiredMass: (m, figureOfMerit) => workedBuildUp({ ...design, figureOfMerit })(m),
        },
        { name: 'colour', value: 1, requiredMass: (m) => workedBuildUp(design)(m) },
      ],
    })
    if (tried.closed) throw new Error('it closed')
    expect(tried.folds.map((fold) => [fold.name, fold.closes])).toEqual([
      ['range', 'up to'],
      ['figureOfMerit', 'from'],
    ])
    expect(tried.fold).toBe(tried.folds[0])
    expect(tried.reason).toContain('It closes from about 0.72')
    expect(tried.reason).toContain('No colour near the given 1 makes it close')
  })
})

describe('sizing.fold(options)', () => {
  it('finds the fold of the worked problem at 165.037 km while it closes', () => {
    const limit = sizing.fold({ ...alongRange, value: 85_000, from: 1000 })
    expectClose(limit.value, 165_037, 3e-6)
    expect(limit).toMatchObject({ name: 'range', unit: 'km', closes: 'up to' })
    // Closes just below and not just above.
    const closes = (range: number) => sizing.close({ requiredMass: workedBuildUp({ range }), from: 1000 }).closed
    expect(closes(limit.value * (1 - 1e-9))).toBe(true)
    expect(closes(limit.value * (1 + 1e-9))).toBe(false)
  })

  it.each([1, 400, 624, 626, 5000])('finds the closed form from a value of %s', (value) => {
    const limit = sizing.fold({ name: 'a', value, from: 100, requiredMass: (m, a) => quadratic(a, 0.5, 1e-4)(m) })
    expectClose(limit.value, 625, 1e-9)
    expectClose(limit.grossMass, 2500, 1e-5)
  })

  it('looks the way it is told, also for a negative variable', () => {
    const requiredMass = (m: number, a: number) => quadratic(-a, 0.5, 1e-4)(m)
    const limit = sizing.fold({ name: 'a', value: -400, from: 100, direction: 'down', requiredMass })
    expectClose(limit.value, -625, 1e-9)
    expect(limit.closes).toBe('from')
    expect(() => sizing.fold({ name: 'a', value: -400, from: 100, direction: 'up', requiredMass })).toThrow(NoFold)
  })

  it('says that there is none', () => {
    const call = () => sizing.fold({ name: 'a', value: 1, unit: 'm', from: 100, requiredMass: (m) => 100 + 0.5 * m })
    expect(call).toThrow(NoFold)
    expect(call).toThrow(/no fold along a within a hundredth to a thousand times 1 m/)
    expect(() => sizing.fold({ name: 'a', value: 0, from: 100, requiredMass: (m) => m })).toThrow(NoFold)
  })

  it('ends its search where the build-up refuses a value, and lets other errors through', () => {
    const shareOnly = (m: number, share: number) =>
      100 + rotor.hover({ thrust: m, diskArea: 1, density: 1, figureOfMerit: share }).power * 1e-6 + 0.5 * m
    expect(() => sizing.fold({ name: 's', value: 0.9, direction: 'up', from: 100, requiredMass: shareOnly })).toThrow(
      NoFold,
    )
    const broken = (m: number, x: number) => {
      if (x !== 1) throw new RangeError('mine')
      return 100 + 0.5 * m
    }
    expect(() => sizing.fold({ name: 'x', value: 1, from: 100, requiredMass: broken })).toThrow('mine')
  })

  it('refuses an unknown option and a start of 0', () => {
    const options = { name: 'a', value: 1, from: 100, requiredMass: (m: number) => m }
    expect(() => sizing.fold({ ...options, to: 1 } as never)).toThrow(InvalidInput)
    expect(() => sizing.fold({ ...options, from: 0 })).toThrow(InvalidInput)
  })
})

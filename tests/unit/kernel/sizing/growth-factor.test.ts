import { describe, expect, it } from 'vitest'
import { DoesNotClose, InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { derivative } from '../../../../kernel/library/numerics/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { type Variation, workedBuildUp } from '../worked-build-up.js'

const { battery, sizing, u } = preloaded

describe('derivative(f, x, firstStep)', () => {
  it('is exact to ten digits where the function is smooth, and honest about its error', () => {
    for (const x of [0.3, 1, 2.5]) {
      const found = derivative(Math.exp, x, 0.1)
      expectClose(found.value, Math.exp(x), 1e-10)
      expect(Math.abs(found.value - Math.exp(x))).toBeLessThan(Math.max(100 * found.error, 1e-12))
    }
  })

  it('takes one side at a kink', () => {
    const bent = (x: number) => (x < 1 ? x : 1 + 3 * (x - 1))
    expectClose(derivative(bent, 1, 0.1, -1).value, 1, 1e-9)
    expectClose(derivative(bent, 1, 0.1, 1).value, 3, 1e-9)
  })
})

describe('sizing.growthFactor(options)', () => {
  it('has the closed form of a quadratic build-up', () => {
    // m = a + b m + c m^2 has G = 1/(1 - b - 2 c m).
    const [a, b, c] = [300, 0.5, 1e-4]
    const grossMass = (1 - b - Math.sqrt((1 - b) ** 2 - 4 * a * c)) / (2 * c)
    const requiredMass = (m: number) => ({ payload: a, structure: b * m, battery: c * m * m })
    const found = sizing.growthFactor({ grossMass, requiredMass })
    const expected = 1 / (1 - b - 2 * c * grossMass)
    for (const one of [found.growthFactor, found.lighter, found.heavier]) expectClose(one, expected, 1e-8)
    expect(found.items.map((one) => one.item)).toEqual(['structure', 'battery', 'payload'])
    expectClose(1 + found.items.reduce((sum, one) => sum + one.growth, 0), expected, 1e-8)
  })

  it('agrees with sizing.close and with a design closed anew with ten kilograms more', () => {
    const requiredMass = workedBuildUp()
    const closed = sizing.close({ requiredMass, from: 1000 })
    const found = sizing.growthFactor({ requiredMass, grossMass: closed.grossMass })
    expectClose(found.growthFactor, closed.growthFactor, 1e-6)
    const heavier = sizing.close({ requiredMass: (m) => ({ ...requiredMass(m), more: 0.01 }), from: 1000 })
    expectClose((heavier.grossMass - closed.grossMass) / 0.01, found.growthFactor, 1e-4)
  })

  it('tells the sides of a kink apart, with an advisory', () => {
    const requiredMass = (m: number) => 300 + Math.max(0.4 * m, 0.6 * m - 100)
    const heard = listenWhile(() => {
      const found = sizing.growthFactor({ grossMass: 500, requiredMass })
      expectClose(found.lighter, 1 / 0.6, 1e-6)
      expectClose(found.heavier, 2.5, 1e-6)
      expect(found.items).toEqual([{ item: 'total', growth: expect.any(Number) }])
    })
    expect(heard.advisories).toMatchObject([{ code: 'GROWTH_KINK' }])
    const steep = (m: number) => 300 + Math.max(0.4 * m, 1.4 * m - 500)
    expect(sizing.growthFactor({ grossMass: 500, requiredMass: steep }).heavier).toBe(1e9)
  })

  it.each<[string, object, RegExp]>([
    ['a mass that does not close', { grossMass: 900 }, /asks for 760 kg there.*sizing.close finds one/],
    ['the heavier root', { grossMass: 1000, requiredMass: (m: number) => 1.2 * m - 200 }, /fold, or the heavier/],
    ['no mass', { grossMass: 0 }, /grossMass/],
    ['no function', { requiredMass: 1 }, /requiredMass is 1/],
    ['NaN', { requiredMass: () => Number.NaN }, /requiredMass at a gross mass/],
    ['an unknown option', { from: 1 }, /option "from"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () =>
      sizing.growthFactor({ grossMass: 1000, requiredMass: (m: number) => 400 + 0.4 * m, ...wrong } as never)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('sizing.sensitivity(options)', () => {
  /** Elasticities of the worked problem, from an independent solver (plain Python, printed to three digits). */
  it.each<[keyof Variation, number, number]>([
    ['structureShare', 0.32, 1.003],
    ['payload', 400, 0.766],
    ['range', 85_000, 0.442],
    ['figureOfMerit', 0.72, -0.302],
  ])('gives the elasticity of %s in the worked problem', (name, value, elasticity) => {
    const { grossMass } = sizing.close({ requiredMass: workedBuildUp(), from: 1000 })
    const found = sizing.sensitivity({
      name,
      value,
      grossMass,
      requiredMass: (mass, x) => workedBuildUp({ [name]: x })(mass),
    })
    expect(Math.abs(found.elasticity - elasticity)).toBeLessThan(6e-4)
    expectClose((found.slope * value) / grossMass, found.elasticity, 1e-12)
  })

  it.each<[string, object, RegExp]>([
    ['a value of 0', { value: 0 }, /other than 0/],
    ['a value that is NaN', { value: Number.NaN }, /value is NaN/],
    ['no name', { name: '' }, /name/],
    ['no mass', { grossMass: -1 }, /grossMass/],
    ['a unit that is none', { unit: 'kq' }, /unit/],
    ['no function', { requiredMass: 1 }, /gross mass and the variable/],
    [
      'an absurd slope',
      { requiredMass: (m: number, x: number) => 600 + 0.4 * m + (x - 1) * 1.5e308 },
      /range of numbers/,
    ],
    ['an unknown option', { valu: 1 }, /did you mean "value"/],
  ])('refuses %s', (_, wrong, message) => {
    const options = { name: 'x', value: 1, grossMass: 1000, requiredMass: (m: number, x: number) => 600 * x + 0.4 * m }
    const call = () => sizing.sensitivity({ ...options, ...wrong } as never)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('sizing.close({ deficits })', () => {
  const requiredMass = (m: number) => ({ payload: 400, structure: 0.35 * m, battery: 300 })
  const pack = { cell: battery.cells.power18650, series: 200, stateOfCharge: 0.15, temperature: 283.15 }
  const landing = (parallel: number) => (grossMass: number) => {
    const power = 190 * grossMass
    const { deficit } = battery.discharge({ ...pack, parallel, power })
    return { 'landing power of the pack': { lacking: deficit, of: power, unit: 'kW' }, room: -1 }
  }

  it('closes where nothing is lacking, and tells how much room each limit has', () => {
    const closed = sizing.close({ requiredMass, from: 500, deficits: landing(60) })
    expect(closed.deficits.map((one) => one.limit)).toEqual(['room', 'landing power of the pack'])
    expect(closed.deficits[1]?.lacking).toBeLessThan(0)
    expect(sizing.close({ requiredMass, from: 500 }).deficits).toEqual([])
  })

  it('does not close where the pack cannot give the power, and says by how much', () => {
    const call = () => sizing.close({ requiredMass, from: 500, deficits: landing(20) }).grossMass
    expect(call).toThrow(DoesNotClose)
    expect(call).toThrow(
      /the masses add up at 1077 kg, but there landing power of the pack lacks [\d.]+ kW \([\d.]+ % short\)/,
    )
  })

  it('gives the signed deficits to a study, also where the masses never meet', () => {
    const tried = sizing.close({ requiredMass, from: 500, deficits: landing(20) })
    expect(tried).toMatchObject({ closed: false, runsAway: 'landing power of the pack', shortfall: 0 })
    expect(tried.deficits[0]?.lacking).toBeGreaterThan(0)
    const runaway = sizing.close({
      requiredMass: (m) => 400 + 1.1 * m,
      from: 500,
      deficits: () => ({ 'motor torque': -5, span: { lacking: 1, unit: 'm' } }),
    })
    expect(runaway).toMatchObject({
      closed: false,
      deficits: [{ limit: 'span', lacking: 1 }, { limit: 'motor torque' }],
    })
  })

  it('names every limit that lacks', () => {
    const tried = sizing.close({
      requiredMass,
      from: 500,
      deficits: () => ({ a: { lacking: 2, of: 0 }, b: { lacking: 3, of: 10 * u.kW, unit: 'kW' } }),
    })
    expect(tried.closed ? '' : tried.reason).toContain('a lacks 2, and b lacks')
  })

  it.each<[string, unknown, RegExp]>([
    ['deficits that are no function', 5, /deficits is 5/],
    ['an answer that is a number', () => 5, /deficits at a gross mass of 1077 kg is 5/],
    ['a limit that is NaN', () => ({ power: Number.NaN }), /"power" of deficits/],
    ['a limit that is text', () => ({ power: 'x' }), /"power" of deficits/],
    ['a lack that is NaN', () => ({ power: { lacking: Number.NaN } }), /"power" of deficits/],
    ['a whole that is NaN', () => ({ power: { lacking: 1, of: Number.NaN } }), /of in "power"/],
    ['a share beyond numbers', () => ({ power: { lacking: 1e300, of: 1e-300 } }), /range of numbers/],
    ['a unit that is none', () => ({ power: { lacking: 1, unit: 'kq' } }), /unit in "power"/],
    ['a field that is none', () => ({ power: { lackin: 1 } }), /did you mean "lacking"/],
  ])('refuses %s', (_, deficits, message) => {
    const call = () => sizing.close({ requiredMass, from: 500, deficits } as never)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

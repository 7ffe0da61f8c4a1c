import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'

const { mass, u } = preloaded
const carbon = mass.materials.carbon
const arm = { length: 1.5, radius: 0.06, tipForce: 4000, tipTorque: 200, tipMass: 25 }

describe('mass.tube(options)', () => {
  const tube = { radius: 0.05, wall: 2e-3, length: 1.5, elasticModulus: 70e9, shearModulus: 26.9e9, density: 1600 }

  it('has a frequency 0.001 % above the exact root of the beam with a tip mass', () => {
    // Exact: 1 + cos x cosh x + (M/m) x (cos x sinh x - sin x cosh x) = 0 for a beam of mass m with M at its tip.
    const { mass: own, secondMoment, frequency } = mass.tube({ ...tube, tipMass: 12 })
    const ratio = 12 / own
    const residual = (x: number) =>
      1 + Math.cos(x) * Math.cosh(x) + ratio * x * (Math.cos(x) * Math.sinh(x) - Math.sin(x) * Math.cosh(x))
    let low = 0.1
    let high = 1.5
    for (let k = 0; k < 80; k += 1) {
      const middle = 0.5 * (low + high)
      if (residual(middle) > 0) low = middle
      else high = middle
    }
    const exact = (low ** 2 / (2 * Math.PI)) * Math.sqrt((70e9 * secondMoment) / (own * 1.5 ** 3))
    expectClose(exact, 10.00929, 1e-6)
    expectClose(frequency, exact, 2e-5)
    expect(frequency).toBeGreaterThan(exact)
  })

  it('has the bare frequency 1.5 % below its own Rayleigh quotient', () => {
    const { frequency, bareFrequency } = mass.tube(tube)
    expectClose(frequency / bareFrequency, 1.015, 2e-3)
  })

  it('advises on a thick wall and a short beam', () => {
    const heard = listenWhile(() => mass.tube({ ...tube, wall: 0.02, length: 0.3 }))
    expect(heard.advisories.map((one) => one.code)).toEqual(['THICK_WALL', 'SHORT_BEAM'])
  })

  it('refuses a wall of nothing and a negative load', () => {
    expect(() => mass.tube({ ...tube, wall: 0 })).toThrow(/wall is 0 m/)
    expect(() => mass.tube({ ...tube, tipForce: -1 })).toThrow(/tipForce/)
  })
})

describe('mass.boom(options)', () => {
  it('meets each bound with equality where that bound binds', () => {
    const strong = mass.boom({ ...arm, material: { ...carbon, allowableStress: 60e6 } })
    expect(strong.binds).toBe('bending')
    expectClose(1.5 * strong.bendingStress, 60e6, 1e-12)
    const thin = mass.boom({
      ...arm,
      radius: 0.15,
      minimumWall: 1e-4,
      material: { ...carbon, allowableStress: 2e9, allowableShear: 2e9 },
    })
    expect(thin.binds).toBe('buckling')
    expectClose(1.5 * thin.bendingStress, thin.bucklingStress, 1e-11)
    const twisted = mass.boom({ ...arm, tipTorque: 2e5 })
    expect(twisted.binds).toBe('torsion')
    expectClose(1.5 * twisted.shearStress, carbon.allowableShear, 1e-12)
    const stiff = mass.boom({ ...arm, minimumFrequency: 14 * u.Hz })
    expect(stiff.binds).toBe('frequency')
    expectClose(stiff.frequency, 14, 1e-12)
    const straight = mass.boom({ ...arm, maximumDeflection: 0.005 })
    expect(straight.binds).toBe('deflection')
    expectClose(straight.tipDeflection, 0.005 * 1.5, 1e-12)
    const light = mass.boom({ ...arm, tipForce: 1, tipTorque: 0 })
    expect(light.binds).toBe('minimum wall')
    expect(light.wall).toBe(1e-3)
  })

  it('names the bound behind and adds fittings to the tube', () => {
    const boom = mass.boom({ ...arm, minimumFrequency: 14, fittings: 0.5 })
    expectClose(boom.mass, 1.5 * boom.tubeMass, 1e-14)
    expect(boom.nextShare).toBeLessThanOrEqual(1)
    expect(boom.next).not.toBe(boom.binds)
    expect(mass.boom({ ...arm, tipForce: 0, tipTorque: 0 }).binds).toBe('minimum wall')
  })

  it('refuses a frequency that no wall reaches, with the limit', () => {
    const call = () => mass.boom({ ...arm, minimumFrequency: 200 })
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(/below .* Hz, which the tube reaches without any mass at its tip.*greater radius/)
  })

  it('advises where the wall found is no thin wall', () => {
    const heard = listenWhile(() => mass.boom({ ...arm, radius: 0.02, tipForce: 9000 }))
    expect(heard.advisories.map((one) => one.code)).toContain('THICK_WALL')
  })

  it.each<[string, object]>([
    ['no length', { length: 0 }],
    ['a factor below 1', { ultimateFactor: 0.9 }],
    ['a material by name', { material: 'carbon' }],
    ['a material without a density', { material: { ...carbon, density: 0 } }],
    ['a deflection of nothing', { maximumDeflection: 0 }],
    ['an unknown option', { diameter: 0.1 }],
  ])('refuses %s', (_, wrong) => {
    expect(() => mass.boom({ ...arm, ...wrong } as Parameters<typeof mass.boom>[0])).toThrow(InvalidInput)
  })
})

describe('mass.wiring(options)', () => {
  it('loses exactly the voltage asked, and weighs less the more it may lose', () => {
    const cable = mass.wiring({ current: 200, length: 12, voltageDrop: 6 })
    expectClose(cable.loss, 1200, 1e-14)
    expectClose(cable.resistance * 200, 6, 1e-14)
    expectClose(mass.wiring({ current: 200, length: 12, voltageDrop: 12 }).mass, cable.mass / 2, 1e-14)
  })

  it('advises above the current density that a cable bears, and refuses a negative insulation', () => {
    const heard = listenWhile(() => mass.wiring({ current: 100, length: 10, voltageDrop: 8 }))
    expect(heard.advisories).toMatchObject([{ code: 'CURRENT_DENSITY', value: 100 / ((100 * 1.724e-8 * 10) / 8) }])
    expect(() => mass.wiring({ current: 1, length: 1, voltageDrop: 1, insulation: -1 })).toThrow(/insulation/)
  })
})

describe('mass.properties(items)', () => {
  it('gives the box of even density its textbook inertia, wherever it stands', () => {
    const box = mass.properties([{ name: 'box', mass: 12, x: 100, y: -50, z: 7, size: [1, 2, 3] }])
    expect(box).toMatchObject({ x: 100, y: -50, z: 7, Ixy: 0 })
    expectClose(box.Ixx, 13, 1e-12)
    expectClose(box.Iyy, 10, 1e-12)
    expectClose(box.Izz, 5, 1e-12)
  })

  it('adds up by parallel axes: two halves are the whole', () => {
    const whole = mass.properties([{ name: 'beam', mass: 6, x: 1, y: 2, size: [4, 0.2, 0.1] }])
    const halves = mass.properties(
      [-1, 1].map((side) => ({ name: `half ${side}`, mass: 3, x: 1 + side, y: 2, size: [2, 0.2, 0.1] as const })),
    )
    for (const key of ['mass', 'x', 'y', 'Ixx', 'Iyy', 'Izz'] as const) expectClose(halves[key], whole[key], 1e-12, key)
    expect(halves.items[0]?.share).toBe(0.5)
  })

  it('gives the product of a skew pair its sign', () => {
    const skew = mass.properties([
      { name: 'a', mass: 1, x: 1, y: 1 },
      { name: 'b', mass: 1, x: -1, y: -1 },
    ])
    expect(skew).toMatchObject({ Ixy: 2, Ixz: 0, Iyz: 0 })
  })

  it.each<[string, unknown, RegExp]>([
    ['nothing', [], /at least one/],
    ['no mass in all', [{ name: 'a', mass: 0, x: 0, y: 0 }], /no mass in all/],
    ['a negative mass', [{ name: 'a', mass: -1, x: 0, y: 0 }], /items\[0\].mass/],
    ['a place that is missing', [{ name: 'a', mass: 1, x: 0 }], /items\[0\].y is missing/],
    ['an endless height', [{ name: 'a', mass: 1, x: 0, y: 0, z: Number.POSITIVE_INFINITY }], /items\[0\].z/],
    ['a size of two', [{ name: 'a', mass: 1, x: 0, y: 0, size: [1, 2] }], /three lengths/],
    ['a negative edge', [{ name: 'a', mass: 1, x: 0, y: 0, size: [1, 2, -3] }], /size\[2\]/],
    ['an item without a name', [{ name: '', mass: 1, x: 0, y: 0 }], /name/],
  ])('refuses %s', (_, items, message) => {
    expect(() => mass.properties(items as Parameters<typeof mass.properties>[0])).toThrow(message)
  })
})

describe('mass.growth(items)', () => {
  it('adds an allowance by maturity, or the one stated', () => {
    const grown = mass.growth([
      { name: 'wing', mass: 100, maturity: 'guessed' },
      { name: 'motor', mass: 50, maturity: 'weighed' },
      { name: 'seat', mass: 10, maturity: 'drawn', allowance: 0.5 },
    ])
    expectClose(grown.growth, 35, 1e-14)
    expectClose(grown.growthShare, 35 / 160, 1e-14)
    expect(mass.growth([{ name: 'nothing', mass: 0, maturity: 'guessed' }]).growthShare).toBe(0)
  })

  it.each<[string, unknown, RegExp]>([
    ['nothing', [], /at least one/],
    ['a maturity it does not know', [{ name: 'a', mass: 1, maturity: 'hoped' }], /one of guessed, estimated/],
    ['an allowance below 0', [{ name: 'a', mass: 1, maturity: 'drawn', allowance: -0.1 }], /allowance/],
  ])('refuses %s', (_, items, message) => {
    expect(() => mass.growth(items as Parameters<typeof mass.growth>[0])).toThrow(message)
  })
})

describe('mass.stowageMechanism, mass.cooling, mass.parachute', () => {
  it('scale with what they move, carry away and let down', () => {
    expectClose(mass.stowageMechanism({ movedMass: 0, doorArea: 2, count: 4 }), 4 * 17, 1e-14)
    expectClose(mass.cooling({ heat: 45e3 }), 30, 1e-14)
    const slow = mass.parachute({ grossMass: 1600, descentSpeed: 7 })
    expectClose(0.5 * 1.225 * 49 * 0.8 * slow.canopyArea, 1600 * u.g0, 1e-14)
  })

  it('advise on a parachute outside those built, and refuse what cannot be', () => {
    const heard = listenWhile(() => mass.parachute({ grossMass: 1600, descentSpeed: 4 }))
    expect(heard.advisories).toMatchObject([{ code: 'PARACHUTE_SHARE' }])
    expect(() => mass.stowageMechanism({ movedMass: -1, count: 2 })).toThrow(/movedMass/)
    expect(() => mass.stowageMechanism({ movedMass: 1, count: 2.5 })).toThrow(/count/)
    expect(() => mass.cooling({ heat: 1, specificHeatFlow: 0 })).toThrow(/specificHeatFlow/)
    expect(() => mass.parachute({ grossMass: 0 })).toThrow(/grossMass/)
  })
})

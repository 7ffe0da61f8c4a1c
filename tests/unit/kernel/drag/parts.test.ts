import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { itRefuses } from '../wing/refusals.js'

const { drag, u } = preloaded

describe('drag.interference(options)', () => {
  it('has a band where the source has one', () => {
    const low = drag.interference({ place: 'wing, low without fillet' })
    expect(low).toEqual({ low: 1.1, best: 1.25, high: 1.4 })
    expect(drag.interference({ place: 'tail, H' }).best).toBe(1.08)
  })

  itRefuses(drag.interference, { place: 'body' }, [['an unknown place', { place: 'tail' }]])
})

describe('drag.buildUp(parts, options)', () => {
  const flight = { speed: 60, density: 1.2, dynamicViscosity: 1.8e-5 }
  const wing = { name: 'wing', wettedArea: 28, length: 1.2, formFactor: 1.3, interference: 1.1, laminarShare: 0.2 }

  it('adds parts, counts and leakage, and its shares make a whole', () => {
    const built = drag.buildUp(
      [
        { name: 'wing', wettedArea: 28, skinFriction: 0.003, formFactor: 1.3 },
        { name: 'pods', dragArea: 0.01, count: 8 },
      ],
      { wingArea: 14, leakageShare: 0.1 },
    )
    const bare = 28 * 0.003 * 1.3 + 0.08
    expectClose(built.dragArea, 1.1 * bare, 1e-15)
    expectClose(built.zeroLiftDrag ?? 0, (1.1 * bare) / 14, 1e-15)
    expectClose(built.dragAreas.leakage ?? 0, 0.1 * bare, 1e-14)
    expectClose(
      built.parts.reduce((sum, part) => sum + part.share, 0),
      1,
      1e-15,
    )
    expect(built.parts.map((part) => part.name)).toEqual(['wing', 'pods', 'leakage'])
  })

  it('takes the friction of a part with a length from the flight condition', () => {
    const friction = drag.skinFriction({ reynolds: (1.2 * 60 * 1.2) / 1.8e-5, laminarShare: 0.2 })
    const built = drag.buildUp([wing], flight)
    expect(built.parts[0]?.skinFriction).toBe(friction)
    expectClose(built.dragArea, friction * 1.3 * 1.1 * 28, 1e-15)
    expect(built.zeroLiftDrag).toBeUndefined()
  })

  it('follows the Mach number and the line it is given', () => {
    const mach = drag.buildUp([wing], { ...flight, speedOfSound: 340 }).dragArea
    const ittc = drag.buildUp([wing], { ...flight, frictionMethod: 'ITTC-1957' }).dragArea
    expect(mach).toBeLessThan(drag.buildUp([wing], flight).dragArea)
    expect(ittc).toBeGreaterThan(drag.buildUp([wing], flight).dragArea)
  })

  it('is nothing for parts without drag, and their shares are nothing too', () => {
    expect(drag.buildUp([{ name: 'paint', dragArea: 0 }])).toMatchObject({ dragArea: 0, parts: [{ share: 0 }] })
  })

  const call = (options: { parts: unknown } & object) => {
    const { parts, ...rest } = options
    return drag.buildUp(parts as Parameters<typeof drag.buildUp>[0], rest)
  }
  itRefuses(call, { parts: [wing], ...flight }, [
    ['no parts', { parts: [] }],
    ['parts that are no list', { parts: wing }],
    ['a part that is no record', { parts: ['wing'] }],
    ['a part without a name', { parts: [{ ...wing, name: ' ' }] }],
    ['a name twice', { parts: [wing, wing] }],
    ['a part called leakage', { parts: [{ name: 'leakage', dragArea: 1 }] }],
    ['an unknown field of a part', { parts: [{ ...wing, area: 1 }] }],
    ['a wetted area for a known part', { parts: [{ name: 'gear', dragArea: 1, wettedArea: 1 }] }],
    ['half a pod', { parts: [{ name: 'pod', dragArea: 1, count: 0.5 }] }],
    ['a negative drag area', { parts: [{ name: 'pod', dragArea: -1 }] }],
    ['no wetted area', { parts: [{ ...wing, wettedArea: 0 }] }],
    ['a form factor of 0', { parts: [{ ...wing, formFactor: 0 }] }],
    ['an interference of 10', { parts: [{ ...wing, interference: 10 }] }],
    ['no friction and no length', { parts: [{ name: 'wing', wettedArea: 28 }] }],
    ['a length of 0', { parts: [{ ...wing, length: 0 }] }],
    ['a friction of 0', { parts: [{ ...wing, skinFriction: 0 }] }],
    ['no speed for a part with a length', { speed: undefined }],
    ['a speed of 0', { speed: 0 }],
    ['no air', { density: 0 }],
    ['air without viscosity', { dynamicViscosity: 0 }],
    ['air without sound', { speedOfSound: 0 }],
    ['a wing without area', { wingArea: 0 }],
    ['leakage above the whole', { leakageShare: 2 }],
    ['a size beyond numbers', { parts: [{ name: 'moon', dragArea: 1e308, count: 10 }] }],
  ])
})

describe('drag.areaOf(options)', () => {
  itRefuses(drag.areaOf, { drag: 10, speed: 40, density: 1.2 }, [
    ['a push', { drag: -1 }],
    ['no speed', { speed: 0 }],
    ['no air', { density: 0 }],
    ['a size beyond numbers', { drag: 1e300, speed: 1e-10 }],
  ])
})

describe('drag.exposedPart(options)', () => {
  it('counts and keeps the band of the table', () => {
    const fork = drag.exposedPart({ kind: 'fork or fitting', frontalArea: 0.01, count: 3 })
    expectClose(fork.dragArea, 0.036, 1e-14)
    expect([fork.low, fork.high].map((one) => Number(one.toFixed(6)))).toEqual([0.03, 0.042])
  })

  itRefuses(drag.exposedPart, { kind: 'wheel and tyre', frontalArea: 0.05 }, [
    ['an unknown kind', { kind: 'wheel' }],
    ['no frontal area', { frontalArea: 0 }],
    ['half a wheel', { count: 0.5 }],
    ['a size beyond numbers', { frontalArea: 1e308, count: 100 }],
  ])
})

describe('drag.fixedGear(options)', () => {
  const parts = [
    { kind: 'wheel and tyre', frontalArea: 0.06, count: 3 },
    { kind: 'flat spring leg', frontalArea: 0.04, count: 2 },
    { kind: 'fork or fitting', frontalArea: 0.02, count: 3 },
  ] as const

  it('of a light aeroplane lies between the lowest and the highest that were measured', () => {
    // NACA Report 485 (summary read): 0.0472 to 0.356 m^2.
    const { dragArea, low, high } = drag.fixedGear({ parts })
    expect(dragArea).toBeGreaterThan(0.0472)
    expect(dragArea).toBeLessThan(0.356)
    expect(low).toBeLessThan(high)
  })

  itRefuses(drag.fixedGear, { parts }, [
    ['no parts', { parts: [] }],
    ['parts that are no list', { parts: 3 }],
    ['a part that the table lacks', { parts: [{ kind: 'float', frontalArea: 1 }] }],
    ['an interference below 1', { interference: 0.9 }],
  ])
})

describe('drag.boom(options)', () => {
  const sound = { length: 4, diameter: 0.16, speed: 58, density: 1.1, dynamicViscosity: 1.79e-5 }

  it('costs more with a blunt end, by the base alone', () => {
    const faired = drag.boom(sound)
    const blunt = drag.boom({ ...sound, end: 'blunt' })
    expect(faired.baseArea).toBe(0)
    expectClose(blunt.dragArea - faired.dragArea, blunt.baseArea, 1e-12)
    expect(blunt.baseArea).toBeLessThan(0.2 * Math.PI * 0.08 ** 2)
  })

  it('advises below three diameters', () => {
    expect(listenWhile(() => drag.boom({ ...sound, length: 0.4 })).advisories).toMatchObject([
      { code: 'BOOM_FINENESS' },
    ])
  })

  itRefuses(drag.boom, sound, [
    ['no length', { length: 0 }],
    ['no diameter', { diameter: 0 }],
    ['no speed', { speed: 0 }],
    ['no air', { density: 0 }],
    ['air without viscosity', { dynamicViscosity: 0 }],
    ['an unknown end', { end: 'round' }],
    ['an interference of 10', { interference: 10 }],
    ['a boom wider than long', { length: 0.1 }],
    ['a Reynolds number of an insect', { speed: 1e-5 }],
    ['a size beyond numbers', { length: 1e-170, diameter: 1e-172, speed: 1e175, density: 1e4 }],
  ])
})

describe('drag.cooling(options)', () => {
  const sound = { heat: 8000, temperatureRise: 20, speed: 58, density: 1.1 }

  it('costs at most the whole momentum of the air it takes in, and nothing without loss', () => {
    const all = drag.cooling({ ...sound, pressureLoss: 1 })
    expectClose(all.drag, all.massFlow * 58, 1e-15)
    expectClose(all.dragArea, 2 * all.captureArea, 1e-14)
    expect(drag.cooling({ ...sound, pressureLoss: 0 }).drag).toBe(0)
    expectClose(all.power, all.drag * 58, 1e-15)
  })

  it('advises above 40 K', () => {
    expect(listenWhile(() => drag.cooling({ ...sound, temperatureRise: 60 })).advisories).toHaveLength(1)
  })

  itRefuses(drag.cooling, sound, [
    ['negative heat', { heat: -1 }],
    ['no rise', { temperatureRise: 0 }],
    ['no speed', { speed: 0 }],
    ['no air', { density: 0 }],
    ['a loss above the whole', { pressureLoss: 1.1 }],
    ['a size beyond numbers', { heat: 1e308, temperatureRise: 1e-5 }],
  ])
})

describe('drag.fitPolar(options)', () => {
  const truth = drag.polar({ zeroLiftDrag: 0.032, aspectRatio: 10, spanEfficiency: 0.8 })
  const lift = [-0.2, 0, 0.3, 0.6, 0.9, 1.2]
  const exact = lift.map((one) => truth.zeroLiftDrag + truth.inducedFactor * one * one)

  it('finds the parabola that the points lie on', () => {
    const fit = drag.fitPolar({ lift, drag: exact, aspectRatio: 10 })
    expectClose(fit.zeroLiftDrag, 0.032, 1e-12)
    expectClose(fit.spanEfficiency ?? 0, 0.8, 1e-12)
    expect(fit.residual).toBeLessThan(1e-15)
    expect(
      drag.powerRequired({ polar: fit, weight: 1e4, wingArea: 14, density: 1.1, speed: 50 }).power,
    ).toBeGreaterThan(0)
  })

  it('keeps residuals that are orthogonal to the fit and names the worst', () => {
    const noisy = exact.map((one, index) => one + (index === 4 ? 0.004 : 0))
    const { residuals, worstAt, worstResidual, residual } = drag.fitPolar({ lift, drag: noisy })
    expect(Math.abs(residuals.reduce((sum, one) => sum + one, 0))).toBeLessThan(1e-15)
    expect(Math.abs(residuals.reduce((sum, one, at) => sum + one * (lift[at] ?? 0) ** 2, 0))).toBeLessThan(1e-15)
    expect(worstAt).toBe(0.9)
    expect(worstResidual).toBeGreaterThan(0.002)
    expectClose(
      residual ** 2 * 6,
      residuals.reduce((sum, one) => sum + one * one, 0),
      1e-12,
    )
  })

  it('advises where the points are not on a parabola about zero lift', () => {
    // A cambered wing: least drag at a lift of 0.6.
    const cambered = lift.map((one) => 0.02 + 0.08 * (one - 0.4) ** 2)
    expect(listenWhile(() => drag.fitPolar({ lift, drag: cambered })).advisories).toMatchObject([
      { code: 'POLAR_RESIDUAL' },
    ])
    expect(listenWhile(() => drag.fitPolar({ lift, drag: exact })).advisories).toEqual([])
  })

  itRefuses(drag.fitPolar, { lift, drag: exact } as Parameters<typeof drag.fitPolar>[0], [
    ['two points', { lift: [0, 1], drag: [0.03, 0.06] }],
    ['what is no list', { lift: 5 }],
    ['lists of unequal length', { drag: exact.slice(1) }],
    ['a point that is no number', { drag: [...exact.slice(1), Number.NaN] }],
    ['an aspect ratio of 0', { aspectRatio: 0 }],
    ['one lift only', { lift: [0.5, -0.5, 0.5, 0.5, 0.5, 0.5] }],
    ['drag that falls with lift', { drag: exact.map((one) => 0.2 - one) }],
    ['no drag at zero lift', { drag: exact.map((one) => one - 0.05) }],
    ['sizes beyond numbers', { drag: exact.map((one) => one * 1e308) }],
  ])
})

it('drag.exposedPart(options) and drag.areaOf(options) meet: a force becomes an area becomes a part', () => {
  const dragArea = drag.areaOf({ drag: 13 * u.lbf, speed: 44.704, density: 1.225 })
  expectClose(drag.buildUp([{ name: 'gear', dragArea }]).dragArea, dragArea, 1e-15)
})

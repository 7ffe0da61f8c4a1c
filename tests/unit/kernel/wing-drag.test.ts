import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { expectClose } from './close-to.js'
import { listenWhile } from './recorder-stub.js'

const { air, drag, wing, u } = preloaded
const density = air.standard(1500).density
const polar = drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 10, spanEfficiency: 0.8 })
const flight = { polar, weight: 2000 * u.g0, wingArea: 14, density }

describe('wing.stallSpeed(options)', () => {
  it('is 37.8093 m/s for 2000 kg on 14 m^2 at 1.6, and 40.6827 m/s at 1500 m', () => {
    // Recomputed closed form (independent script, formula of any textbook).
    const at = (rho: number) => wing.stallSpeed({ weight: 2000 * u.g0, density: rho, wingArea: 14, maximumLift: 1.6 })
    expectClose(at(1.225), 37.8093, 2e-6)
    expectClose(at(density), 40.6827, 2e-6)
  })

  it.each(['weight', 'density', 'wingArea', 'maximumLift'])('refuses %s of 0', (name) => {
    const options = { weight: 1, density: 1, wingArea: 1, maximumLift: 1, [name]: 0 }
    expect(() => wing.stallSpeed(options)).toThrow(InvalidInput)
  })

  it('refuses an unknown option', () => {
    const options = { weight: 1, density: 1, area: 1, maximumLift: 1 } as unknown as Parameters<
      typeof wing.stallSpeed
    >[0]
    expect(() => wing.stallSpeed(options)).toThrow(/option "area"/)
  })
})

describe('drag.polar(options)', () => {
  it('has its best ratio where induced drag equals drag at zero lift', () => {
    const { liftAtBestRatio, inducedFactor, zeroLiftDrag, maximumLiftToDrag } = polar
    expectClose(inducedFactor * liftAtBestRatio ** 2, zeroLiftDrag, 1e-14)
    expectClose(liftAtBestRatio / (2 * zeroLiftDrag), maximumLiftToDrag, 1e-14)
  })

  it.each<[string, object]>([
    ['a span efficiency above 1', { zeroLiftDrag: 0.04, aspectRatio: 10, spanEfficiency: 1.01 }],
    ['no zero-lift drag', { zeroLiftDrag: 0, aspectRatio: 10, spanEfficiency: 0.8 }],
    ['a negative aspect ratio', { zeroLiftDrag: 0.04, aspectRatio: -1, spanEfficiency: 0.8 }],
    ['an unknown option', { zeroLiftDrag: 0.04, aspectRatio: 10, spanEficiency: 0.8 }],
  ])('refuses %s', (_, options) => {
    expect(() => drag.polar(options as Parameters<typeof drag.polar>[0])).toThrow(InvalidInput)
  })

  it('advises on an unusual span efficiency', () => {
    const say = (spanEfficiency: number) =>
      listenWhile(() => drag.polar({ zeroLiftDrag: 0.04, aspectRatio: 10, spanEfficiency })).advisories.length
    expect([0.4, 0.8, 0.97].map(say)).toEqual([1, 0, 1])
  })
})

describe('drag.powerRequired(options)', () => {
  it('is drag times speed, and lift over drag is weight over drag', () => {
    const cruise = drag.powerRequired({ ...flight, speed: 58 })
    expectClose(cruise.power, cruise.drag * 58, 1e-15)
    expectClose(cruise.liftToDrag, flight.weight / cruise.drag, 1e-14)
  })

  it('takes a polar of one’s own', () => {
    const own = { zeroLiftDrag: polar.zeroLiftDrag, inducedFactor: polar.inducedFactor }
    expect(drag.powerRequired({ ...flight, polar: own, speed: 58 })).toEqual(
      drag.powerRequired({ ...flight, speed: 58 }),
    )
  })

  it('advises beyond the stall of a plain wing', () => {
    const heard = listenWhile(() => drag.powerRequired({ ...flight, speed: 25 }))
    expect(heard.advisories).toMatchObject([{ code: 'LIFT_COEFFICIENT', method: 'drag.powerRequired' }])
  })

  it.each<[string, object]>([
    ['no polar', { polar: undefined }],
    ['a polar without drag', { polar: { zeroLiftDrag: 0, inducedFactor: 0.04 } }],
    ['a polar without induced factor', { polar: { zeroLiftDrag: 0.04 } }],
    ['no weight', { weight: 0 }],
    ['no wing', { wingArea: 0 }],
    ['no air', { density: 0 }],
    ['no speed', { speed: 0 }],
    ['a size beyond numbers', { speed: 1e200 }],
    ['an unknown option', { sped: 1 }],
  ])('refuses %s', (_, wrong) => {
    expect(() => drag.powerRequired({ ...flight, speed: 58, ...wrong })).toThrow(InvalidInput)
  })
})

describe('drag.leastPowerSpeed(options)', () => {
  it('is where the power is least: nothing nearby takes less', () => {
    const best = drag.leastPowerSpeed(flight)
    for (const factor of [0.99, 0.999, 1.001, 1.01])
      expect(drag.powerRequired({ ...flight, speed: best.speed * factor }).power).toBeGreaterThan(best.power)
    expectClose(best.liftCoefficient, polar.liftAtLeastPower, 1e-14)
    expect(best.floorBinds).toBe(false)
  })

  it('is the floor where that is higher, and says so', () => {
    const floored = drag.leastPowerSpeed({ ...flight, floor: 45 })
    expect(floored).toMatchObject({ speed: 45, floorBinds: true })
    expect(floored.power).toBe(drag.powerRequired({ ...flight, speed: 45 }).power)
    expect(drag.leastPowerSpeed({ ...flight, floor: 20 }).floorBinds).toBe(false)
  })

  it.each<[string, object]>([
    ['a negative floor', { floor: -1 }],
    ['no weight', { weight: 0 }],
    ['no wing', { wingArea: Number.NaN }],
    ['no air', { density: 0 }],
    ['an unknown option', { floors: 1 }],
  ])('refuses %s', (_, wrong) => {
    expect(() => drag.leastPowerSpeed({ ...flight, ...wrong })).toThrow(InvalidInput)
  })
})

describe('drag.leastDragSpeed(options)', () => {
  it('flies at the best ratio of the polar', () => {
    const best = drag.leastDragSpeed(flight)
    expectClose(best.liftToDrag, polar.maximumLiftToDrag, 1e-14)
    expectClose(drag.leastPowerSpeed(flight).speed / best.speed, 3 ** -0.25, 1e-14)
  })
})

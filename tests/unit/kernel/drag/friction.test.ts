import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../../kernel/library/index.js'
import { expectClose } from '../close-to.js'
import { listenWhile } from '../recorder-stub.js'
import { itRefuses } from '../wing/refusals.js'

const { drag } = preloaded

describe('drag.skinFriction(options)', () => {
  it('solves the implicit line of Karman and Schoenherr to rounding', () => {
    for (const reynolds of [1e4, 2e5, 1e7, 1e9, 1e12]) {
      const friction = drag.skinFriction({ reynolds, method: 'Karman-Schoenherr' })
      expectClose(1 / Math.sqrt(friction), 4.13 * Math.log10(reynolds * friction), 1e-12)
    }
  })

  it('does not mind capitals, blanks and hyphens in the name of a method', () => {
    const at = (method: string) => drag.skinFriction({ reynolds: 1e6, method })
    expect(at('prandtl schlichting')).toBe(drag.skinFriction({ reynolds: 1e6 }))
    expect(at('ITTC1957')).toBe(at('ITTC-1957'))
  })

  it('is laminar to the transition and joins there without a step', () => {
    const at = (reynolds: number) => drag.skinFriction({ reynolds, transitionReynolds: 5e5 })
    expect(at(4e5)).toBe(drag.skinFriction({ reynolds: 4e5, method: 'laminar' }))
    expectClose(at(5e5 * (1 + 1e-9)), at(5e5), 1e-8)
    // A = Re_tr (C_turb - C_lam) = 1613.8 with Prandtl and Schlichting at 5e5, independent script.
    expectClose((drag.skinFriction({ reynolds: 1e7 }) - at(1e7)) * 1e7, 1613.8, 1e-4)
  })

  it('weights a laminar share by area', () => {
    const lines = ['laminar', 'Prandtl-Schlichting'].map((method) => drag.skinFriction({ reynolds: 2e6, method }))
    const [laminar, turbulent] = lines as [number, number]
    expectClose(drag.skinFriction({ reynolds: 2e6, laminarShare: 0.3 }), 0.3 * laminar + 0.7 * turbulent, 1e-15)
  })

  it('falls with Mach number and not below its roughness', () => {
    const smooth = drag.skinFriction({ reynolds: 1e8 })
    expectClose(smooth / drag.skinFriction({ reynolds: 1e8, mach: 0.2 }), 1.0037, 1e-4)
    const rough = drag.skinFriction({ reynolds: 1e8, relativeRoughness: 1e-5 })
    expect(rough).toBeGreaterThan(smooth)
    expect(drag.skinFriction({ reynolds: 1e9, relativeRoughness: 1e-5 })).toBe(rough)
    expect(drag.skinFriction({ reynolds: 1e6, relativeRoughness: 0.1 })).toBeLessThan(0.02)
  })

  it('advises outside the Reynolds numbers of its line', () => {
    const heard = (reynolds: number, method: string) =>
      listenWhile(() => drag.skinFriction({ reynolds, method })).advisories.length
    expect([heard(2e4, 'ITTC-1957'), heard(1e6, 'ITTC-1957'), heard(1e7, 'laminar')]).toEqual([1, 0, 1])
  })

  itRefuses(drag.skinFriction, { reynolds: 1e6 }, [
    ['a Reynolds number of an insect', { reynolds: 100 }],
    ['an unknown method', { method: 'Schoenher-Karman' }],
    ['a method that is no text', { method: 5 }],
    ['Mach 4', { mach: 4 }],
    ['a laminar share above 1', { laminarShare: 1.1 }],
    ['a transition at the front edge', { transitionReynolds: 0 }],
    ['transition twice', { transitionReynolds: 5e5, laminarShare: 0.1 }],
    ['transition of the laminar line', { method: 'laminar', laminarShare: 0.5 }],
    ['transition by place of the laminar line', { method: 'laminar', transitionReynolds: 5e5 }],
    ['roughness of 0', { relativeRoughness: 0 }],
    ['roughness as high as the part is long', { relativeRoughness: 1 }],
  ])
})

describe('drag.wingFormFactor(options)', () => {
  it('holds Raymer’s factor of Mach number at 1, under which it would fall below Mach 0.2', () => {
    // 1.34 M^0.18 is 0.885 at Mach 0.10.
    expect(drag.wingFormFactor({ thickness: 0.15, mach: 0.1 })).toBe(drag.wingFormFactor({ thickness: 0.15 }))
    expectClose(drag.wingFormFactor({ thickness: 0.15, mach: 0.5 }), 1.350625 * 1.34 * 0.5 ** 0.18, 1e-14)
  })

  it('is 1 for a plate by every method', () => {
    for (const method of ['Raymer', 'Torenbeek', 'Hoerner'] as const)
      expect(drag.wingFormFactor({ thickness: 0, method })).toBe(1)
  })

  it('advises outside 0.06 to 0.21', () => {
    const heard = (thickness: number) => listenWhile(() => drag.wingFormFactor({ thickness })).advisories.length
    expect([0.05, 0.12, 0.25].map(heard)).toEqual([1, 0, 1])
  })

  itRefuses(drag.wingFormFactor, { thickness: 0.12 }, [
    ['a cylinder', { thickness: 1 }],
    ['an unknown method', { method: 'Raimer' }],
    ['a thickness at the trailing edge', { thicknessAt: 0.9 }],
    ['Mach 1', { mach: 1 }],
    ['a sweep along the stream', { sweep: 1.5 }],
  ])
})

describe('drag.bodyFormFactor(options)', () => {
  it('falls towards a plate as the body grows longer, and Raymer’s rises again with the boundary layer', () => {
    for (const method of ['Torenbeek', 'Hoerner', 'nacelle'] as const) {
      const at = (fineness: number) => drag.bodyFormFactor({ fineness, method })
      expect(at(4)).toBeGreaterThan(at(8))
      expect(at(8)).toBeGreaterThan(1)
    }
    expect(drag.bodyFormFactor({ fineness: 60, method: 'Raymer older' })).toBeGreaterThan(1.1)
  })

  it('advises outside 3 to 20 diameters', () => {
    const heard = (fineness: number) => listenWhile(() => drag.bodyFormFactor({ fineness })).advisories.length
    expect([2, 8, 30].map(heard)).toEqual([1, 0, 1])
  })

  itRefuses(drag.bodyFormFactor, { fineness: 6 }, [
    ['a disk', { fineness: 0.5 }],
    ['an unknown method', { method: 'nacelles' }],
  ])
})

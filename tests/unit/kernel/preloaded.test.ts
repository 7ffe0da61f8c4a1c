import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'

describe('preloaded', () => {
  it('is frozen, its namespaces and its functions too, so that no cell leaves anything behind', () => {
    expect(Object.isFrozen(preloaded)).toBe(true)
    for (const [name, member] of Object.entries(preloaded)) {
      expect(Object.isFrozen(member), name).toBe(true)
      if (typeof member === 'object')
        for (const [inner, value] of Object.entries(member))
          expect(Object.isFrozen(value), `${name}.${inner}`).toBe(true)
    }
  })

  it('has the call shapes that outside checks rely on', () => {
    const { air, rotor, drag, sizing } = preloaded
    expect(Object.keys(air.standard(0)).sort()).toEqual(
      ['temperature', 'pressure', 'density', 'speedOfSound', 'dynamicViscosity'].sort(),
    )
    const hover = ['inducedVelocity', 'idealPower', 'power', 'figureOfMerit', 'diskLoading']
    expect(rotor.hover({ thrust: 1, diskArea: 1, density: 1, figureOfMerit: 0.7 })).toEqual(
      expect.objectContaining(Object.fromEntries(hover.map((key) => [key, expect.any(Number)]))),
    )
    expect(drag.polar({ zeroLiftDrag: 0.03, aspectRatio: 10, spanEfficiency: 0.8 })).toHaveProperty('inducedFactor')
    expect(sizing.close({ requiredMass: (m) => 100 + 0.5 * m, from: 100 })).toMatchObject({
      iterations: expect.any(Number),
    })
    expect(sizing.close({ requiredMass: (m) => 100 + 2 * m, from: 100 })).toMatchObject({
      closed: false,
      reason: expect.any(String),
      runsAway: 'total',
    })
  })
})

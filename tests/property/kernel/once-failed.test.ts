/** Inputs that once came back as infinity, found at night among 100,000. */
import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'
import { listenWhile } from '../../unit/kernel/recorder-stub.js'

const { battery, drag, layout, limits, requirement, wing } = preloaded
const huge = Number.MAX_VALUE

describe('what once was answered with infinity', () => {
  it.each<[string, () => unknown]>([
    [
      'wing.trim with a moment beyond numbers',
      () =>
        wing.trim({
          ...{ liftCurveSlope: 1.5e306, zeroLiftMoment: 0.01, gravityBehindCentre: 121, tailVolume: 0.01 },
          ...{ tailLiftCurveSlope: 0.01, tailIncidence: 0.01, downwashSlope: 0.01 },
        }),
    ],
    [
      'drag.compareStowage with a drag area beyond numbers',
      () =>
        drag.compareStowage({
          records: [
            drag.stowageRecord({ name: 'one', dragArea: 0.01, mechanismMass: 0.01, source: 'drawn' }),
            drag.stowageRecord({ name: 'two', dragArea: huge, mechanismMass: 0.01, source: 'drawn' }),
          ],
          ...{ mass: 10, airframeDragArea: 0.01, wingArea: 1, aspectRatio: 0.05, spanEfficiency: 0.005 },
          ...{ density: 0.01, speed: 0.3, growthFactor: 0.1 },
        }),
    ],
    ['requirement with a margin beyond numbers', () => requirement('r', { actual: -huge, atLeast: huge })],
    [
      'battery.aged with a resistance beyond numbers',
      () =>
        battery.aged({
          cell: { capacity: 100, mass: 0.05, openCircuitVoltage: [1, 2], resistance: 0.02 * huge, minimumVoltage: 1 },
          capacityLeft: 0.01,
          resistanceGrowth: 51,
        }),
    ],
    [
      'limits.routeReach from a height beyond numbers',
      () =>
        limits.routeReach({
          ...{ length: 100, height: 1.25e306, liftToDrag: 144, energyLeft: (along: number) => along },
          rotorBorne: { power: 1e3, speed: 0.1, landingEnergy: 1e3 },
          sites: [{ name: 'a', along: 10 }],
        }),
    ],
    [
      'layout.spinUp at a speed next to nothing',
      () =>
        layout.spinUp({
          blades: 1,
          operating: [2.5e-322, 2.5e-322],
          modes: [{ name: 'boom', frequency: 50 }],
          wanted: 0.001,
        }),
    ],
  ])('%s is refused', (_, call) => {
    expect(call).toThrow(InvalidInput)
  })

  it('battery.peukertRangeSpeed advises above the exponents of lithium-ion cells', () => {
    const { advisories } = listenWhile(() => battery.peukertRangeSpeed({ exponent: 1.3 }))
    expect(advisories.map(({ code }) => code)).toEqual(['PEUKERT_EXPONENT'])
  })
})

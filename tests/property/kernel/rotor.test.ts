/** What must hold of rotors, propellers and sections for any input: a typed error or finite numbers, and the laws of the physics. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { answersAnything, flatten, within } from './any-input.js'
import { calls } from './calls/rotor.js'
import { runs, slowRuns } from './runs.js'

const { air, rotor, section } = preloaded
const ground = air.standard(0)

answersAnything('every call on rotors, propellers and sections', calls, 40_261)

describe('rotor.axial', () => {
  const disk = { thrust: 5000, diskArea: 20, density: 1.2 }
  const hover = rotor.axial({ ...disk, climbSpeed: 0 }).inducedVelocity

  it('is continuous in climb speed through every state, corners and the blend at twice the hover inflow included', () => {
    fc.assert(
      fc.property(fc.oneof(within(-4, 4), fc.constantFrom(-2, -1.9, 0)), within(-12, -6), (ratio, step) => {
        const at = (x: number) => rotor.axial({ ...disk, climbSpeed: x * hover }).inducedVelocity / hover
        // The windmill branch leaves -2 with a vertical tangent: a square root of the step there.
        const allowed = 12 * 10 ** step + 2 * Math.sqrt(10 ** step)
        expect(Math.abs(at(ratio + 10 ** step) - at(ratio))).toBeLessThan(allowed)
      }),
      { numRuns: runs, seed: 40_262 },
    )
  })

  it('depends on the climb ratio alone', () => {
    fc.assert(
      fc.property(
        within(-4, 4),
        within(1, 1e5),
        within(0.1, 100),
        within(0.5, 1.3),
        (ratio, thrust, diskArea, density) => {
          const scale = Math.sqrt(thrust / (2 * density * diskArea))
          const one = rotor.axial({ climbSpeed: ratio * scale, thrust, diskArea, density })
          const unit = rotor.axial({ climbSpeed: ratio, thrust: 2, diskArea: 1, density: 1 })
          expect(one.inducedVelocity / scale).toBeCloseTo(unit.inducedVelocity, 6)
          expect(one.power / (thrust * scale)).toBeCloseTo(unit.power / 2, 6)
        },
      ),
      { numRuns: runs, seed: 40_263 },
    )
  })

  it('satisfies the momentum balance wherever theory holds', () => {
    fc.assert(
      fc.property(fc.oneof(within(0, 50), within(-50, -2)), (ratio) => {
        const { inducedVelocity } = rotor.axial({ ...disk, climbSpeed: ratio * hover })
        const balance = (inducedVelocity * Math.abs(ratio * hover + inducedVelocity)) / hover ** 2
        expect(balance).toBeCloseTo(1, 9)
      }),
      { numRuns: runs, seed: 40_264 },
    )
  })
})

describe('rotor.climb and rotor.descent', () => {
  const all = fc.record({
    thrust: within(100, 1e5),
    diskArea: within(1, 100),
    density: within(0.6, 1.3),
    inducedFactor: within(1, 1.5),
    profilePower: within(0, 1e5),
  })

  it('rotor.climb gives back the climb speed from its power', () => {
    fc.assert(
      fc.property(all, within(0, 40), (flight, climbSpeed) => {
        const { power } = rotor.climb({ ...flight, climbSpeed })
        expect(rotor.climb({ ...flight, power }).climbSpeed).toBeCloseTo(climbSpeed, 6)
      }),
      { numRuns: runs, seed: 40_265 },
    )
  })

  it('meet in hover', () => {
    fc.assert(
      fc.property(all, (flight) => {
        const up = rotor.climb({ ...flight, climbSpeed: 0 })
        const down = rotor.descent({ ...flight, descentSpeed: 0 })
        expect(down.power / up.power).toBeCloseTo(1, 12)
        expect(up.hoverPower / up.power).toBeCloseTo(1, 12)
      }),
      { numRuns: runs, seed: 40_266 },
    )
  })
})

describe('rotor.edgewise', () => {
  const options = fc.record({
    thrust: within(100, 1e4),
    speed: within(0, 80),
    radius: within(0.5, 3),
    density: within(0.6, 1.3),
    tipSpeed: within(80, 220),
    solidity: within(0.03, 0.3),
    inducedFactor: within(1, 1.3),
    profileDrag: within(0.006, 0.02),
    diskTilt: within(0, 1.5),
  })

  it('satisfies Glauert’s balance', () => {
    fc.assert(
      fc.property(options, (o) => {
        const { inducedVelocity: w } = rotor.edgewise(o)
        const loading = o.thrust / (2 * o.density * Math.PI * o.radius ** 2)
        const through = Math.hypot(o.speed * Math.cos(o.diskTilt), o.speed * Math.sin(o.diskTilt) + w)
        expect((w * through) / loading).toBeCloseTo(1, 9)
      }),
      { numRuns: runs, seed: 40_267 },
    )
  })

  it('is rotor.climb where the stream comes square onto the disk', () => {
    fc.assert(
      fc.property(options, (o) => {
        const square = rotor.edgewise({ ...o, diskTilt: Math.PI / 2 })
        const disk = { thrust: o.thrust, diskArea: Math.PI * o.radius ** 2, density: o.density }
        const climbing = rotor.axial({ ...disk, climbSpeed: o.speed })
        expect(square.inducedVelocity / climbing.inducedVelocity).toBeCloseTo(1, 6)
      }),
      { numRuns: runs, seed: 40_268 },
    )
  })

  it('needs less induced power the faster it goes level', () => {
    fc.assert(
      fc.property(options, within(0.1, 20), (o, more) => {
        const level = { ...o, diskTilt: 0 }
        const faster = rotor.edgewise({ ...level, speed: o.speed + more })
        expect(faster.inducedPower).toBeLessThanOrEqual(rotor.edgewise(level).inducedPower * (1 + 1e-12))
      }),
      { numRuns: runs, seed: 40_269 },
    )
  })
})

describe('rotor.bladeElement', () => {
  const shapes = fc.record({
    radius: within(0.3, 4),
    chordShare: within(0.03, 0.2),
    rootShare: within(0, 0.4),
    blades: fc.integer({ min: 1, max: 7 }),
    twist: within(-0.6, 0.1),
    tipSpeed: within(60, 240),
    camber: within(-0.08, 0.02),
    minimumDrag: within(0.006, 0.03),
    collective: within(-1.5, 1.5),
    axialSpeed: within(-60, 60),
  })
  const optionsOf = (s: {
    radius: number
    chordShare: number
    rootShare: number
    blades: number
    twist: number
    tipSpeed: number
    camber: number
    minimumDrag: number
  }) => ({
    ...ground,
    radius: s.radius,
    chord: s.chordShare * s.radius,
    rootCutout: s.rootShare * s.radius,
    blades: s.blades,
    twist: s.twist,
    tipSpeed: s.tipSpeed,
    section: section.linear({ liftSlope: 5.7, minimumDrag: s.minimumDrag, zeroLiftAngle: s.camber, dragRise: 0.01 }),
  })

  it('answers at any collective, in climb and descent, with either sign of thrust', () => {
    fc.assert(
      fc.property(shapes, (s) => {
        const answer = rotor.bladeElement({ ...optionsOf(s), collective: s.collective, axialSpeed: s.axialSpeed })
        for (const number of flatten(answer)) expect(Number.isFinite(number)).toBe(true)
      }),
      { numRuns: runs, seed: 40_270 },
    )
  })

  it('never beats the ideal rotor in hover or climb', () => {
    fc.assert(
      fc.property(shapes, within(0, 0.5), within(0, 40), (s, collective, axialSpeed) => {
        const hovering = rotor.bladeElement({ ...optionsOf(s), collective })
        const climbing = rotor.bladeElement({ ...optionsOf(s), collective, axialSpeed })
        expect(hovering.figureOfMerit).toBeLessThan(1)
        expect(climbing.figureOfMerit).toBeLessThan(1)
      }),
      { numRuns: runs, seed: 40_271 },
    )
  })

  it('is its own mirror image: pitch, camber, twist and climb turned over turn the thrust over and keep the torque', () => {
    fc.assert(
      fc.property(shapes, (s) => {
        const one = rotor.bladeElement({ ...optionsOf(s), collective: s.collective, axialSpeed: s.axialSpeed })
        const turned = { ...s, twist: -s.twist, camber: -s.camber }
        const other = rotor.bladeElement({
          ...optionsOf(turned),
          collective: -s.collective,
          axialSpeed: -s.axialSpeed,
        })
        expect(other.thrustCoefficient).toBeCloseTo(-one.thrustCoefficient, 9)
        expect(other.torqueCoefficient).toBeCloseTo(one.torqueCoefficient, 9)
      }),
      { numRuns: runs, seed: 40_272 },
    )
  })

  it('scales: coefficients keep with radius, tip speed and density where Reynolds and Mach number do not matter', () => {
    fc.assert(
      fc.property(shapes, within(0.5, 2), within(0.6, 1.2), (s, scale, thin) => {
        const near = { ...optionsOf(s), speedOfSound: 1e6 }
        const one = rotor.bladeElement({ ...near, collective: 0.15, axialSpeed: 10 })
        const other = rotor.bladeElement({
          ...near,
          radius: near.radius * scale,
          chord: near.chord * scale,
          rootCutout: near.rootCutout * scale,
          tipSpeed: near.tipSpeed * scale,
          density: near.density * thin,
          collective: 0.15,
          axialSpeed: 10 * scale,
        })
        expect(other.thrustCoefficient).toBeCloseTo(one.thrustCoefficient, 8)
        expect(other.torqueCoefficient).toBeCloseTo(one.torqueCoefficient, 8)
      }),
      { numRuns: runs, seed: 40_273 },
    )
  })

  it('is continuous in axial speed through hover, vortex ring and windmill below stall', () => {
    fc.assert(
      fc.property(within(-30, 15), within(0.02, 0.12), (axialSpeed, collective) => {
        const at = (speed: number) =>
          rotor.bladeElement({
            ...ground,
            radius: 1.3,
            chord: 0.14,
            rootCutout: 0.2,
            blades: 4,
            tipSpeed: 165,
            collective,
            axialSpeed: speed,
            // A section that never stalls: stall has more than one solution, and a jump.
            section: { liftSlope: 5.7, minimumDrag: 0.01, maximumLift: 3.4 },
          }).thrust
        // A sloping thrust of some 700 N per m/s at most, and the vertical tangent of the windmill branch.
        expect(Math.abs(at(axialSpeed + 1e-4) - at(axialSpeed))).toBeLessThan(2 + 500 * Math.sqrt(1e-4))
      }),
      { numRuns: slowRuns(300), seed: 40_274 },
    )
  })

  it('gives back a thrust through rotor.collectiveForThrust', () => {
    fc.assert(
      fc.property(shapes, within(0.05, 0.2), (s, collective) => {
        const options = { ...optionsOf({ ...s, twist: -0.1 }), elements: 12 }
        const { thrust, stalledShare } = rotor.bladeElement({ ...options, collective })
        if (thrust < 1 || stalledShare > 0) return
        const found = rotor.collectiveForThrust({ ...options, thrust })
        expect(found.thrust / thrust).toBeCloseTo(1, 8)
      }),
      { numRuns: slowRuns(200), seed: 40_275 },
    )
  })
})

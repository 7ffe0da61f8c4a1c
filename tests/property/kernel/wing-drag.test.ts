/** Wing and drag for any input: a typed error or finite numbers; bounds, symmetry and continuity inside. 1,000 samples each. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { answersAnything } from './any-input.js'
import { calls } from './calls/wing-drag.js'
import { runs, slowRuns } from './runs.js'

const { drag, wing } = preloaded

const share = fc.double({ min: 0, max: 1, noNaN: true })

answersAnything('every call of wing and drag', calls, 20_262)

const planar = fc.record({
  semiSpan: fc.double({ min: 1, max: 10, noNaN: true }),
  rootChord: fc.double({ min: 0.4, max: 3, noNaN: true }),
  taper: fc.double({ min: 0.2, max: 1, noNaN: true }),
  sweepLeadingEdge: fc.double({ min: -0.5, max: 0.8, noNaN: true }),
  twist: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
  angle: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
})

function surfaceOf(given: {
  semiSpan: number
  rootChord: number
  taper: number
  sweepLeadingEdge: number
  twist: number
}) {
  const { semiSpan, rootChord, taper, sweepLeadingEdge, twist } = given
  return { semiSpan, rootChord, tipChord: rootChord * taper, sweepLeadingEdge, twist }
}

describe('laws of wings', () => {
  it('no planar wing has a span efficiency above 1, by lattice or by line (seed 20266)', () => {
    fc.assert(
      fc.property(planar, (given) => {
        const surfaces = [surfaceOf(given)]
        const lattice = wing.lattice({ surfaces, spanwise: 8, chordwise: 2, angleOfAttack: given.angle })
        expect(lattice.spanEfficiency).toBeLessThanOrEqual(1)
        expect(lattice.inducedDrag).toBeGreaterThanOrEqual(0)
        const line = wing.liftingLine({
          aspectRatio: (4 * given.semiSpan) / (given.rootChord * (1 + given.taper)),
          taper: given.taper,
          sectionLiftSlope: 6,
          twist: given.twist,
          liftCoefficient: 0.2 + Math.abs(given.angle),
          terms: 12,
        })
        expect(line.spanEfficiency).toBeLessThanOrEqual(1)
        expect(line.delta).toBeGreaterThanOrEqual(0)
      }),
      { numRuns: runs, seed: 20_266 },
    )
  })

  it('turned upside down, a wing lifts and pitches the other way and drags the same (seed 20267)', () => {
    fc.assert(
      fc.property(planar, (given) => {
        const at = (sign: number) =>
          wing.lattice({
            surfaces: [{ ...surfaceOf(given), twist: sign * given.twist, dihedral: sign * 0.1 }],
            spanwise: 6,
            chordwise: 2,
            angleOfAttack: sign * given.angle,
          })
        const [up, down] = [at(1), at(-1)]
        const scale = Math.abs(up.liftCurveSlope)
        expect(Math.abs(up.lift + down.lift)).toBeLessThan(1e-10 * scale)
        expect(Math.abs(up.pitch + down.pitch)).toBeLessThan(1e-9 * (scale + Math.abs(up.pitchCurveSlope)))
        expect(Math.abs(up.inducedDrag - down.inducedDrag)).toBeLessThan(1e-10 * scale)
      }),
      { numRuns: slowRuns(250), seed: 20_267 },
    )
  })

  it('the sections of a lattice carry its lift, and their slope stays below that of the section (seed 20268)', () => {
    fc.assert(
      fc.property(planar, (given) => {
        const { surfaces, lift, liftCurveSlope } = wing.lattice({
          surfaces: [surfaceOf(given)],
          spanwise: 6,
          chordwise: 2,
          angleOfAttack: given.angle,
        })
        expect(Math.abs((surfaces[0]?.lift ?? 0) - lift)).toBeLessThan(1e-10)
        expect(liftCurveSlope).toBeGreaterThan(0)
        expect(liftCurveSlope).toBeLessThan(2 * Math.PI)
      }),
      { numRuns: slowRuns(250), seed: 20_268 },
    )
  })
})

describe('laws of drag', () => {
  const reynolds = fc.double({ min: 4, max: 9, noNaN: true }).map((power) => 10 ** power)

  it('friction falls with Reynolds number and lies between laminar and turbulent (seed 20269)', () => {
    fc.assert(
      fc.property(reynolds, share, (re, laminarShare) => {
        for (const method of ['Prandtl-Schlichting', 'Karman-Schoenherr', 'ITTC-1957', 'White'] as const) {
          const turbulent = drag.skinFriction({ reynolds: re, method })
          expect(drag.skinFriction({ reynolds: re * 1.01, method })).toBeLessThan(turbulent)
          const mixed = drag.skinFriction({ reynolds: re, method, laminarShare })
          const laminar = drag.skinFriction({ reynolds: re, method: 'laminar' })
          expect(mixed).toBeLessThanOrEqual(Math.max(turbulent, laminar) * (1 + 1e-12))
          expect(mixed).toBeGreaterThanOrEqual(Math.min(turbulent, laminar) * (1 - 1e-12))
        }
      }),
      { numRuns: runs, seed: 20_269 },
    )
  })

  it('friction has no step where the flow turns turbulent (seed 20270)', () => {
    fc.assert(
      fc.property(reynolds, (transitionReynolds) => {
        const at = (re: number) => drag.skinFriction({ reynolds: re, transitionReynolds })
        const [before, after] = [at(transitionReynolds), at(transitionReynolds * (1 + 1e-9))]
        expect(Math.abs(after / before - 1)).toBeLessThan(1e-7)
      }),
      { numRuns: runs, seed: 20_270 },
    )
  })

  it('a stopped rotor turned by a blade is the same rotor, and turns without a step (seed 20271)', () => {
    const still = {
      chord: 0.14,
      radius: 1.3,
      hubDiameter: 0.25,
      hubHeight: 0.1,
      speed: 58,
      density: 1.1,
      dynamicViscosity: 1.8e-5,
    }
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.double({ min: -7, max: 7, noNaN: true }),
        share,
        (blades, azimuth, pitch) => {
          const at = (angle: number) => drag.stoppedRotor({ ...still, blades, azimuth: angle, pitch }).dragArea
          expect(Math.abs(at(azimuth + (2 * Math.PI) / blades) / at(azimuth) - 1)).toBeLessThan(1e-12)
          expect(Math.abs(at(azimuth + 1e-7) - at(azimuth))).toBeLessThan(1e-6)
        },
      ),
      { numRuns: runs, seed: 20_271 },
    )
  })

  it('in line never costs more than side by side (seed 20272)', () => {
    const size = fc.double({ min: 0.01, max: 1, noNaN: true })
    fc.assert(
      fc.property(size, size, share, fc.integer({ min: 1, max: 12 }), (frontalArea, coefficient, gap, count) => {
        const spacing = 2 * Math.sqrt(frontalArea / Math.PI) * (1 + 10 * gap) * (1 + 1e-12)
        const row = drag.inLineShielding({ dragArea: coefficient * frontalArea, frontalArea, spacing, count })
        expect(row.share).toBeLessThanOrEqual(1)
        expect(row.share).toBeGreaterThan(0)
      }),
      { numRuns: runs, seed: 20_272 },
    )
  })

  it('a wider band can only make a verdict undecided, never turn it round (seed 20273)', () => {
    const area = fc.double({ min: 0.01, max: 0.6, noNaN: true })
    const kilograms = fc.double({ min: 0, max: 400, noNaN: true })
    fc.assert(
      fc.property(area, area, kilograms, share, (bare, stowed, mechanism, width) => {
        const verdict = (w: number) => {
          const band = (best: number) => ({ low: best * (1 - w), best, high: best * (1 + w) })
          const record = (name: string, dragArea: number, mass: number) =>
            drag.stowageRecord({ name, dragArea: band(dragArea), mechanismMass: band(mass), source: 'drawn' })
          return drag.compareStowage({
            records: [record('bare', bare, 0), record('stowed', stowed, mechanism)],
            mass: 1600,
            airframeDragArea: 0.42,
            wingArea: 15,
            aspectRatio: 11,
            spanEfficiency: 0.8,
            density: 1.1,
            speed: 58,
          })[1]?.verdict
        }
        const [certain, wide] = [verdict(0), verdict(0.9 * width)]
        expect(certain?.range).not.toBe('undecided')
        for (const goal of ['range', 'endurance'] as const)
          expect(['undecided', certain?.[goal]]).toContain(wide?.[goal])
      }),
      { numRuns: runs, seed: 20_273 },
    )
  })
})

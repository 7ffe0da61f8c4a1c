/** Wing and drag for any input: a typed error or finite numbers; bounds, symmetry and continuity inside. 1,000 samples each. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../kernel/library/index.js'

const { drag, wing } = preloaded

/** Anything a cell might pass: sane, absurd, zero, negative, not a number, text. */
const anything = fc.oneof(
  { weight: 5, arbitrary: fc.double({ min: 0.001, max: 20, noNaN: true }) },
  { weight: 2, arbitrary: fc.double({ min: 0.01, max: 1e7, noNaN: true }) },
  fc.double(),
  fc.constantFrom(0, -0, 1, -1, Number.MAX_VALUE, Number.MIN_VALUE, Number.NaN, Number.POSITIVE_INFINITY),
  fc.constant('5' as unknown as number),
)
const share = fc.double({ min: 0, max: 1, noNaN: true })
const runs = 1000

/** All numbers of an answer, records and lists within it too; nothing where it refused with an error of the kernel. */
function numbersOf(call: () => unknown): number[] {
  try {
    return flatten(call())
  } catch (error) {
    expect(error).toBeInstanceOf(InvalidInput)
    return []
  }
}

function flatten(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (typeof value === 'object' && value !== null) return Object.values(value).flatMap(flatten)
  return []
}

/** A call by the names of its numeric options: each is drawn from `anything`. */
type Call = readonly [name: string, options: readonly string[], call: (options: never) => unknown, fixed: object]

const rotor = ['blades', 'radius', 'chord', 'hubDiameter', 'hubHeight', 'speed', 'density', 'dynamicViscosity']
const calls: readonly Call[] = [
  ['wing.planform', ['area', 'span', 'taper', 'sweep', 'sweepChordShare'], wing.planform, {}],
  ['wing.sweepAt', ['aspectRatio', 'taper', 'sweep', 'from', 'to'], wing.sweepAt, {}],
  ['wing.sectionLiftSlope', ['efficiency', 'mach', 'reynolds'], wing.sectionLiftSlope, {}],
  ['wing.liftCurveSlope', ['aspectRatio', 'sectionLiftSlope', 'sweepHalfChord', 'mach'], wing.liftCurveSlope, {}],
  [
    'wing.liftingLine',
    ['aspectRatio', 'taper', 'sectionLiftSlope', 'twist', 'liftCoefficient'],
    wing.liftingLine,
    { terms: 12 },
  ],
  ['wing.plainFlap', ['chordShare', 'deflection'], wing.plainFlap, {}],
  [
    'wing.spanEfficiencyEstimates',
    ['aspectRatio', 'taper', 'thickness', 'sweepQuarterChord', 'mach', 'bodyWidthShare', 'wingEngines'],
    wing.spanEfficiencyEstimates,
    {},
  ],
  ['wing.maximumLift', ['sectionMaximum', 'sweepQuarterChord', 'reynolds'], wing.maximumLift, {}],
  ['wing.manoeuvreLoadFactor', ['mass'], wing.manoeuvreLoadFactor, {}],
  [
    'wing.gustLoadFactor',
    ['wingLoading', 'meanChord', 'liftCurveSlope', 'speed', 'gustSpeed', 'density'],
    wing.gustLoadFactor,
    {},
  ],
  ['wing.designSpeeds', ['wingLoading', 'maximumLift', 'loadFactor'], wing.designSpeeds, {}],
  ['wing.tailVolume', ['tailArea', 'tailArm', 'wingArea', 'referenceLength'], wing.tailVolume, {}],
  [
    'wing.tailSizing',
    ['horizontalVolume', 'verticalVolume', 'wingArea', 'span', 'chord', 'tailArm'],
    wing.tailSizing,
    {},
  ],
  ['wing.downwash', ['liftCurveSlope', 'aspectRatio', 'liftCoefficient', 'spanEfficiency'], wing.downwash, {}],
  [
    'wing.neutralPoint',
    ['liftCurveSlope', 'aerodynamicCentre', 'tailVolume', 'tailLiftCurveSlope', 'downwashSlope', 'bodyPitchSlope'],
    wing.neutralPoint,
    {},
  ],
  ['wing.staticMargin', ['centreOfGravity', 'pitchCurveSlope', 'liftCurveSlope'], wing.staticMargin, {}],
  [
    'wing.trim',
    [
      'liftCurveSlope',
      'zeroLiftMoment',
      'gravityBehindCentre',
      'tailVolume',
      'tailLiftCurveSlope',
      'tailIncidence',
      'downwashSlope',
    ],
    wing.trim,
    {},
  ],
  [
    'wing.tailLoad',
    ['weight', 'dynamicPressure', 'wingArea', 'chord', 'zeroLiftMoment', 'gravityBehindCentre', 'tailArm'],
    wing.tailLoad,
    {},
  ],
  ['drag.skinFriction', ['reynolds', 'mach', 'laminarShare', 'relativeRoughness'], drag.skinFriction, {}],
  ['drag.skinFriction with a place', ['reynolds', 'mach', 'transitionReynolds'], drag.skinFriction, {}],
  ['drag.wingFormFactor', ['thickness', 'thicknessAt', 'mach', 'sweep'], drag.wingFormFactor, {}],
  ['drag.bodyFormFactor', ['fineness'], drag.bodyFormFactor, {}],
  ['drag.areaOf', ['drag', 'speed', 'density'], drag.areaOf, {}],
  ['drag.exposedPart', ['frontalArea', 'count'], drag.exposedPart, { kind: 'wheel and tyre' }],
  ['drag.boom', ['length', 'diameter', 'speed', 'density', 'dynamicViscosity', 'interference'], drag.boom, {}],
  ['drag.cooling', ['heat', 'temperatureRise', 'speed', 'density', 'pressureLoss'], drag.cooling, {}],
  ['drag.stoppedRotor', [...rotor, 'azimuth', 'pitch', 'podDiameter', 'podHeight'], drag.stoppedRotor, {}],
  ['drag.inLineShielding', ['dragArea', 'frontalArea', 'spacing', 'count', 'wakeGrowth'], drag.inLineShielding, {}],
  ['drag.stowageOptions', [...rotor, 'count', 'rotorMass', 'ductHeight'], drag.stowageOptions, {}],
  ['drag.stowageRecord', ['dragArea', 'mechanismMass'], drag.stowageRecord, { name: 'own', source: 'own' }],
  ['drag.breakEvenGrowth', ['dragCut'], drag.breakEvenGrowth, {}],
]

describe('every call of wing and drag', () => {
  it.each(calls)('%s gives finite numbers or InvalidInput, for any input (seed 20262)', (_, names, call, fixed) => {
    fc.assert(
      fc.property(fc.array(anything, { minLength: names.length, maxLength: names.length }), (values) => {
        const options = { ...Object.fromEntries(names.map((name, at) => [name, values[at]])), ...fixed }
        for (const number of numbersOf(() => call(options as never))) expect(Number.isFinite(number)).toBe(true)
      }),
      { numRuns: runs, seed: 20_262 },
    )
  })

  it('wing.lattice gives finite numbers or InvalidInput, for any surfaces (seed 20263)', () => {
    fc.assert(
      fc.property(fc.array(anything, { minLength: 13, maxLength: 13 }), (v) => {
        const surface = (from: number) => ({
          semiSpan: v[from] as number,
          rootChord: v[from + 1] as number,
          tipChord: v[from + 2] as number,
          sweepLeadingEdge: v[from + 3] as number,
        })
        const surfaces = [surface(0), { ...surface(4), x: v[8] as number, z: v[9] as number }]
        const call = () =>
          wing.lattice({
            surfaces,
            spanwise: 3,
            chordwise: 2,
            angleOfAttack: v[10] as number,
            momentCentre: v[11] as number,
          })
        for (const number of numbersOf(call)) expect(Number.isFinite(number)).toBe(true)
      }),
      { numRuns: runs, seed: 20_263 },
    )
  })

  it('drag.buildUp and drag.fitPolar give finite numbers or InvalidInput (seed 20264)', () => {
    fc.assert(
      fc.property(fc.array(anything, { minLength: 8, maxLength: 8 }), (v) => {
        const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = v
        const parts = [
          { name: 'wing', wettedArea: a, length: b, formFactor: c },
          { name: 'pod', dragArea: d },
        ]
        const built = () => drag.buildUp(parts, { speed: e, density: f, dynamicViscosity: g, wingArea: h })
        const fitted = () => drag.fitPolar({ lift: [a, b, c, d], drag: [e, f, g, h] })
        for (const call of [built, fitted])
          for (const number of numbersOf(call)) expect(Number.isFinite(number)).toBe(true)
      }),
      { numRuns: runs, seed: 20_264 },
    )
  })

  it('drag.compareStowage gives finite numbers or InvalidInput (seed 20265)', () => {
    fc.assert(
      fc.property(fc.array(anything, { minLength: 12, maxLength: 12 }), (v) => {
        const [a = 0, b = 0, c = 0, d = 0, mass = 0, airframeDragArea = 0, wingArea = 0, aspectRatio = 0] = v
        const [, , , , , , , , spanEfficiency = 0, density = 0, speed = 0, growthFactor = 0] = v
        const call = () =>
          drag.compareStowage({
            records: [
              drag.stowageRecord({ name: 'one', dragArea: a, mechanismMass: b, source: 'drawn' }),
              drag.stowageRecord({ name: 'two', dragArea: c, mechanismMass: d, source: 'drawn' }),
            ],
            mass,
            airframeDragArea,
            wingArea,
            aspectRatio,
            spanEfficiency,
            density,
            speed,
            growthFactor,
          })
        for (const number of numbersOf(call)) expect(Number.isFinite(number)).toBe(true)
      }),
      { numRuns: runs, seed: 20_265 },
    )
  })
})

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
      { numRuns: runs / 4, seed: 20_267 },
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
      { numRuns: runs / 4, seed: 20_268 },
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

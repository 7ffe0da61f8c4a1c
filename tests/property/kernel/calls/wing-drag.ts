/** Calls on wings and drag with any numbers. */
import { preloaded } from '../../../../kernel/library/index.js'
import { type AnyCall, type V, v } from '../any-input.js'

const { drag, wing } = preloaded

/** A call by the names of its numeric options, each of which takes one number. */
type ByName = readonly [name: string, options: readonly string[], call: (options: never) => unknown, fixed?: object]

/** A number about 1 brought to the size that an option has. */
function usual(option: string, value: number): number {
  if (option === 'blades' || option === 'count' || option === 'wingEngines') return Math.round(value)
  return value * (scales[option] ?? 1)
}

const scales: Readonly<Record<string, number>> = {
  ...{ reynolds: 1e6, transitionReynolds: 1e6, mach: 0.3, laminarShare: 0.3, relativeRoughness: 1e-4 },
  ...{ speed: 30, dynamicViscosity: 1e-5, aspectRatio: 5, area: 10, span: 5, mass: 1e3, wingLoading: 1e3, weight: 1e4 },
  ...{ taper: 0.5, twist: 0.05, sweep: 0.3, sweepHalfChord: 0.3, sweepQuarterChord: 0.3, sweepChordShare: 0.3 },
  ...{ thickness: 0.1, thicknessAt: 0.3, chordShare: 0.3, bodyWidthShare: 0.1, downwashSlope: 0.3, pitch: 0.3 },
  ...{ chord: 0.1, hubDiameter: 0.2, hubHeight: 0.1, podDiameter: 0.2, podHeight: 0.1, fineness: 5, length: 3 },
  ...{ tailIncidence: 0.1, zeroLiftMoment: 0.1, dynamicPressure: 1e3, heat: 1e3, temperatureRise: 20, wakeGrowth: 0.1 },
}

const rotor = ['blades', 'radius', 'chord', 'hubDiameter', 'hubHeight', 'speed', 'density', 'dynamicViscosity']
const byName: readonly ByName[] = [
  ['wing.planform', ['area', 'span', 'taper', 'sweep', 'sweepChordShare'], wing.planform],
  ['wing.sweepAt', ['aspectRatio', 'taper', 'sweep', 'from', 'to'], wing.sweepAt],
  ['wing.sectionLiftSlope', ['efficiency', 'mach', 'reynolds'], wing.sectionLiftSlope],
  ['wing.liftCurveSlope', ['aspectRatio', 'sectionLiftSlope', 'sweepHalfChord', 'mach'], wing.liftCurveSlope],
  [
    'wing.liftingLine',
    ['aspectRatio', 'taper', 'sectionLiftSlope', 'twist', 'liftCoefficient'],
    wing.liftingLine,
    { terms: 12 },
  ],
  ['wing.plainFlap', ['chordShare', 'deflection'], wing.plainFlap],
  [
    'wing.spanEfficiencyEstimates',
    ['aspectRatio', 'taper', 'thickness', 'sweepQuarterChord', 'mach', 'bodyWidthShare', 'wingEngines'],
    wing.spanEfficiencyEstimates,
  ],
  ['wing.maximumLift', ['sectionMaximum', 'sweepQuarterChord', 'reynolds'], wing.maximumLift],
  ['wing.manoeuvreLoadFactor', ['mass'], wing.manoeuvreLoadFactor],
  [
    'wing.gustLoadFactor',
    ['wingLoading', 'meanChord', 'liftCurveSlope', 'speed', 'gustSpeed', 'density'],
    wing.gustLoadFactor,
  ],
  ['wing.designSpeeds', ['wingLoading', 'maximumLift', 'loadFactor'], wing.designSpeeds],
  ['wing.tailVolume', ['tailArea', 'tailArm', 'wingArea', 'referenceLength'], wing.tailVolume],
  ['wing.tailSizing', ['horizontalVolume', 'verticalVolume', 'wingArea', 'span', 'chord', 'tailArm'], wing.tailSizing],
  ['wing.downwash', ['liftCurveSlope', 'aspectRatio', 'liftCoefficient', 'spanEfficiency'], wing.downwash],
  [
    'wing.neutralPoint',
    ['liftCurveSlope', 'aerodynamicCentre', 'tailVolume', 'tailLiftCurveSlope', 'downwashSlope', 'bodyPitchSlope'],
    wing.neutralPoint,
  ],
  ['wing.staticMargin', ['centreOfGravity', 'pitchCurveSlope', 'liftCurveSlope'], wing.staticMargin],
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
  ],
  [
    'wing.tailLoad',
    ['weight', 'dynamicPressure', 'wingArea', 'chord', 'zeroLiftMoment', 'gravityBehindCentre', 'tailArm'],
    wing.tailLoad,
  ],
  ['drag.skinFriction', ['reynolds', 'mach', 'laminarShare', 'relativeRoughness'], drag.skinFriction],
  ['drag.skinFriction with a place', ['reynolds', 'mach', 'transitionReynolds'], drag.skinFriction],
  ['drag.wingFormFactor', ['thickness', 'thicknessAt', 'mach', 'sweep'], drag.wingFormFactor],
  ['drag.bodyFormFactor', ['fineness'], drag.bodyFormFactor],
  ['drag.areaOf', ['drag', 'speed', 'density'], drag.areaOf],
  ['drag.exposedPart', ['frontalArea', 'count'], drag.exposedPart, { kind: 'wheel and tyre' }],
  ['drag.boom', ['length', 'diameter', 'speed', 'density', 'dynamicViscosity', 'interference'], drag.boom],
  ['drag.cooling', ['heat', 'temperatureRise', 'speed', 'density', 'pressureLoss'], drag.cooling],
  ['drag.stoppedRotor', [...rotor, 'azimuth', 'pitch', 'podDiameter', 'podHeight'], drag.stoppedRotor],
  ['drag.inLineShielding', ['dragArea', 'frontalArea', 'spacing', 'count', 'wakeGrowth'], drag.inLineShielding],
  ['drag.stowageOptions', [...rotor, 'count', 'rotorMass', 'ductHeight'], drag.stowageOptions],
  ['drag.stowageRecord', ['dragArea', 'mechanismMass'], drag.stowageRecord, { name: 'own', source: 'own' }],
  ['drag.breakEvenGrowth', ['dragCut'], drag.breakEvenGrowth],
]

const surface = (x: V, from: number) => ({
  semiSpan: 5 * v(x, from),
  rootChord: v(x, from + 1),
  tipChord: v(x, from + 2),
  sweepLeadingEdge: v(x, from + 3) / 4,
})

const built: readonly AnyCall[] = [
  [
    'wing.lattice',
    13,
    (x) =>
      wing.lattice({
        surfaces: [surface(x, 0), { ...surface(x, 4), x: -4 * v(x, 8), z: v(x, 9) }],
        spanwise: 3,
        chordwise: 2,
        angleOfAttack: v(x, 10) / 10,
        momentCentre: v(x, 11),
      }),
  ],
  [
    'wing.maximumLift with flaps',
    5,
    (x) =>
      wing.maximumLift({
        sectionMaximum: v(x, 0),
        reynolds: 1e6 * v(x, 1),
        flap: { kind: 'plain', flappedShare: v(x, 2) / 3, sweepHinge: v(x, 3) / 5, chordGrowth: 1 + v(x, 4) / 6 },
      }),
  ],
  ['wing.thinAerofoil', 1, (x) => wing.thinAerofoil({ section: String(Math.round(3000 * v(x, 0))).padStart(4, '0') })],
  [
    'drag.buildUp',
    8,
    (x) =>
      drag.buildUp(
        [
          { name: 'wing', wettedArea: 10 * v(x, 0), length: v(x, 1), formFactor: v(x, 2) },
          { name: 'pod', dragArea: v(x, 3) },
        ],
        { speed: 20 * v(x, 4), density: v(x, 5), dynamicViscosity: 1e-5 * v(x, 6), wingArea: 5 * v(x, 7) },
      ),
  ],
  [
    'drag.fitPolar',
    8,
    (x) => drag.fitPolar({ lift: [0, 1, 2, 3].map((at) => v(x, at)), drag: [4, 5, 6, 7].map((at) => v(x, at)) }),
  ],
  [
    'drag.compareStowage',
    12,
    (x) =>
      drag.compareStowage({
        records: [
          drag.stowageRecord({ name: 'one', dragArea: v(x, 0), mechanismMass: v(x, 1), source: 'drawn' }),
          drag.stowageRecord({ name: 'two', dragArea: v(x, 2), mechanismMass: v(x, 3), source: 'drawn' }),
        ],
        mass: 1e3 * v(x, 4),
        airframeDragArea: v(x, 5),
        wingArea: 10 * v(x, 6),
        aspectRatio: 5 * v(x, 7),
        spanEfficiency: v(x, 8) / 2,
        density: v(x, 9),
        speed: 30 * v(x, 10),
        growthFactor: v(x, 11),
      }),
  ],
  [
    'drag.fixedGear',
    3,
    (x) =>
      drag.fixedGear({
        parts: [{ kind: 'wheel and tyre', frontalArea: v(x, 0), count: Math.round(v(x, 1)) }],
        interference: v(x, 2),
      }),
  ],
  [
    'drag.leastDragSpeed',
    6,
    (x) =>
      drag.leastDragSpeed({
        polar: { zeroLiftDrag: v(x, 0), inducedFactor: v(x, 1) },
        weight: v(x, 2),
        wingArea: v(x, 3),
        density: v(x, 4),
        floor: v(x, 5),
      }),
  ],
  [
    'drag.interference',
    1,
    (x) =>
      drag.interference({
        place: (['body', 'tail, V', 'pod on wing or body'] as const)[Math.floor(v(x, 0))] as 'body',
      }),
  ],
]

export const calls: readonly AnyCall[] = [
  ...byName.map(([name, options, call, fixed = {}]): AnyCall => {
    const named = (x: V) => Object.fromEntries(options.map((option, at) => [option, usual(option, v(x, at))]))
    return [name, options.length, (x) => call({ ...named(x), ...fixed } as never)]
  }),
  ...built,
]

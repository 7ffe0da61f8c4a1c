/** The boxes of wings and drag. */
import { preloaded } from '../../../../kernel/library/index.js'
import { aboveZero, type Box, fromTo, notNegative, usual } from './engine.js'

const { drag, wing } = preloaded

const slope = aboveZero(4, 6)
const mach = (advised: number, refused: number) =>
  usual(0, advised, { refused: [0, refused], advised: [null, advised], middle: 0.2 })
const flight = {
  weight: aboveZero(5e3, 3e4),
  wingArea: aboveZero(8, 30),
  density: aboveZero(0.6, 1.3),
}
const polar = { 'polar.zeroLiftDrag': aboveZero(0.02, 0.08), 'polar.inducedFactor': aboveZero(0.02, 0.06) }
const still = { speed: aboveZero(30, 80), density: aboveZero(0.7, 1.3), dynamicViscosity: aboveZero(1.5e-5, 2e-5) }
const rotors = {
  ...still,
  // No shorter than the chord.
  radius: usual(0.8, 2, { refused: [0.125, null] }),
  chord: aboveZero(0.1, 0.15),
  hubDiameter: aboveZero(0.1, 0.2),
  hubHeight: aboveZero(0.05, 0.15),
}

const wings: readonly Box[] = [
  {
    name: 'wing.planform',
    call: wing.planform,
    sides: {
      area: aboveZero(8, 30),
      span: aboveZero(8, 16),
      taper: usual(0.2, 1, { refused: [0, 2], advised: [0.2, 1] }),
      sweep: usual(-0.6, 0.6, { refused: [-1.4, 1.4] }),
      sweepChordShare: fromTo(0, 1),
    },
  },
  {
    name: 'wing.sweepAt',
    call: wing.sweepAt,
    sides: {
      aspectRatio: aboveZero(4, 16),
      taper: fromTo(0, 2),
      sweep: usual(-0.6, 0.6, { refused: [-1.4, 1.4] }),
      from: fromTo(0, 1),
      to: fromTo(0, 1),
    },
  },
  {
    name: 'wing.sectionLiftSlope',
    call: wing.sectionLiftSlope,
    sides: {
      efficiency: fromTo(0.5, 1.2),
      mach: mach(0.6, 0.9),
      reynolds: aboveZero(5e5, 1e7, { advised: [5e5, null] }),
    },
  },
  {
    name: 'wing.liftCurveSlope by lifting surface',
    call: wing.liftCurveSlope,
    sides: {
      aspectRatio: aboveZero(2, 16),
      sectionLiftSlope: fromTo(0.5, 12),
      mach: mach(0.7, 0.9),
      sweepHalfChord: fromTo(-1.4, 1.4),
    },
  },
  {
    name: 'wing.liftCurveSlope by lifting line',
    call: wing.liftCurveSlope,
    sides: {
      aspectRatio: aboveZero(4, 16, { advised: [4, null] }),
      sectionLiftSlope: fromTo(0.5, 12),
      slopeEfficiency: usual(0.7, 1),
    },
    fixed: { method: 'lifting line' },
  },
  {
    name: 'wing.liftingLine',
    call: wing.liftingLine,
    sides: {
      aspectRatio: usual(4, 20, { refused: [0.1, 100], advised: [4, null] }),
      taper: usual(0, 1, { refused: [0, 2], middle: 0.5 }),
      sectionLiftSlope: fromTo(0.5, 12),
      twist: fromTo(-0.5, 0.5),
      liftCoefficient: usual(0.2, 1.2),
    },
    fixed: { terms: 12 },
  },
  {
    name: 'wing.lattice',
    call: wing.lattice,
    sides: { angleOfAttack: usual(-0.2, 0.2, { refused: [-0.5, 0.5], advised: [-0.2, 0.2] }) },
    fixed: {
      surfaces: [{ semiSpan: 5, rootChord: 1.4, tipChord: 0.8, sweepLeadingEdge: 0.1 }],
      spanwise: 6,
      chordwise: 2,
    },
  },
  {
    name: 'wing.plainFlap',
    call: wing.plainFlap,
    sides: {
      chordShare: fromTo(0, 1),
      deflection: usual(-0.26, 0.26, { refused: [-1.2, 1.2], advised: [-Math.PI / 12, Math.PI / 12] }),
    },
  },
  {
    name: 'wing.spanEfficiencyEstimates',
    call: wing.spanEfficiencyEstimates,
    sides: {
      aspectRatio: usual(1, 10, { refused: [1, 30], advised: [null, 10] }),
      taper: fromTo(0, 1),
      thickness: fromTo(0.05, 0.3),
      sweepQuarterChord: fromTo(-0.8, 0.8, { middle: 0.1 }),
      mach: usual(0, 0.3, { refused: [0, 0.9] }),
      bodyWidthShare: usual(0, 0.3, { refused: [0, 0.5] }),
    },
    quiet: 0,
  },
  {
    name: 'wing.maximumLift',
    call: wing.maximumLift,
    sides: {
      sectionMaximum: fromTo(0.3, 4),
      sweepQuarterChord: usual(-0.6, 0.6, { refused: [-1, 1], advised: [-0.6, 0.6] }),
      reynolds: aboveZero(1e6, 1e7, { advised: [1e6, null] }),
    },
  },
  {
    name: 'wing.manoeuvreLoadFactor',
    call: wing.manoeuvreLoadFactor,
    sides: { mass: aboveZero(500, 5669, { advised: [null, 12_500 * 0.45359237] }) },
  },
  {
    name: 'wing.gustLoadFactor',
    call: wing.gustLoadFactor,
    sides: {
      wingLoading: aboveZero(600, 2000),
      meanChord: aboveZero(0.8, 2),
      liftCurveSlope: usual(4, 6, { refused: [0.1, 12] }),
      speed: aboveZero(30, 90),
      gustSpeed: usual(5, 40, { refused: [0, 40] }),
      density: aboveZero(0.6, 1.3),
    },
  },
  {
    name: 'wing.designSpeeds',
    call: wing.designSpeeds,
    sides: {
      wingLoading: aboveZero(500, 4788, { advised: [null, 100 * 47.880259] }),
      maximumLift: aboveZero(1, 2.5),
      loadFactor: fromTo(1, 12),
    },
  },
  {
    name: 'wing.tailVolume',
    call: wing.tailVolume,
    sides: {
      tailArea: aboveZero(1, 4),
      tailArm: aboveZero(2, 6),
      wingArea: aboveZero(10, 30),
      referenceLength: aboveZero(1, 2),
    },
    quiet: 0.9,
  },
  {
    name: 'wing.tailSizing',
    call: wing.tailSizing,
    sides: {
      wingArea: aboveZero(10, 30),
      span: aboveZero(8, 16),
      chord: aboveZero(0.8, 2),
      tailArm: aboveZero(2, 7),
      horizontalVolume: usual(0.4, 1, { refused: [0, 3] }),
      verticalVolume: usual(0.03, 0.1, { refused: [0, 3] }),
    },
    quiet: 0,
  },
  {
    name: 'wing.downwash',
    call: wing.downwash,
    sides: {
      liftCurveSlope: slope,
      aspectRatio: aboveZero(8, 16),
      liftCoefficient: usual(-0.5, 1.5),
      spanEfficiency: usual(0.7, 1, { refused: [0.3, 1] }),
    },
  },
  {
    name: 'wing.neutralPoint',
    call: wing.neutralPoint,
    sides: {
      liftCurveSlope: slope,
      aerodynamicCentre: usual(0.2, 0.3),
      tailVolume: notNegative(0.2, 1.2),
      tailLiftCurveSlope: aboveZero(3, 5),
      downwashSlope: fromTo(0, 1),
      tailPressureRatio: fromTo(0, 2),
      tailAreaShare: fromTo(0, 2),
      bodyPitchSlope: usual(-0.2, 0.5),
    },
    quiet: 0,
  },
  {
    name: 'wing.staticMargin',
    call: wing.staticMargin,
    sides: {
      centreOfGravity: usual(0.2, 0.3, { middle: 0.25 }),
      neutralPoint: usual(0.36, 0.49, { middle: 0.4, advised: [0.3, 0.55] }),
    },
  },
  {
    name: 'wing.stallSpeed',
    call: wing.stallSpeed,
    sides: { ...flight, maximumLift: aboveZero(1, 2.5) },
  },
  {
    name: 'wing.trim',
    call: wing.trim,
    sides: {
      liftCurveSlope: slope,
      zeroLiftMoment: usual(-0.08, 0, { middle: -0.03 }),
      gravityBehindCentre: usual(-0.1, 0.1, { middle: 0 }),
      tailVolume: notNegative(0.5, 1),
      tailLiftCurveSlope: aboveZero(3, 5),
      tailIncidence: usual(0, 0.08, { refused: [-0.5, 0.5] }),
      downwashSlope: usual(0.2, 0.5, { refused: [0, 1] }),
    },
    quiet: 0.8,
  },
  {
    name: 'wing.tailLoad',
    call: wing.tailLoad,
    sides: {
      weight: aboveZero(5e3, 3e4),
      dynamicPressure: aboveZero(500, 4000),
      wingArea: aboveZero(8, 30),
      chord: aboveZero(0.8, 2),
      zeroLiftMoment: usual(-0.1, 0),
      gravityBehindCentre: usual(-0.1, 0.3),
      tailArm: aboveZero(2, 7),
    },
  },
]

const drags: readonly Box[] = [
  {
    name: 'drag.skinFriction',
    call: drag.skinFriction,
    sides: {
      reynolds: usual(1e5, 1e9, { refused: [1e4, 1e12], advised: [1e5, 1e9] }),
      mach: fromTo(0, 3),
      laminarShare: fromTo(0, 1),
    },
  },
  {
    name: 'drag.skinFriction, laminar',
    call: drag.skinFriction,
    sides: { reynolds: usual(1e4, 1e6, { refused: [1e4, 1e12], advised: [null, 1e6] }) },
    fixed: { method: 'laminar' },
  },
  {
    name: 'drag.skinFriction by ITTC',
    call: drag.skinFriction,
    sides: { reynolds: usual(1e5, 1e10, { refused: [1e4, 1e12], advised: [1e5, 1e10] }) },
    fixed: { method: 'ITTC-1957' },
  },
  {
    name: 'drag.wingFormFactor',
    call: drag.wingFormFactor,
    sides: {
      thickness: usual(0.06, 0.21, { refused: [0, 0.4], advised: [0.06, 0.21] }),
      thicknessAt: fromTo(0.1, 0.6),
      mach: fromTo(0, 0.95),
      sweep: fromTo(-1.2, 1.2),
    },
  },
  {
    name: 'drag.bodyFormFactor',
    call: drag.bodyFormFactor,
    sides: { fineness: usual(3, 20, { refused: [1, 100], advised: [3, 20] }) },
  },
  {
    name: 'drag.areaOf',
    call: drag.areaOf,
    sides: { drag: notNegative(100, 3000), speed: aboveZero(20, 90), density: aboveZero(0.6, 1.3) },
  },
  {
    name: 'drag.exposedPart',
    call: drag.exposedPart,
    sides: { frontalArea: aboveZero(0.01, 0.5), count: usual(1, 4, { whole: true, refused: [1, null] }) },
    fixed: { kind: 'wheel and tyre' },
  },
  {
    name: 'drag.boom',
    call: drag.boom,
    sides: {
      // Fineness from 1 to 1000.
      length: usual(2, 5, { refused: [0.2, null] }),
      diameter: usual(0.1, 0.3, { refused: [3.5 / 1000, 3.5] }),
      ...still,
      interference: fromTo(0.5, 5),
    },
  },
  {
    name: 'drag.cooling',
    call: drag.cooling,
    sides: {
      heat: notNegative(100, 2e4),
      temperatureRise: aboveZero(5, 40, { advised: [null, 40] }),
      speed: aboveZero(30, 90),
      density: aboveZero(0.6, 1.3),
      pressureLoss: fromTo(0, 1),
    },
  },
  {
    name: 'drag.polar',
    call: drag.polar,
    sides: {
      zeroLiftDrag: aboveZero(0.02, 0.08),
      aspectRatio: aboveZero(5, 16),
      spanEfficiency: usual(0.5, 0.95, { refused: [0, 1], advised: [0.5, 0.95] }),
    },
  },
  {
    name: 'drag.powerRequired',
    call: drag.powerRequired,
    sides: { ...polar, ...flight, speed: aboveZero(50, 90) },
    quiet: 0.8,
  },
  {
    name: 'drag.leastPowerSpeed',
    call: drag.leastPowerSpeed,
    quiet: 0.5,
    sides: { ...polar, ...flight, floor: notNegative(0, 50) },
  },
  {
    name: 'drag.leastDragSpeed',
    call: drag.leastDragSpeed,
    quiet: 0.9,
    sides: { ...polar, ...flight, floor: notNegative(0, 50) },
  },
  {
    name: 'drag.stoppedRotor',
    call: drag.stoppedRotor,
    sides: {
      ...rotors,
      blades: usual(2, 5, { whole: true, refused: [1, 12] }),
      azimuth: usual(-3, 3),
      pitch: usual(-0.3, 0.3, { refused: [-1, 1] }),
      podDiameter: notNegative(0, 0.2),
      podHeight: notNegative(0, 0.2),
    },
    quiet: 0,
  },
  {
    name: 'drag.inLineShielding',
    call: drag.inLineShielding,
    sides: {
      dragArea: aboveZero(0.01, 0.1),
      frontalArea: aboveZero(0.05, 0.2),
      // From the diameter of a circle of the frontal area.
      spacing: usual(0.6, 3, { refused: [2 * Math.sqrt(0.125 / Math.PI), null] }),
      count: usual(1, 8, { whole: true, refused: [1, 50] }),
      wakeGrowth: fromTo(0.02, 0.3),
    },
    quiet: 0,
  },
  {
    name: 'drag.breakEvenGrowth',
    call: drag.breakEvenGrowth,
    sides: { dragCut: fromTo(-10, 0.99, { middle: 0.3 }) },
  },
]

export const boxes: readonly Box[] = [...wings, ...drags]

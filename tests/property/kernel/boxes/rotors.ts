/** The boxes of air, rotors, propellers and sections. */
import { preloaded } from '../../../../kernel/library/index.js'
import { aboveZero, type Box, fromTo, notNegative, usual } from './engine.js'

const { air, propeller, rotor, section } = preloaded
const ground = air.standard(0)
const polar = { liftSlope: 5.7, minimumDrag: 0.01 }

const disk = { thrust: aboveZero(500, 5e4), diskArea: aboveZero(5, 60), density: aboveZero(0.6, 1.3) }
const induced = usual(1, 1.3, { refused: [1, 10] })
const blades = {
  radius: aboveZero(0.5, 3),
  // From 0.0001 to 1 of the radius.
  chord: usual(0.04, 0.1, { middle: 0.08, refused: [1e-4 * 1.75, 1.75] }),
  blades: usual(2, 6, { whole: true, refused: [1, null] }),
  tipSpeed: aboveZero(100, 200),
}

export const boxes: readonly Box[] = [
  {
    name: 'air.standard',
    call: ({ altitude, temperatureOffset }) => air.standard(altitude, temperatureOffset),
    sides: {
      altitude: fromTo(-5000, 20_000),
      temperatureOffset: usual(-50, 50, { advised: [-50, 50] }),
    },
  },
  {
    name: 'air.densityAltitude',
    call: ({ density }) => air.densityAltitude(density),
    // Printed to four figures in the doc comment: the table is held against the atmosphere itself.
    sides: { density: fromTo(air.standard(20_000).density, air.standard(-5000).density) },
  },
  {
    name: 'air.geopotentialAltitude',
    call: ({ height }) => air.geopotentialAltitude(height),
    sides: { height: fromTo(-5000, 20_000) },
  },
  {
    name: 'air.dynamicViscosity',
    call: ({ temperature }) => air.dynamicViscosity(temperature),
    sides: { temperature: aboveZero(150, 500, { advised: [150, 500] }) },
  },
  {
    name: 'rotor.hover by merit',
    call: rotor.hover,
    sides: {
      ...disk,
      figureOfMerit: usual(0.3, 0.85, { refused: [0, 1], advised: [null, 0.85] }),
      interference: fromTo(1, 2),
    },
  },
  {
    name: 'rotor.hover by blades',
    call: rotor.hover,
    sides: {
      thrust: aboveZero(500, 2500),
      radius: aboveZero(1.2, 2),
      density: aboveZero(0.9, 1.3),
      tipSpeed: aboveZero(150, 220),
      solidity: usual(0.1, 0.2, { refused: [1e-4, 1] }),
      inducedFactor: induced,
      profileDrag: aboveZero(0.008, 0.015),
    },
    quiet: 0.8,
  },
  {
    name: 'rotor.axial in climb',
    call: rotor.axial,
    sides: { ...disk, climbSpeed: usual(0, 30, { advised: [0, null] }) },
  },
  {
    name: 'rotor.axial in the vortex ring and beyond',
    call: rotor.axial,
    sides: { ...disk, climbSpeed: usual(-60, 0) },
    quiet: 0,
  },
  {
    name: 'rotor.vortexRingFit',
    call: ({ climbRatio }) => rotor.vortexRingFit(climbRatio),
    sides: { climbRatio: fromTo(-2, 0) },
  },
  {
    name: 'rotor.climb',
    call: rotor.climb,
    sides: {
      ...disk,
      climbSpeed: usual(0, 20, { refused: [0, null] }),
      profilePower: usual(0, 1e5, { refused: [0, null] }),
      inducedFactor: induced,
    },
  },
  {
    name: 'rotor.descent',
    call: rotor.descent,
    sides: { ...disk, descentSpeed: usual(0, 10, { refused: [0, null] }), inducedFactor: induced },
    quiet: 0,
  },
  {
    name: 'rotor.edgewise',
    call: rotor.edgewise,
    sides: {
      thrust: aboveZero(500, 3000),
      speed: usual(0, 45, { refused: [0, null], middle: 20, advised: [null, 0.3 * 180] }),
      radius: aboveZero(1, 2),
      density: aboveZero(1, 1.3),
      tipSpeed: aboveZero(150, 210, { middle: 180 }),
      solidity: usual(0.08, 0.2, { refused: [1e-4, 1] }),
      inducedFactor: induced,
      profileDrag: aboveZero(0.008, 0.015),
      diskTilt: usual(-0.05, 0.3, { refused: [-Math.PI / 2, Math.PI / 2], middle: 0 }),
    },
    quiet: 0.8,
  },
  {
    name: 'rotor.levelFlight',
    call: rotor.levelFlight,
    sides: {
      weight: aboveZero(1e4, 2e4),
      dragArea: notNegative(0.5, 2),
      // Advance ratio 0.3, along a disk that tilts by some two degrees there.
      speed: notNegative(0, 45, { middle: 20 }),
      radius: aboveZero(1.1, 1.5),
      density: aboveZero(1, 1.3),
      tipSpeed: aboveZero(150, 200),
      solidity: usual(0.1, 0.2, { refused: [1e-4, 1] }),
      inducedFactor: induced,
      profileDrag: aboveZero(0.008, 0.015),
    },
    fixed: { count: 8 },
    quiet: 0.8,
  },
  {
    name: 'rotor.levelFlight at best range',
    call: rotor.levelFlight,
    sides: { weight: aboveZero(1e4, 2e4), dragArea: notNegative(1, 2), otherPower: notNegative(0, 2e4) },
    fixed: {
      ...{ speed: 'best range', radius: 1.3, count: 8, density: 1.2 },
      ...{ tipSpeed: 165, solidity: 0.12, inducedFactor: 1.15, profileDrag: 0.011 },
    },
    quiet: 0.7,
  },
  {
    name: 'rotor.download',
    call: rotor.download,
    sides: {
      blockedArea: usual(0, 2, { middle: 1 }),
      dragCoefficient: aboveZero(0.5, 1.5),
      diskArea: aboveZero(20, 60),
      wakeFactor: fromTo(1, 2),
    },
  },
  {
    name: 'rotor.coaxial',
    call: rotor.coaxial,
    sides: { ...disk, upperShare: fromTo(0.05, 0.95) },
  },
  {
    name: 'rotor.ducted',
    call: rotor.ducted,
    sides: {
      ...disk,
      expansionRatio: usual(0.5, 1.5, { refused: [0.5, 3], advised: [null, 1.5] }),
      figureOfMerit: usual(0.5, 1, { refused: [0, 1] }),
    },
  },
  {
    name: 'rotor.ductInCruise',
    call: rotor.ductInCruise,
    sides: {
      diameter: aboveZero(0.75, 1.5, { middle: 1, advised: [1 / 3, 3] }),
      chord: aboveZero(0.5, 2, { middle: 1, advised: [1 / 3, 3] }),
      sectionDrag: aboveZero(0.006, 0.02),
      dynamicPressure: aboveZero(500, 3000),
      lift: usual(0, 200, { refused: [0, null] }),
    },
  },
  {
    name: 'rotor.tipLoss',
    call: rotor.tipLoss,
    sides: {
      thrustCoefficient: aboveZero(0.001, 0.02),
      blades: usual(2, 7, { whole: true, refused: [1, null] }),
    },
  },
  {
    name: 'rotor.prandtlLoss',
    call: rotor.prandtlLoss,
    sides: {
      blades: usual(2, 7, { whole: true, refused: [1, null] }),
      // Above 0: the axis itself is no station.
      station: usual(0.01, 1, { refused: [1e-9, 1] }),
      inflowRatio: aboveZero(0.01, 0.3),
    },
  },
  {
    name: 'rotor.smallAngleHover',
    call: rotor.smallAngleHover,
    sides: {
      solidity: usual(0.05, 0.2, { refused: [1e-4, 1] }),
      liftSlope: usual(5, 6.3, { refused: [0.5, 12] }),
      pitch: usual(0.02, 0.2, { refused: [0, 1] }),
      station: usual(0.5, 0.95, { refused: [0, 1] }),
    },
  },
  {
    name: 'rotor.bladeElement',
    call: rotor.bladeElement,
    sides: {
      ...blades,
      rootCutout: usual(0, 0.3, { refused: [0, 0.9 * 1.75] }),
      collective: usual(0.05, 0.2, { refused: [-Math.PI / 2, Math.PI / 2] }),
      axialSpeed: usual(0, 10),
      density: aboveZero(0.8, 1.3),
      dynamicViscosity: aboveZero(1.5e-5, 2e-5),
      speedOfSound: aboveZero(310, 350),
    },
    fixed: { section: polar },
    quiet: 0.8,
  },
  {
    name: 'rotor.collectiveForThrust',
    call: rotor.collectiveForThrust,
    sides: { ...blades, chord: usual(0.08, 0.12, { refused: [1e-4 * 1.75, 1.75] }), thrust: aboveZero(10, 80) },
    fixed: { ...ground, section: polar, elements: 10 },
  },
  {
    name: 'propeller.ideal',
    call: propeller.ideal,
    sides: { ...disk, speed: usual(0, 90, { refused: [0, null] }) },
  },
  {
    name: 'propeller.estimate',
    call: propeller.estimate,
    sides: {
      thrust: aboveZero(300, 2000),
      speed: aboveZero(30, 80),
      radius: aboveZero(0.8, 1.5),
      density: aboveZero(0.8, 1.3),
      tipSpeed: usual(140, 230),
      solidity: usual(0.05, 0.2, { refused: [1e-4, 1] }),
      profileDrag: aboveZero(0.006, 0.015),
      inducedFactor: induced,
    },
  },
  {
    name: 'propeller.bladeElement',
    call: propeller.bladeElement,
    sides: {
      ...blades,
      bladeAngle: usual(0.3, 0.6, { refused: [-Math.PI / 2, Math.PI / 2] }),
      advanceRatio: aboveZero(0.4, 1.2),
    },
    fixed: { ...ground, section: polar, rootCutout: 0.1 },
    quiet: 0,
  },
  {
    name: 'propeller.minimumInducedLoss',
    call: propeller.minimumInducedLoss,
    sides: {
      thrust: aboveZero(200, 900),
      speed: aboveZero(40, 80),
      radius: aboveZero(0.9, 1.5),
      blades: usual(2, 5, { whole: true, refused: [1, null] }),
      tipSpeed: aboveZero(150, 220),
      liftCoefficient: usual(0.3, 0.8, { refused: [0.05, null] }),
    },
    fixed: { ...ground, section: polar, rootCutout: 0.15, elements: 10 },
    quiet: 0.8,
  },
  {
    name: 'section.coefficients of a linear section',
    call: section.coefficients,
    sides: {
      angleOfAttack: usual(-0.15, 0.15, { refused: [-2 * Math.PI, 2 * Math.PI] }),
      mach: usual(0, 0.6, { refused: [0, 1.2], advised: [null, 0.7] }),
      reynolds: aboveZero(1.4e5, 7.5e6, { middle: 1e6, advised: [1e6 / 1.5 ** 5, 1e6 * 1.5 ** 5] }),
    },
    fixed: { section: section.linear({ ...polar, referenceReynolds: 1e6, thickness: 0.12 }) },
  },
  {
    name: 'section.linear',
    call: section.linear,
    sides: {
      liftSlope: usual(4.5, 7, { refused: [0.5, 12], middle: 6 }),
      minimumDrag: usual(0.005, 0.03, { refused: [1e-4, 0.5] }),
      dragRise: usual(0, 0.05, { refused: [0, 1] }),
      maximumLift: usual(0.9, 1.8, { refused: [0.05, null] }),
    },
  },
]

/** The boxes of masses by item, beyond those of the largest ones. */
import { preloaded } from '../../../../kernel/library/index.js'
import { aboveZero, type Box, fromTo, notNegative, usual } from './engine.js'

const { mass } = preloaded

const grossMass = aboveZero(300, 5670, { advised: [300, 5670] })
const loadFactor = usual(4, 7, { refused: [0.5, 30] })

const byItem: readonly Box[] = [
  { name: 'mass.avionics', call: mass.avionics, sides: { grossMass } },
  {
    name: 'mass.avionics by what is bought',
    call: mass.avionics,
    sides: { uninstalledMass: aboveZero(10, 200) },
    fixed: { method: 'raymer' },
  },
  { name: 'mass.electrical', call: mass.electrical, sides: { grossMass } },
  {
    name: 'mass.hydraulics',
    call: mass.hydraulics,
    sides: { grossMass, mach: usual(0.1, 0.3, { refused: [0.01, 1] }) },
  },
  {
    name: 'mass.flightControls',
    call: mass.flightControls,
    sides: { grossMass, length: aboveZero(4, 9), span: aboveZero(8, 16), ultimateLoadFactor: loadFactor },
    fixed: { method: 'raymer' },
  },
  {
    name: 'mass.furnishing',
    call: mass.furnishing,
    sides: { grossMass, occupants: usual(1, 6, { refused: [1, 20], middle: 3 }) },
  },
  {
    name: 'mass.fuselage',
    call: mass.fuselage,
    sides: {
      grossMass,
      ultimateLoadFactor: loadFactor,
      wettedArea: aboveZero(15, 40),
      length: aboveZero(4, 9),
      depth: aboveZero(1, 2),
      tailArm: aboveZero(2, 6),
      dynamicPressure: aboveZero(1000, 4000),
    },
  },
  {
    name: 'mass.verticalTail',
    call: mass.verticalTail,
    sides: {
      grossMass,
      ultimateLoadFactor: loadFactor,
      area: aboveZero(1, 4),
      aspectRatio: usual(1, 2.5, { refused: [0.3, 30] }),
      taper: usual(0.3, 1, { refused: [0.05, 1] }),
      thicknessRatio: usual(0.08, 0.15, { refused: [0.02, 0.5] }),
      sweep: usual(-0.5, 0.5, { refused: [-1.2, 1.2] }),
      dynamicPressure: aboveZero(1000, 4000),
      tailHeight: notNegative(0, 1),
    },
  },
  {
    name: 'mass.spread of bodies',
    call: (options: Parameters<typeof mass.spread>[1]) => mass.spread('fuselage', options as never),
    sides: {
      grossMass,
      ultimateLoadFactor: loadFactor,
      length: aboveZero(4, 9),
      depth: aboveZero(1, 2),
      speed: aboveZero(40, 90),
      occupants: usual(1, 6, { refused: [1, 20], middle: 3 }),
    },
  },
  {
    name: 'mass.motor',
    call: mass.motor,
    sides: {
      torque: aboveZero(50, 500),
      peakTorque: aboveZero(500, 1000),
      gearRatio: usual(1, 8, { refused: [1, 100] }),
      torqueDensity: usual(8, 15, { refused: [0.1, 200] }),
    },
  },
  {
    name: 'mass.gearbox',
    call: mass.gearbox,
    sides: {
      power: aboveZero(5e4, 5e5),
      motorSpeed: aboveZero(400, 1500),
      outputSpeed: aboveZero(100, 300),
      technologyFactor: usual(34, 72, { refused: [5, 300] }),
    },
  },
  {
    name: 'mass.controller',
    call: mass.controller,
    sides: { power: aboveZero(1e4, 3e5), specificPower: aboveZero(1e4, 2.5e4) },
    // The equation always says that it is one.
    quiet: 0,
  },
  {
    name: 'mass.rotorBlades',
    call: mass.rotorBlades,
    sides: {
      blades: usual(2, 6, { refused: [1, 12] }),
      radius: aboveZero(0.8, 2),
      chord: aboveZero(0.1, 0.25),
      tipSpeed: aboveZero(100, 200),
      thrust: notNegative(500, 5000),
      thicknessRatio: usual(0.1, 0.2, { refused: [0.04, 0.4] }),
    },
  },
  {
    name: 'mass.hub',
    call: mass.hub,
    sides: {
      blades: usual(2, 6, { refused: [1, 12] }),
      radius: aboveZero(0.8, 2),
      tipSpeed: aboveZero(100, 200),
      bladeMass: aboveZero(1, 15),
      fittingFactor: usual(4, 12, { refused: [1, 100] }),
    },
  },
]

const byPlace: readonly Box[] = [
  {
    name: 'mass.parachute',
    call: mass.parachute,
    sides: {
      grossMass: aboveZero(500, 3000),
      descentSpeed: aboveZero(7, 8),
      density: aboveZero(1.15, 1.25),
      dragCoefficient: usual(0.7, 0.9, { refused: [0.1, 3] }),
      share: notNegative(0.4, 0.6),
    },
    quiet: 0.8,
  },
  {
    name: 'mass.growth',
    call: ({ mass: one, allowance }: { mass: number; allowance: number }) =>
      mass.growth([{ name: 'wing', mass: one, maturity: 'estimated', allowance }]),
    sides: { mass: notNegative(1, 500), allowance: fromTo(0, 2, { box: [0, 0.5] }) },
  },
  {
    name: 'mass.properties',
    call: ({ mass: one, x, y, size }: { mass: number; x: number; y: number; size: number }) =>
      mass.properties([
        { name: 'one', mass: one, x, y, size: [size, size, 1] },
        { name: 'other', mass: 10, x: -1, y: 0 },
      ]),
    sides: { mass: notNegative(0, 500), x: usual(-5, 5), y: usual(-5, 5), size: notNegative(0, 3) },
  },
  {
    name: 'mass.tube',
    call: mass.tube,
    sides: {
      radius: aboveZero(0.04, 0.1, { advised: [5 * 0.003, 2.25 / 10] }),
      wall: aboveZero(0.001, 0.005, { advised: [null, 0.07 / 5] }),
      length: aboveZero(1.5, 3, { advised: [10 * 0.07, null] }),
      elasticModulus: aboveZero(5e10, 1.5e11),
      shearModulus: aboveZero(1e10, 4e10),
      density: aboveZero(1400, 2800),
      tipForce: notNegative(0, 5000),
      tipTorque: notNegative(0, 500),
      tipMass: notNegative(0, 30),
    },
  },
]

export const boxes: readonly Box[] = [...byItem, ...byPlace]

/** The boxes of layout, authority, mission, sizing and limits. */
import { preloaded } from '../../../../kernel/library/index.js'
import { aboveZero, type Box, fromTo, notNegative, usual } from './engine.js'

const { authority, layout, limits, mission, sizing } = preloaded

const polar = { 'polar.zeroLiftDrag': aboveZero(0.02, 0.08), 'polar.inducedFactor': aboveZero(0.02, 0.06) }
const craft = {
  ...polar,
  weight: aboveZero(5e3, 3e4),
  wingArea: aboveZero(8, 30),
  density: aboveZero(0.6, 1.3),
}
const aircraft = mission.aircraft({
  mass: 1600,
  wingArea: 15,
  maximumLift: 1.8,
  polar: { zeroLiftDrag: 0.04, inducedFactor: 0.04 },
  lift: { diskArea: 40, figureOfMerit: 0.7, efficiency: 0.9, count: 8, solidity: 0.1 },
  cruise: { propellerEfficiency: 0.82, efficiency: 0.9 },
})
const day = {
  altitude: fromTo(-5000, 20_000, { box: [0, 3000] }),
  temperatureOffset: usual(-30, 30, { advised: [-50, 50] }),
}
const square = [1, -1].flatMap((x) => [1, -1].map((y) => ({ x, y, spin: x * y, maxThrust: 5000, torqueRatio: 0.1 })))

export const boxes: readonly Box[] = [
  {
    name: 'layout.outwash',
    call: layout.outwash,
    sides: {
      thrust: aboveZero(5e3, 3e4),
      diskArea: aboveZero(20, 80),
      density: aboveZero(0.8, 1.3),
      distance: notNegative(0, 40),
      height: aboveZero(1, 5),
    },
    quiet: 0,
  },
  {
    name: 'layout.hubMoment',
    call: layout.hubMoment,
    sides: {
      thrust: aboveZero(500, 3000),
      speed: usual(5, 40, { advised: [null, 0.3 * 175] }),
      tipSpeed: aboveZero(150, 200),
      radius: aboveZero(0.8, 2),
      density: aboveZero(0.8, 1.3),
      solidity: usual(0.08, 0.2, { refused: [1e-4, 1] }),
    },
  },
  {
    name: 'layout.multirotor',
    call: layout.multirotor,
    sides: {
      rotorRadius: usual(0.5, 2, { refused: [1e-4, null] }),
      count: usual(3, 16, { whole: true, refused: [3, 64] }),
    },
  },
  {
    name: 'authority.trim',
    call: authority.trim,
    sides: {
      weight: usual(1e3, 1.5e4, { refused: [1e-3, 1e9] }),
      'centreOfGravity.x': usual(-0.3, 0.3),
      'centreOfGravity.y': usual(-0.3, 0.3),
      'disturbance.yaw': usual(-100, 100),
    },
    fixed: { rotors: square },
    quiet: 0,
  },
  {
    name: 'authority.windMoments',
    call: authority.windMoments,
    sides: {
      speed: notNegative(0, 15),
      density: aboveZero(0.8, 1.3),
      frontDragArea: notNegative(0.5, 4),
      sideDragArea: notNegative(0.5, 8),
      directions: usual(4, 36, { whole: true, refused: [4, 100] }),
    },
    fixed: { sideCentre: { x: 0.5 } },
    quiet: 0,
  },
  {
    name: 'mission.trim',
    call: mission.trim,
    sides: { speed: notNegative(0, 70), acceleration: usual(-1, 1.5), ...day },
    fixed: { aircraft },
    quiet: 0,
  },
  {
    name: 'mission.speeds',
    call: mission.speeds,
    sides: { ...day, tailwind: usual(-15, 15) },
    fixed: { aircraft },
    quiet: 0,
  },
  {
    name: 'sizing.electricRange',
    call: sizing.electricRange,
    sides: {
      grossMass: aboveZero(1000, 3000),
      batteryMass: aboveZero(200, 800),
      usableSpecificEnergy: aboveZero(4e5, 9e5),
      liftToDrag: aboveZero(8, 16),
      efficiency: usual(0.6, 0.9, { refused: [0, 1] }),
      speed: aboveZero(40, 80),
      reserveTime: notNegative(0, 600),
    },
    quiet: 0.9,
  },
  {
    name: 'sizing.diskLoadingWindow',
    call: sizing.diskLoadingWindow,
    sides: { density: aboveZero(0.6, 1.3), download: fromTo(0, 0.5), design: aboveZero(100, 1000) },
    fixed: { bounds: [{ kind: 'outwash', speed: 28 }] },
    quiet: 0,
  },
  {
    name: 'limits.speedFloors',
    call: limits.speedFloors,
    sides: {
      weight: aboveZero(5e3, 3e4),
      density: aboveZero(0.6, 1.3),
      wingArea: aboveZero(8, 30),
      maximumLift: aboveZero(1, 2.5),
    },
    fixed: { speeds: [{ name: 'cruise', speed: 60 }] },
    quiet: 0,
  },
  {
    name: 'limits.climbAfterLoss',
    call: limits.climbAfterLoss,
    sides: {
      ...craft,
      shaftPower: aboveZero(1e5, 4e5),
      propellerEfficiency: usual(0.6, 0.9, { refused: [0, 1] }),
      addedDragArea: notNegative(0, 0.3),
    },
    fixed: { units: 2 },
    quiet: 0,
  },
  {
    name: 'limits.glide',
    call: limits.glide,
    sides: { ...craft, height: notNegative(100, 1000), addedDragArea: notNegative(0, 0.3), headwind: usual(0, 15) },
    quiet: 0,
  },
]

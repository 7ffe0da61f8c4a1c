/** Calls on air and on the plainest methods of a sizing with any numbers. */
import { preloaded } from '../../../../kernel/library/index.js'
import type { AnyCall } from '../any-input.js'

const { air, battery, drag, rotor, wing } = preloaded

export const calls: readonly AnyCall[] = [
  ['air.standard', 2, ([a = 0, b = 0]) => air.standard(a, b)],
  ['air.densityAltitude', 1, ([a = 0]) => air.densityAltitude(a)],
  ['air.geopotentialAltitude', 1, ([a = 0]) => air.geopotentialAltitude(a)],
  ['air.dynamicViscosity', 1, ([a = 0]) => air.dynamicViscosity(a)],
  [
    'rotor.hover by merit',
    4,
    ([thrust = 0, diskArea = 0, density = 0, figureOfMerit = 0]) =>
      rotor.hover({ thrust, diskArea, density, figureOfMerit }),
  ],
  [
    'rotor.hover by blades',
    8,
    ([
      thrust = 0,
      radius = 0,
      density = 0,
      tipSpeed = 0,
      solidity = 0,
      inducedFactor = 0,
      profileDrag = 0,
      speedOfSound = 0,
    ]) => rotor.hover({ thrust, radius, density, tipSpeed, solidity, inducedFactor, profileDrag, speedOfSound }),
  ],
  [
    'wing.stallSpeed',
    4,
    ([weight = 0, density = 0, wingArea = 0, maximumLift = 0]) =>
      wing.stallSpeed({ weight, density, wingArea, maximumLift }),
  ],
  [
    'drag.polar',
    3,
    ([zeroLiftDrag = 0, aspectRatio = 0, spanEfficiency = 0]) =>
      drag.polar({ zeroLiftDrag, aspectRatio, spanEfficiency }),
  ],
  [
    'drag.powerRequired',
    6,
    ([zeroLiftDrag = 0, inducedFactor = 0, weight = 0, wingArea = 0, density = 0, speed = 0]) =>
      drag.powerRequired({ polar: { zeroLiftDrag, inducedFactor }, weight, wingArea, density, speed }),
  ],
  [
    'drag.leastPowerSpeed',
    6,
    ([zeroLiftDrag = 0, inducedFactor = 0, weight = 0, wingArea = 0, density = 0, floor = 0]) =>
      drag.leastPowerSpeed({ polar: { zeroLiftDrag, inducedFactor }, weight, wingArea, density, floor }),
  ],
  [
    'battery.massForEnergy',
    4,
    ([energy = 0, specificEnergy = 0, usableShare = 0, capacityLeft = 0]) =>
      battery.massForEnergy({ energy, specificEnergy, usableShare, capacityLeft }),
  ],
  [
    'battery.usableEnergy',
    3,
    ([mass = 0, specificEnergy = 0, usableShare = 0]) => battery.usableEnergy({ mass, specificEnergy, usableShare }),
  ],
]

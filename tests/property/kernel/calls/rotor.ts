/** Calls on rotors, propellers and sections with any numbers. */
import { preloaded } from '../../../../kernel/library/index.js'
import { type AnyCall, type V, v } from '../any-input.js'

const { air, propeller, rotor, section } = preloaded

const ground = air.standard(0)

const blade = (values: V) => ({
  ...ground,
  radius: v(values, 0),
  chord: v(values, 1),
  blades: Math.round(v(values, 2)),
  tipSpeed: 100 * v(values, 3),
  section: { liftSlope: 5.7, minimumDrag: 0.01 },
})

export const calls: readonly AnyCall[] = [
  ['rotor.axial', 4, (x) => rotor.axial({ climbSpeed: v(x, 0), thrust: v(x, 1), diskArea: v(x, 2), density: v(x, 3) })],
  ['rotor.vortexRingFit', 1, (x) => rotor.vortexRingFit(-v(x, 0))],
  [
    'rotor.climb to a power',
    5,
    (x) =>
      rotor.climb({
        climbSpeed: v(x, 0),
        thrust: v(x, 1),
        diskArea: v(x, 2),
        density: v(x, 3),
        inducedFactor: v(x, 4),
      }),
  ],
  [
    'rotor.climb to a speed',
    6,
    (x) =>
      rotor.climb({
        power: 1e3 * v(x, 0),
        thrust: v(x, 1),
        diskArea: v(x, 2),
        density: v(x, 3),
        inducedFactor: v(x, 4),
        profilePower: v(x, 5),
      }),
  ],
  [
    'rotor.descent',
    5,
    (x) =>
      rotor.descent({
        descentSpeed: v(x, 0),
        thrust: v(x, 1),
        diskArea: v(x, 2),
        density: v(x, 3),
        inducedFactor: v(x, 4),
      }),
  ],
  ...(['best range', 5] as const).map(
    (speed): AnyCall => [
      `rotor.levelFlight at ${speed}`,
      8,
      (x) =>
        rotor.levelFlight({
          ...{ weight: 100 * v(x, 0), dragArea: v(x, 1), speed: speed === 5 ? 5 * v(x, 2) : speed },
          ...{ radius: v(x, 3), density: v(x, 4), tipSpeed: 100 * v(x, 5) },
          ...{ solidity: v(x, 6) / 10, inducedFactor: 1.15, profileDrag: v(x, 7) / 100 },
        }),
    ],
  ),
  [
    'rotor.edgewise',
    9,
    (x) =>
      rotor.edgewise({
        thrust: v(x, 0),
        speed: v(x, 1),
        radius: v(x, 2),
        density: v(x, 3),
        tipSpeed: v(x, 4),
        solidity: v(x, 5) / 3,
        inducedFactor: v(x, 6),
        profileDrag: v(x, 7),
        diskTilt: v(x, 8) - 1.5,
      }),
  ],
  [
    'rotor.download',
    4,
    (x) =>
      rotor.download({
        blockedArea: v(x, 0),
        dragCoefficient: v(x, 1),
        diskArea: 10 * v(x, 2),
        wakeFactor: v(x, 3),
      }),
  ],
  [
    'rotor.overlap',
    5,
    (x) =>
      rotor.overlap({
        radius: v(x, 0),
        positions: [
          [v(x, 1), v(x, 2)],
          [v(x, 3), v(x, 4)],
        ],
      }),
  ],
  [
    'rotor.coaxial',
    4,
    (x) => rotor.coaxial({ thrust: v(x, 0), diskArea: v(x, 1), density: v(x, 2), upperShare: v(x, 3) / 3 }),
  ],
  ['rotor.tipLoss', 2, (x) => rotor.tipLoss({ thrustCoefficient: v(x, 0) / 10, blades: Math.round(v(x, 1)) })],
  [
    'rotor.prandtlLoss',
    3,
    (x) => rotor.prandtlLoss({ blades: Math.round(v(x, 0)), station: v(x, 1) / 3, inflowRatio: v(x, 2) }),
  ],
  [
    'rotor.smallAngleHover',
    4,
    (x) =>
      rotor.smallAngleHover({
        solidity: v(x, 0) / 3,
        liftSlope: 4 * v(x, 1),
        pitch: v(x, 2) / 3,
        station: v(x, 3) / 3,
      }),
  ],
  [
    'rotor.ducted',
    5,
    (x) =>
      rotor.ducted({
        thrust: v(x, 0),
        diskArea: v(x, 1),
        density: v(x, 2),
        expansionRatio: v(x, 3),
        figureOfMerit: v(x, 4) / 3,
      }),
  ],
  [
    'rotor.ductInCruise',
    5,
    (x) =>
      rotor.ductInCruise({
        diameter: v(x, 0),
        chord: v(x, 1),
        sectionDrag: v(x, 2),
        lift: v(x, 3),
        dynamicPressure: v(x, 4),
      }),
  ],
  [
    'rotor.bladeElement',
    6,
    (x) => rotor.bladeElement({ ...blade(x), collective: v(x, 4) - 1.5, axialSpeed: 50 * (v(x, 5) - 1.5) }),
  ],
  [
    'rotor.bladeElement in other air',
    6,
    (x) =>
      rotor.bladeElement({
        ...blade(x),
        density: v(x, 4),
        dynamicViscosity: 1e-5 * v(x, 5),
        collective: 0.1,
        section: { liftSlope: 5.7, minimumDrag: 0.01, referenceReynolds: 1e6, thickness: 0.12 },
      }),
  ],
  [
    'rotor.collectiveForThrust',
    5,
    (x) => rotor.collectiveForThrust({ ...blade(x), elements: 8, thrust: 100 * v(x, 4) }),
  ],
  [
    'propeller.ideal',
    4,
    (x) => propeller.ideal({ thrust: v(x, 0), speed: v(x, 1), diskArea: v(x, 2), density: v(x, 3) }),
  ],
  [
    'propeller.estimate',
    8,
    (x) =>
      propeller.estimate({
        thrust: v(x, 0),
        speed: v(x, 1),
        radius: v(x, 2),
        density: v(x, 3),
        tipSpeed: 100 * v(x, 4),
        solidity: v(x, 5) / 3,
        profileDrag: v(x, 6),
        inducedFactor: v(x, 7),
      }),
  ],
  [
    'propeller.bladeElement',
    6,
    (x) => propeller.bladeElement({ ...blade(x), bladeAngle: v(x, 4) / 2, advanceRatio: v(x, 5) }),
  ],
  [
    'propeller.bladeAngleForThrust',
    6,
    (x) => propeller.bladeAngleForThrust({ ...blade(x), elements: 8, thrust: 100 * v(x, 4), advanceRatio: v(x, 5) }),
  ],
  [
    'propeller.tipSpeedForThrust',
    6,
    (x) => {
      const { tipSpeed, ...rest } = blade(x)
      return propeller.tipSpeedForThrust({
        ...rest,
        elements: 8,
        thrust: tipSpeed,
        speed: 20 * v(x, 4),
        bladeAngle: v(x, 5) / 3,
      })
    },
  ],
  [
    'propeller.efficiencyMap',
    6,
    (x) =>
      propeller.efficiencyMap({
        ...blade(x),
        elements: 8,
        bladeAngles: [v(x, 4) / 2],
        advanceRatios: [v(x, 5), v(x, 5) + 0.2],
      }),
  ],
  [
    'propeller.minimumInducedLoss',
    7,
    (x) =>
      propeller.minimumInducedLoss({
        ...ground,
        thrust: 100 * v(x, 0),
        speed: 30 * v(x, 1),
        radius: v(x, 2),
        rootCutout: 0.1 * v(x, 3),
        blades: Math.round(v(x, 4)),
        tipSpeed: 100 * v(x, 5),
        liftCoefficient: v(x, 6),
        elements: 8,
        section: { liftSlope: 5.7, minimumDrag: 0.01 },
      }),
  ],
  [
    'section.coefficients of a linear section',
    8,
    (x) => {
      const made = section.linear({
        liftSlope: 3 * v(x, 0),
        minimumDrag: v(x, 1) / 10,
        zeroLiftAngle: (v(x, 2) - 1.5) / 5,
        dragRise: v(x, 3) / 10,
        maximumLift: v(x, 4),
        referenceReynolds: 1e6 * v(x, 5),
      })
      return section.coefficients({ section: made, angleOfAttack: v(x, 6) - 1.5, reynolds: 1e6 * v(x, 7) })
    },
  ],
  [
    'section.coefficients of a table section',
    6,
    (x) => {
      const made = section.table({
        polars: [
          { reynolds: 1e5, angle: [-0.3, v(x, 0) / 10, 0.3], lift: [-1, v(x, 1), 1], drag: [0.1, v(x, 2), 0.1] },
          { reynolds: 1e6 * v(x, 3), angle: [-0.2, 0, 0.2], lift: [-1, 0, 1.1], drag: [0.1, 0.01, 0.1] },
        ],
      })
      return section.coefficients({ section: made, angleOfAttack: v(x, 4), reynolds: 1e5 * v(x, 5), mach: v(x, 4) / 3 })
    },
  ],
  ['section.linear', 3, (x) => section.linear({ liftSlope: 3 * v(x, 0), minimumDrag: v(x, 1), dragRise: v(x, 2) })],
  [
    'section.table',
    3,
    (x) =>
      section.table({
        polars: [{ angle: [-0.2, 0, v(x, 0) / 5], lift: [-1, v(x, 1) / 3, 1], drag: [0.1, v(x, 2), 0.1] }],
      }),
  ],
]

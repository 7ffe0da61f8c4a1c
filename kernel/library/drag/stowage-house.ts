/**
 * House estimates of the ways to stow a lift rotor: drag and mechanism of one rotor, from its geometry.
 *
 * Nothing is published on most of them. The drag of each is made of parts whose size is known (friction of a plate, a short cylinder, a
 * seam), the masses are shares of the rotor's own mass and of the area of doors. Every figure below is a house value unless it names a
 * source, and every record carries the band of 40 %.
 */

/** What the estimates need of one rotor. */
export interface StowedRotor {
  readonly radius: number
  readonly chord: number
  readonly blades: number
  readonly hubDiameter: number
  /** Hub and what of the motor stands out [m]. */
  readonly height: number
  /** Drag areas of one rotor [m^2]: blades on the average over azimuth, blades in line, hub and pod in the row they stand in. */
  readonly bladesAnywhere: number
  readonly bladesInLine: number
  readonly hubAndPod: number
  readonly skinFriction: number
  /** Blades, hub and motor of one rotor [kg]. */
  readonly rotorMass: number
  /** Of a duct about the rotor [m]. */
  readonly ductHeight: number
}

export interface StowageEstimate {
  readonly name: string
  readonly dragArea: (rotor: StowedRotor) => number
  readonly mechanismMass: (rotor: StowedRotor) => number
  readonly complexity: number
  readonly limits: readonly string[]
  readonly source: string
}

/** Seams and steps of a closed cover make its friction grow by this share. */
const seamShare = 0.3
/** Form and interference of a body that has grown by a bay. */
const bodyForm = 1.25
/** Drag coefficient of a hole through the wing on its area, upper and lower face together. */
const openCavity = 0.02
/** What a lower-surface step leaves of it: lift to drag up to 25 % better was seen at positive incidence. */
const steppedShare = 0.8
/** Of a duct whose wall stands across the stream, on diameter times height: a short cylinder. */
const ductCoefficient = 0.6
/** Doors with hinges and drives [kg/m^2]; duct wall [kg/m^2 of both faces]. */
const doorMass = 4
const ductWallMass = 1.5

const house = 'house model'
const startsOnDemand =
  'Each mechanism must work before the rotor lifts again: count it in the failure cases of the landing.'
const lipRadius = 'A large lip radius is needed for hover and shapes the upper surface in cruise.'
const wingRoom =
  'The wing must hold the whole disk: chord of about 2.5 radii, and lift of that part is lost while it is open.'

const diskArea = (rotor: StowedRotor) => Math.PI * rotor.radius * rotor.radius
/** Plan area of a bay or fairing that holds the rotor with its blades in line [m^2]. */
const bayArea = (rotor: StowedRotor) => 2 * rotor.radius * bayWidth(rotor)
const bayWidth = (rotor: StowedRotor) => Math.max(rotor.hubDiameter, 1.5 * rotor.chord)

export const stowageEstimates: readonly StowageEstimate[] = [
  {
    name: 'exposed',
    dragArea: (rotor) => rotor.bladesAnywhere + rotor.hubAndPod,
    mechanismMass: () => 0,
    complexity: 0,
    limits: ['Blades stop where they stop; a windmilling rotor costs far more and loads its boom.'],
    source: house,
  },
  {
    name: 'feathered and lined up',
    dragArea: (rotor) => rotor.bladesInLine + rotor.hubAndPod,
    // Position sensor, brake and holding torque.
    mechanismMass: (rotor) => 0.03 * rotor.rotorMass,
    complexity: 1,
    limits: [
      'Two blades, or blades that stack; with three or more some always stand across the stream.',
      'The stop must hold against gusts and sideslip.',
    ],
    source: house,
  },
  {
    name: 'retracted into the body',
    dragArea: (rotor) => {
      const sides = 2 * (2 * rotor.radius + bayWidth(rotor)) * rotor.height
      return rotor.skinFriction * (bodyForm * sides + seamShare * bayArea(rotor))
    },
    mechanismMass: (rotor) => 0.35 * rotor.rotorMass + doorMass * bayArea(rotor),
    complexity: 3,
    limits: [
      'The body must be as long as the disk is wide and have the room; blades must be lined up first.',
      startsOnDemand,
    ],
    source:
      'house model; a tested model with rotors retracted had 38 % less parasite drag (Aerospace Science and Technology, 2021, abstract read)',
  },
  {
    name: 'folded into a wing edge',
    dragArea: (rotor) =>
      0.5 * rotor.hubAndPod + seamShare * 2 * rotor.skinFriction * rotor.blades * rotor.chord * rotor.radius,
    mechanismMass: (rotor) => 0.25 * rotor.rotorMass,
    complexity: 3,
    limits: [
      'Fits only at the edges of a wing, where flaps and ailerons want to be; the folded blades shape the edge.',
      'Hinges carry the whole centrifugal and thrust load in hover.',
      startsOnDemand,
    ],
    source: house,
  },
  {
    name: 'buried with an open cavity',
    dragArea: (rotor) => openCavity * diskArea(rotor),
    mechanismMass: () => 0,
    complexity: 0,
    limits: [
      'The cavity stays open in cruise and spoils the lift of the wing about it.',
      wingRoom,
      lipRadius,
      'The structure about the hole is not in this mass.',
    ],
    source: house,
  },
  {
    name: 'buried with an open cavity and a lower-surface step',
    dragArea: (rotor) => steppedShare * openCavity * diskArea(rotor),
    mechanismMass: (rotor) => 0.5 * 2 * rotor.radius,
    complexity: 0,
    limits: [
      'The step helps at positive incidence; its size and slope matter little (common practice, no source).',
      'The cavity stays open in cruise and spoils the lift of the wing about it.',
      wingRoom,
      lipRadius,
    ],
    source: house,
  },
  {
    name: 'buried with doors',
    dragArea: (rotor) => seamShare * rotor.skinFriction * 2 * diskArea(rotor),
    mechanismMass: (rotor) => doorMass * 2 * diskArea(rotor),
    complexity: 2,
    limits: [
      'Doors above and below must open in the wake and the stream of the transition.',
      wingRoom,
      lipRadius,
      startsOnDemand,
    ],
    source: house,
  },
  {
    name: 'ducted',
    dragArea: (rotor) => ductCoefficient * 2 * rotor.radius * rotor.ductHeight + rotor.hubAndPod,
    mechanismMass: (rotor) => ductWallMass * 4 * Math.PI * rotor.radius * rotor.ductHeight,
    complexity: 0,
    limits: [
      'The duct stands across the stream in cruise; compare at equal outside diameter, where its gain in hover is slight.',
      lipRadius,
    ],
    source: house,
  },
]

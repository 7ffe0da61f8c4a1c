import { requireNonNegative, requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { writeNumber } from '../number-text.js'
import type { Density, Force, Frequency, Length, Mass, Pressure, Ratio, Torque } from '../quantity.js'
import { isListening, silently } from '../recorder.js'
import { adviseSlenderness, bucklingStressOf, ownShare, type Tube, tube } from './tube.js'

export interface BoomMaterial {
  /** [kg/m^3] */
  readonly density: Density
  /** Along the tube [Pa]. */
  readonly elasticModulus: Pressure
  /** [Pa] */
  readonly shearModulus: Pressure
  /** At ultimate load [Pa]. */
  readonly allowableStress: Pressure
  /** At ultimate load [Pa]. */
  readonly allowableShear: Pressure
}

export interface BoomOptions {
  /** From the wing to the rotor [m]. */
  readonly length: Length
  /** Mean of the wall [m]. */
  readonly radius: Length
  /** `mass.materials.carbon` when left out. */
  readonly material?: BoomMaterial
  /** Limit load of the rotor across the tip [N]. */
  readonly tipForce: Force
  /** Limit torque about the boom [N m]; 0 when left out. */
  readonly tipTorque?: Torque
  /** Rotor, motor and what else sits at the tip [kg]. */
  readonly tipMass: Mass
  /** Ultimate over limit load; 1.5 when left out. */
  readonly ultimateFactor?: Ratio
  /** First bending frequency to be reached [Hz]; none when left out. */
  readonly minimumFrequency?: Frequency
  /** Tip deflection at limit load over length; none when left out. */
  readonly maximumDeflection?: Ratio
  /** Thinnest wall that is built and handled [m]; 1 mm when left out. */
  readonly minimumWall?: Length
  /** Joints and fittings over the tube's mass; 0.3 when left out. */
  readonly fittings?: Ratio
}

export type BoomBound = 'bending' | 'buckling' | 'torsion' | 'frequency' | 'deflection' | 'minimum wall'

export interface Boom extends Tube {
  /** Tube with its fittings [kg]. */
  readonly mass: Mass
  /** [kg] */
  readonly tubeMass: Mass
  /** [m] */
  readonly wall: Length
  readonly binds: BoomBound
  /** The bound behind it. */
  readonly next: BoomBound
  /** Wall of the bound behind over the wall. */
  readonly nextShare: Ratio
}

const method = 'mass.boom'
const known = new Set([
  'length',
  'radius',
  'material',
  'tipForce',
  'tipTorque',
  'tipMass',
  'ultimateFactor',
  'minimumFrequency',
  'maximumDeflection',
  'minimumWall',
  'fittings',
])
const knownMaterial = new Set(['density', 'elasticModulus', 'shearModulus', 'allowableStress', 'allowableShear'])

/**
 * Materials of booms.
 *
 * @equation E, G, rho and allowable stresses at ultimate load, as numbers
 * @returns `carbon` (quasi-isotropic laminate, 0.35 % strain allowed for impact damage) and `aluminium` (6061-T6)
 * @throws nothing
 * @method A material of one's own is the same small record: `{ density, elasticModulus, shearModulus, allowableStress, allowableShear }`.
 * @validity Concept studies; allowables of a real laminate come from its tests.
 * @source Common practice, from memory.
 * @example
 * mass.materials.carbon.density // 1600
 */
export const materials = Object.freeze({
  carbon: Object.freeze({
    density: 1600,
    elasticModulus: 70e9,
    shearModulus: 26.9e9,
    allowableStress: 245e6,
    allowableShear: 90e6,
  }) as BoomMaterial,
  aluminium: Object.freeze({
    density: 2700,
    elasticModulus: 68.9e9,
    shearModulus: 26e9,
    allowableStress: 260e6,
    allowableShear: 150e6,
  }) as BoomMaterial,
})

/**
 * A boom that carries a lift rotor, as a thin-walled tube sized by bending, buckling of its wall, torsion, frequency and deflection.
 *
 * @equation wall t = the greatest of: bending j F L/(pi r^2 sigma); buckling, where j F L/(pi r^2 t) = 0.605 g E t/r; torsion j Q/(2 pi r^2 tau); frequency w^2 L^3 m_tip/(3 pi E r^3 - (33/140) w^2 L^4 2
 * pi r rho), w = 2 pi f; deflection F L^2/(3 pi E r^3 d); the thinnest wall. Mass = 2 pi r t rho L (1 + fittings)
 * @param options - `length` L, `radius` r [m], `tipForce` F at limit load [N], `tipMass` [kg]; optional `tipTorque` Q [N m] (0), `material` (`mass.materials.carbon`), `ultimateFactor` j (1.5),
 * `minimumFrequency` f [Hz], `maximumDeflection` d over length, `minimumWall` (1 mm), `fittings` (0.3)
 * @returns what `mass.tube` returns for the wall found, with `mass` (fittings included), `tubeMass` [kg], `wall` [m], `binds`, `next` and `nextShare`
 * @throws InvalidInput for a value that is not positive, a frequency that no wall reaches (that of the tube without a tip mass is the limit), and an unknown option
 * @method Closed form but for buckling, which is a fixed point. Loads one at a time: bending and torsion together ask for some percent more when both are near their bounds.
 * @validity As `mass.tube`. The clamp at the wing gives a little: true frequencies are lower (10 to 30 %, from memory). Keep them clear of the rotor's speed and its blade passage.
 * @source Euler and Bernoulli, Bredt: textbook (from memory). Buckling: NASA SP-8007, 1968 (from memory). Fittings: common practice, no source.
 * @example
 * const arm = mass.boom({ length: 1.5 * u.m, radius: 0.06 * u.m, tipForce: 4 * u.kN, tipMass: 25 * u.kg, minimumFrequency: 12 * u.Hz })
 * arm.wall / u.mm // 3.4655
 */
export function boom(options: BoomOptions): Boom {
  const filled = readBoom(options)
  const walls = wallsOf(filled)
  const [first, second] = walls as [[BoomBound, number], [BoomBound, number]]
  const wall = first[1]
  const { length, radius, material, tipForce, tipTorque, tipMass, fittings } = filled
  const { density, elasticModulus, shearModulus } = material
  const sized = silently(() =>
    tube({ radius, wall, length, elasticModulus, shearModulus, density, tipForce, tipTorque, tipMass }),
  )
  const answer: Boom = {
    ...sized,
    mass: sized.mass * (1 + fittings),
    tubeMass: sized.mass,
    wall,
    binds: first[0],
    next: second[0],
    nextShare: second[1] / wall,
  }
  requireRepresentable(method, answer.mass + answer.wall)
  if (isListening()) adviseSlenderness(method, radius, wall, length)
  return answer
}

function readBoom(options: BoomOptions) {
  checkOptions(method, options, known)
  const { tipTorque = 0, ultimateFactor = 1.5, minimumWall = 1e-3, fittings = 0.3 } = options
  const { minimumFrequency = 0, maximumDeflection, material = materials.carbon } = options
  const { length, radius, tipForce, tipMass } = options
  requirePositive(method, 'length', length, 'm')
  requirePositive(method, 'radius', radius, 'm')
  requireNonNegative(method, 'tipForce', tipForce, 'N')
  requireNonNegative(method, 'tipTorque', tipTorque, 'N m')
  requireNonNegative(method, 'tipMass', tipMass, 'kg')
  requireWithin(method, 'ultimateFactor', ultimateFactor, '1', 1, 10)
  requirePositive(method, 'minimumWall', minimumWall, 'm')
  requireNonNegative(method, 'fittings', fittings, '1')
  requireNonNegative(method, 'minimumFrequency', minimumFrequency, 'Hz')
  if (maximumDeflection !== undefined) requirePositive(method, 'maximumDeflection', maximumDeflection, '1')
  if (typeof material !== 'object' || material === null)
    throw new InvalidInput({
      method,
      argument: 'material',
      value: describeValue(material),
      accepted: 'one of mass.materials, or a record of your own',
    })
  checkOptions(`${method} material`, material, knownMaterial)
  for (const key of ['elasticModulus', 'shearModulus', 'allowableStress', 'allowableShear'] as const)
    requirePositive(method, `material.${key}`, material[key], 'Pa')
  requirePositive(method, 'material.density', material.density, 'kg/m^3')
  return {
    length,
    radius,
    material,
    tipForce,
    tipTorque,
    tipMass,
    ultimateFactor,
    minimumWall,
    fittings,
    minimumFrequency,
    maximumDeflection,
  }
}

type FilledBoom = ReturnType<typeof readBoom>

/** Walls that the bounds ask for [m], thickest first. */
function wallsOf(o: FilledBoom): [BoomBound, number][] {
  const { elasticModulus, allowableStress, allowableShear } = o.material
  const perWall = Math.PI * o.radius * o.radius
  const moment = o.ultimateFactor * o.tipForce * o.length
  const walls: [BoomBound, number][] = [
    ['bending', moment / (perWall * allowableStress)],
    ['buckling', bucklingWall(o, moment)],
    ['torsion', (o.ultimateFactor * o.tipTorque) / (2 * perWall * allowableShear)],
    ['frequency', frequencyWall(o)],
    [
      'deflection',
      o.maximumDeflection === undefined
        ? 0
        : (o.tipForce * o.length ** 2) / (3 * Math.PI * elasticModulus * o.radius ** 3 * o.maximumDeflection),
    ],
    ['minimum wall', o.minimumWall],
  ]
  for (const [, wall] of walls) requireRepresentable(method, wall)
  return walls.sort(([, a], [, b]) => b - a)
}

/** Wall at which the bending stress is that of buckling: a contraction, since the knock-down changes slowly with the wall. */
function bucklingWall(o: FilledBoom, moment: number): number {
  if (moment === 0) return 0
  let wall = o.radius / 50
  for (let k = 0; k < 60; k += 1) {
    const perWall = bucklingStressOf(o.material.elasticModulus, o.radius, wall) / wall
    const next = Math.sqrt(moment / (Math.PI * o.radius * o.radius * perWall))
    // A wall of next to nothing keeps the least knock-down; its quotients would be of zero and zero.
    if (next < 1e-12 * o.radius || Math.abs(next - wall) <= 1e-12 * wall) return next
    wall = next
  }
  return wall
}

function frequencyWall(o: FilledBoom): number {
  if (o.minimumFrequency === 0) return 0
  const { elasticModulus, density } = o.material
  const squared = (2 * Math.PI * o.minimumFrequency) ** 2
  const stiffness = 3 * Math.PI * elasticModulus * o.radius ** 3
  const own = ownShare * 2 * Math.PI * o.radius * density * o.length
  const left = stiffness - squared * o.length ** 3 * own
  if (left > 0) return (squared * o.length ** 3 * o.tipMass) / left
  const limit = Math.sqrt(stiffness / (o.length ** 3 * own)) / (2 * Math.PI)
  throw new InvalidInput({
    method,
    argument: 'minimumFrequency',
    value: o.minimumFrequency,
    unit: 'Hz',
    accepted: `below ${writeNumber(limit)} Hz, which the tube reaches without any mass at its tip, whatever its wall`,
    remedy: 'A greater radius or a shorter boom will do.',
  })
}

import { requireNonNegative, requirePositive, requireRepresentable } from '../check.js'
import { checkOptions } from '../errors.js'
import type {
  Angle,
  Density,
  Force,
  Frequency,
  Length,
  Mass,
  Pressure,
  SecondMomentOfArea,
  Torque,
} from '../quantity.js'
import { advise, isListening } from '../recorder.js'

export interface TubeOptions {
  /** Mean of the wall [m]. */
  readonly radius: Length
  /** [m] */
  readonly wall: Length
  /** From the clamp to the tip [m]. */
  readonly length: Length
  /** [Pa] */
  readonly elasticModulus: Pressure
  /** [Pa] */
  readonly shearModulus: Pressure
  /** [kg/m^3] */
  readonly density: Density
  /** Across the tip [N]; 0 when left out. */
  readonly tipForce?: Force
  /** About the axis [N m]; 0 when left out. */
  readonly tipTorque?: Torque
  /** [kg]; 0 when left out. */
  readonly tipMass?: Mass
}

export interface Tube {
  /** [kg] */
  readonly mass: Mass
  /** [m^4] */
  readonly secondMoment: SecondMomentOfArea
  /** At the clamp [Pa]. */
  readonly bendingStress: Pressure
  /** From the torque [Pa]. */
  readonly shearStress: Pressure
  /** [m] */
  readonly tipDeflection: Length
  /** [rad] */
  readonly twist: Angle
  /** First bending frequency with the tip mass [Hz]. */
  readonly frequency: Frequency
  /** First bending frequency of the tube alone [Hz]. */
  readonly bareFrequency: Frequency
  /** At which the wall buckles in bending [Pa]. */
  readonly bucklingStress: Pressure
}

const method = 'mass.tube'
const known = new Set([
  'radius',
  'wall',
  'length',
  'elasticModulus',
  'shearModulus',
  'density',
  'tipForce',
  'tipTorque',
  'tipMass',
])
/** First root of 1 + cos x cosh x = 0, squared. */
const bareRoot = 1.8751040687119611 ** 2
/** Share of a cantilever's own mass that counts at its tip (Rayleigh). */
export const ownShare = 33 / 140

/** Stress at which the wall of a thin tube buckles in bending [Pa]: classical value times the knock-down that tests ask for. */
export function bucklingStressOf(elasticModulus: number, radius: number, wall: number): number {
  const knockDown = 1 - 0.731 * (1 - Math.exp(-Math.sqrt(radius / wall) / 16))
  return (0.605 * knockDown * elasticModulus * wall) / radius
}

/**
 * A thin-walled tube clamped at one end: stress, deflection, twist and frequency.
 *
 * @equation m = 2 pi r t rho L; I = pi r^3 t, J = 2 I; sigma = F L/(pi r^2 t); delta = F L^3/(3 E I); tau = Q/(2 pi r^2 t); phi = Q L/(G J); f = (1/(2 pi)) sqrt(3 E I/(L^3 (m_tip + 33/140 m)));
 * f_bare = (3.516/(2 pi)) sqrt(E I/(m L^3)); sigma_buckling = 0.605 g E t/r, g = 1 - 0.731 (1 - exp(-sqrt(r/t)/16))
 * @param options - `radius` r of the wall's middle, `wall` t, `length` L [m], `elasticModulus` E, `shearModulus` G [Pa], `density` rho [kg/m^3]; optional `tipForce` F [N], `tipTorque` Q [N m], `tipMass` [kg]
 * @returns `mass` [kg], `secondMoment` [m^4], `bendingStress`, `shearStress` [Pa], `tipDeflection` [m], `twist` [rad], `frequency`, `bareFrequency` [Hz], `bucklingStress` [Pa]
 * @throws InvalidInput for a value that is not positive, a negative load, and an unknown option
 * @method Slender beam, thin wall, clamp without give. Frequency by Rayleigh's quotient, 0.001 % above the exact one under a heavy tip mass and 1.5 % above for none.
 * @validity Wall below a fifth of the radius, length above ten radii; outside an advisory. Directional materials enter by their moduli along the tube.
 * @source Euler and Bernoulli, Bredt: textbook (Roark's Formulas for Stress and Strain; Blevins, Formulas for Natural Frequency and Mode Shape; from memory). Buckling: NASA SP-8007, 1968 (from memory).
 * @example
 * const boom = mass.tube({
 *   radius: 0.05 * u.m, wall: 2 * u.mm, length: 1.5 * u.m, elasticModulus: 70e9 * u.Pa, shearModulus: 26.9e9 * u.Pa, density: 1600, tipForce: 2700 * u.N, tipMass: 12 * u.kg,
 * })
 * boom.frequency // 10.009
 */
export function tube(options: TubeOptions): Tube {
  checkOptions(method, options, known)
  const { radius, wall, length, elasticModulus, shearModulus, density } = options
  const { tipForce = 0, tipTorque = 0, tipMass = 0 } = options
  for (const key of ['radius', 'wall', 'length'] as const) requirePositive(method, key, options[key], 'm')
  requirePositive(method, 'elasticModulus', elasticModulus, 'Pa')
  requirePositive(method, 'shearModulus', shearModulus, 'Pa')
  requirePositive(method, 'density', density, 'kg/m^3')
  requireNonNegative(method, 'tipForce', tipForce, 'N')
  requireNonNegative(method, 'tipTorque', tipTorque, 'N m')
  requireNonNegative(method, 'tipMass', tipMass, 'kg')
  const mass = 2 * Math.PI * radius * wall * density * length
  const secondMoment = Math.PI * radius ** 3 * wall
  const stiffness = elasticModulus * secondMoment
  const answer: Tube = {
    mass,
    secondMoment,
    bendingStress: (tipForce * length) / (Math.PI * radius * radius * wall),
    shearStress: tipTorque / (2 * Math.PI * radius * radius * wall),
    tipDeflection: (tipForce * length ** 3) / (3 * stiffness),
    twist: (tipTorque * length) / (shearModulus * 2 * secondMoment),
    frequency: Math.sqrt((3 * stiffness) / (length ** 3 * (tipMass + ownShare * mass))) / (2 * Math.PI),
    bareFrequency: (bareRoot * Math.sqrt(stiffness / (mass * length ** 3))) / (2 * Math.PI),
    bucklingStress: bucklingStressOf(elasticModulus, radius, wall),
  }
  requireRepresentable(
    method,
    Object.values(answer).reduce((sum, value) => sum + value, 0),
  )
  if (isListening()) adviseSlenderness(method, radius, wall, length)
  return answer
}

/** Says so where the tube is too thick or too short for the formulas. */
export function adviseSlenderness(caller: string, radius: number, wall: number, length: number): void {
  if (wall > 0.2 * radius)
    advise({
      code: 'THICK_WALL',
      method: caller,
      quantity: 'wall',
      value: wall,
      range: [0, 0.2 * radius],
      message: `A wall of ${(100 * (wall / radius)).toFixed(0)} % of the radius is not thin (20 %): the tube is too slender for its loads.`,
    })
  if (length < 10 * radius)
    advise({
      code: 'SHORT_BEAM',
      method: caller,
      quantity: 'length',
      value: length,
      range: [10 * radius, null],
      message: `A length of ${(length / radius).toFixed(1)} radii is short for a slender beam (10): shear adds to its deflection.`,
    })
}

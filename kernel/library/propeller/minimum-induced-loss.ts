import { requirePositive, requireRepresentable, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Angle, Density, DynamicViscosity, Force, Length, Power, Ratio, Speed } from '../quantity.js'
import { advise, isListening } from '../recorder.js'
import type { LinearSectionOptions } from '../section/linear.js'
import { preparePolar, type Section } from '../section/prepare-polar.js'
import { type LossDesign, solveLeastLoss } from './least-loss-solution.js'

export interface MinimumInducedLossOptions {
  /** [N]; either this or `power`. */
  readonly thrust?: Force
  /** At the shaft [W]; either this or `thrust`. */
  readonly power?: Power
  /** Of flight [m/s]. */
  readonly speed: Speed
  /** [m] */
  readonly radius: Length
  /** Where the blade begins, from the axis [m]. */
  readonly rootCutout: Length
  readonly blades: Ratio
  /** Of the blades by rotation [m/s]. */
  readonly tipSpeed: Speed
  /** [kg/m^3] */
  readonly density: Density
  /** [Pa s] */
  readonly dynamicViscosity: DynamicViscosity
  /** [m/s] */
  readonly speedOfSound: Speed
  /** Lift coefficient at which every section works. */
  readonly liftCoefficient: Ratio
  /** From `section.linear` or `section.table`. */
  readonly section: Section | LinearSectionOptions
  /** Number of elements, 24 when left out. */
  readonly elements?: Ratio
}

export interface MinimumInducedLoss {
  readonly efficiency: Ratio
  /** [N] */
  readonly thrust: Force
  /** At the shaft [W]. */
  readonly power: Power
  /** [r/R, m], as the blade-element methods take it. */
  readonly chord: readonly (readonly [Ratio, Length])[]
  /** Blade angles [r/R, rad], as the blade-element methods take them. */
  readonly twist: readonly (readonly [Ratio, Angle])[]
  /** At 75 % radius [rad]. */
  readonly bladeAngle: Angle
  /** N c/(pi R) with the mean chord. */
  readonly solidity: Ratio
  /** Speed of the wake's sheets over flight speed. */
  readonly displacementRatio: Ratio
  readonly advanceRatio: Ratio
}

const method = 'propeller.minimumInducedLoss'
const known = new Set([
  'thrust',
  'power',
  'speed',
  'radius',
  'rootCutout',
  'blades',
  'tipSpeed',
  'density',
  'dynamicViscosity',
  'speedOfSound',
  'liftCoefficient',
  'section',
  'elements',
  // Not used: the whole record of air.standard may be spread into the options.
  'temperature',
  'pressure',
])
/** Above this the lightly loaded theory is stretched. */
const greatestDisplacement = 0.5

/**
 * Chord and blade angle of the propeller with the least induced loss for a thrust or a power.
 *
 * @equation zeta constant over the blade; tan phi = lambda (1 + zeta/2)/x, lambda = V/(Omega R), x = r/R; G = F (x/lambda) cos phi sin phi;
 * W c = 4 pi lambda G V R zeta/(c_l N); beta = alpha + phi; T_c = I_1 zeta - I_2 zeta^2, P_c = J_1 zeta + J_2 zeta^2 with I_1' = 4 x G (1 -
 * e tan phi), I_2' = lambda (I_1'/(2 x)) (1 + e/tan phi) sin phi cos phi, J_1' = 4 x G (1 + e/tan phi), J_2' = (J_1'/2) (1 - e tan phi) cos^2
 * phi, e = c_d/c_l; eta = T V/P
 * @param options - `thrust` T [N] or `power` P [W]; `speed` V [m/s], `radius` R [m], `rootCutout` [m], `blades` N, `tipSpeed` Omega R
 * [m/s], `density` [kg/m^3], `dynamicViscosity` [Pa s], `speedOfSound` [m/s], `liftCoefficient` c_l, `section`; optional `elements` (24)
 * @returns `efficiency` eta, `thrust` [N], `power` [W], `chord` as [r/R, m] and `twist` as [r/R, rad] for `propeller.bladeElement`,
 * `bladeAngle` at 75 % radius [rad], `solidity`, `displacementRatio` zeta, `advanceRatio` J
 * @throws InvalidInput for neither or both of thrust and power, a thrust that no propeller of this disk gives, a lift coefficient outside
 * 0.05 to 2 or one the section does not reach, a value that is not positive, and an unknown option
 * @method Betz's condition: sheets of the wake move back as if rigid. Prandtl's loss with the tip's angle. Iterated in zeta and in the drag
 * of the sections at their own Reynolds and Mach number.
 * @validity Displacement ratio up to 0.5 (light loading); above it an advisory. No optimum exists at rest.
 * @source Adkins and Liebeck, Design of Optimum Propellers, Journal of Propulsion and Power 10(5), 1994; Betz, Schraubenpropeller mit
 * geringstem Energieverlust, 1919 (both from memory).
 * @example
 * const design = propeller.minimumInducedLoss({
 *   ...air.standard(0), thrust: 1.2 * u.kN, speed: 58 * u.mps, radius: 0.9 * u.m, rootCutout: 0.15 * u.m, blades: 3,
 *   tipSpeed: 190 * u.mps, liftCoefficient: 0.6,
 *   section: { liftSlope: 5.9, minimumDrag: 0.009, zeroLiftAngle: -3 * u.deg, dragRise: 0.01 },
 * })
 * design.efficiency // 0.86194
 */
export function minimumInducedLoss(options: MinimumInducedLossOptions): MinimumInducedLoss {
  const design = readDesign(options)
  const { speed, radius, tipSpeed, density, blades } = design
  const solution = solveLeastLoss(method, design)
  const { displacement, thrustRatio, powerRatio, station, chord, angle, width } = solution
  const force = 0.5 * density * speed * speed * Math.PI * radius * radius
  const thrust = force * thrustRatio
  const power = force * speed * powerRatio
  let area = 0
  station.forEach((_, i) => {
    area += (chord[i] as number) * (width[i] as number)
  })
  const answer = {
    efficiency: thrustRatio / powerRatio,
    thrust,
    power,
    chord: Array.from(station, (x, i) => [x, chord[i] as number] as const),
    twist: Array.from(station, (x, i) => [x, angle[i] as number] as const),
    bladeAngle: at(station, angle, 0.75),
    solidity: (blades * area) / (Math.PI * radius * (1 - design.root)),
    displacementRatio: displacement,
    advanceRatio: (Math.PI * speed) / tipSpeed,
  }
  requireRepresentable(method, answer.efficiency + thrust + power + answer.solidity + answer.bladeAngle + displacement)
  if (isListening() && displacement > greatestDisplacement) adviseDisplacement(displacement)
  return answer
}

function readDesign(options: MinimumInducedLossOptions): LossDesign {
  checkOptions(method, options, known)
  const { thrust, power, speed, radius, rootCutout, blades, tipSpeed, density } = options
  const { dynamicViscosity, speedOfSound, liftCoefficient, elements = 24 } = options
  if ((thrust === undefined) === (power === undefined))
    throw new InvalidInput({
      method,
      argument: 'thrust or power',
      value: thrust === undefined ? 'missing' : 'given together with the other',
      accepted: 'one of the two',
    })
  if (thrust !== undefined) requirePositive(method, 'thrust', thrust, 'N')
  if (power !== undefined) requirePositive(method, 'power', power, 'W')
  requirePositive(method, 'speed', speed, 'm/s')
  requirePositive(method, 'radius', radius, 'm')
  requirePositive(method, 'rootCutout', rootCutout, 'm')
  requireWithin(method, 'rootCutout', rootCutout, 'm', 0, 0.9 * radius)
  requireWhole('blades', blades, 1, 100)
  requirePositive(method, 'tipSpeed', tipSpeed, 'm/s')
  requirePositive(method, 'density', density, 'kg/m^3')
  requirePositive(method, 'dynamicViscosity', dynamicViscosity, 'Pa s')
  requirePositive(method, 'speedOfSound', speedOfSound, 'm/s')
  requireWithin(method, 'liftCoefficient', liftCoefficient, '1', 0.05, 2)
  requireWhole('elements', elements, 8, 400)
  return {
    ...(thrust === undefined ? {} : { thrust }),
    ...(power === undefined ? {} : { power }),
    speed,
    radius,
    root: rootCutout / radius,
    blades,
    tipSpeed,
    density,
    dynamicViscosity,
    speedOfSound,
    liftCoefficient,
    elements,
    polar: preparePolar(method, options.section),
  }
}

function requireWhole(argument: string, value: number, low: number, high: number): void {
  if (Number.isInteger(value) && value >= low && value <= high) return
  throw new InvalidInput({
    method,
    argument,
    value: describeValue(value),
    accepted: `a whole number from ${low} to ${high}`,
  })
}

/** Linear between stations. */
function at(station: Float64Array, values: Float64Array, x: number): number {
  let i = 1
  while (i < station.length - 1 && (station[i] as number) < x) i += 1
  const [x0, x1] = [station[i - 1] as number, station[i] as number]
  const [y0, y1] = [values[i - 1] as number, values[i] as number]
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)
}

function adviseDisplacement(displacement: number): void {
  advise({
    code: 'HEAVY_LOADING',
    method,
    quantity: 'displacementRatio',
    value: displacement,
    range: [0, greatestDisplacement],
    message: `The wake is pushed back at ${displacement.toPrecision(3)} of the flight speed: the theory is for light loading (0.5). A larger disk would do better.`,
  })
}

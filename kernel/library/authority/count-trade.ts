/** How many lift rotors: for one footprint, every count and arrangement with its best spins, and what each costs. */
import { requireNonNegative, requirePositive, requireShare, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { controller, motor } from '../mass/index.js'
import { requireChoice } from '../outside.js'
import type { Area, Density, Force, Length, Mass, Power, Ratio, Speed, Torque } from '../quantity.js'
import { silently } from '../recorder.js'
import { lossChain, maintenance } from '../reliability/index.js'
import type { Axis } from './axes.js'
import type { LiftRotor } from './lift-rotor.js'
import { type SearchRow, search, usualPatterns } from './search.js'
import { readHover, trimOf } from './trim.js'

/** Two rows across, fore and aft of the wing; two booms along, one on either side; a ring. */
export type Arrangement = 'rows' | 'booms' | 'ring'

export interface CountTradeOptions {
  /** Even numbers from 4 to 16; all of them when left out. */
  readonly counts?: readonly Ratio[]
  /** All three when left out. */
  readonly arrangements?: readonly Arrangement[]
  /** Along and across the aircraft, within which all discs lie [m]. */
  readonly footprint: { readonly length: Length; readonly width: Length }
  /** [N] */
  readonly weight: Force
  /** [kg/m^3] */
  readonly density: Density
  readonly figureOfMerit: Ratio
  /** [m/s] */
  readonly tipSpeed: Speed
  /** Between discs, of a diameter; 0.05 when left out. */
  readonly gap?: Ratio
  readonly hold?: readonly Axis[]
  /** Outward lateral cants to try [rad]; upright when left out. */
  readonly outwardCants?: readonly Ratio[]
  /** Share of the greatest thrust that trim may use; 0.9 when left out, for steering. */
  readonly usableShare?: Ratio
  /** Gross mass [kg] of a count by the user's own closure; the weight given when left out. */
  readonly grossMass?: (candidate: Candidate) => Mass
  /** Probability that a unit fails in a flight: a user's number; none when left out. */
  readonly unitFailure?: Ratio
  /** In any currency: a user's numbers. */
  readonly cost?: { readonly perUnit: Ratio; readonly perKilogram: Ratio }
  /** Motors, controllers, rotors and what else each lift unit counts; 4 when left out. */
  readonly partsPerUnit?: Ratio
}

/** What the count and the plan say before masses are known. */
export interface Candidate {
  readonly count: Ratio
  readonly arrangement: Arrangement
  readonly radius: Length
  readonly discArea: Area
  /** Rating over normal hover, the usable share in it. */
  readonly thrustToHover: Ratio
  readonly torqueToHover: Ratio
  readonly powerToHover: Ratio
}

export interface CountRow extends Candidate {
  readonly pattern: string
  readonly outwardCant: Ratio
  /** Losses that are trimmed and steerable, of as many. */
  readonly held: Ratio
  readonly of: Ratio
  readonly steerable: boolean
  readonly peakShare: Ratio
  readonly grossMass: Mass
  readonly hoverPower: Power
  /** Of all motors and of all controllers [kg]. */
  readonly motorMass: Mass
  readonly controllerMass: Mass
  /** Of one motor, greatest [N m]. */
  readonly peakTorque: Torque
  readonly parts: Ratio
  readonly cost?: Ratio
  /** Probability of losing lift or steering in a flight. */
  readonly lossOfLift?: Ratio
  /** Probability that some unit fails in a flight. */
  readonly anyFailure?: Ratio
  readonly rotors: readonly LiftRotor[]
}

const method = 'authority.countTrade'
const known = new Set([
  'counts',
  'arrangements',
  'footprint',
  'weight',
  'density',
  'figureOfMerit',
  'tipSpeed',
  'gap',
  'hold',
  'outwardCants',
  'usableShare',
  'grossMass',
  'unitFailure',
  'cost',
  'partsPerUnit',
])
const standardGravity = 9.80665
const allCounts: readonly number[] = [4, 6, 8, 10, 12, 14, 16]
const allArrangements: readonly Arrangement[] = ['rows', 'booms', 'ring']

/**
 * Rotor count traded within a footprint: disc area, hover power, peak after a loss, motor and controller mass, parts, cost, and the chance
 * of losing lift, for every arrangement at its best spin pattern.
 *
 * @equation P = W^(3/2)/(FM sqrt(2 rho n pi R^2)); Q/T = R v_i/(FM V_tip); rating r = n t/(W s) of the best pattern; motor by hover torque
 * and r times it, controller by r^(3/2) times hover power
 * @param options - `footprint` `{ length, width }` [m], `weight` [N], `density` [kg/m^3], `figureOfMerit`, `tipSpeed` [m/s]; optional `counts` (4
 * to 16, even), `arrangements` ('rows', 'booms', 'ring'), `gap` (0.05), `hold`, `outwardCants` [rad] (0), `usableShare` s (0.9),
 * `grossMass(candidate)` [kg], `unitFailure`, `cost` `{ perUnit, perKilogram }`, `partsPerUnit` (4)
 * @returns a row per count and arrangement: geometry, `pattern`, `held` of `of` losses, `steerable`, `peakShare`, ratios over hover, `grossMass`,
 * `hoverPower`, `motorMass`, `controllerMass` (all units), `peakTorque`, `parts`, `cost`, `lossOfLift` and `anyFailure` where asked for, `rotors`
 * @throws InvalidInput for counts that are not even from 4 to 16, an unknown arrangement, sizes that are not positive, a gross mass that is
 * none, and an unknown option
 * @method Best pattern by `authority.search`. The chance of loss follows the trims of up to two losses with motors of that rating: a loss that
 * cannot be trimmed and steered about the held axes is a loss of lift, and so is a third one.
 * @validity Discs side by side without interference; body and wing may forbid a place. Motor and controller by the default methods of `mass`.
 * @source Momentum theory; `authority.search`, `mass.motor`, `mass.controller`, `reliability.lossChain`.
 * @example
 * const rows = authority.countTrade({
 *   counts: [8], arrangements: ['ring'], footprint: { length: 12 * u.m, width: 12 * u.m }, weight: 16 * u.kN, density: 1.1, figureOfMerit: 0.7, tipSpeed: 150 * u.mps,
 * })
 * rows[0].peakShare // 0.16667
 */
export function countTrade(options: CountTradeOptions): CountRow[] {
  checkOptions(method, options, known)
  const { counts, arrangements } = readTrade(options)
  return silently(() =>
    counts.flatMap((count) => arrangements.map((arrangement) => tradeOne(options, count, arrangement))),
  )
}

function readTrade(options: CountTradeOptions) {
  const { counts = allCounts, arrangements = allArrangements, footprint, gap = 0.05, usableShare = 0.9 } = options
  if (!Array.isArray(counts) || counts.length === 0 || !counts.every((count) => allCounts.includes(count)))
    throw new InvalidInput({
      method,
      argument: 'counts',
      value: describeValue(counts),
      accepted: `a list of some of ${allCounts.join(', ')}`,
    })
  if (!Array.isArray(arrangements) || arrangements.length === 0)
    throw new InvalidInput({
      method,
      argument: 'arrangements',
      value: describeValue(arrangements),
      accepted: `a list of some of ${allArrangements.join(', ')}`,
    })
  arrangements.forEach((one, at) => {
    requireChoice(method, `arrangements[${at}]`, one, allArrangements)
  })
  checkOptions(`${method} footprint`, footprint, new Set(['length', 'width']))
  for (const side of ['length', 'width'] as const) {
    requirePositive(method, `footprint.${side}`, footprint[side], 'm')
    requireWithin(method, `footprint.${side}`, footprint[side], 'm', 0.01, 1000)
  }
  requireWithin(method, 'weight', options.weight, 'N', 0.01, 1e8)
  requireWithin(method, 'density', options.density, 'kg/m^3', 0.01, 100)
  requireShare(method, 'figureOfMerit', options.figureOfMerit)
  requireWithin(method, 'figureOfMerit', options.figureOfMerit, '1', 0.01, 1)
  requireWithin(method, 'tipSpeed', options.tipSpeed, 'm/s', 1, 400)
  requireWithin(method, 'gap', gap, '1', 0, 2)
  requireWithin(method, 'usableShare', usableShare, '1', 0.1, 1)
  requireWithin(method, 'partsPerUnit', options.partsPerUnit ?? 4, '1', 0, 1e6)
  if (options.unitFailure !== undefined) requireWithin(method, 'unitFailure', options.unitFailure, '1', 0, 1)
  if (options.grossMass !== undefined && typeof options.grossMass !== 'function')
    throw new InvalidInput({
      method,
      argument: 'grossMass',
      value: describeValue(options.grossMass),
      accepted: 'a function of a candidate that answers a gross mass [kg]',
    })
  if (options.cost !== undefined) {
    checkOptions(`${method} cost`, options.cost, new Set(['perUnit', 'perKilogram']))
    for (const name of ['perUnit', 'perKilogram'] as const) {
      requireNonNegative(method, `cost.${name}`, options.cost[name], '1')
      requireWithin(method, `cost.${name}`, options.cost[name], '1', 0, 1e15)
    }
  }
  return { counts, arrangements }
}

/** Places and radius of the largest discs that fit. */
function place(
  count: number,
  arrangement: Arrangement,
  { length, width }: { readonly length: number; readonly width: number },
  gap: number,
): { readonly radius: number; readonly places: readonly (readonly [number, number])[] } {
  const spread = 1 + gap
  if (arrangement === 'ring') {
    const half = Math.min(length, width) / 2
    const sine = Math.sin(Math.PI / count)
    const radius = (half * sine) / (spread + sine)
    // Turned by half a step, so that the ring is alike left and right and no rotor stands before the nose.
    const places = Array.from({ length: count }, (_, at) => {
      const angle = (2 * Math.PI * (at + 0.5)) / count
      return [(half - radius) * Math.cos(angle), (half - radius) * Math.sin(angle)] as const
    })
    return { radius, places }
  }
  const inLine = count / 2
  const [along, across] = arrangement === 'booms' ? [length, width] : [width, length]
  const radius = Math.min(along / (2 * (1 + (inLine - 1) * spread)), across / (2 * (1 + spread)))
  const step = inLine > 1 ? (along - 2 * radius) / (inLine - 1) : 0
  const places = Array.from({ length: count }, (_, at) => {
    const here = step * ((at % inLine) - (inLine - 1) / 2)
    const there = (at < inLine ? 1 : -1) * (across / 2 - radius)
    return arrangement === 'booms' ? ([0 - here, there] as const) : ([there, here] as const)
  })
  return { radius, places }
}

function tradeOne(options: CountTradeOptions, count: number, arrangement: Arrangement): CountRow {
  const { density, figureOfMerit, tipSpeed, footprint, gap = 0.05, usableShare = 0.9 } = options
  const { radius, places } = place(count, arrangement, footprint, gap)
  const discArea = count * Math.PI * radius * radius
  const induced = (weight: number) => Math.sqrt(weight / (2 * density * discArea))
  const torqueRatioAt = (weight: number) => (radius * induced(weight)) / (figureOfMerit * tipSpeed)
  const torqueRatio = torqueRatioAt(options.weight)
  const plan = places.map(([x, y]): LiftRotor => ({ x, y, spin: 1, maxThrust: 1, torqueRatio, radius }))
  const found = searchPlan(options, plan)
  const ratio = found.thrustToHover / usableShare
  const candidate: Candidate = {
    count,
    arrangement,
    radius,
    discArea,
    thrustToHover: ratio,
    torqueToHover: ratio,
    powerToHover: ratio ** 1.5,
  }
  const grossMass = readGrossMass(options, candidate)
  const weight = grossMass * standardGravity
  const hoverPower = (weight * induced(weight)) / figureOfMerit
  const torque = (torqueRatioAt(weight) * weight) / count
  const motorMass = count * motor({ torque, peakTorque: ratio * torque })
  const controllerMass = count * controller({ power: (hoverPower / count) * ratio ** 1.5 })
  const { cost, partsPerUnit = 4 } = options
  return {
    ...candidate,
    pattern: found.pattern,
    outwardCant: found.outwardCant,
    held: found.held,
    of: found.of,
    steerable: found.steerable,
    peakShare: found.peakShare,
    grossMass,
    hoverPower,
    motorMass,
    controllerMass,
    peakTorque: ratio * torque,
    parts: count * partsPerUnit,
    ...(cost === undefined ? {} : { cost: count * cost.perUnit + (motorMass + controllerMass) * cost.perKilogram }),
    ...chances(options, found, ratio),
    rotors: found.rotors.map((rotor) => ({ ...rotor, maxThrust: (ratio * weight) / count })),
  }
}

/** The best pattern; beyond eight rotors a handful that alternate in ones, twos and threes stand for all, to be quick. */
function searchPlan(options: CountTradeOptions, plan: readonly LiftRotor[]): SearchRow {
  const { weight, hold, outwardCants } = options
  const patterns = plan.length <= 8 ? usualPatterns(plan) : regularPatterns(plan)
  const { rows } = search({
    rotors: plan,
    weight,
    patterns,
    keep: 1,
    ...(hold === undefined ? {} : { hold }),
    ...(outwardCants === undefined ? {} : { outwardCants }),
  })
  return rows[0] as SearchRow
}

/** Alternating along the list in ones, twos and threes, and the same with mirror images turning opposite. */
function regularPatterns(plan: readonly LiftRotor[]): number[][] {
  const count = plan.length
  const run = (length: number) => Array.from({ length: count }, (_, at) => (Math.floor(at / length) % 2 === 0 ? 1 : -1))
  const side = (length: number) => {
    const order = plan.map((rotor) => rotor.x).sort((one, other) => other - one)
    return plan.map((rotor) => {
      const rank = Math.floor(order.findIndex((x) => Math.abs(x - rotor.x) < 1e-9) / 2 / length)
      const way = rank % 2 === 0 ? 1 : -1
      return rotor.y < 0 ? way : -way
    })
  }
  const all = [run(1), run(2), run(3), run(count / 2), side(1), side(2)]
  const balanced = all.filter((spins) => spins.reduce((sum, spin) => sum + spin, 0) === 0)
  return balanced.filter((spins, at) => balanced.findIndex((other) => other.join() === spins.join()) === at)
}

function readGrossMass(options: CountTradeOptions, candidate: Candidate): number {
  if (options.grossMass === undefined) return options.weight / standardGravity
  const mass = options.grossMass(candidate)
  requirePositive(method, `grossMass of ${candidate.count} rotors in ${candidate.arrangement}`, mass, 'kg')
  requireWithin(method, `grossMass of ${candidate.count} rotors in ${candidate.arrangement}`, mass, 'kg', 1e-3, 1e7)
  return mass
}

/** Per flight: the unit failure stands for rate times time. */
function chances(
  options: CountTradeOptions,
  found: SearchRow,
  ratio: number,
): { readonly lossOfLift?: number; readonly anyFailure?: number } {
  const { unitFailure, weight, hold } = options
  if (unitFailure === undefined) return {}
  const count = found.rotors.length
  const rated = found.rotors.map((rotor) => ({ ...rotor, maxThrust: (ratio * weight) / count }))
  const hover = readHover(method, { rotors: rated, weight, ...(hold === undefined ? {} : { hold }) })
  const survives = (lost: readonly number[]) => trimOf(hover, new Set(lost)).controllable
  const { failure } = lossChain({ of: count, rate: unitFailure as number, time: 1, survives, upTo: 2 })
  return { lossOfLift: failure, anyFailure: maintenance({ of: count, unitFailure }).anyFailure }
}

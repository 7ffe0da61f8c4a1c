/** Losses that take several rotors at once: of a branch, a bus or a battery, read from who feeds whom. */
import { requireNonNegative, requireWithin } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import type { Ratio } from '../quantity.js'
import { worse } from './losses.js'
import { type Hover, type HoverOptions, knownHover, readHover, type Trim, trimOf } from './trim.js'

export interface ElectricalLossesOptions extends HoverOptions {
  /** One row per rotor, one column per bus: the share of the rotor's greatest power that this bus can give. */
  readonly feeds: readonly (readonly Ratio[])[]
  /** One row per bus, one column per battery, alike; a battery for each bus when left out. */
  readonly batteries?: readonly (readonly Ratio[])[]
}

export interface ElectricalLoss extends Trim {
  /** A rotor with its motor; a branch with its controller; a bus; a battery. */
  readonly kind: 'rotor' | 'branch' | 'bus' | 'battery'
  /** `bus 2 to rotor 5`, counted from 0. */
  readonly name: string
  /** Share of its greatest power left to each rotor. */
  readonly powerLeft: readonly Ratio[]
  /** Rotors that stand still. */
  readonly lost: readonly number[]
  /** Power of each battery over the mean of the intact hover; a lost one 0. */
  readonly batteryLoads: readonly Ratio[]
  /** Largest thrust over the mean of normal hover. */
  readonly peakToHover: Ratio
}

export interface ElectricalLosses {
  readonly cases: readonly ElectricalLoss[]
  /** The gravest: most axes given up, then not steerable, then the greatest peak. */
  readonly worst: ElectricalLoss
  readonly feasible: Ratio
  readonly controllable: Ratio
  /** Greatest power of a battery over the mean of the intact hover. */
  readonly greatestBatteryLoad: Ratio
  /** n/(n - 1): what n batteries would carry alike with one lost. */
  readonly evenBatteryLoad: Ratio
}

const method = 'authority.electricalLosses'
const known = new Set([...knownHover, 'feeds', 'batteries'])
type Matrix = readonly (readonly number[])[]

/**
 * Every single electrical loss: of a rotor, of a branch with its controller, of a bus and of a battery, each trimmed.
 *
 * @equation power left to rotor i = min(1, sum over live buses of A_ib min(1, sum over live batteries of B_bp)); its greatest thrust
 * goes with (power left)^(2/3); load of a battery: sum of T^(3/2) through its feeds over the intact mean
 * @param options - as `authority.losses`; `feeds` A: a row per rotor, a column per bus, the share of the rotor's greatest power that the bus can
 * give (1 and 0; 0.5 and 0.5 for two windings; 1 and 1 where either will do); `batteries` B: a row per bus, a column per battery (one each)
 * @returns `cases`: trims with `kind`, `name`, `powerLeft` and `lost`, `batteryLoads`, `peakToHover`; the `worst`, how many are `feasible` and
 * `controllable`; `greatestBatteryLoad`, and `evenBatteryLoad` n/(n - 1) (absent batteries share nothing: n = 1 gives 1)
 * @throws InvalidInput as `authority.trim`, for matrices of another shape, shares outside 0 to 1, a rotor or bus that nothing feeds, and an unknown option
 * @method Powers by momentum theory at equal radii; a rotor's power comes from its live feeds in proportion to their shares.
 * @validity One controller for each branch. What a short circuit does to its neighbours is not in the matrices.
 * @source Incidence of sources and loads: elementary; thrust with power^(2/3): momentum theory.
 * @example
 * const eight = [1, -1, 1, -1, 1, -1, 1, -1].map((spin, i) => ({
 *   x: 3 * Math.cos((i * Math.PI) / 4), y: 3 * Math.sin((i * Math.PI) / 4), spin, maxThrust: 5 * u.kN, torqueRatio: 0.1,
 * }))
 * const opposite = [0, 1, 2, 3, 0, 1, 2, 3].map((bus) => [0, 1, 2, 3].map((column) => (column === bus ? 1 : 0)))
 * const seen = authority.electricalLosses({ rotors: eight, weight: 16 * u.kN, feeds: opposite })
 * seen.evenBatteryLoad // 1.3333
 */
export function electricalLosses(options: ElectricalLossesOptions): ElectricalLosses {
  checkOptions(method, options, known)
  const hover = readHover(method, options)
  const feeds = readMatrix('feeds', options.feeds, hover.rotors.length)
  const buses = feeds[0]?.length ?? 0
  const identity = Array.from({ length: buses }, (_, row) =>
    Array.from({ length: buses }, (_, column) => (row === column ? 1 : 0)),
  )
  const batteries = readMatrix('batteries', options.batteries ?? identity, buses)
  const intact = loadsOf(feeds, batteries, trimOf(hover, new Set()).thrusts)
  const mean = intact.reduce((sum, load) => sum + load, 0) / intact.length
  const cases = failures(feeds, batteries).map((failure) => trimFailure(hover, failure, mean))
  const count = intact.length
  return {
    cases,
    worst: cases.reduce(worse),
    feasible: cases.filter((one) => one.feasible).length,
    controllable: cases.filter((one) => one.controllable).length,
    greatestBatteryLoad: Math.max(...cases.flatMap((one) => one.batteryLoads)),
    evenBatteryLoad: count > 1 ? count / (count - 1) : 1,
  }
}

interface Failure {
  readonly kind: ElectricalLoss['kind']
  readonly name: string
  readonly feeds: Matrix
  readonly batteries: Matrix
}

/** Each failure as the matrices without what failed. */
function failures(feeds: Matrix, batteries: Matrix): Failure[] {
  const without = (matrix: Matrix, gone: (row: number, column: number) => boolean): Matrix =>
    matrix.map((row, at) => row.map((share, column) => (gone(at, column) ? 0 : share)))
  const list = (count: number) => Array.from({ length: count }, (_, at) => at)
  return [
    ...feeds.map(
      (_, rotor): Failure => ({
        kind: 'rotor',
        name: `rotor ${rotor}`,
        feeds: without(feeds, (row) => row === rotor),
        batteries,
      }),
    ),
    ...feeds.flatMap((row, rotor) =>
      row.flatMap((share, bus): Failure[] =>
        share === 0
          ? []
          : [
              {
                kind: 'branch',
                name: `bus ${bus} to rotor ${rotor}`,
                feeds: without(feeds, (at, column) => at === rotor && column === bus),
                batteries,
              },
            ],
      ),
    ),
    ...batteries.map(
      (_, bus): Failure => ({
        kind: 'bus',
        name: `bus ${bus}`,
        feeds: without(feeds, (_row, column) => column === bus),
        batteries,
      }),
    ),
    ...list(batteries[0]?.length ?? 0).map(
      (battery): Failure => ({
        kind: 'battery',
        name: `battery ${battery}`,
        feeds,
        batteries: without(batteries, (_row, column) => column === battery),
      }),
    ),
  ]
}

function trimFailure(hover: Hover, { kind, name, feeds, batteries }: Failure, mean: number): ElectricalLoss {
  const left = powerLeft(feeds, batteries)
  const limits = hover.limits.map((limit, at) => limit * (left[at] as number) ** (2 / 3))
  const lost = left.flatMap((share, at) => (share > 0 ? [] : [at]))
  const found = trimOf(hover, new Set(lost), limits)
  return {
    kind,
    name,
    ...found,
    powerLeft: left,
    lost,
    // Where not even the intact aircraft lifts anything there is nothing to compare with.
    batteryLoads: loadsOf(feeds, batteries, found.thrusts).map((load) => (mean > 0 ? load / mean : 0)),
    peakToHover: found.degradedPeakShare * hover.rotors.length,
  }
}

const sum = (row: readonly number[]) => row.reduce((total, share) => total + share, 0)
const busesLive = (batteries: Matrix) => batteries.map((row) => Math.min(1, sum(row)))

function powerLeft(feeds: Matrix, batteries: Matrix): number[] {
  const live = busesLive(batteries)
  return feeds.map((row) => Math.min(1, sum(row.map((share, bus) => share * (live[bus] as number)))))
}

/** Power drawn from each battery, in newtons to the power 3/2. */
function loadsOf(feeds: Matrix, batteries: Matrix, thrusts: readonly number[]): number[] {
  const live = busesLive(batteries)
  const loads = new Array<number>(batteries[0]?.length ?? 0).fill(0)
  feeds.forEach((row, rotor) => {
    const through = row.map((share, bus) => share * (live[bus] as number))
    const all = sum(through)
    if (all === 0) return
    through.forEach((share, bus) => {
      const power = ((thrusts[rotor] as number) ** 1.5 * share) / all
      const of = batteries[bus] as readonly number[]
      const given = sum(of)
      if (given === 0) return
      of.forEach((part, battery) => {
        loads[battery] = (loads[battery] as number) + (power * part) / given
      })
    })
  })
  return loads
}

function readMatrix(argument: string, matrix: Matrix, rows: number): Matrix {
  const columns = Array.isArray(matrix) && Array.isArray(matrix[0]) ? matrix[0].length : 0
  const shaped =
    Array.isArray(matrix) &&
    matrix.length === rows &&
    columns >= 1 &&
    columns <= 100 &&
    matrix.every((row) => Array.isArray(row) && row.length === columns)
  if (!shaped)
    throw new InvalidInput({
      method,
      argument,
      value: describeValue(matrix),
      accepted: `a list of ${rows} rows of equal length, 1 to 100`,
    })
  matrix.forEach((row: readonly number[], at: number) => {
    row.forEach((share, column) => {
      requireNonNegative(method, `${argument}[${at}][${column}]`, share, '1')
      requireWithin(method, `${argument}[${at}][${column}]`, share, '1', 0, 1)
    })
    if (!(sum(row) >= 1e-6))
      throw new InvalidInput({
        method,
        argument: `${argument}[${at}]`,
        value: 'fed by nothing',
        accepted: 'a row with at least one share above 0',
      })
  })
  return matrix
}

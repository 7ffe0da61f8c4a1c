/** Shares of the variance for correlated assumptions: Shapley effects. */
import type { Point, Share } from '../../../../shared/contracts/index.js'
import { Chance } from './chance.js'
import { cholesky, multiplyLower, solveLower } from './cholesky.js'
import { bootstrap, type Design, type Row } from './design.js'
import type { Samples } from './samples.js'

/**
 * Each row takes a random order of the assumptions and redraws the first, the first two ... all of them, given the others; what the
 * half squared difference from the sample grows by is the share of the one redrawn last. Rows go in pairs of opposite orders.
 *
 * Given the others is exact here: with the assumptions written so that those redrawn come last, z = L e, and new e at the end
 * of the list leave the beginning as it is.
 *
 * @equation Sh_i = mean over orders of c(J + i) - c(J), divided by V; c(J) = E[Var(f | all but J)] = E[(f - f_J)^2]/2,
 *   f_J with J redrawn given the others
 * @source Song, E., Nelson, B. L., Staum, J., "Shapley effects for global sensitivity analysis: theory and computation", SIAM/ASA
 *   Journal on Uncertainty Quantification 4 (2016) 1060-1083 (effects, random orders, this c); Goda, T., "A simple algorithm for
 *   global sensitivity analysis with Shapley effects", Reliability Engineering and System Safety 213 (2021) 107702 (one redraw
 *   along the order; there for independent inputs)
 */
export function shapleyDesign(samples: Samples, reaching?: readonly string[]): Design {
  const names = samples.inputs.uncertain.map(({ name }) => name)
  const players = playersOf(samples, reaching)
  return {
    method: 'Shapley effects',
    runsPerRow: players.length,
    points: (row) => pointsOf(samples, row, orderOf(samples.seed, row, players)),
    estimate: (rows) => {
      const orders = rows.map((_, row) => orderOf(samples.seed, row, players))
      return estimate(rows, orders, names, players, samples.seed)
    },
  }
}

/** One that cannot reach the number still has a share if it goes along with one that can. */
function playersOf({ inputs: { uncertain, correlations } }: Samples, reaching?: readonly string[]): readonly number[] {
  const size = uncertain.length
  return uncertain.flatMap(({ name }, at) => {
    const correlated = uncertain.some((_, other) => other !== at && correlations.matrix[at * size + other] !== 0)
    return reaching === undefined || reaching.includes(name) || correlated ? [at] : []
  })
}

function orderOf(seed: number, row: number, players: readonly number[]): readonly number[] {
  const order = new Chance((seed + Math.imul((row >>> 1) + 1, 0x85ebca6b)) >>> 0)
    .permutation(players.length)
    .map((at) => players[at] as number)
  return row % 2 === 0 ? order : order.reverse()
}

/** The first redrawn, the first two ... all. */
function pointsOf(samples: Samples, row: number, order: readonly number[]): readonly Point[] {
  const { root } = samples.inputs.correlations
  const size = samples.inputs.uncertain.length
  const normals = multiplyLower(root, samples.independentNormals(row, 0))
  const fresh = samples.independentNormals(row, 1)
  const written = [...others(size, order), ...order.toReversed()]
  const turned = cholesky(permuted(samples.inputs.correlations.matrix, size, written), size) as Float64Array
  const kept = solveLower(
    turned,
    Float64Array.from(written, (at) => normals[at] as number),
  )
  return order.map((_, redrawn) => {
    const mixed = kept.slice()
    for (let at = size - 1 - redrawn; at < size; at += 1) mixed[at] = fresh[written[at] as number] as number
    const values = multiplyLower(turned, mixed)
    const back = new Float64Array(size)
    written.forEach((to, at) => {
      back[to] = values[at] as number
    })
    return samples.pointAt(back)
  })
}

function others(size: number, order: readonly number[]): readonly number[] {
  return Array.from({ length: size }, (_, at) => at).filter((at) => !order.includes(at))
}

function permuted(matrix: Float64Array, size: number, order: readonly number[]): Float64Array {
  const turned = new Float64Array(size * size)
  order.forEach((from, row) => {
    order.forEach((other, column) => {
      turned[row * size + column] = matrix[from * size + other] as number
    })
  })
  return turned
}

function estimate(
  rows: readonly Row[],
  orders: readonly (readonly number[])[],
  names: readonly string[],
  players: readonly number[],
  seed: number,
): readonly Share[] {
  const gains = rows.flatMap((row, at) => gainsOf(row, orders[at] as readonly number[], names.length) ?? [])
  if (gains.length < 2) return []
  const estimates = bootstrap(gains, seed, (some) => sharesOf(some, names.length))
  return players.map((player) => ({
    name: names[player] as string,
    fair: estimates[player] as NonNullable<Share['fair']>,
  }))
}

/** What each player added in one row; undefined where a run gave no number, since what it added then is not known. */
function gainsOf({ sample, values }: Row, order: readonly number[], size: number): readonly Float64Array[] | undefined {
  const gains = new Float64Array(size)
  let before = 0
  for (const [at, player] of order.entries()) {
    const half = (sample - (values[at] as number)) ** 2 / 2
    if (!Number.isFinite(half)) return undefined
    gains[player] = half - before
    before = half
  }
  return [gains]
}

/** All gains together are the variance, so that the shares sum to 1. */
function sharesOf(gains: readonly Float64Array[], size: number): Float64Array {
  const sums = new Float64Array(size)
  let all = 0
  for (const row of gains)
    for (let at = 0; at < size; at += 1) {
      sums[at] = (sums[at] as number) + (row[at] as number)
      all += row[at] as number
    }
  return all > 0 ? sums.map((sum) => sum / all) : sums.fill(0)
}

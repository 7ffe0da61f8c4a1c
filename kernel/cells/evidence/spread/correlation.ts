/** Stated rank correlations as one matrix of the normal copula, or a sentence why there can be none. */
import type { AssumptionRecord } from '../../../../shared/contracts/index.js'
import { EvidenceTrouble } from '../trouble.js'
import { cholesky } from './cholesky.js'

export interface Correlations {
  /** Between the standard normal numbers, rows one after another, in the order of the names. */
  readonly matrix: Float64Array
  /** Its lower triangle L with L L' = matrix. */
  readonly root: Float64Array
  /** Some pair is correlated. */
  readonly any: boolean
}

type Stated = ReadonlyMap<string, ReadonlyMap<string, number>>

/**
 * @equation r = 2 sin(pi rho/6), rho the rank correlation (Spearman) and r the correlation of the normal numbers
 * @param names - assumptions that are sampled, in the order of the matrix
 * @param assumptions - all of the notebook
 * @throws EvidenceTrouble for a partner that is unknown or not sampled, a pair stated in two ways, pairs that cannot hold together
 * @source Kruskal, W. H., "Ordinal measures of association", Journal of the American Statistical Association 53 (1958) 814-861
 *   (ranks of a bivariate normal); Clemen, R. T., Reilly, T., "Correlations and copulas for decision and risk analysis", Management
 *   Science 45 (1999) 208-224 (the copula)
 */
export function readCorrelations(names: readonly string[], assumptions: readonly AssumptionRecord[]): Correlations {
  const stated = statedPairs(names, assumptions)
  const matrix = matrixOf(names, stated, 1)
  const root = cholesky(matrix, names.length)
  if (root === undefined) throw contradiction(names, stated)
  return { matrix, root, any: stated.size > 0 }
}

function statedPairs(names: readonly string[], assumptions: readonly AssumptionRecord[]): Stated {
  const pairs = new Map<string, Map<string, number>>()
  for (const { name, correlated = {} } of assumptions)
    for (const [other, rho] of Object.entries(correlated)) {
      checkPartner(name, other, names, assumptions)
      const [one, two] = name < other ? [name, other] : [other, name]
      const row = pairs.get(one) ?? new Map<string, number>()
      const earlier = row.get(two)
      if (earlier !== undefined && earlier !== rho)
        throw new EvidenceTrouble('CORRELATION_TWICE', { name: one, other: two, first: earlier, second: rho })
      pairs.set(one, row.set(two, rho))
    }
  return pairs
}

function checkPartner(
  name: string,
  other: string,
  names: readonly string[],
  assumptions: readonly AssumptionRecord[],
): void {
  if (!assumptions.some((one) => one.name === other))
    throw new EvidenceTrouble('CORRELATION_UNKNOWN', { name, other, known: names.join(', ') || 'none' })
  if (!names.includes(other)) throw new EvidenceTrouble('CORRELATION_OF_HELD', { name, other })
  if (!names.includes(name)) throw new EvidenceTrouble('CORRELATION_OF_HELD', { name: other, other: name })
}

/** `share` multiplies every rank correlation. */
function matrixOf(names: readonly string[], stated: Stated, share: number): Float64Array {
  const size = names.length
  const matrix = new Float64Array(size * size)
  names.forEach((name, row) => {
    matrix[row * size + row] = 1
    for (const [other, rho] of stated.get(name) ?? []) {
      const column = names.indexOf(other)
      if (column < 0) continue
      const r = 2 * Math.sin((Math.PI * rho * share) / 6)
      matrix[row * size + column] = r
      matrix[column * size + row] = r
    }
  })
  return matrix
}

/** The fewest names whose pairs already contradict one another, and by how much all must be weakened. */
function contradiction(names: readonly string[], stated: Stated): EvidenceTrouble {
  const fits = (some: readonly string[], share: number) =>
    cholesky(matrixOf(some, stated, share), some.length) !== undefined
  let culprits = [...names]
  for (const name of names) {
    const without = culprits.filter((one) => one !== name)
    if (!fits(without, 1)) culprits = without
  }
  const pairs = culprits.flatMap((name) =>
    [...(stated.get(name) ?? [])]
      .filter(([other]) => culprits.includes(other))
      .map(([other, rho]) => `${name} and ${other} ${rho}`),
  )
  let share = 1
  while (share > 0 && !fits(culprits, share)) share = Math.round(share * 100 - 1) / 100
  return new EvidenceTrouble('CORRELATIONS_CONTRADICT', { pairs: pairs.join(', '), share })
}

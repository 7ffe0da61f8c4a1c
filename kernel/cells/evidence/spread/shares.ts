/** Which assumptions share the variance of a number: Sobol indices where they are independent, Shapley effects where not. */
import { headlineShare, type Share, type Shares } from '../../../../shared/contracts/index.js'
import { evaluateInBatches, numberAt, type Tools } from '../evaluation.js'
import type { Design, Row } from './design.js'
import type { Samples } from './samples.js'
import { shapleyDesign } from './shapley-effects.js'
import { sobolDesign } from './sobol-indices.js'

export interface SharesRequest {
  readonly target: string
  /** Names that can reach the number at all, where known; the others cost nothing. */
  readonly reaching?: readonly string[]
  /** Half the width of the 95 % intervals that is good enough. */
  readonly within?: number
  readonly mostRows?: number
}

export interface SharesTools extends Tools {
  /** The answer so far, whenever the rows have doubled. */
  readonly onShares?: (shares: Shares) => void
}

const firstRows = 64

/** House convention: shares are read as "a third" or "a tenth", and rows beyond these cost minutes. */
export const sharesDefaults = { within: 0.05, mostRows: 1024 } as const

/** Rows double until the intervals are narrow enough; each stage keeps the rows of the one before. */
export async function runShares(request: SharesRequest, samples: Samples, tools: SharesTools): Promise<Shares> {
  const mostRows = request.mostRows ?? sharesDefaults.mostRows
  const makeDesign = samples.inputs.correlations.any ? shapleyDesign : sobolDesign
  const design = makeDesign(samples, request.reaching)
  const rows: Row[] = []
  for (let count = Math.min(firstRows, mostRows); ; count = Math.min(count * 2, mostRows)) {
    const complete = await extendRows(design, rows, count, { request, samples, tools })
    const shares = describe(design, rows, samples, request, !complete)
    tools.onShares?.(shares)
    if (!complete || shares.settled || count === mostRows) return shares
  }
}

interface Setting {
  readonly request: SharesRequest
  readonly samples: Samples
  readonly tools: SharesTools
}

/** False when it was stopped; a row begun but not finished is left out. */
async function extendRows(
  { runsPerRow, points }: Design,
  rows: Row[],
  count: number,
  { request: { target }, samples, tools }: Setting,
): Promise<boolean> {
  const before = rows.length
  const { evaluateMany, signal } = tools
  const quiet: Tools = { evaluateMany, ...(signal === undefined ? {} : { signal }) }
  if (!(await samples.extend(count, quiet))) return false
  const asked = Array.from({ length: count - before }, (_, at) => points(before + at)).flat()
  const values: number[] = []
  const complete = await evaluateInBatches(asked, tools, (_, outcomes) => {
    for (const outcome of outcomes) values.push(numberAt(outcome, target) ?? Number.NaN)
    tools.onProgress?.(before * runsPerRow + values.length, count * runsPerRow)
  })
  const whole = complete ? count - before : Math.floor(values.length / runsPerRow)
  for (let at = 0; at < whole; at += 1) {
    const outcome = samples.outcomes[before + at]
    const sample = outcome === undefined ? undefined : numberAt(outcome, target)
    const own = Float64Array.from(values.slice(at * runsPerRow, (at + 1) * runsPerRow))
    rows.push({ sample: sample ?? Number.NaN, values: own })
  }
  return complete
}

function describe(
  design: Design,
  rows: readonly Row[],
  samples: Samples,
  { target, within = sharesDefaults.within }: SharesRequest,
  stopped: boolean,
): Shares {
  const found = new Map(design.estimate(rows).map((share) => [share.name, share]))
  const shares = samples.inputs.uncertain
    .map(({ name }) => found.get(name) ?? noShare(name, design.method))
    .sort((one, other) => headlineShare(other).value - headlineShare(one).value)
  const widest = Math.max(0, ...shares.map(headlineShare).map(({ low, high }) => (high - low) / 2))
  return {
    target,
    method: design.method,
    shares,
    rows: rows.length,
    runs: rows.length * design.runsPerRow,
    missing: rows.reduce((sum, row) => sum + row.values.filter(Number.isNaN).length, 0),
    settled: !stopped && widest <= within,
    stopped,
  }
}

const nothing = { value: 0, low: 0, high: 0 } as const

function noShare(name: string, method: Shares['method']): Share {
  return method === 'Sobol indices' ? { name, alone: nothing, withOthers: nothing } : { name, fair: nothing }
}

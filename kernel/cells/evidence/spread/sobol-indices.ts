/** Shares of the variance for independent assumptions: first-order and total indices. */
import type { Point, Share } from '../../../../shared/contracts/index.js'
import { bootstrap, type Design, type Row } from './design.js'
import type { Samples } from './samples.js'

/**
 * Two independent samples a and b per row; c_i is a with its i-th coordinate from b. One row takes i + 1 runs beyond those of
 * the spread, whose samples are a.
 *
 * @equation S_i = mean(f(b) (f(c_i) - f(a)))/V, T_i = mean((f(a) - f(c_i))^2)/(2 V), numbers f counted from their mean
 * @source Saltelli, A. and others, "Variance based sensitivity analysis of model output. Design and estimator for the total
 *   sensitivity index", Computer Physics Communications 181 (2010) 259-270, table 2 (b) and (f); (f) is Jansen, M. J. W.,
 *   Computer Physics Communications 117 (1999) 35-43
 */
export function sobolDesign(samples: Samples, reaching?: readonly string[]): Design {
  const names = samples.inputs.uncertain.map(({ name }) => name)
  const columns = names.flatMap((name, at) => (reaching === undefined || reaching.includes(name) ? [at] : []))
  return {
    method: 'Sobol indices',
    runsPerRow: columns.length === 0 ? 0 : columns.length + 1,
    points: (row) => (columns.length === 0 ? [] : pointsOf(samples, row, columns)),
    estimate: (rows) => estimate(rows, names, columns, samples.seed),
  }
}

/** f(b), then f(c_i). */
function pointsOf(samples: Samples, row: number, columns: readonly number[]): readonly Point[] {
  const a = samples.independentNormals(row, 0)
  const b = samples.independentNormals(row, 1)
  const crossed = columns.map((column) => {
    const normals = a.slice()
    normals[column] = b[column] as number
    return samples.pointAt(normals)
  })
  return [samples.pointAt(b), ...crossed]
}

function estimate(
  rows: readonly Row[],
  names: readonly string[],
  columns: readonly number[],
  seed: number,
): readonly Share[] {
  const usable = rows.filter(({ sample, values }) => !Number.isNaN(sample) && !Number.isNaN(values[0]))
  if (usable.length < 2 || columns.length === 0) return []
  const estimates = bootstrap(usable, seed, (some) => indices(some, columns.length))
  return columns.map((column, at) => ({
    name: names[column] as string,
    alone: estimates[at] as NonNullable<Share['alone']>,
    withOthers: estimates[columns.length + at] as NonNullable<Share['withOthers']>,
  }))
}

/** First-order indices, then total ones; 0 where nothing varies. */
function indices(rows: readonly Row[], count: number): Float64Array {
  const found = new Float64Array(2 * count)
  let mean = 0
  for (const { sample, values } of rows) mean += (sample + (values[0] as number)) / (2 * rows.length)
  let variance = 0
  for (const { sample, values } of rows)
    variance += ((sample - mean) ** 2 + ((values[0] as number) - mean) ** 2) / (2 * rows.length)
  if (!(variance > 0)) return found
  for (let at = 0; at < count; at += 1) {
    let first = 0
    let total = 0
    let used = 0
    for (const { sample, values } of rows) {
      const crossed = values[at + 1] as number
      if (Number.isNaN(crossed)) continue
      first += ((values[0] as number) - mean) * (crossed - sample)
      total += (sample - crossed) ** 2
      used += 1
    }
    if (used === 0) continue
    found[at] = first / used / variance
    found[count + at] = total / used / 2 / variance
  }
  return found
}

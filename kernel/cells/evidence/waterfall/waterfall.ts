/** The waterfall of two notebooks: mixtures of both are read and evaluated like any notebook. */
import type {
  CellResult,
  ResultNumber,
  ResultValue,
  Waterfall,
  WaterfallStep,
} from '../../../../shared/contracts/index.js'
import {
  type Evaluation,
  type EvaluationOptions,
  type Graph,
  type Overrides,
  PipelineTrouble,
  type Program,
  type SizingCell,
  type StopSignal,
  type Wanted,
} from '../../program/index.js'
import { type Attempt, type ExplainOptions, explainChange } from './explain.js'
import { planSteps, type WaterfallSide } from './plan.js'

interface Reading {
  readonly graph: Graph
  readonly program: Program
}

/** The part of the pipeline that it works with. */
export interface WaterfallPipeline {
  read(cells: readonly SizingCell[]): Promise<Reading>
  evaluate(reading: Reading, overrides: Overrides, wanted: Wanted, options?: EvaluationOptions): Promise<Evaluation>
}

export interface WaterfallQuestion {
  readonly from: readonly SizingCell[]
  readonly to: readonly SizingCell[]
  /** The result that is to be explained: `grossMass`, `closure.grossMass`. */
  readonly name: string
  /** Answers kept with the two, where another kernel may have computed them. */
  readonly kept?: { readonly from?: number | undefined; readonly to?: number | undefined }
  readonly signal?: StopSignal
  readonly options?: Pick<ExplainOptions, 'seed' | 'pairs' | 'onProgress'>
}

/** @throws Error with a sentence when the result is not computed on both sides, or the work was stopped before both were. */
export async function waterfallOf(pipeline: WaterfallPipeline, question: WaterfallQuestion): Promise<Waterfall> {
  const { name, signal, kept = {}, options = {} } = question
  const stop = signal === undefined ? {} : { signal }
  const [from, to] = [await sideOf(pipeline, question.from, stop), await sideOf(pipeline, question.to, stop)]
  const plan = planSteps(from, to, name)
  const attempt = async (adopted: ReadonlySet<number>): Promise<Attempt> => {
    const { cells, overrides } = plan.notebookWith(adopted)
    return answerOf(pipeline, cells, overrides, name, stop)
  }
  const isStopped = () => signal?.aborted === true
  const explained = await explainChange({ count: plan.steps.length, attempt }, { ...options, isStopped })
  const ends = { from: kept.from ?? explained.from, to: kept.to ?? explained.to }
  const kernel = explained.from - ends.from + (ends.to - explained.to)
  const steps = explained.steps.map((places, index): WaterfallStep => {
    const parts = places.map((place) => plan.steps[place] ?? { parts: [] })
    const why = [...parts.flatMap(({ together = [] }) => together), ...[explained.together[index] ?? []].flat()]
    return { parts: parts.flatMap((step) => step.parts), ...(why.length === 0 ? {} : { together: why.join('; ') }) }
  })
  return {
    name,
    ...ends,
    ...(kernel === 0 ? {} : { kernel }),
    steps,
    forward: [...explained.forward],
    reverse: [...explained.reverse],
    shares: explained.shares,
    without: [...plan.without],
    evaluations: explained.evaluations,
  }
}

async function sideOf(
  pipeline: WaterfallPipeline,
  cells: readonly SizingCell[],
  options: EvaluationOptions,
): Promise<WaterfallSide> {
  const reading = await pipeline.read(cells)
  const { results } = await pipeline.evaluate(reading, {}, 'all', options)
  return { cells, graph: reading.graph, results }
}

/** Only the cell that owns the result is asked for, with what it reads. */
async function answerOf(
  pipeline: WaterfallPipeline,
  cells: readonly SizingCell[],
  overrides: Overrides,
  name: string,
  options: EvaluationOptions,
): Promise<Attempt> {
  try {
    const reading = await pipeline.read(cells)
    const owner = reading.graph.owner.get(name.split('.')[0] ?? name)
    if (owner === undefined) return { ok: false, reason: `no cell alone declares "${name.split('.')[0]}".` }
    const declared = new Set(reading.graph.cells.flatMap(({ assumptions }) => assumptions))
    const fitting = Object.fromEntries(Object.entries(overrides).filter(([each]) => declared.has(each)))
    const { results } = await pipeline.evaluate(reading, fitting, [owner], options)
    const value = numberNamed(results, name)
    if (value !== undefined) return { ok: true, value: Number(value) }
    return { ok: false, reason: failureIn(results) ?? `"${name}" is no number.` }
  } catch (error) {
    if (error instanceof PipelineTrouble) return { ok: false, reason: error.message }
    throw error
  }
}

/** The first failure, which holds the others back. */
function failureIn(results: readonly CellResult[]): string | undefined {
  const failed = results.find(({ error }) => error !== undefined)
  return failed?.error === undefined ? undefined : `cell "${failed.cell}" fails: ${failed.error.message}`
}

/** The number of that name: at the top level, or a member of a record. */
export function numberNamed(results: readonly CellResult[], name: string): ResultNumber | undefined {
  const [root = '', ...path] = name.split('.')
  const finished = results.filter(({ outcome }) => outcome === 'computed')
  let value: ResultValue | undefined = finished
    .flatMap(({ values }) => values)
    .find((each) => each.name === root)?.value
  for (const member of path) {
    if (value?.kind !== 'record') return undefined
    value = value.entries.find(([key]) => key === member)?.[1]
  }
  return value?.kind === 'number' ? value.si : undefined
}

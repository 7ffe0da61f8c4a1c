/** Which steps a small graph of a trace shows, and where they stand: one row each, so that no label meets another; left to right by depth. */
import type { Trace, TraceStep } from '../../contracts/index.js'
import { countOf } from '../quantity/words.js'
import { type Folds, foldsOf } from './trace-graph-folds.js'

export interface GraphNode {
  readonly step: TraceStep
  readonly row: number
  /** Steps from the assumptions. */
  readonly layer: number
  /** It stands for these, itself the first of them; empty where it stands for itself. */
  readonly folded: readonly TraceStep[]
}

export interface GraphEdge {
  readonly from: GraphNode
  readonly to: GraphNode
}

export interface TraceGraph {
  /** The target last. */
  readonly nodes: readonly GraphNode[]
  readonly edges: readonly GraphEdge[]
  readonly layers: number
  /** What is not shown, in a sentence; empty where all is. */
  readonly leftOut: string
}

/** More than this nobody takes in at a glance. */
export const mostNodes = 24

export function traceGraph(trace: Trace): TraceGraph {
  const { shown, folds, leftOut } = chosen(trace)
  const steps = stepsByName(trace)
  const placed = new Map<string, GraphNode>()
  const edges: GraphEdge[] = []
  let row = 0
  // Each step comes after what it reads; what goes round in a circle is read only one way.
  for (const step of trace.steps) {
    if (!shown.has(step.name)) continue
    const from = [...readThrough(step, steps, shown)].flatMap((name) => placed.get(name) ?? [])
    const layer = from.reduce((most, one) => Math.max(most, one.layer + 1), 0)
    const node: GraphNode = { step, row, layer, folded: folds.get(step.name) ?? [] }
    placed.set(step.name, node)
    edges.push(...from.map((one) => ({ from: one, to: node })))
    row += 1
  }
  const nodes = [...placed.values()]
  return { nodes, edges, layers: nodes.reduce((most, { layer }) => Math.max(most, layer + 1), 0), leftOut }
}

interface Chosen {
  readonly shown: ReadonlySet<string>
  readonly folds: Folds
  readonly leftOut: string
}

/** First goes what does not move the number, then what is no number; then alike ones are folded, and what is farthest from it goes. */
function chosen(trace: Trace): Chosen {
  const { target, steps } = trace
  let shown = steps
  const words: string[] = []
  const leave = (keep: (step: TraceStep) => boolean, say: (count: number) => string) => {
    if (shown.length <= mostNodes) return
    const kept = shown.filter((step) => step.name === target || keep(step))
    if (kept.length < shown.length) words.push(say(shown.length - kept.length))
    shown = kept
  }
  leave(
    ({ acts }) => acts !== 'inactive' && acts !== 'hardly',
    (count) => `${count} that ${count === 1 ? 'does' : 'do'} not move it`,
  )
  leave(
    ({ kind }) => kind !== 'other',
    (count) => countOf(count, 'function or record', 'functions and records'),
  )
  const all = stepsByName(trace)
  const names = new Set(shown.map(({ name }) => name))
  const folds = foldsOf(shown, target, (step) => readThrough(step, all, names))
  const hidden = new Set([...folds.values()].flatMap((folded) => folded.slice(1)))
  shown = shown.filter((step) => !hidden.has(step))
  const near = new Set(byDistance(trace, shown).slice(0, mostNodes))
  leave(
    ({ name }) => near.has(name),
    (count) => `${count} farther back`,
  )
  return {
    shown: new Set(shown.map(({ name }) => name)),
    folds,
    leftOut: words.length === 0 ? '' : `Left out of the graph: ${words.join(', ')}. The outline has them all.`,
  }
}

function stepsByName({ steps }: Pick<Trace, 'steps'>): ReadonlyMap<string, TraceStep> {
  return new Map(steps.map((step) => [step.name, step]))
}

/** Names in the order in which a walk back from the target meets them, level by level. */
function byDistance({ target, steps }: Trace, shown: readonly TraceStep[]): readonly string[] {
  const all = stepsByName({ steps })
  const met = new Set([target])
  for (const name of met) for (const read of all.get(name)?.reads ?? []) met.add(read)
  const wanted = new Set(shown.map(({ name }) => name))
  return [...met].filter((name) => wanted.has(name))
}

/** What a step is made from among those shown, also by way of others. */
function readThrough(
  step: TraceStep,
  steps: ReadonlyMap<string, TraceStep>,
  shown: ReadonlySet<string>,
): ReadonlySet<string> {
  const found = new Set<string>()
  const met = new Set<string>([step.name])
  const waiting = [...step.reads]
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    if (met.has(name)) continue
    met.add(name)
    if (shown.has(name)) found.add(name)
    else waiting.push(...(steps.get(name)?.reads ?? []))
  }
  return found
}

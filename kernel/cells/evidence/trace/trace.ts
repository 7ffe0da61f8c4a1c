/** Where a number came from: the names that it is made from, and what each of them does to it when it alone is changed. */
import type { AssumptionRecord, Point, Trace, TraceStep, Waking } from '../../../../shared/contracts/index.js'
import { numberAt } from '../evaluation.js'
import { EvidenceTrouble } from '../trouble.js'
import { type Effect, effectsSoFar, findEffects } from './acts.js'
import { deriveActs } from './derive.js'
import { Probe, type TraceTools } from './probe.js'
import { assumptionQuantity, handledQuantity, type Quantity } from './scan.js'
import type { UpstreamName } from './upstream.js'

export interface TraceRequest {
  /** The number asked about. */
  readonly target: string
  /** Each after what it reads, the target last. */
  readonly names: readonly UpstreamName[]
  /** Of the notebook; those that are no names of the number are left alone. */
  readonly assumptions: readonly AssumptionRecord[]
  /** Numbers as they stand, by name. */
  readonly values: Readonly<Record<string, number>>
  /** Numbers on the way that can be set. */
  readonly handled: ReadonlySet<string>
  /** Trial values in force. */
  readonly base?: Point
}

/**
 * Evaluates the number as it stands, and with each assumption and each number on the way changed alone: by 1 %, then by 10 %, then as far as
 * it may lie; where it begins to move the number is found by narrowing.
 *
 * @throws EvidenceTrouble where the number does not compute as it stands
 */
export async function runTrace(request: TraceRequest, tools: TraceTools): Promise<Trace> {
  const { target, base: trials = {} } = request
  const [standing] = tools.signal?.aborted === true ? [] : await tools.evaluateMany([trials], tools.signal)
  const quantities = quantitiesOf(request)
  if (standing === undefined) return traceOf(request, Number.NaN, new Map(), { runs: 0, quantities })
  const base = numberAt(standing, target)
  if (base === undefined) {
    const reason = standing.ok ? 'it is no finite number' : standing.message
    throw new EvidenceTrouble('NO_TRACE', { target, reason })
  }
  const { onTrace } = tools
  const soFar = () =>
    onTrace?.(traceOf(request, base, effectsSoFar(quantities, base, probe), { runs: probe.runs + 1, quantities }))
  const probe: Probe = new Probe(target, trials, tools, onTrace === undefined ? undefined : soFar)
  const effects = await findEffects(quantities, base, probe)
  return traceOf(request, base, effects, { runs: probe.runs + 1, quantities })
}

/** What the text and the known numbers say before anything is tried. */
export function traceBefore(request: TraceRequest): Trace {
  return traceOf(request, request.values[request.target] ?? Number.NaN, new Map(), {
    runs: 0,
    quantities: quantitiesOf(request),
  })
}

function quantitiesOf({ target, names, assumptions, values, handled, base = {} }: TraceRequest): readonly Quantity[] {
  const records = new Map(assumptions.map((record) => [record.name, record]))
  return names.flatMap(({ name, assumption }) => {
    const record = assumption ? records.get(name) : undefined
    const value = base[name] ?? Number(record?.value ?? values[name])
    if (name === target || !Number.isFinite(value)) return []
    if (record !== undefined) return [assumptionQuantity(record, value)]
    return handled.has(name) ? [handledQuantity(name, value)] : []
  })
}

function traceOf(
  request: TraceRequest,
  base: number,
  effects: ReadonlyMap<Quantity, Effect>,
  { runs, quantities }: { readonly runs: number; readonly quantities: readonly Quantity[] },
): Trace {
  const { target, names } = request
  const known = new Map(quantities.map((one) => [one.name, effects.get(one) ?? notTried]))
  const acts = deriveActs(names, new Map([...known].map(([name, effect]) => [name, effect.acts])), target)
  const steps = names.map((one): TraceStep => {
    const { assumption, ...name } = one
    const value =
      one.name === target && Number.isFinite(base)
        ? base
        : (quantities.find((each) => each.name === one.name)?.value ?? request.values[one.name])
    return {
      ...name,
      kind: assumption ? 'assumption' : value === undefined ? 'other' : 'number',
      ...(value === undefined ? {} : { value }),
      acts: acts.get(one.name) ?? 'not known',
      wakes: known.get(one.name)?.wakes ?? [],
    }
  })
  return {
    target,
    base,
    steps: steps.filter((step) => !step.apart || matters(step)),
    runs,
    left: quantities.filter((one) => (effects.get(one)?.acts ?? 'not known') === 'not known').map(({ name }) => name),
  }
}

const notTried: Effect = { acts: 'not known', wakes: [] }

/** What the text does not lead to is a step only where it was found to do something. */
function matters({ acts, wakes }: { readonly acts: TraceStep['acts']; readonly wakes: readonly Waking[] }): boolean {
  return acts === 'moves' || acts === 'hardly' || wakes.length > 0
}

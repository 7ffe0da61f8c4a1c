/** A trace as an outline: the number first, below each name what it is made from, each name opened once. */
import type { Advisory, Trace, TraceStep } from '../../contracts/index.js'
import type { SheetView } from '../view.js'

export interface OutlineItem {
  readonly step: TraceStep
  /** It stands in full farther up. */
  readonly again: boolean
  /** Of its cell, from the methods that it calls, directly or through functions; each said once in the outline. */
  readonly advisories: readonly Advisory[]
  readonly items: readonly OutlineItem[]
}

export interface TraceOutline {
  readonly target: OutlineItem | undefined
  /** Assumptions that move the number although the text leads to them no way. */
  readonly apart: readonly OutlineItem[]
}

/** Deeper ones stand beside what they are made from: nobody reads a list forty levels deep, and no screen is that wide. */
const deepest = 24

/** What moves the number comes before what does not, else in the order of the text. */
export function traceOutline(trace: Trace, view: SheetView): TraceOutline {
  const steps = new Map(trace.steps.map((step) => [step.name, step]))
  const said = new Said(view, steps)
  const met = new Set<string>()
  const itemsOf = (step: TraceStep, depth: number): OutlineItem[] => {
    const again = met.has(step.name)
    met.add(step.name)
    const advisories = again ? [] : said.advisoriesOf(step)
    const below = again ? [] : childrenOf(step, steps).flatMap((child) => itemsOf(child, depth + 1))
    const item = (items: readonly OutlineItem[]): OutlineItem => ({ step, again, advisories, items })
    return depth < deepest ? [item(below)] : [item([]), ...below]
  }
  const target = steps.get(trace.target)
  return {
    target: target === undefined ? undefined : itemsOf(target, 0)[0],
    apart: trace.steps.filter(({ apart }) => apart).flatMap((step) => itemsOf(step, 1)),
  }
}

const ranks: Readonly<Record<TraceStep['acts'], number>> = { moves: 0, 'not known': 1, hardly: 2, inactive: 3 }

function childrenOf(step: TraceStep, steps: ReadonlyMap<string, TraceStep>): readonly TraceStep[] {
  return step.reads
    .flatMap((name) => steps.get(name) ?? [])
    .sort((one, other) => Number(ranks[one.acts] === 3) - Number(ranks[other.acts] === 3))
}

/** Which advisories have been said. */
class Said {
  readonly #advisories = new Map<string, Advisory[]>()
  readonly #functions: ReadonlySet<string>
  readonly #steps: ReadonlyMap<string, TraceStep>

  constructor({ cells }: SheetView, steps: ReadonlyMap<string, TraceStep>) {
    this.#steps = steps
    for (const { id, result } of cells) this.#advisories.set(id, [...(result?.advisories ?? [])])
    this.#functions = new Set(
      cells.flatMap(({ result }) =>
        (result?.values ?? []).flatMap(({ name, value }) => (value.kind === 'function' ? [name] : [])),
      ),
    )
  }

  advisoriesOf(step: TraceStep): readonly Advisory[] {
    const open = this.#advisories.get(step.cell) ?? []
    if (open.length === 0) return []
    const methods = this.#methodsOf(step)
    const found = open.filter(({ method }) => methods.has(method))
    this.#advisories.set(
      step.cell,
      open.filter((one) => !found.includes(one)),
    )
    return found
  }

  /** Its own and those of the functions that it calls: an advisory belongs to the cell that runs, not to the one that holds the function. */
  #methodsOf(step: TraceStep): ReadonlySet<string> {
    const methods = new Set<string>()
    const met = new Set<string>()
    const waiting = [step]
    for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
      for (const method of next.methods) methods.add(method)
      for (const name of next.reads) {
        const read = this.#steps.get(name)
        if (read === undefined || met.has(name) || !this.#functions.has(name)) continue
        met.add(name)
        waiting.push(read)
      }
    }
    return methods
  }
}

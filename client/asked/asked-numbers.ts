/** Evaluates the numbers that are asked about, in isolates beside the page's own, and remembers the programs made for it. DOM-free. */
import { type Evaluator, openEvaluator, type ReadProgram, sliceProgram } from '../../kernel/cells/evidence/index.js'
import type { NumbersHost, Program, StopSignal, WantedNumbers } from '../../kernel/cells/program/index.js'
import type { NumbersOutcome, Point } from '../../shared/contracts/index.js'
import type { SheetView } from '../../shared/rendering/page.js'
import { askable } from './askable.js'

export interface AskedNumbersSources {
  view(): SheetView
  /** What was read last; absent before the first reading. */
  reading(): ReadProgram | undefined
  /** Opened at the first question. */
  host(): Promise<NumbersHost>
}

/** What is remembered of one text. */
interface Known {
  readonly evaluators: Map<string, Promise<Evaluator>>
  readonly reaching: Map<string, readonly string[]>
}

export class AskedNumbers {
  readonly #sources: AskedNumbersSources
  readonly #known = new WeakMap<Program, Known>()

  constructor(sources: AskedNumbersSources) {
    this.#sources = sources
  }

  /** @throws Error before the first reading, and where the isolates cannot be had; the message is for the reader. */
  async open(
    wanted: WantedNumbers,
    { probes = [], signal }: { readonly probes?: readonly Point[]; readonly signal?: StopSignal } = {},
  ): Promise<Evaluator> {
    const read = this.#sources.reading()
    if (read === undefined) throw new Error('The cells have not been read yet; ask again in a moment.')
    const { evaluators } = this.#knownOf(read.program)
    const key = JSON.stringify([wanted, probes])
    const known = evaluators.get(key)
    if (known !== undefined) return known
    const opened = this.#sources
      .host()
      .then((host) => openEvaluator(read, wanted, host, { probes, ...(signal === undefined ? {} : { signal }) }))
    evaluators.set(key, opened)
    // What was stopped half-way or failed is tried again at the next question.
    const forget = () => evaluators.delete(key)
    await opened.then(() => signal?.aborted === true && forget(), forget)
    return opened
  }

  async evaluateMany(
    target: string,
    points: readonly Point[],
    signal: AbortSignal,
  ): Promise<readonly NumbersOutcome[]> {
    const view = this.#sources.view()
    const requirements = view.cells.flatMap(({ id, result }) => ((result?.requirements.length ?? 0) > 0 ? [id] : []))
    const evaluator = await this.open({ names: [this.#place(target)], requirements }, { signal })
    return signal.aborted ? [] : evaluator.evaluateMany(points, signal)
  }

  reaching(target: string): readonly string[] | undefined {
    const read = this.#sources.reading()
    if (read === undefined) return undefined
    const { reaching } = this.#knownOf(read.program)
    const known = reaching.get(target)
    if (known !== undefined) return known
    const { cells } = sliceProgram(read, { names: [this.#place(target)], requirements: [] })
    const found = cells.flatMap(({ assumptions }) => assumptions)
    reaching.set(target, found)
    return found
  }

  #place(target: string): WantedNumbers['names'][number] {
    const found = askable(this.#sources.view(), target)
    if (found === undefined) throw new Error(`"${target}" is no number of this sheet any more.`)
    return { name: found.name, cell: found.cell }
  }

  #knownOf(program: Program): Known {
    const known = this.#known.get(program) ?? { evaluators: new Map(), reaching: new Map() }
    this.#known.set(program, known)
    return known
  }
}

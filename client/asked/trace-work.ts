/** Trace of a number: runs the engine on the text as it was last read. DOM-free. */
import { type TraceOptions, traceNumber } from '../../kernel/cells/evidence/index.js'
import type { NumbersHost } from '../../kernel/cells/program/index.js'
import type { Trace } from '../../shared/contracts/index.js'
import { numberOf } from '../../shared/rendering/page.js'
import { allAskable, askable } from './askable.js'
import type { Asking } from './asking.js'
import { assumptionsOf, trialsOf } from './edition.js'
import { NumberWork } from './number-work.js'

export interface TraceSources extends Pick<Asking, 'view' | 'reading' | 'say' | 'now'> {
  /** Isolates beside the page's: a trace runs programs of its own. */
  host(): Promise<NumbersHost>
}

/** Runs the engine; tests put another in its place. */
export type FindTrace = (options: TraceOptions, host: NumbersHost) => Promise<Trace>

/** Partial traces are drawn this far apart, so that drawing takes little from finding out. [ms] */
const redrawing = 250

export class TraceWork extends NumberWork<Trace> {
  readonly #sources: TraceSources
  readonly #find: FindTrace

  constructor(sources: TraceSources, onChange: (what: 'found' | 'state') => void, find: FindTrace = traceNumber) {
    super(sources, 'Tracing', onChange)
    this.#sources = sources
    this.#find = find
  }

  /** What the text says is there to be read at once, what moves the number as it is found. */
  async trace(target: string): Promise<void> {
    const view = this.#sources.view()
    await this.ask(target, async ({ signal, onProgress }, learn) => {
      const cell = askable(view, target)?.cell
      const read = this.#sources.reading()
      if (cell === undefined) throw new Error(`"${target}" is no number of this sheet any more.`)
      if (read === undefined) throw new Error('The cells have not been read yet; ask again in a moment.')
      const assumptions = assumptionsOf(view)
      const trials = trialsOf(assumptions)
      const tried = Object.keys(trials).length > 0
      let drawn = Number.NEGATIVE_INFINITY
      const onTrace = (trace: Trace) => {
        if (this.#sources.now() - drawn < redrawing) return
        learn(trace, tried)
        drawn = this.#sources.now()
      }
      const known = Object.fromEntries(
        allAskable(view).flatMap(({ name, value: { value } }) =>
          value.kind === 'number' ? [[name, numberOf(value.si)]] : [],
        ),
      )
      const options = { read, target: { name: target, cell }, assumptions, trials, signal, onProgress, known, onTrace }
      learn(await this.#find(options, await this.#sources.host()), tried)
    })
  }
}

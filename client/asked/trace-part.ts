/** Trace of a number: where it came from, as a small graph and an outline down to the assumptions and their sources. */
import type { CellResult } from '../../shared/contracts/index.js'
import type { Method } from '../../shared/contracts/method.js'
import {
  element,
  renderTraceGraph,
  renderTraceList,
  TraceSubject,
  traceBasis,
  traceSentence,
} from '../../shared/rendering/page.js'
import { loadCatalogue } from '../methods/load-catalogue.js'
import type { AskedPart } from './asking.js'
import { RunningLine } from './running-line.js'
import { section } from './section.js'
import { type TraceSources, TraceWork } from './trace-work.js'

export class TracePart implements AskedPart {
  readonly element: HTMLElement
  readonly #sources: TraceSources
  readonly #work: TraceWork
  readonly #load: () => Promise<readonly Method[]>
  readonly #running = new RunningLine(() => this.#work.stop())
  readonly #again = element(document, 'button', { type: 'button', class: 'button' }, 'Trace again')
  readonly #notice = element(document, 'p', { class: 'asked-notice', role: 'status' })
  readonly #headline = section('trace-headline')
  readonly #graph = section('trace-picture')
  readonly #outline = section('trace-steps')
  #methods: ReadonlyMap<string, Method> | undefined
  #target: string | undefined
  /** Of which number the outline is, and which of its folds are open, by name. */
  #shown: string | undefined
  readonly #open = new Map<string, boolean>()
  /** Results from which the trace was last drawn, by the cells of the sheet. */
  #drawn: readonly (CellResult | undefined)[] = []
  /** When the state was last drawn something ran. */
  #ran = false

  constructor(sources: TraceSources, load: () => Promise<readonly Method[]> = loadCatalogue) {
    this.#sources = sources
    this.#load = load
    this.#work = new TraceWork(sources, (what) => (what === 'found' ? this.#drawTrace() : this.#drawState()))
    this.#again.addEventListener('click', () => this.#trace())
    this.element = element(
      document,
      'div',
      { class: 'asked trace' },
      this.#notice,
      this.#running.element,
      [this.#headline, this.#graph, this.#outline].map(({ whole }) => whole),
      element(document, 'div', {}, this.#again),
    )
  }

  /** Asks for a number: what is known of it is shown, and it is traced if that is not all. */
  show(target: string): void {
    this.#target = target
    this.#loadMethods()
    if (this.#work.running !== undefined && this.#work.answer?.target === target) return
    if (!this.#work.recall(target)) this.#trace()
    this.#drawTrace()
  }

  /** The sheet changed. */
  update(): void {
    const { cells } = this.#sources.view()
    // Other units, and dimensions that the check has told meanwhile.
    if (cells.some(({ result }, at) => result !== this.#drawn[at])) this.#drawTrace()
    this.#drawState()
  }

  /** Another number or view is shown: nothing runs on for nobody. */
  leave(): void {
    this.#work.stop()
  }

  /** Pressed while it runs it does nothing. */
  #trace(): void {
    if (this.#target !== undefined && this.#work.running === undefined) void this.#work.trace(this.#target)
  }

  /** Without the catalogue a method is a link and no more; it is asked for again at the next number. */
  #loadMethods(): void {
    if (this.#methods !== undefined) return
    this.#load().then(
      (methods) => {
        this.#methods = new Map(methods.map((method) => [method.name, method]))
        this.#drawTrace()
      },
      () => {},
    )
  }

  #drawState(): void {
    const { running, answer, outdated } = this.#work
    this.#running.show(running, 'Tracing')
    this.#again.setAttribute('aria-disabled', String(running !== undefined))
    const words =
      answer?.trouble ?? (outdated ? 'The notebook has changed since; this is the trace of what it was.' : '')
    if (this.#notice.textContent !== words) this.#notice.textContent = words
    const ended = this.#ran && running === undefined
    this.#ran = running !== undefined
    if (!ended) return
    // Once more, as the last word: what was not tried is named only when nothing runs.
    this.#drawTrace()
    if (answer?.found !== undefined && answer.trouble === undefined)
      this.#sources.say(traceSentence(new TraceSubject(answer.found, this.#sources.view())))
  }

  #drawTrace(): void {
    const { answer, running } = this.#work
    const trace = answer?.found
    if (answer === undefined || trace === undefined) {
      for (const part of [this.#headline, this.#graph, this.#outline]) part.fill(null)
      return
    }
    const view = this.#sources.view()
    this.#drawn = view.cells.map(({ result }) => result)
    const subject = new TraceSubject(trace, view, { running: running !== undefined })
    const { left } = trace
    this.#headline.fill(
      element(document, 'p', { class: 'trace-sentence' }, traceSentence(subject)),
      answer.trials
        ? element(document, 'p', {}, 'With the trial values in force, not with those of the document.')
        : null,
      left.length === 0 || running !== undefined
        ? null
        : element(
            document,
            'p',
            {},
            `Stopped early: ${left.map((name) => subject.label(name)).join(', ')} ${left.length === 1 ? 'was' : 'were'} not tried.`,
          ),
    )
    this.#graph.fill(renderTraceGraph(document, subject))
    const list = renderTraceList(document, subject, (name) => this.#methods?.get(name))
    const focused = focusedIn(this.#outline.body)
    this.#keepOpen(list)
    this.#outline.fill(
      list,
      running === undefined ? element(document, 'p', { class: 'trace-basis' }, traceBasis(trace)) : null,
    )
    // The section gives folds by their place what they were; here they have names, and ways of their own at first.
    for (const fold of foldsOf(list)) fold.open = this.#open.get(fold.dataset.name ?? '') ?? false
    if (focused !== undefined) focusIn(this.#outline.body, focused)
  }

  /** What the reader opened or closed stays so as long as the number is the same. */
  #keepOpen(list: HTMLElement): void {
    const target = this.#work.answer?.target
    if (target !== this.#shown) this.#open.clear()
    else for (const fold of foldsOf(this.#outline.body)) this.#open.set(fold.dataset.name ?? '', fold.open)
    this.#shown = target
    for (const fold of foldsOf(list)) {
      const name = fold.dataset.name ?? ''
      if (!this.#open.has(name)) this.#open.set(name, fold.open)
    }
  }
}

function foldsOf(root: HTMLElement): readonly HTMLDetailsElement[] {
  return [...root.querySelectorAll('details')]
}

/** Which of the things in an outline that take the focus has it: they come in the same order however often it is drawn. */
function focusedIn(root: HTMLElement): Focused | undefined {
  const item = document.activeElement?.closest<HTMLElement>('.trace-item')
  if (item === null || item === undefined || !root.contains(item)) return undefined
  const place = [...item.querySelectorAll('a, summary')].indexOf(document.activeElement as Element)
  return place < 0 ? undefined : { name: item.dataset.name ?? '', place }
}

interface Focused {
  readonly name: string
  readonly place: number
}

function focusIn(root: HTMLElement, { name, place }: Focused): void {
  const item = [...root.querySelectorAll<HTMLElement>('.trace-item')].find((one) => one.dataset.name === name)
  item?.querySelectorAll<HTMLElement>('a, summary')[place]?.focus({ preventScroll: true })
}

/** The waterfall on the page of a comparison: choose a result, compute in isolation with progress, stop, read. */
import { type WaterfallPipeline, waterfallOf } from '../../kernel/cells/evidence/waterfall/index.js'
import type { CellId, ComparePageData, Waterfall } from '../../shared/contracts/index.js'
import { element, renderWaterfall, type WaterfallNames } from '../../shared/rendering/page.js'

export class WaterfallPanel {
  readonly #data: ComparePageData
  readonly #pipeline: WaterfallPipeline
  readonly #choice: HTMLSelectElement
  readonly #show: HTMLButtonElement
  readonly #stop: HTMLButtonElement
  readonly #progress: HTMLProgressElement
  readonly #words: HTMLElement
  readonly #answer: HTMLElement
  #run: AbortController | undefined

  constructor(panel: HTMLElement, data: ComparePageData, pipeline: WaterfallPipeline) {
    this.#data = data
    this.#pipeline = pipeline
    this.#choice = element(document, 'select', {}, data.results.map(option)) as HTMLSelectElement
    this.#show = button('Show the waterfall', () => void this.#compute())
    this.#stop = button('Stop', () => this.#run?.abort())
    this.#progress = element(document, 'progress', { 'aria-label': 'Evaluations' }) as HTMLProgressElement
    this.#words = element(document, 'p', { class: 'waterfall-words', role: 'status' })
    this.#answer = element(document, 'div', { class: 'waterfall-answer' })
    this.#setRunning(false)
    if (data.results.length === 0) {
      panel.append(
        element(
          document,
          'p',
          { class: 'waterfall-words' },
          'Both sides have no result in common, so there is none to explain.',
        ),
      )
      return
    }
    const label = element(document, 'label', {}, 'Result ', this.#choice)
    const controls = element(
      document,
      'div',
      { class: 'waterfall-controls' },
      label,
      ' ',
      this.#show,
      ' ',
      this.#stop,
      this.#progress,
    )
    controls.addEventListener('keydown', (event) => {
      if (event.key === 'Escape') this.#run?.abort()
    })
    panel.append(controls, this.#words, this.#answer)
  }

  async #compute(): Promise<void> {
    this.#run?.abort()
    const run = new AbortController()
    this.#run = run
    const name = this.#choice.value
    const { from, to } = this.#data
    this.#setRunning(true)
    this.#answer.replaceChildren()
    this.#words.textContent = 'Computing both sides.'
    try {
      const waterfall = await waterfallOf(this.#pipeline, {
        from: from.cells,
        to: to.cells,
        name,
        kept: { from: from.kept[name], to: to.kept[name] },
        signal: run.signal,
        options: { onProgress: (done, of) => this.#showProgress(run, done, of) },
      })
      if (this.#run === run) this.#showAnswer(waterfall, run.signal.aborted)
    } catch (error) {
      if (this.#run === run) this.#showFailure(name, run.signal.aborted, error)
    } finally {
      if (this.#run === run) this.#setRunning(false)
    }
  }

  #showProgress(run: AbortController, done: number, of: number): void {
    if (this.#run !== run || run.signal.aborted) return
    this.#progress.max = of
    this.#progress.value = done
    this.#words.textContent = `${done} of ${of} evaluations.`
  }

  #showAnswer(waterfall: Waterfall, stopped: boolean): void {
    this.#words.textContent = stopped ? 'Stopped. What was computed until then is shown.' : 'Done.'
    this.#answer.replaceChildren(renderWaterfall(document, waterfall, namesOf(this.#data)))
  }

  #showFailure(name: string, stopped: boolean, error: unknown): void {
    const reason = error instanceof Error ? error.message : String(error)
    this.#words.textContent = stopped ? 'Stopped.' : `There is no waterfall of ${name}: ${numbered(reason, this.#data)}`
  }

  /** The buttons change places, so the focus goes with them. */
  #setRunning(running: boolean): void {
    const focused = document.activeElement
    this.#show.hidden = running
    this.#stop.hidden = !running
    this.#progress.hidden = !running
    if (running) this.#progress.removeAttribute('value')
    if (running && focused === this.#show) this.#stop.focus()
    if (!running && focused === this.#stop) this.#show.focus()
  }
}

function option({ name, label, changed }: ComparePageData['results'][number]): HTMLElement {
  const words = label === undefined ? name : `${label} (${name})`
  return element(document, 'option', { value: name }, changed ? words : `${words}, the same`)
}

/** Cells are called by their numbers in the margin, on the later side where they are there. */
function namesOf(data: ComparePageData): WaterfallNames {
  const { from, to, results } = data
  return {
    from: from.label,
    to: to.label,
    numberOf: (cell: CellId) => to.numbers[cell] ?? from.numbers[cell],
    shown: (name) => {
      const { dimension = null, unit } = results.find((result) => result.name === name) ??
        data.assumptions.find((assumption) => assumption.name === name) ?? { dimension: null }
      return { dimension, unit }
    },
    reason: (words) => numbered(words, data),
  }
}

/** Messages of the pipeline name cells by their ids. */
function numbered(words: string, { from, to }: ComparePageData): string {
  return words.replace(/cell "([\w-]+)"/g, (whole, id: string) => {
    const number = to.numbers[id] ?? from.numbers[id]
    return number === undefined ? whole : `cell ${number}`
  })
}

function button(words: string, act: () => void): HTMLButtonElement {
  const made = element(document, 'button', { type: 'button', class: 'small-button' }, words) as HTMLButtonElement
  made.addEventListener('click', act)
  return made
}

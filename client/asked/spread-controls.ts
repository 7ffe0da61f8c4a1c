/** How many samples, from which seed, and the line that shows how far a run is. */
import { element } from '../../shared/rendering/page.js'
import type { Running } from './one-at-a-time.js'
import { RunningLine } from './running-line.js'
import type { Part, SpreadOptions } from './spread-work.js'

export interface ControlEvents {
  onSample(options: SpreadOptions): void
  onStop(): void
}

const counts: readonly (readonly [count: number, untilSettled: boolean, words: string])[] = [
  [2048, true, 'until settled, at most 2 048'],
  [512, false, '512'],
  [2048, false, '2 048'],
  [8192, false, '8 192'],
]

const names = { samples: 'Sampling', shares: 'Sharing out the variance', ranges: 'Varying the ranges' } as const

export class SpreadControls {
  readonly element: HTMLElement
  readonly #count = document.createElement('select')
  readonly #seed = document.createElement('input')
  readonly #line: RunningLine

  constructor(events: ControlEvents) {
    this.#count.append(...counts.map(([, , words], at) => element(document, 'option', { value: at }, words)))
    this.#seed.type = 'number'
    this.#seed.min = '0'
    this.#seed.max = '4294967295'
    this.#seed.step = '1'
    this.#seed.value = '1'
    this.#seed.required = true
    const form = element(
      document,
      'form',
      { class: 'spread-controls' },
      element(document, 'label', {}, 'Samples ', this.#count),
      element(document, 'label', {}, 'Seed ', this.#seed),
      element(document, 'button', { type: 'submit', class: 'button' }, 'Sample again'),
    )
    form.addEventListener('submit', (event) => {
      event.preventDefault()
      events.onSample(this.options)
    })
    this.#line = new RunningLine(() => events.onStop())
    this.element = element(document, 'div', {}, form, this.#line.element)
  }

  get options(): SpreadOptions {
    const [count, untilSettled] = counts[Number(this.#count.value)] ?? [2048, true]
    return { count, untilSettled, seed: Number(this.#seed.value) }
  }

  /** Nothing to set where nothing can be sampled. */
  offer(possible: boolean): void {
    const [form] = this.element.children
    if (form instanceof HTMLElement) form.hidden = !possible
  }

  showRunning(running: Running<Part> | undefined): void {
    this.#line.show(running, running === undefined ? '' : names[running.part])
  }
}

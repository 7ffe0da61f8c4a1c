/** How far a run is, how long it will still take, and the button that stops it. */
import { element } from '../../shared/rendering/page.js'
import type { Running } from './one-at-a-time.js'

export class RunningLine {
  readonly element: HTMLElement
  readonly #bar = document.createElement('progress')
  readonly #words = document.createElement('span')

  constructor(onStop: () => void) {
    const stop = element(document, 'button', { type: 'button', class: 'link-button' }, 'Stop')
    stop.addEventListener('click', onStop)
    this.element = element(document, 'div', { class: 'asked-running' }, this.#bar, this.#words, stop)
    this.element.hidden = true
  }

  /** `name` says what runs: `Sampling`. */
  show(running: Running<string> | undefined, name: string): void {
    this.element.hidden = running === undefined
    if (running === undefined) return
    const { done, asked, secondsLeft } = running
    this.#bar.max = Math.max(asked, 1)
    this.#bar.value = done
    this.#bar.setAttribute('aria-label', name)
    const left = secondsLeft === undefined ? '' : secondsLeft === 0 ? ', nearly done' : `, about ${secondsLeft} s left`
    this.#words.textContent = `${name}: ${done} of at most ${asked === 0 ? '…' : asked}${left}`
  }
}

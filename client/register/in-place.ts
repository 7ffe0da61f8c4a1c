/** A field in the place of what it changes: Enter writes, Escape forgets, a refusal stands below it. */
import { element } from '../../shared/rendering/page.js'

export interface InPlaceEvents {
  /** Answers why it cannot be written, `null` when it was. */
  write(text: string): Promise<string | null>
  /** It is no longer needed; `back` when the focus is to return to what it changed. */
  onEnd(back: boolean): void
}

export class InPlace {
  readonly element = element(document, 'div', { class: 'in-place' })
  readonly #input: HTMLInputElement
  readonly #refusal = element(document, 'p', { class: 'in-place-refusal', role: 'alert' })
  readonly #events: InPlaceEvents
  readonly #before: string
  #writing = false
  #moving = false

  constructor(label: string, text: string, events: InPlaceEvents) {
    this.#events = events
    this.#before = text
    this.#input = element(document, 'input', {
      type: 'text',
      'aria-label': `${label}; Enter writes it, Escape forgets it`,
      autocomplete: 'off',
      spellcheck: 'false',
    }) as HTMLInputElement
    this.#input.value = text
    this.element.append(this.#input, this.#refusal)
    this.#input.addEventListener('keydown', (event) => this.#key(event))
    this.#input.addEventListener('blur', () => this.#left())
  }

  focus(): void {
    this.#input.focus()
    this.#input.select()
  }

  get focused(): boolean {
    return document.activeElement === this.#input
  }

  /** Runs what takes it from the page for a moment, which is no leaving: focus and caret stay. */
  keepThrough(redraw: () => void): void {
    const { selectionStart, selectionEnd } = this.#input
    this.#moving = true
    redraw()
    if (this.element.isConnected) {
      this.#input.focus({ preventScroll: true })
      this.#input.setSelectionRange(selectionStart, selectionEnd)
    }
    this.#moving = false
  }

  #key(event: KeyboardEvent): void {
    if (event.isComposing || (event.key !== 'Enter' && event.key !== 'Escape')) return
    event.preventDefault()
    // Escape would close the drawer as well.
    event.stopPropagation()
    if (event.key === 'Escape') this.#events.onEnd(true)
    else void this.#write()
  }

  /** A field that was left as it was goes; what was typed stays until it is written or forgotten. */
  #left(): void {
    if (!this.#moving && !this.#writing && this.#input.value === this.#before) this.#events.onEnd(false)
  }

  async #write(): Promise<void> {
    if (this.#writing) return
    if (this.#input.value === this.#before) {
      this.#events.onEnd(true)
      return
    }
    this.#writing = true
    const refusal = await this.#events.write(this.#input.value).catch((failure: unknown) => String(failure))
    this.#writing = false
    this.#input.setAttribute('aria-invalid', String(refusal !== null))
    this.#refusal.textContent = refusal ?? ''
    if (refusal === null) this.#events.onEnd(true)
  }
}

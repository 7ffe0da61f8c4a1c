/** Slider and field of one assumption: what is chosen there is tried, not written. The elements stay while the table around them is drawn anew. */
import {
  type AssumptionRow,
  element,
  formatQuantity,
  numberOf,
  numberText,
  readValue,
  unitOf,
} from '../../shared/rendering/page.js'
import { dragged, type Scale, stepped } from './steps.js'

export interface TrialControlEvents {
  /** SI. */
  onTry(value: number): void
  onDiscard(): void
  /** Answers why it cannot be written, `null` when it was. */
  onAdopt(): Promise<string | null>
  /** The slider was let go. */
  onRelease(): void
}

export class TrialControl {
  readonly element = element(document, 'div', { class: 'trial-control' })
  readonly #slider = element(document, 'input', {
    type: 'range',
    step: 'any',
    class: 'trial-slider',
  }) as HTMLInputElement
  readonly #field = element(document, 'input', {
    type: 'text',
    inputmode: 'decimal',
    autocomplete: 'off',
    spellcheck: 'false',
    class: 'trial-field',
  }) as HTMLInputElement
  readonly #unit = element(document, 'span', { class: 'trial-unit' })
  readonly #words = element(document, 'p', { class: 'trial-words' })
  readonly #adopt = element(document, 'button', { type: 'button' }, 'Adopt')
  readonly #discard = element(document, 'button', { type: 'button' }, 'Discard')
  readonly #buttons = element(document, 'div', { class: 'trial-buttons' }, this.#adopt, this.#discard)
  readonly #refusal = element(document, 'p', { class: 'in-place-refusal', role: 'alert' })
  readonly #events: TrialControlEvents
  #row: AssumptionRow
  /** On trial, SI. */
  #tried: number | undefined
  /** What was typed and is not taken yet. */
  #typing = false
  #held = false

  constructor(row: AssumptionRow, events: TrialControlEvents) {
    this.#row = row
    this.#events = events
    const entry = element(document, 'div', { class: 'trial-entry' }, this.#field, this.#unit)
    this.element.append(this.#slider, entry, this.#words, this.#buttons, this.#refusal)
    this.#listen()
    this.update(row, undefined)
  }

  /** The pointer holds the slider: whoever takes it from the page now would end the drag. */
  get held(): boolean {
    return this.#held
  }

  get tried(): boolean {
    return this.#tried !== undefined
  }

  get focused(): boolean {
    return this.element.contains(document.activeElement)
  }

  update(row: AssumptionRow, tried: number | undefined): void {
    this.#row = row
    this.#tried = tried
    const { name } = row
    const { symbol } = unitOf(row)
    const label = `Trial value of ${name}${symbol === '' ? '' : ` in ${symbol}`}`
    this.#showSlider(label)
    this.#field.setAttribute('aria-label', `${label}; arrows step it, Enter tries what is typed`)
    if (!this.#typing) this.#field.value = numberText(this.#si, row)
    setText(this.#unit, symbol)
    setText(this.#words, this.#wordsOf())
    this.#words.hidden = tried === undefined
    this.#buttons.hidden = tried === undefined
    this.#adopt.setAttribute('aria-label', `Adopt the trial value of ${name}`)
    this.#discard.setAttribute('aria-label', `Discard the trial value of ${name}`)
    this.element.toggleAttribute('data-trial', tried !== undefined)
  }

  /** Runs what takes it from the page for a moment: focus, caret and what was typed stay. */
  keepThrough(redraw: () => void): void {
    const focused = document.activeElement
    if (!(focused instanceof HTMLElement) || !this.element.contains(focused)) {
      redraw()
      return
    }
    const caret =
      focused === this.#field ? ([this.#field.selectionStart, this.#field.selectionEnd] as const) : undefined
    const typing = this.#typing
    redraw()
    this.#typing = typing
    if (!this.element.isConnected) return
    focused.focus({ preventScroll: true })
    if (caret !== undefined) this.#field.setSelectionRange(...caret)
  }

  /** In force: on trial, else the document's; SI. */
  get #si(): number {
    return this.#tried ?? numberOf(this.#row.record.value)
  }

  get #scale(): Scale | undefined {
    const { low, high } = this.#row.record
    if (low === undefined || high === undefined) return undefined
    const { factor } = unitOf(this.#row)
    const scale = { low: numberOf(low) / factor, high: numberOf(high) / factor }
    return scale.high > scale.low && Number.isFinite(scale.high - scale.low) ? scale : undefined
  }

  get #shown(): number {
    return Number(numberText(this.#si, this.#row))
  }

  #showSlider(label: string): void {
    const scale = this.#scale
    this.#slider.hidden = scale === undefined
    if (scale === undefined) return
    const said = Number(numberText(numberOf(this.#row.record.value), this.#row))
    for (const [name, value] of [
      ['min', String(scale.low)],
      ['max', String(scale.high)],
      ['aria-label', label],
      ['aria-valuetext', this.#spoken()],
    ] as const)
      if (this.#slider.getAttribute(name) !== value) this.#slider.setAttribute(name, value)
    // While it is held it stands where the pointer is.
    if (!this.#held) this.#slider.value = String(this.#shown)
    const share = (said - scale.low) / (scale.high - scale.low)
    this.#slider.style.setProperty('--said', String(Math.min(1, Math.max(0, share))))
  }

  #spoken(): string {
    const { record, dimension } = this.#row
    const value = formatQuantity(this.#si, dimension, record.unit).text
    return this.#tried === undefined ? `${value}, as in the document` : `${value}, trial`
  }

  #wordsOf(): string {
    if (this.#tried === undefined) return ''
    const { record, dimension } = this.#row
    const shown = (si: number) => formatQuantity(si, dimension, record.unit).text
    const { low, high } = record
    const outside =
      low !== undefined && high !== undefined && (this.#tried < numberOf(low) || this.#tried > numberOf(high))
    const range = outside ? `; outside its range ${shown(numberOf(low))} to ${shown(numberOf(high))}` : ''
    return `trial; document ${shown(numberOf(record.value))}${range}`
  }

  #listen(): void {
    this.#slider.addEventListener('input', () => {
      const scale = this.#scale
      if (scale !== undefined) this.#try(dragged(this.#slider.valueAsNumber, scale))
    })
    this.#slider.addEventListener('pointerdown', () => {
      this.#held = true
    })
    for (const end of ['pointerup', 'pointercancel', 'lostpointercapture', 'change', 'blur'])
      this.#slider.addEventListener(end, () => this.#release())
    this.#slider.addEventListener('keydown', (event) => this.#step(event, slidingKeys))
    this.#field.addEventListener('keydown', (event) => this.#key(event))
    this.#field.addEventListener('input', () => {
      this.#typing = true
    })
    this.#field.addEventListener('change', () => this.#take())
    this.#discard.addEventListener('click', () => {
      this.#field.focus({ preventScroll: true })
      this.#forget()
      this.#events.onDiscard()
    })
    this.#adopt.addEventListener('click', () => void this.#adopted())
  }

  #release(): void {
    if (!this.#held) return
    this.#held = false
    this.#events.onRelease()
  }

  #key(event: KeyboardEvent): void {
    if (event.isComposing) return
    if (event.key === 'Enter') {
      event.preventDefault()
      this.#take()
    } else if (event.key === 'Escape' && this.#typing) {
      // The next one closes the drawer.
      event.preventDefault()
      event.stopPropagation()
      this.#forget()
      this.#field.select()
    } else this.#step(event, typingKeys)
  }

  /** Ten times the step with Shift. */
  #step(event: KeyboardEvent, keys: Readonly<Record<string, number>>): void {
    const { key, shiftKey, ctrlKey, altKey, metaKey } = event
    const steps = Object.hasOwn(keys, key) ? keys[key] : undefined
    if (steps === undefined || ctrlKey || altKey || metaKey) return
    event.preventDefault()
    const scale = this.#scale
    const end =
      steps === Number.POSITIVE_INFINITY ? scale?.high : steps === Number.NEGATIVE_INFINITY ? scale?.low : undefined
    this.#forget()
    this.#try(end ?? stepped(this.#shown, scale, shiftKey ? 10 * steps : steps))
  }

  #take(): void {
    if (!this.#typing) return
    const reading = readValue(this.#field.value, this.#row)
    this.#field.setAttribute('aria-invalid', String(!reading.ok))
    setText(this.#refusal, reading.ok ? '' : reading.message)
    if (!reading.ok) return
    this.#typing = false
    this.#events.onTry(reading.si)
  }

  /** In the unit shown. */
  #try(shown: number): void {
    this.#events.onTry(shown * unitOf(this.#row).factor)
  }

  #forget(): void {
    this.#typing = false
    this.#field.removeAttribute('aria-invalid')
    setText(this.#refusal, '')
    this.#field.value = numberText(this.#si, this.#row)
  }

  async #adopted(): Promise<void> {
    const refusal = await this.#events.onAdopt().catch((failure: unknown) => String(failure))
    setText(this.#refusal, refusal ?? '')
    if (refusal === null) this.#field.focus({ preventScroll: true })
  }
}

const ends = { Home: Number.NEGATIVE_INFINITY, End: Number.POSITIVE_INFINITY }
const typingKeys: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }
const slidingKeys: Readonly<Record<string, number>> = { ...typingKeys, ArrowRight: 1, ArrowLeft: -1, ...ends }

/** Said aloud only when it changes. */
function setText(target: Element, text: string): void {
  if (target.textContent !== text) target.textContent = text
}

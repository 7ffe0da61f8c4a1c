/** One field of the title block as a text control that stands where its value stood. */
import { limits, type TitleBlockField } from '../../shared/contracts/index.js'
import type { FieldStep } from '../live/undo.js'

/** What became of a field that was written. */
export type Written =
  | { readonly kind: 'sent' }
  /** The server could not be reached, or not write: it is kept here. */
  | { readonly kind: 'waits' }
  | { readonly kind: 'refused'; readonly sentence: string }

const waits = 'Kept in this browser; it is sent when the server can be reached again.'

/** Pause in typing after which a field is sent. [ms] */
const pause = 900

export class FieldEditor {
  readonly #place: HTMLElement
  readonly #control: HTMLTextAreaElement
  readonly #field: TitleBlockField
  readonly #send: (step: FieldStep) => Promise<Written>
  readonly #reason: HTMLElement
  /** What the field read when this person began to write in it. */
  #seen: string
  /** What the server has by now. */
  #now: string
  /** What the field read when the server refused what is written in it. */
  #refusedFrom: string | undefined
  #pause: ReturnType<typeof setTimeout> | undefined
  #sending: Promise<boolean> = Promise.resolve(true)
  onLeave: () => void = () => undefined

  constructor(
    place: HTMLElement,
    field: TitleBlockField,
    name: string,
    value: string,
    send: (step: FieldStep) => Promise<Written>,
  ) {
    const document = place.ownerDocument
    this.#place = place
    this.#field = field
    this.#send = send
    this.#seen = value
    this.#now = value
    this.#control = document.createElement('textarea')
    this.#control.className = 'text-area field-line'
    this.#control.rows = 1
    this.#control.value = value
    this.#control.maxLength = field === 'question' ? 1000 : limits.titleCharacters
    this.#control.setAttribute('aria-label', name)
    this.#reason = document.createElement('p')
    this.#reason.className = 'field-refusal'
    this.#reason.setAttribute('role', 'alert')
    place.replaceChildren(this.#control, this.#reason)
    place.classList.remove('missing')
    this.#listen()
    this.#grow()
  }

  focus(): void {
    this.#control.focus()
    this.#control.select()
  }

  show(now: string): void {
    this.#now = now
    // What the person is writing stays; after a refusal they have been told what the field reads.
    if (this.#refusedFrom !== undefined) this.#seen = now
    if (this.#control.value.trim() !== this.#seen) return
    this.#control.value = now
    this.#seen = now
    this.#grow()
  }

  /** Sends what was typed; false when it was refused. One after another, so that each knows what the one before wrote. */
  commit(): Promise<boolean> {
    clearTimeout(this.#pause)
    this.#sending = this.#sending.then(() => this.#commit())
    return this.#sending
  }

  close(): void {
    clearTimeout(this.#pause)
    this.#place.replaceChildren(this.#seen)
  }

  /** What is written here and not sent, so that a page that is left can keep it. */
  unsent(): FieldStep | null {
    const to = this.#written()
    const from = this.#refusedFrom ?? this.#seen
    return to === this.#seen || to === from ? null : { field: this.#field, from, to }
  }

  /** The server has what waited. */
  arrived(): void {
    if (this.#refusedFrom === undefined) this.#reason.textContent = ''
  }

  /** Puts what was written earlier, and refused now, before the person. */
  offer({ from, to }: FieldStep, now: string, sentence: string): void {
    this.#control.value = to
    this.#now = now
    this.#refuse(from, sentence)
    this.#grow()
  }

  async #commit(): Promise<boolean> {
    const to = this.#written()
    if (to === this.#seen) {
      if (this.#refusedFrom !== undefined) this.#reason.textContent = ''
      this.#refusedFrom = undefined
      return true
    }
    const from = this.#seen
    const written = await this.#send({ field: this.#field, from, to })
    if (written.kind === 'refused') {
      this.#refuse(from, written.sentence)
      return false
    }
    this.#reason.textContent = written.kind === 'waits' ? waits : ''
    this.#refusedFrom = undefined
    this.#seen = to
    return true
  }

  /** The refusal said what the field reads by now, so sending again knowingly writes over that. */
  #refuse(from: string, sentence: string): void {
    this.#reason.textContent = sentence
    this.#refusedFrom ??= from
    this.#seen = this.#now
  }

  #written(): string {
    return this.#control.value.replace(/\s+/g, ' ').trim()
  }

  #listen(): void {
    const control = this.#control
    control.addEventListener('input', () => {
      this.#grow()
      clearTimeout(this.#pause)
      this.#pause = setTimeout(() => void this.commit(), pause)
    })
    control.addEventListener('change', () => void this.commit())
    control.addEventListener('keydown', (event) => {
      if (event.isComposing || (event.key !== 'Enter' && event.key !== 'Escape')) return
      event.preventDefault()
      event.stopPropagation()
      this.onLeave()
    })
  }

  #grow(): void {
    this.#control.style.height = 'auto'
    this.#control.style.height = `${this.#control.scrollHeight}px`
  }
}

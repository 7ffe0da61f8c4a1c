/**
 * The fields of the title block, edited where they stand. Each is sent to the server by itself, after a pause in typing or when it is
 * left, and counts as written once the server has it on disk; what could not be sent stays in its field with the reason below it.
 */
import { limits, TitleBlock, type TitleBlockField } from '../../shared/contracts/index.js'
import type { FieldStep } from '../live/undo.js'

export interface TitleFieldsParts {
  /** Resolves when the server has it on disk, with the block as it then stands; rejects with a sentence. */
  send(step: FieldStep): Promise<TitleBlock>
  /** The block stands so now: draw it, except the fields being edited. */
  onBlock(block: TitleBlock): void
  /** This person wrote a field, as a step that can be taken back. */
  onWritten(step: FieldStep): void
  say(sentence: string): void
}

/** Pause in typing after which a field is sent. [ms] */
const pause = 900

/** Names of the fields as the sheet prints them. */
const names: Readonly<Record<TitleBlockField, string>> = {
  question: 'Question',
  project: 'Project',
  basis: 'Basis',
  prepared: 'Prepared',
  checked: 'Checked',
  approved: 'Approved',
  date: 'Date',
  revision: 'Revision',
}

export class TitleFields {
  readonly #head: HTMLElement
  readonly #button: HTMLButtonElement
  readonly #parts: TitleFieldsParts
  readonly #editors = new Map<TitleBlockField, FieldEditor>()
  #block: TitleBlock

  constructor(head: HTMLElement, block: TitleBlock, parts: TitleFieldsParts) {
    this.#head = head
    this.#block = block
    this.#parts = parts
    this.#button = head.ownerDocument.createElement('button')
    this.#button.type = 'button'
    this.#button.className = 'small-button edit-fields'
    this.#button.textContent = 'Edit fields'
    this.#button.addEventListener('click', () => (this.editing ? this.#finish() : this.open()))
    head.querySelector('.edit-title')?.after(this.#button)
    head.addEventListener('dblclick', (event) => this.#openAt(event))
  }

  get editing(): boolean {
    return this.#editors.size > 0
  }

  /** Opens all fields, with the focus in one of them. */
  open(at: TitleBlockField = 'question'): void {
    if (!this.editing) {
      this.#makeRoomForQuestion()
      for (const field of TitleBlock.keyof().options) {
        const place = this.#placeOf(field)
        if (place === null) continue
        const editor = new FieldEditor(place, field, names[field], this.#block[field] ?? '', (step) => this.write(step))
        editor.onLeave = () => this.#finish()
        this.#editors.set(field, editor)
      }
      this.#head.dataset.editing = ''
      this.#button.textContent = 'Done'
    }
    this.#editors.get(at)?.focus()
  }

  /** The block as the server has it now. What is being written stays. */
  show(block: TitleBlock): void {
    this.#block = block
    for (const [field, editor] of this.#editors) editor.show(block[field] ?? '')
    if (!this.editing) this.#parts.onBlock(block)
  }

  /** Sends a field; `fromUndo` writes without becoming a step of its own. */
  async write(step: FieldStep, fromUndo = false): Promise<string | null> {
    if (step.from === step.to) return null
    try {
      const block = await this.#parts.send(step)
      if (!fromUndo) this.#parts.onWritten({ ...step, to: block[step.field] ?? '' })
      this.show(block)
      return null
    } catch (error) {
      return error instanceof Error ? error.message : String(error)
    }
  }

  /** What has not been sent yet, because the page is being left or printed. */
  settle(): void {
    for (const editor of this.#editors.values()) void editor.commit()
  }

  /** Ends editing as it stands, for print. */
  close(): void {
    if (this.editing) this.#finish()
  }

  #finish(): void {
    const focused = this.#head.contains(document.activeElement)
    void this.#commitAll().then((refused) => {
      if (refused) return
      for (const editor of this.#editors.values()) editor.close()
      this.#editors.clear()
      delete this.#head.dataset.editing
      this.#button.textContent = 'Edit fields'
      this.#parts.onBlock(this.#block)
      if (focused) this.#button.focus()
    })
  }

  async #commitAll(): Promise<boolean> {
    const outcomes = await Promise.all([...this.#editors.values()].map((editor) => editor.commit()))
    return outcomes.some((written) => !written)
  }

  #openAt(event: MouseEvent): void {
    const target = event.target instanceof Element ? event.target : null
    const field = TitleBlock.keyof().safeParse(target?.closest<HTMLElement>('[data-field]')?.dataset.field)
    if (field.success) this.open(field.data)
    else if (target?.closest('.question') !== null) this.open('question')
  }

  #makeRoomForQuestion(): void {
    const subject = this.#head.querySelector('.subject')
    if (subject === null || subject.querySelector('.question') !== null) return
    const question = document.createElement('p')
    question.className = 'question'
    subject.append(question)
  }

  #placeOf(field: TitleBlockField): HTMLElement | null {
    return this.#head.querySelector<HTMLElement>(field === 'question' ? '.question' : `[data-field="${field}"] dd`)
  }
}

/** One field as a text control that stands where its value stood. */
class FieldEditor {
  readonly #place: HTMLElement
  readonly #control: HTMLTextAreaElement
  readonly #field: TitleBlockField
  readonly #send: (step: FieldStep) => Promise<string | null>
  readonly #reason: HTMLElement
  /** What the field read when this person began to write in it. */
  #seen: string
  /** What the server has by now. */
  #now: string
  #pause: ReturnType<typeof setTimeout> | undefined
  #sending: Promise<boolean> = Promise.resolve(true)
  onLeave: () => void = () => undefined

  constructor(
    place: HTMLElement,
    field: TitleBlockField,
    name: string,
    value: string,
    send: (step: FieldStep) => Promise<string | null>,
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
    if (this.#reason.textContent !== '') this.#seen = now
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

  async #commit(): Promise<boolean> {
    const to = this.#control.value.replace(/\s+/g, ' ').trim()
    if (to === this.#seen) {
      this.#reason.textContent = ''
      return true
    }
    const from = this.#seen
    const refusal = await this.#send({ field: this.#field, from, to })
    this.#reason.textContent = refusal ?? ''
    // The refusal said what the field reads by now, so sending again knowingly writes over that.
    this.#seen = refusal === null ? to : this.#now
    return refusal === null
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

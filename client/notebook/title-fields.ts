/**
 * The fields of the title block, edited where they stand. Each is sent to the server by itself, after a pause in typing or when it is
 * left, and counts as written once the server has it on disk. Until then it is kept in this browser and sent when the server answers
 * again; what the server refuses stays in its field with the reason below it.
 */
import { TitleBlock, type TitleBlockField } from '../../shared/contracts/index.js'
import { Refusal } from '../live/requests.js'
import type { FieldStep } from '../live/undo.js'
import { FieldEditor, type Written } from './title-field.js'
import type { WaitingFields } from './waiting-fields.js'

export interface TitleFieldsParts {
  /** Resolves when the server has it on disk, with the block as it then stands; rejects with a sentence. */
  send(step: FieldStep): Promise<TitleBlock>
  /** The block stands so now: draw it, except the fields being edited. */
  onBlock(block: TitleBlock): void
  /** This person wrote a field, as a step that can be taken back. */
  onWritten(step: FieldStep): void
  say(sentence: string): void
  /** Kept until the server has them. */
  readonly waiting: WaitingFields
}

/** Refusals that say nothing about what was written. */
const passing: ReadonlySet<string> = new Set(['UNREACHABLE', 'STORE_UNAVAILABLE', 'TOO_MANY_REQUESTS', 'SERVER_FAULT'])

/** Pause after which a field that waits is tried again, should nothing else bring the server back to mind. [ms] */
const again = 10_000

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
  #sendingWaiting = false
  #retry: ReturnType<typeof setTimeout> | undefined

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
    if (this.allSent) return
    parts.onBlock(parts.waiting.over(block))
  }

  get allSent(): boolean {
    return this.#parts.waiting.all.length === 0
  }

  get editing(): boolean {
    return this.#editors.size > 0
  }

  /** Opens all fields, with the focus in one of them. */
  open(at: TitleBlockField = 'question'): void {
    this.#openAll()
    this.#editors.get(at)?.focus()
  }

  #openAll(): void {
    if (!this.editing) {
      const shown = this.#parts.waiting.over(this.#block)
      this.#makeRoomForQuestion()
      for (const field of TitleBlock.keyof().options) {
        const place = this.#placeOf(field)
        if (place === null) continue
        const editor = new FieldEditor(place, field, names[field], shown[field] ?? '', (step) => this.write(step))
        editor.onLeave = () => this.#finish()
        this.#editors.set(field, editor)
      }
      this.#head.dataset.editing = ''
      this.#button.textContent = 'Done'
    }
  }

  /** The block as the server has it now. What is being written stays. */
  show(block: TitleBlock): void {
    this.#block = block
    const shown = this.#parts.waiting.over(block)
    for (const [field, editor] of this.#editors) editor.show(shown[field] ?? '')
    if (!this.editing) this.#parts.onBlock(shown)
  }

  /** Sends a field; `fromUndo` writes without becoming a step of its own. */
  async write(step: FieldStep, fromUndo = false): Promise<Written> {
    if (step.from === step.to) return { kind: 'sent' }
    const whole = this.#parts.waiting.put(step)
    const written: Written = whole === null ? { kind: 'sent' } : await this.#send(whole)
    if (written.kind === 'refused') this.#parts.waiting.remove(step.field)
    else if (!fromUndo) this.#parts.onWritten({ ...step, to: this.#parts.waiting.over(this.#block)[step.field] ?? '' })
    this.show(this.#block)
    return written
  }

  /** The server can be reached: what waited goes out, also from an earlier visit. What is refused is put before the person. */
  async sendWaiting(): Promise<void> {
    if (this.#sendingWaiting) return
    this.#sendingWaiting = true
    for (const step of this.#parts.waiting.all) {
      const written = await this.#send(step)
      if (written.kind === 'waits') break
      this.#editors.get(step.field)?.arrived()
      if (written.kind === 'refused') this.#offer(step, written.sentence)
    }
    this.#sendingWaiting = false
    this.show(this.#block)
  }

  /** The page is being left: what has not been sent yet is kept at once, then sent. */
  settle(): void {
    for (const editor of this.#editors.values()) {
      const step = editor.unsent()
      if (step !== null) this.#parts.waiting.put(step)
      void editor.commit()
    }
  }

  async #send(step: FieldStep): Promise<Written> {
    try {
      this.#block = await this.#parts.send(step)
      this.#parts.waiting.sent(step)
      return { kind: 'sent' }
    } catch (error) {
      if (error instanceof Refusal && passing.has(error.code)) {
        clearTimeout(this.#retry)
        this.#retry = setTimeout(() => void this.sendWaiting(), again)
        return { kind: 'waits' }
      }
      return { kind: 'refused', sentence: error instanceof Error ? error.message : String(error) }
    }
  }

  #offer(step: FieldStep, sentence: string): void {
    this.#parts.waiting.remove(step.field)
    this.#openAll()
    this.#editors.get(step.field)?.offer(step, this.#block[step.field] ?? '', sentence)
    this.#parts.say(`${names[step.field]}: ${sentence}`)
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
      this.#parts.onBlock(this.#parts.waiting.over(this.#block))
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

/** Signing a revision: name, remark, and what was checked by hand. The fingerprint that is sent is the one this person sees. */
import type { HandCheck, RevisionSummary, SignatureRole } from '../../shared/contracts/index.js'
import { element, shortFingerprint } from '../../shared/rendering/page.js'
import { signRevision } from './revision-requests.js'

type Field = HTMLInputElement | HTMLTextAreaElement

export class SignForm {
  readonly element: HTMLElement
  readonly #id: string
  readonly #revision: RevisionSummary
  readonly #role: SignatureRole
  readonly #onSigned: () => Promise<void>
  readonly #fields = new Map<string, Field>()
  readonly #refusal: HTMLElement
  #busy = false

  constructor(id: string, revision: RevisionSummary, role: SignatureRole, onSigned: () => Promise<void>) {
    this.#id = id
    this.#revision = revision
    this.#role = role
    this.#onSigned = onSigned
    this.#refusal = element(document, 'p', { class: 'field-refusal', role: 'alert' })
    const form = element(
      document,
      'form',
      {},
      this.#field('name', 'Name', 100),
      this.#field('remark', 'Remark (may be left out)', 1000),
      this.#handCheckFields(),
      element(
        document,
        'button',
        { class: 'small-button' },
        `Sign ${revision.name}, ${shortFingerprint(revision.fingerprint)}, as ${role}`,
      ),
      this.#refusal,
    )
    form.addEventListener('submit', (event) => {
      event.preventDefault()
      void this.#send()
    })
    this.element = element(
      document,
      'details',
      { class: 'sign-fold' },
      element(document, 'summary', {}, `Sign as ${role}`),
      form,
    )
  }

  #handCheckFields(): HTMLElement {
    return element(
      document,
      'details',
      { class: 'hand-check-fields' },
      element(document, 'summary', {}, 'Attach a hand check'),
      this.#field('what', 'What was checked by hand', 500),
      this.#field('expected', 'Number expected', 100),
      this.#field('found', 'Number in the document', 100),
      this.#field('within', 'Agrees within', 100),
    )
  }

  #field(name: string, words: string, longest: number): HTMLElement {
    const field = element(document, 'input', { name, maxlength: longest, autocomplete: 'off' }) as HTMLInputElement
    this.#fields.set(name, field)
    return element(document, 'label', {}, words, field)
  }

  async #send(): Promise<void> {
    if (this.#busy) return
    const name = this.#value('name')
    const handCheck = this.#handCheck()
    if (name === '') return this.#refuse('Write the name of the person who signs.', 'name')
    if (handCheck === null)
      return this.#refuse(
        'A hand check says what was checked, both numbers and within what they agree: fill in all four, or none.',
        'what',
      )
    this.#busy = true
    this.#refusal.textContent = ''
    const { fingerprint } = this.#revision
    const remark = this.#value('remark')
    try {
      await signRevision(this.#id, this.#revision.name, {
        role: this.#role,
        name,
        fingerprint,
        ...(remark === '' ? {} : { remark }),
        ...(handCheck === undefined ? {} : { handCheck }),
      })
      await this.#onSigned()
    } catch (error) {
      this.#refusal.textContent = error instanceof Error ? error.message : String(error)
    } finally {
      this.#busy = false
    }
  }

  /** Undefined when none is attached, null when it is not complete. */
  #handCheck(): HandCheck | undefined | null {
    const [what = '', expected = '', found = '', within = ''] = ['what', 'expected', 'found', 'within'].map((name) =>
      this.#value(name),
    )
    const given = [what, expected, found, within].filter((text) => text !== '').length
    if (given === 0) return undefined
    return given < 4 ? null : { what, expected, found, within }
  }

  #value(name: string): string {
    return this.#fields.get(name)?.value.trim() ?? ''
  }

  #refuse(sentence: string, field: string): void {
    this.#refusal.textContent = sentence
    this.#fields.get(field)?.focus()
  }
}

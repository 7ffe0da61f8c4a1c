/** Issuing the next revision. While cells have no current values the server refuses; it can be issued with them, knowingly. */
import { limits, type RevisionName } from '../../shared/contracts/index.js'
import { element } from '../../shared/rendering/page.js'
import { Refusal } from '../live/requests.js'
import { issueRevision } from './revision-requests.js'
import type { RevisionsSources } from './revisions-view.js'

/** Results that are here may still be on their way to the server: so often it is asked again, after this pause [ms]. */
const tries = 16
const pause = 500

export class IssueForm {
  readonly element: HTMLFormElement
  readonly #sources: RevisionsSources
  readonly #onIssued: () => Promise<void>
  readonly #purpose: HTMLInputElement
  readonly #issue: HTMLButtonElement
  readonly #trial: HTMLElement
  readonly #refusal: HTMLElement
  readonly #withThem: HTMLButtonElement
  #busy = false

  constructor(sources: RevisionsSources, onIssued: () => Promise<void>) {
    this.#sources = sources
    this.#onIssued = onIssued
    this.element = element(document, 'form', { class: 'issue-form' }) as HTMLFormElement
    this.#purpose = element(document, 'input', {
      name: 'purpose',
      maxlength: limits.titleCharacters,
      autocomplete: 'off',
    }) as HTMLInputElement
    this.#issue = element(document, 'button', { class: 'small-button' }, 'Issue revision') as HTMLButtonElement
    this.#trial = element(document, 'p', { class: 'issue-trial', role: 'status' })
    this.#refusal = element(document, 'p', { class: 'field-refusal', role: 'alert' })
    this.#withThem = element(
      document,
      'button',
      { type: 'button', class: 'small-button' },
      'Issue with them',
    ) as HTMLButtonElement
    this.#withThem.hidden = true
    this.#withThem.addEventListener('click', () => void this.#send(true))
    this.element.append(
      element(document, 'label', {}, 'What it is for, in one line (may be left out)', this.#purpose),
      this.#trial,
      this.#issue,
      this.#refusal,
      this.#withThem,
    )
    this.element.addEventListener('submit', (event) => {
      event.preventDefault()
      void this.#send(false)
    })
  }

  setName(next: RevisionName): void {
    this.#issue.textContent = `Issue revision ${next}`
  }

  /** What is on trial never enters a revision, and whoever sees it on the sheet is told so. */
  followTrial(): void {
    const words = trialWords(this.#sources.onTrial())
    if (this.#trial.textContent !== words) this.#trial.textContent = words
    this.#trial.hidden = words === ''
  }

  async #send(withUnsettled: boolean): Promise<void> {
    if (this.#busy) return
    if (!this.#sources.saved()) {
      this.#refuse('Your last edits have not reached the server yet; issue it when all edits are saved.', false)
      return
    }
    this.#busy = true
    this.#refuse('', false)
    try {
      await this.#issueWhenShared(withUnsettled)
      this.#purpose.value = ''
      await this.#onIssued()
    } catch (error) {
      const unsettled = error instanceof Refusal && error.code === 'REVISION_UNSETTLED'
      this.#refuse(error instanceof Error ? error.message : String(error), unsettled)
    } finally {
      this.#busy = false
    }
  }

  async #issueWhenShared(withUnsettled: boolean): Promise<void> {
    for (let attempt = 1; ; attempt += 1) {
      try {
        await issueRevision(this.#sources.id, { purpose: this.#purpose.value, withUnsettled })
        return
      } catch (error) {
        const early = error instanceof Refusal && error.code === 'REVISION_UNSETTLED' && this.#sources.settled()
        if (!early || attempt >= tries) throw error
        await new Promise((resolve) => setTimeout(resolve, pause))
      }
    }
  }

  #refuse(sentence: string, withThem: boolean): void {
    this.#refusal.textContent = sentence
    this.#withThem.hidden = !withThem
  }
}

export function trialWords(count: number): string {
  if (count === 0) return ''
  const [values, sheet] = count === 1 ? ['1 trial value is', 'it'] : [`${count} trial values are`, 'them']
  return `${values} in force on this page. A revision freezes the document's own values and their results, not what the sheet shows with ${sheet}. To freeze ${sheet}, adopt ${sheet} first.`
}

/** One revision in the drawer. What a person is writing in its form stays while the rest is drawn anew. */
import {
  type RevisionName,
  type RevisionSummary,
  type SignatureRole,
  signatureRoles,
} from '../../shared/contracts/index.js'
import { addressInUnits, element, renderSummary } from '../../shared/rendering/page.js'
import { beginFromRevision } from './revision-requests.js'
import type { RevisionsSources } from './revisions-view.js'
import { SignForm } from './sign-form.js'

export class RevisionItem {
  readonly element: HTMLElement
  readonly #sources: RevisionsSources
  readonly #onSigned: () => Promise<void>
  readonly #summary: HTMLElement
  readonly #signing: HTMLElement
  readonly #links = new Map<HTMLElement, string>()
  #form: { readonly role: SignatureRole; readonly form: SignForm } | undefined

  constructor(
    sources: RevisionsSources,
    revision: RevisionSummary,
    before: RevisionName | undefined,
    onSigned: () => Promise<void>,
  ) {
    this.#sources = sources
    this.#onSigned = onSigned
    this.#summary = element(document, 'div', { class: 'revision-summary' })
    this.#signing = element(document, 'div', { class: 'signing' })
    const { name } = revision
    const heading = element(document, 'h3', { id: `revision-${name}` }, `Revision ${name}`)
    this.element = element(
      document,
      'li',
      { class: 'revision', 'aria-labelledby': `revision-${name}` },
      heading,
      this.#summary,
      this.#signing,
      this.#ways(name, before),
    )
    this.show(revision)
    this.followUnits()
  }

  show(revision: RevisionSummary): void {
    this.#summary.replaceChildren(...renderSummary(document, revision))
    const role = signatureRoles.find((each) => revision.signatures.every((signature) => signature.role !== each))
    const next = revision.altered === undefined ? role : undefined
    if (next === this.#form?.role) return
    const form = next === undefined ? undefined : new SignForm(this.#sources.id, revision, next, this.#onSigned)
    this.#form = next === undefined || form === undefined ? undefined : { role: next, form }
    this.#signing.replaceChildren(...(form === undefined ? [] : [form.element]))
  }

  /** Links lead on in the units of the reader. */
  followUnits(): void {
    for (const [link, address] of this.#links) link.setAttribute('href', addressInUnits(address, this.#sources.units()))
  }

  #ways(name: RevisionName, before: RevisionName | undefined): HTMLElement {
    const here = `/notebooks/${encodeURIComponent(this.#sources.id)}`
    const link = (address: string, words: string, label: string) => {
      const made = element(document, 'a', { href: address, 'aria-label': label }, words)
      this.#links.set(made, address)
      return made
    }
    const begin = element(document, 'button', { type: 'button', class: 'link-button' }, 'Begin a new notebook from it')
    const refusal = element(document, 'p', { class: 'field-refusal', role: 'alert' })
    begin.addEventListener('click', () => {
      beginFromRevision(this.#sources.id, name).then(
        (made) => location.assign(`/notebooks/${made.id}`),
        (error: unknown) => {
          refusal.textContent = error instanceof Error ? error.message : String(error)
        },
      )
    })
    const file = element(document, 'a', { href: `/api${here}/revisions/${name}/file`, download: true }, 'Download')
    return element(
      document,
      'div',
      { class: 'revision-ways' },
      link(`${here}/revisions/${name}`, 'Open', `Open revision ${name}, read-only`),
      link(`${here}/compare?from=${name}&to=live`, 'Compare with the text', `Compare revision ${name} with the text`),
      before === undefined
        ? null
        : link(
            `${here}/compare?from=${before}&to=${name}`,
            `Compare with ${before}`,
            `Compare revisions ${before} and ${name}`,
          ),
      file,
      begin,
      refusal,
    )
  }
}

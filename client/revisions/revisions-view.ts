/** Revisions in the drawer: issue one, sign it, compare, open, take it further. */
import type { RevisionList, RevisionMark, RevisionName, RevisionSummary } from '../../shared/contracts/index.js'
import { element, namesAreStated, type UnitSystem } from '../../shared/rendering/page.js'
import type { DrawerView } from '../drawer/drawer.js'
import { IssueForm } from './issue-form.js'
import { RevisionItem } from './revision-item.js'
import { listRevisions } from './revision-requests.js'

export interface RevisionsSources {
  readonly id: string
  /** Every edit has reached the server. */
  saved(): boolean
  /** Every cell has current values here. */
  settled(): boolean
  /** Values of the page that are tried and not in the document. */
  onTrial(): number
  /** Of the reader. */
  units(): UnitSystem
  /** The list was read: its latest may be news to the title block. */
  onLatest(mark: RevisionMark): void
  say(sentence: string): void
}

export class RevisionsView implements DrawerView {
  readonly name = 'revisions'
  readonly title = 'Revisions'
  readonly element = document.createElement('div')
  readonly #sources: RevisionsSources
  readonly #teach: HTMLElement
  readonly #issue: IssueForm
  readonly #refusal: HTMLElement
  readonly #rows: HTMLElement
  readonly #troubles: HTMLElement
  readonly #items = new Map<RevisionName, RevisionItem>()
  #visible = false
  #asked = 0

  constructor(sources: RevisionsSources) {
    this.#sources = sources
    this.element.className = 'revisions'
    this.#teach = element(document, 'p', { class: 'drawer-empty' }, teaching)
    this.#issue = new IssueForm(sources, () => this.refresh())
    this.#refusal = element(document, 'p', { class: 'field-refusal', role: 'alert' })
    this.#rows = element(document, 'ol', { class: 'revision-list', reversed: true })
    this.#troubles = element(document, 'ul', { class: 'revision-troubles' })
    const stated = element(document, 'p', { class: 'stated' }, namesAreStated)
    this.element.append(this.#teach, this.#issue.element, this.#refusal, this.#rows, this.#troubles, stated)
    this.#teach.hidden = true
  }

  show(): void {
    this.#visible = true
    this.update()
    void this.refresh()
  }

  /** Revisions do not change with the text; what is on trial and the units of the reader may. */
  update(): void {
    this.#issue.followTrial()
    for (const item of this.#items.values()) item.followUnits()
  }

  /** A revision was issued or signed, or the connection came back. */
  async refresh(): Promise<void> {
    if (!this.#visible) return
    this.#asked += 1
    const asked = this.#asked
    try {
      const list = await listRevisions(this.#sources.id)
      if (asked !== this.#asked) return
      this.#refusal.textContent = ''
      this.#draw(list)
    } catch (error) {
      if (asked === this.#asked) this.#refusal.textContent = error instanceof Error ? error.message : String(error)
    }
  }

  #draw({ revisions, troubles, next }: RevisionList): void {
    this.#teach.hidden = revisions.length > 0
    this.#issue.setName(next)
    this.#troubles.replaceChildren(...troubles.map((trouble) => element(document, 'li', {}, trouble)))
    for (const [index, revision] of revisions.entries()) this.#drawOne(revision, revisions[index - 1]?.name)
    const latest = revisions.at(-1)
    if (latest !== undefined) this.#sources.onLatest(markOf(latest))
  }

  #drawOne(revision: RevisionSummary, before: RevisionName | undefined): void {
    const known = this.#items.get(revision.name)
    if (known !== undefined) {
      known.show(revision)
      return
    }
    const item = new RevisionItem(this.#sources, revision, before, () => this.refresh())
    this.#items.set(revision.name, item)
    this.#rows.prepend(item.element)
  }
}

function markOf({ purpose: _, unsettled: __, ...mark }: RevisionSummary): RevisionMark {
  return mark
}

const teaching =
  'No revision has been issued yet. A revision freezes the text and its results as they are now, under a letter and a fingerprint: it can be ' +
  'signed as prepared, checked and approved, and compared with what comes after it. Issue the first when the sheet is ready to be checked.'

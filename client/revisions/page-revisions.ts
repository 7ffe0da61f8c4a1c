/** Revisions as the notebook page has them: the standing in the title block and the view in the drawer, told of each other's news. */
import type { TextToFreeze } from '../../kernel/cells/revision/index.js'
import type { RevisionMark } from '../../shared/contracts/index.js'
import type { RevisionStanding, SheetView } from '../../shared/rendering/page.js'
import { assumptionsOf, trialsOf } from '../asked/edition.js'
import { LatestRevision } from './latest-revision.js'
import { RevisionsView } from './revisions-view.js'

export interface PageRevisionsParts {
  readonly id: string
  /** As the server drew the page. */
  readonly mark: RevisionMark | undefined
  readonly kernelHash: string
  text(): TextToFreeze
  view(): SheetView
  /** Every edit has reached the server. */
  saved(): boolean
  after(milliseconds: number, call: () => void): () => void
  onStanding(): void
  say(sentence: string): void
}

export class PageRevisions {
  /** For the drawer. */
  readonly view: RevisionsView
  readonly #latest: LatestRevision
  #connected = false

  constructor(parts: PageRevisionsParts) {
    this.#latest = new LatestRevision({ ...parts, onNews: (sentence) => parts.say(sentence) })
    this.view = new RevisionsView({
      id: parts.id,
      saved: () => parts.saved(),
      settled: () => parts.view().cells.every(({ kind, state }) => kind === 'rationale' || state === 'current'),
      onTrial: () => Object.keys(trialsOf(assumptionsOf(parts.view()))).length,
      units: () => parts.view().units ?? 'as written',
      onLatest: (mark) => this.#latest.take(mark),
      say: (sentence) => parts.say(sentence),
    })
  }

  /** For the title block; absent while no revision was issued. */
  get standing(): { readonly revision?: RevisionStanding } {
    const { standing } = this.#latest
    return standing === undefined ? {} : { revision: standing }
  }

  /** The sheet was drawn, perhaps with another text. */
  follow(): void {
    this.#latest.follow()
  }

  /** Someone issued or signed. */
  take(mark: RevisionMark): void {
    this.#latest.take(mark)
    void this.view.refresh()
  }

  /** While there was no connection nothing was heard. */
  setConnected(connected: boolean): void {
    if (connected && !this.#connected) void this.view.refresh()
    this.#connected = connected
  }
}

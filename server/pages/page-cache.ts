/** The last page drawn of each notebook, as long as nothing on it changed; when something did, `CellMarkup` has most of the next. */
import type { RevisionMark } from '../../shared/contracts/index.js'
import type { LiveContent } from '../live/index.js'
import type { Shelved } from '../results/index.js'

export class PageCache {
  /** A live document makes a new content object with every edit, so the object itself is the key. */
  readonly #pages = new WeakMap<LiveContent, { readonly results: string; readonly page: string }>()

  get(content: LiveContent, shelved: Shelved, revision: RevisionMark | undefined, draw: () => string): string {
    const results = JSON.stringify([
      ...[shelved.current, shelved.outOfDate].map((list) => list.map((result) => result.fingerprint)),
      revision,
    ])
    const known = this.#pages.get(content)
    if (known?.results === results) return known.page
    const page = draw()
    this.#pages.set(content, { results, page })
    return page
  }
}

/**
 * The fingerprint in the title block follows the sheet: the server, which keeps text and results, is asked once the page has been quiet for
 * a while. Until its answer the field says that it is being worked out.
 */
import { type Provenance, shortFingerprint } from '../../shared/contracts/index.js'
import type { SheetView } from '../../shared/rendering/page.js'

export interface FingerprintParts {
  readonly ask: () => Promise<Provenance>
  readonly after: (milliseconds: number, call: () => void) => () => void
  /** The words of the field changed. */
  readonly show: (words: string) => void
}

/** Results are posted within a second of being computed. */
const quiet = 2500

export class LiveFingerprint {
  readonly #parts: FingerprintParts
  #words: string | undefined
  #seen: SheetView | undefined
  #cancel: (() => void) | undefined

  constructor(known: Provenance | undefined, parts: FingerprintParts) {
    this.#parts = parts
    this.#words = known === undefined ? undefined : shortFingerprint(known.fingerprint)
  }

  /** `4c1f 90ae`; undefined while nothing is known. */
  get words(): string | undefined {
    return this.#words
  }

  /** The sheet was drawn. */
  follow(view: SheetView): void {
    const before = this.#seen
    this.#seen = view
    if (before === undefined || sameContent(before, view)) return
    this.#set('being worked out')
    this.#cancel?.()
    this.#cancel = this.#parts.after(quiet, () => this.#ask())
  }

  #ask(): void {
    this.#cancel = undefined
    const asked = this.#seen
    this.#parts.ask().then(
      ({ fingerprint }) => {
        if (this.#cancel === undefined && this.#seen === asked) this.#set(shortFingerprint(fingerprint))
        else if (this.#cancel === undefined) this.#cancel = this.#parts.after(quiet, () => this.#ask())
      },
      // Without the server nothing is certain; the next change asks again.
      () => undefined,
    )
  }

  #set(words: string): void {
    if (words === this.#words) return
    this.#words = words
    this.#parts.show(words)
  }
}

function sameContent(before: SheetView, now: SheetView): boolean {
  const { question, project, basis } = now.titleBlock
  const block = before.titleBlock
  return (
    before.title === now.title &&
    block.question === question &&
    block.project === project &&
    block.basis === basis &&
    before.cells.length === now.cells.length &&
    before.cells.every((cell, index) => {
      const other = now.cells[index]
      return (
        cell.source === other?.source && cell.id === other.id && cell.result?.fingerprint === other.result?.fingerprint
      )
    })
  )
}

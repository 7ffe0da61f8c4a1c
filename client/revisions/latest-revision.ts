/** The latest revision as this page knows it, and how the text that is shown stands to it. DOM-free. */
import { freezeText, type TextToFreeze, textFingerprint } from '../../kernel/cells/revision/index.js'
import type { RevisionMark } from '../../shared/contracts/index.js'
import { type RevisionStanding, revisionStanding } from '../../shared/rendering/page.js'

/** Hashing a long text takes some milliseconds, so it waits for a pause in typing. [ms] */
const pause = 300

export interface LatestRevisionParts {
  readonly mark: RevisionMark | undefined
  /** Of the kernel at hand. */
  readonly kernelHash: string
  /** The text as it is shown. */
  text(): TextToFreeze
  after(milliseconds: number, call: () => void): () => void
  /** The standing is another one: draw it. */
  onStanding(): void
  /** Someone issued or signed. */
  onNews(sentence: string): void
}

export class LatestRevision {
  readonly #parts: LatestRevisionParts
  #mark: RevisionMark | undefined
  #standing: RevisionStanding | undefined
  #cancel: (() => void) | undefined

  constructor(parts: LatestRevisionParts) {
    this.#parts = parts
    this.#mark = parts.mark
  }

  /** Absent while no revision was issued. */
  get standing(): RevisionStanding | undefined {
    if (this.#mark !== undefined && this.#standing === undefined) this.#judge()
    return this.#standing
  }

  /** The text may have changed. */
  follow(): void {
    if (this.#mark === undefined) return
    this.#cancel?.()
    this.#cancel = this.#parts.after(pause, () => {
      if (this.#judge()) this.#parts.onStanding()
    })
  }

  /** A revision was issued or signed, by whomever. */
  take(mark: RevisionMark): void {
    const before = this.#mark
    if (JSON.stringify(before) === JSON.stringify(mark)) return
    this.#mark = mark
    this.#judge()
    this.#parts.onStanding()
    const news = newsOf(before, mark)
    if (news !== null) this.#parts.onNews(news)
  }

  /** True when it is another one now. */
  #judge(): boolean {
    const mark = this.#mark
    if (mark === undefined) return false
    const before = this.#standing
    this.#standing = revisionStanding(mark, textFingerprint(freezeText(this.#parts.text())), this.#parts.kernelHash)
    return before?.state !== this.#standing.state || before.mark !== mark
  }
}

/** What a listener is told: the revision, or the newest signature. */
export function newsOf(before: RevisionMark | undefined, now: RevisionMark): string | null {
  if (before?.name !== now.name) return `Revision ${now.name} is issued.`
  const signature = now.signatures.at(-1)
  if (signature === undefined || now.signatures.length <= before.signatures.length) return null
  return `Revision ${now.name} is signed as ${signature.role} by ${signature.name}.`
}

/** The revisions of the notebooks. One thing at a time is done to those of one notebook, so that each gets its own letter. */
import { BoundedCache } from '../../kernel/cells/program/index.js'
import { contentFingerprint, sealOf } from '../../kernel/cells/revision/index.js'
import {
  ChainedRecord,
  type IssueRevision,
  type NotebookId,
  type RevisionContent,
  type RevisionList,
  type RevisionMark,
  type RevisionName,
  type RevisionReading,
  type RevisionRecord,
  type RevisionSummary,
  revisionFormat,
  revisionVersion,
  type SignRevision,
  Trouble,
} from '../../shared/contracts/index.js'
import type { Clock } from '../clock.js'
import type { ServerKernel } from '../kernel.js'
import type { LiveDocuments } from '../live/index.js'
import type { ResultShelf } from '../results/index.js'
import { type Store, Turns } from '../store/index.js'
import { type ChainLink, readChain } from './chain.js'
import { freeze, unsettledWords } from './freeze.js'
import { checkSignature } from './signing.js'
import { markOf, revisionLink, summaries } from './summaries.js'

export interface RevisionsParts {
  readonly store: Store
  readonly documents: LiveDocuments
  readonly shelf: ResultShelf
  readonly kernel: ServerKernel
  readonly clock: Clock
}

type Draft = Readonly<Record<string, unknown>>

/** A record as it is kept, with all that was verified of it. */
export interface ReadRevision {
  readonly summary: RevisionSummary
  readonly record: RevisionRecord
  /** Records of its signatures, those too that do not count. */
  readonly signatures: readonly ChainedRecord[]
}

export class Revisions {
  readonly #parts: RevisionsParts
  readonly #turns = new Turns()
  /** What the title block shows, as long as no file changed. */
  readonly #marks = new Map<NotebookId, { readonly files: string; readonly mark: RevisionMark | undefined }>()

  /** Records read before: reading a megabyte of JSON and hashing it takes some 50 ms. */
  readonly #links = new BoundedCache<string, ChainLink>(64)

  constructor(parts: RevisionsParts) {
    this.#parts = parts
  }

  /** Read and verified anew at every call. */
  async list(id: NotebookId): Promise<RevisionList> {
    await this.#parts.documents.get(id)
    return summaries(await this.#chain(id))
  }

  async mark(id: NotebookId): Promise<RevisionMark | undefined> {
    const files = await this.#parts.store.revisionsMark(id)
    const known = this.#marks.get(id)
    if (known?.files === files) return known.mark
    const mark = markOf(summaries(await this.#chain(id)))
    this.#marks.set(id, { files, mark })
    return mark
  }

  /** @throws Trouble REVISION_UNKNOWN */
  async read(id: NotebookId, name: RevisionName): Promise<ReadRevision> {
    await this.#parts.documents.get(id)
    const links = await this.#chain(id)
    const list = summaries(links)
    const summary = list.revisions.find((each) => each.name === name)
    const record = revisionLink(links, name)?.record
    if (summary === undefined || record?.kind !== 'revision') throw unknown(name, list)
    const signatures = links.flatMap((link) =>
      link.record?.kind === 'signature' && link.record.revision === name ? [link.record] : [],
    )
    return { summary, record, signatures }
  }

  async reading(id: NotebookId, name: RevisionName): Promise<RevisionReading> {
    const { summary, record } = await this.read(id, name)
    return { summary, content: record.content }
  }

  /** The live text with its results, as a revision would freeze it now. */
  async live(id: NotebookId): Promise<RevisionContent> {
    const { documents, shelf, kernel } = this.#parts
    return await freeze(await documents.get(id), shelf, kernel)
  }

  /** @throws Trouble REVISION_UNSETTLED unless told to issue with such cells */
  issue(id: NotebookId, { purpose = '', withUnsettled = false }: IssueRevision): Promise<RevisionSummary> {
    return this.#turns.take(id, async () => {
      const content = await this.live(id)
      if (content.unsettled.length > 0 && !withUnsettled)
        throw new Trouble('REVISION_UNSETTLED', { cells: unsettledWords(content.unsettled) })
      const words = purpose.replace(/\s+/g, ' ').trim()
      const links = await this.#chain(id)
      const { next } = summaries(links)
      return await this.#add(id, next, links, {
        kind: 'revision',
        name: next,
        issued: this.#now(),
        ...(words === '' ? {} : { purpose: words }),
        fingerprint: contentFingerprint(content),
        content,
      })
    })
  }

  /** @throws Trouble REVISION_UNKNOWN, REVISION_ALTERED or SIGNATURE_REFUSED */
  sign(id: NotebookId, name: RevisionName, signature: SignRevision): Promise<RevisionSummary> {
    return this.#turns.take(id, async () => {
      await this.#parts.documents.get(id)
      const links = await this.#chain(id)
      const list = summaries(links)
      const revision = list.revisions.find((each) => each.name === name)
      const signs = revisionLink(links, name)?.seal
      if (revision === undefined || signs === undefined) throw unknown(name, list)
      checkSignature(revision, signature)
      const { remark = '', ...rest } = signature
      const said = remark.trim()
      return await this.#add(id, name, links, {
        kind: 'signature',
        revision: name,
        signs,
        ...rest,
        name: signature.name.replace(/\s+/g, ' '),
        ...(said === '' ? {} : { remark: said }),
        date: this.#now(),
      })
    })
  }

  /** Writes a record at the end of the chain and tells everyone; answers the revision that it issued or signed. */
  async #add(
    id: NotebookId,
    revision: RevisionName,
    links: readonly ChainLink[],
    draft: Draft,
  ): Promise<RevisionSummary> {
    const { store, documents } = this.#parts
    const record = {
      format: revisionFormat,
      version: revisionVersion,
      previous: links.at(-1)?.seal ?? null,
      ...draft,
    }
    const sealed = ChainedRecord.parse({ ...record, seal: sealOf(record) })
    await store.addRevision(id, `${JSON.stringify(sealed, null, 1)}\n`)
    const list = summaries(await this.#chain(id))
    const mark = markOf(list)
    if (mark !== undefined) (await documents.get(id)).announce({ type: 'revision', mark })
    const summary = list.revisions.find((each) => each.name === revision)
    if (summary === undefined) throw unknown(revision, list)
    return summary
  }

  async #chain(id: NotebookId): Promise<readonly ChainLink[]> {
    return readChain(await this.#parts.store.revisions(id), this.#links)
  }

  #now(): string {
    return new Date(this.#parts.clock.now()).toISOString()
  }
}

function unknown(name: RevisionName, { revisions }: RevisionList): Trouble {
  return new Trouble('REVISION_UNKNOWN', { name, known: revisions.map((each) => each.name).join(', ') })
}

/** Reading the notebook files of one folder: which there are, what each is called, and why some are refused. */
import { join } from 'node:path'
import { limits, NotebookId, readNotebook } from '../../shared/contracts/index.js'
import type { FileFacts, FileSystem } from './file-system.js'
import type { ListedNotebook, RefusedFile } from './store.js'

export const notebookEnding = '.json'
export const resultsEnding = '.results.json'
export const liveEnding = '.live'
export const revisionsEnding = '.revisions'

type Entry =
  | { readonly ok: true; readonly listed: ListedNotebook }
  | { readonly ok: false; readonly refused: RefusedFile }

/** Bytes of a file as text, or why not. UTF-8 is checked, so that a binary file is named as one. */
export function readUtf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
  } catch {
    return undefined
  }
}

export function tooLarge(bytes: number): string | undefined {
  if (bytes <= limits.notebookBytes) return undefined
  return `This notebook cannot be opened: the file has ${bytes} bytes; at most ${limits.notebookBytes} are read.`
}

export const notText = 'This notebook cannot be opened: the file is not UTF-8 text; a notebook is JSON.'

/** Lists a folder, reading again only files whose size or time changed since the last look. */
export class NotebookFolder {
  readonly #files: FileSystem
  readonly path: string
  readonly #seen = new Map<string, { readonly mark: string; readonly entry: Entry }>()

  constructor(files: FileSystem, path: string) {
    this.#files = files
    this.path = path
  }

  async list(): Promise<{ notebooks: ListedNotebook[]; refused: RefusedFile[] }> {
    const notebooks: ListedNotebook[] = []
    const refused: RefusedFile[] = []
    const names = await this.#files.list(this.path)
    for (const name of [...names].sort()) {
      if (!name.endsWith(notebookEnding) || name.startsWith('.') || name.endsWith(resultsEnding)) continue
      const entry = await this.#entry(name)
      if (entry === undefined) continue
      if (entry.ok) notebooks.push(entry.listed)
      else refused.push(entry.refused)
    }
    for (const name of this.#seen.keys()) if (!names.includes(name)) this.#seen.delete(name)
    return { notebooks, refused }
  }

  async #entry(name: string): Promise<Entry | undefined> {
    const facts = await this.#files.facts(join(this.path, name))
    if (facts === undefined) return undefined
    const mark = markOf(facts)
    const seen = this.#seen.get(name)
    if (seen?.mark === mark) return seen.entry
    const entry = await this.#readEntry(name, facts)
    this.#seen.set(name, { mark, entry })
    return entry
  }

  async #readEntry(name: string, facts: FileFacts): Promise<Entry> {
    const refuse = (reason: string): Entry => ({ ok: false, refused: { file: name, reason } })
    const id = NotebookId.safeParse(name.slice(0, -notebookEnding.length))
    if (!id.success)
      return refuse(
        'This notebook cannot be opened under its file name; rename the file to letters, digits, hyphens or underscores and ".json", or import it.',
      )
    if (facts.kind !== 'file') return refuse('This notebook cannot be opened: it is a link or a folder, not a file.')
    const large = tooLarge(facts.bytes)
    if (large !== undefined) return refuse(large)
    const text = readUtf8((await this.#files.read(join(this.path, name))) ?? new Uint8Array())
    if (text === undefined) return refuse(notText)
    const reading = readNotebook(text)
    if (!reading.ok) return refuse(reading.reason)
    const { title, titleBlock, cells } = reading.notebook
    const question = titleBlock?.question === undefined ? {} : { question: titleBlock.question }
    return { ok: true, listed: { id: id.data, changed: facts.changed, title, ...question, cells: cells.length } }
  }
}

export function markOf(facts: FileFacts): string {
  return `${facts.kind} ${facts.bytes} ${facts.changed}`
}

/**
 * The notebook file and what is known about its past: `base.json` is the text last written or taken in, `pending.json` a text
 * about to be written. Together they tell an outside change from our own writing, at whatever step a kill came.
 */
import { dirname, join } from 'node:path'
import { NotebookId, Trouble } from '../../shared/contracts/index.js'
import { replaceFile } from './atomic-file.js'
import type { FileSystem } from './file-system.js'
import { liveEnding, markOf, notebookEnding, notText, readUtf8, tooLarge } from './notebook-folder.js'

export class NotebookText {
  readonly #files: FileSystem
  readonly #path: string
  readonly #live: string

  constructor(files: FileSystem, folder: string, id: NotebookId) {
    // Ids are checked here once more, because they become names of files.
    const name = NotebookId.parse(id)
    this.#files = files
    this.#path = join(folder, name + notebookEnding)
    this.#live = join(folder, name + liveEnding)
  }

  async read(): Promise<string | undefined> {
    const facts = await this.#files.facts(this.#path)
    if (facts === undefined) return undefined
    if (facts.kind !== 'file')
      throw new Trouble('NOTEBOOK_REFUSED', {
        reason: 'This notebook cannot be opened: it is a link or a folder, not a file.',
      })
    const large = tooLarge(facts.bytes)
    if (large !== undefined) throw new Trouble('NOTEBOOK_REFUSED', { reason: large })
    const bytes = await this.#files.read(this.#path)
    const text = bytes === undefined ? undefined : readUtf8(bytes)
    if (bytes !== undefined && text === undefined) throw new Trouble('NOTEBOOK_REFUSED', { reason: notText })
    return text
  }

  async mark(): Promise<string | undefined> {
    const facts = await this.#files.facts(this.#path)
    return facts === undefined ? undefined : markOf(facts)
  }

  /**
   * pending.json, then the notebook, then pending.json becomes base.json. Whatever the kill, the notebook's text equals one of
   * the two unless someone else changed it.
   */
  async replace(expected: string, text: string): Promise<'written' | 'changed outside'> {
    const present = await this.#readRaw()
    if (present !== undefined && present !== expected) return 'changed outside'
    await this.#makeLiveFolder()
    // After a failed write the text in the file may be known from pending.json alone, which is overwritten next.
    if ((await this.#files.read(this.#base).then(decoded)) !== expected)
      await replaceFile(this.#files, this.#base, expected)
    await replaceFile(this.#files, this.#pending, text)
    await replaceFile(this.#files, this.#path, text)
    await this.#files.rename(this.#pending, this.#base)
    await this.#files.syncFolder(this.#live)
    return 'written'
  }

  async known(): Promise<readonly string[]> {
    const texts = await Promise.all([this.#files.read(this.#base), this.#files.read(this.#pending)])
    return texts.map(decoded).filter((text) => text !== undefined)
  }

  async keepKnown(text: string): Promise<void> {
    await this.#makeLiveFolder()
    await replaceFile(this.#files, this.#base, text)
    await this.#files.remove(this.#pending)
  }

  async #makeLiveFolder(): Promise<void> {
    if ((await this.#files.facts(this.#live)) !== undefined) return
    await this.#files.makeFolder(this.#live)
    await this.#files.syncFolder(dirname(this.#live))
  }

  /** Not refused for its content: what counts here is only whether it is still the text we know. */
  async #readRaw(): Promise<string | undefined> {
    return decoded(await this.#files.read(this.#path))
  }

  get #base(): string {
    return join(this.#live, 'base.json')
  }

  get #pending(): string {
    return join(this.#live, 'pending.json')
  }
}

function decoded(bytes: Uint8Array | undefined): string | undefined {
  return bytes === undefined ? undefined : new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes)
}

/** Opening a notebook: its file, its live state, and what to do when the two have parted. */
import { randomUUID } from 'node:crypto'
import * as Y from 'yjs'
import { Epoch, type Notebook, type NotebookId, readNotebook, Trouble } from '../../shared/contracts/index.js'
import type { Clock } from '../clock.js'
import type { Log } from '../log.js'
import { asTrouble, type LiveState, type Store } from '../store/index.js'
import { documentFrom } from './document.js'
import { hashOf, nearestText } from './file-mirror.js'
import { LiveDocument } from './live-document.js'
import {
  adoptNumbers,
  contentOfNotebook,
  documentOfNotebook,
  lacksNumbers,
  restOf,
  sameContent,
} from './notebook-content.js'

export interface OpenOptions {
  readonly store: Store
  readonly clock: Clock
  readonly log: Log
}

/** Opens a notebook; throws NOTEBOOK_UNKNOWN, NOTEBOOK_REFUSED with the reason, or STORE_UNAVAILABLE. */
export async function openDocument(id: NotebookId, options: OpenOptions): Promise<LiveDocument> {
  const { store } = options
  const text = await store.readText(id)
  if (text === undefined) throw new Trouble('NOTEBOOK_UNKNOWN', { id })
  const reading = readNotebook(text)
  if (!reading.ok) throw new Trouble('NOTEBOOK_REFUSED', { reason: reading.reason })
  try {
    const live = await store.openLive(id)
    const accepted = live === undefined ? undefined : tryDocument(live)
    if (live === undefined || accepted === undefined) return await beginEpoch(id, text, reading.notebook, options)
    return await resume(id, text, reading.notebook, live, accepted, options)
  } catch (error) {
    await store.closeLive(id).catch(() => undefined)
    throw asTrouble(error)
  }
}

/** No live state yet, or none that can be read: the file is the document, and clients of an earlier epoch rebase. */
async function beginEpoch(
  id: NotebookId,
  text: string,
  notebook: Notebook,
  options: OpenOptions,
): Promise<LiveDocument> {
  const epoch = Epoch.parse(randomUUID())
  const accepted = documentOfNotebook(notebook)
  await options.store.keepKnownText(id, text)
  await options.store.beginLive(id, epoch, { update: Y.encodeStateAsUpdate(accepted), broughtIn: hashOf(text) })
  return new LiveDocument({ ...options, id, epoch, sequence: 0, accepted, rest: restOf(notebook), known: text })
}

/** The live state goes on. A file that is not one we wrote or took in was changed while nobody looked. */
async function resume(
  id: NotebookId,
  text: string,
  notebook: Notebook,
  live: LiveState,
  accepted: Y.Doc,
  options: OpenOptions,
): Promise<LiveDocument> {
  const known = await options.store.knownTexts(id)
  const isOurs = live.broughtIn === hashOf(text) || known.includes(text)
  const base = isOurs ? text : (nearestText(text, known) ?? text)
  const { epoch, sequence } = live
  const document = new LiveDocument({ ...options, id, epoch, sequence, accepted, rest: restOf(notebook), known: base })
  if (!isOurs) {
    // When the change cannot be recorded now, the document opens without it; the file is left alone and looked at again.
    await document.lookAtFile().catch((error: unknown) => {
      options.log.warn({ error, id }, 'a change of the notebook file could not be taken in yet')
    })
  }
  if (lacksNumbers(document.content, notebook))
    await document
      .edit((doc) => adoptNumbers(doc, notebook))
      .catch((error: unknown) =>
        options.log.warn({ error, id }, 'the numbers of the cells could not be taken from the file yet'),
      )
  if (isOurs && !sameContent(document.content, contentOfNotebook(notebook))) document.scheduleFile()
  return document
}

function tryDocument(live: LiveState): Y.Doc | undefined {
  try {
    return documentFrom(live.updates)
  } catch {
    return undefined
  }
}

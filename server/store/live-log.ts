/**
 * The live state of one notebook: a snapshot and the updates since, in two files.
 *
 * `state` holds one header record and one record with the encoded document; it is only ever replaced as a whole. `log` begins
 * with a header record and grows by one record per update. Both name the epoch; a log of another epoch than the state's
 * is a leftover and is passed over. Sequences in the log that the state already covers are passed over too, so a kill between
 * replacing the state and replacing the log does no harm.
 */
import { dirname, join } from 'node:path'
import { Epoch } from '../../shared/contracts/index.js'
import { replaceFile, writeFully } from './atomic-file.js'
import type { FileHandle, FileSystem } from './file-system.js'
import { readFrames, writeFrame } from './frames.js'
import { decodeRecord, encodeRecord } from './live-record.js'
import type { LiveState, LiveUpdate } from './store.js'

interface Header {
  readonly format: 'hoverfolio live state' | 'hoverfolio live log'
  readonly epoch: Epoch
  readonly sequence: number
  readonly broughtIn?: string
}

export class LiveLog {
  readonly #files: FileSystem
  readonly #folder: string
  readonly #trusted: number | undefined
  #epoch: Epoch | undefined
  #sequence = 0
  #broughtIn: string | undefined
  #stateBytes = 0
  #logBytes = 0
  #updates = 0
  #handle: FileHandle | undefined
  /** The file may hold more than `#logBytes`, the remains of a failed append: cut before the next one. */
  #tailUnsure = false
  /**
   * The log as it was read, until the first append. Reading proves nothing about the disk: bytes whose flush failed are still
   * served from memory. So before anything is acknowledged the log is written anew, which also drops a torn tail.
   */
  #unproven: Uint8Array | undefined

  /** `trustedBytes`: how much of the log an earlier LiveLog of this process vouches for; all that is whole when absent. */
  constructor(files: FileSystem, folder: string, trustedBytes?: number) {
    this.#files = files
    this.#folder = folder
    this.#trusted = trustedBytes
  }

  /** After a failed append: the bytes that are on disk for certain. What lies behind them was refused and must not be read back. */
  get trustedBytes(): number | undefined {
    if (this.#tailUnsure) return this.#logBytes
    return this.#unproven === undefined ? undefined : this.#trusted
  }

  get size(): { readonly bytes: number; readonly updates: number } {
    return { bytes: this.#stateBytes + this.#logBytes, updates: this.#updates }
  }

  /** Reads state and log; `undefined` when there is no whole state, and then a new epoch must begin. */
  async open(): Promise<LiveState | undefined> {
    const state = await this.#files.read(this.#path('state'))
    const frames = state === undefined ? [] : readFrames(state).payloads
    const header = readHeader(frames[0], 'hoverfolio live state')
    if (state === undefined || header === undefined || frames[1] === undefined) return undefined
    this.#epoch = header.epoch
    this.#sequence = header.sequence
    this.#broughtIn = header.broughtIn
    this.#stateBytes = state.length
    const updates = [frames[1], ...(await this.#readLog(header))]
    return {
      epoch: header.epoch,
      sequence: this.#sequence,
      updates,
      ...(this.#broughtIn === undefined ? {} : { broughtIn: this.#broughtIn }),
    }
  }

  async #readLog(state: Header): Promise<Uint8Array[]> {
    const bytes = (await this.#files.read(this.#path('log')))?.subarray(0, this.#trusted)
    const { payloads, validBytes } = readFrames(bytes ?? new Uint8Array())
    const header = readHeader(payloads[0], 'hoverfolio live log')
    if (bytes === undefined || header?.epoch !== state.epoch) return []
    const updates: Uint8Array[] = []
    for (const payload of payloads.slice(1)) {
      const record = decodeRecord(payload)
      if (record === undefined || record.sequence <= state.sequence) continue
      updates.push(record.update)
      this.#sequence = record.sequence
      if (record.broughtIn !== undefined) this.#broughtIn = record.broughtIn
    }
    this.#logBytes = validBytes
    this.#unproven = bytes.slice(0, validBytes)
    this.#updates = updates.length
    return updates
  }

  /** State first, then an empty log: until the state names the new epoch, the old pair stays whole. */
  async begin(epoch: Epoch, state: LiveUpdate): Promise<void> {
    await this.#files.makeFolder(this.#folder)
    await this.#files.syncFolder(dirname(this.#folder))
    await this.#replace(epoch, 0, state.broughtIn, state.update)
  }

  /** Also makes sure of what was there before; with no updates it does only that. */
  async append(epoch: Epoch, updates: readonly LiveUpdate[]): Promise<number> {
    if (epoch !== this.#epoch) throw new Error(`the live log holds epoch ${this.#epoch}, not ${epoch}`)
    const frames = updates.map(({ update, broughtIn }, index) =>
      writeFrame(encodeRecord({ sequence: this.#sequence + index + 1, update, ...(broughtIn ? { broughtIn } : {}) })),
    )
    const handle = await this.#ready(epoch)
    if (updates.length === 0) return this.#sequence
    // Until the flush returns, what reached the disk is unknown; a failed flush may even have dropped written pages. So the
    // next append cuts back to here and writes its own records anew.
    this.#tailUnsure = true
    const bytes = Buffer.concat(frames)
    await writeFully(handle, bytes)
    await handle.sync()
    this.#tailUnsure = false
    this.#logBytes += bytes.length
    this.#sequence += updates.length
    this.#updates += updates.length
    this.#broughtIn = updates.findLast((update) => update.broughtIn !== undefined)?.broughtIn ?? this.#broughtIn
    return this.#sequence
  }

  async snapshot(epoch: Epoch, state: Uint8Array): Promise<void> {
    if (epoch !== this.#epoch) throw new Error(`the live log holds epoch ${this.#epoch}, not ${epoch}`)
    await this.#replace(epoch, this.#sequence, this.#broughtIn, state)
  }

  async close(): Promise<void> {
    const handle = this.#handle
    this.#handle = undefined
    await handle?.close()
  }

  /** An open log that is on disk up to the end of its last whole record, and ends there. */
  async #ready(epoch: Epoch): Promise<FileHandle> {
    if (this.#logBytes === 0) await this.#writeEmptyLog(epoch, this.#sequence)
    if (this.#unproven !== undefined) {
      await replaceFile(this.#files, this.#path('log'), this.#unproven)
      this.#unproven = undefined
    }
    this.#handle ??= await this.#files.open(this.#path('log'), 'append')
    if (this.#tailUnsure) {
      await this.#handle.truncate(this.#logBytes)
      await this.#handle.sync()
      this.#tailUnsure = false
    }
    return this.#handle
  }

  async #replace(epoch: Epoch, sequence: number, broughtIn: string | undefined, state: Uint8Array): Promise<void> {
    const header: Header = { format: 'hoverfolio live state', epoch, sequence, ...(broughtIn ? { broughtIn } : {}) }
    const bytes = Buffer.concat([writeFrame(encodeHeader(header)), writeFrame(state)])
    await replaceFile(this.#files, this.#path('state'), bytes)
    this.#epoch = epoch
    this.#sequence = sequence
    this.#broughtIn = broughtIn
    this.#stateBytes = bytes.length
    this.#updates = 0
    this.#logBytes = 0
    this.#unproven = undefined
    await this.#writeEmptyLog(epoch, sequence)
  }

  async #writeEmptyLog(epoch: Epoch, sequence: number): Promise<void> {
    await this.close()
    const header = writeFrame(encodeHeader({ format: 'hoverfolio live log', epoch, sequence }))
    await replaceFile(this.#files, this.#path('log'), header)
    this.#logBytes = header.length
    this.#tailUnsure = false
  }

  #path(name: 'state' | 'log'): string {
    return join(this.#folder, name)
  }
}

const encodeHeader = (header: Header) => new TextEncoder().encode(JSON.stringify(header))

function readHeader(payload: Uint8Array | undefined, format: Header['format']): Header | undefined {
  if (payload === undefined) return undefined
  try {
    const value = JSON.parse(new TextDecoder().decode(payload)) as Partial<Header> | null
    const epoch = Epoch.safeParse(value?.epoch)
    if (value?.format !== format || !epoch.success || !Number.isSafeInteger(value.sequence)) return undefined
    const broughtIn = typeof value.broughtIn === 'string' ? { broughtIn: value.broughtIn } : {}
    return { format, epoch: epoch.data, sequence: value.sequence as number, ...broughtIn }
  } catch {
    return undefined
  }
}

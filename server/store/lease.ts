/**
 * One server process per data folder. The lease is a small file with a fencing token that grows with every holder; each
 * write looks at it first, so that a process which was taken for dead cannot write over its successor.
 */
import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { replaceFile } from './atomic-file.js'
import type { FileSystem } from './file-system.js'

/** A process, told apart from a later one that was given the same number. */
export interface ProcessIdentity {
  readonly pid: number
  readonly started: string
}

export interface Processes {
  readonly own: ProcessIdentity
  isAlive(process: ProcessIdentity): boolean
}

/** Another process serves this data folder. */
export class LeaseHeld extends Error {
  override readonly name = 'LeaseHeld'
}

/** Another process has taken the lease over; whatever this one still wanted to write must not be written. */
export class LeaseLost extends Error {
  override readonly name = 'LeaseLost'
}

interface LeaseFile extends ProcessIdentity {
  readonly token: number
  readonly holder: string
}

const leaseFile = '.lease'

export class Lease {
  readonly token: number
  readonly #files: FileSystem
  readonly #path: string
  readonly #holder: string

  private constructor(files: FileSystem, path: string, token: number, holder: string) {
    this.#files = files
    this.#path = path
    this.token = token
    this.#holder = holder
  }

  /** Takes the lease of a folder; throws LeaseHeld when its holder is alive. A killed holder's lease is taken over. */
  static async take(files: FileSystem, folder: string, processes: Processes): Promise<Lease> {
    const path = join(folder, leaseFile)
    const present = parseLease(await files.read(path))
    if (present !== undefined && present.holder !== '' && processes.isAlive(present))
      throw new LeaseHeld(
        `Another Hoverfolio server (process ${present.pid}) already serves ${folder}. Open its address, stop it, or choose another folder with --data FOLDER.`,
      )
    const token = (present?.token ?? 0) + 1
    const holder = randomUUID()
    const lease = new Lease(files, path, token, holder)
    await replaceFile(files, path, JSON.stringify({ ...processes.own, token, holder } satisfies LeaseFile))
    await lease.assertHeld()
    return lease
  }

  /** Throws LeaseLost unless this is still the holder. Two processes that took over at once part here: the later one stays. */
  async assertHeld(): Promise<void> {
    const present = parseLease(await this.#files.read(this.#path))
    if (present?.holder === this.#holder) return
    throw new LeaseLost(
      `another server process (${present?.pid ?? 'unknown'}) has taken over this data folder; stop one of the two`,
    )
  }

  /** Leaves the token in place, so that the next holder's is larger. */
  async release(): Promise<void> {
    const present = parseLease(await this.#files.read(this.#path))
    if (present?.holder === this.#holder)
      await replaceFile(this.#files, this.#path, JSON.stringify({ ...present, holder: '' } satisfies LeaseFile))
  }
}

/** A torn or foreign lease file counts as nobody's. */
function parseLease(bytes: Uint8Array | undefined): LeaseFile | undefined {
  if (bytes === undefined) return undefined
  try {
    const value = JSON.parse(new TextDecoder().decode(bytes)) as Partial<LeaseFile> | null
    if (typeof value?.token !== 'number' || typeof value.pid !== 'number') return undefined
    return { pid: value.pid, started: String(value.started), token: value.token, holder: String(value.holder) }
  } catch {
    return undefined
  }
}

/** When a process began, as Linux tells it (field 22 of `stat`, after the name in brackets); empty elsewhere. */
function startOf(pid: number): string {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8')
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()
    return `${boot} ${stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? ''}`
  } catch {
    return ''
  }
}

/** The machine's processes. Where a start time cannot be read, a living process of that number counts as the same. */
export const machineProcesses: Processes = {
  own: { pid: process.pid, started: startOf(process.pid) },
  isAlive({ pid, started }) {
    try {
      process.kill(pid, 0)
    } catch (error) {
      // EPERM: it lives, but belongs to another account.
      if ((error as NodeJS.ErrnoException).code !== 'EPERM') return false
    }
    return started === '' || startOf(pid) === started
  },
}

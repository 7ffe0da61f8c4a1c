/** Files on the lab's disk, with faults: each operation may fail, be short, take its time, or be the one at which power is cut. */
import { dirname } from 'node:path'
import type { FileFacts, FileHandle, FileSystem } from '../../server/store/index.js'
import { Disk, Inode, isWithin } from './disk.js'
import type { Chance } from './seeded.js'

export type Operation =
  | 'open'
  | 'write'
  | 'sync'
  | 'truncate'
  | 'rename'
  | 'remove'
  | 'syncFolder'
  | 'read'
  | 'list'
  | 'makeFolder'

/** What happens instead of an operation. `cut` does it or not, by chance, and then nothing works any more. */
export type Fault = 'fail' | 'short' | 'delay' | 'cut'

export type FaultPlan = (operation: Operation, index: number, path: string) => Fault | undefined

/** Power is gone; every promise after this rejects. */
export class PowerCut extends Error {
  override readonly name = 'PowerCut'
}

export class LabFileSystem implements FileSystem {
  readonly disk: Disk
  /** Operations so far: a kill test runs once to learn the number, then once for each. */
  operations = 0
  #plan: FaultPlan
  #off = false
  readonly #chance: Chance
  #ticks = 0

  constructor(chance: Chance, plan: FaultPlan = () => undefined, disk: Disk = new Disk()) {
    this.#chance = chance
    this.#plan = plan
    this.disk = disk
  }

  set plan(plan: FaultPlan) {
    this.#plan = plan
  }

  get isOff(): boolean {
    return this.#off
  }

  /** Cuts power now: the disk keeps what was safe. */
  cutPower(): void {
    this.#off = true
    this.disk.cut(this.#chance)
  }

  async open(path: string, mode: 'append' | 'fresh'): Promise<FileHandle> {
    return await this.#do('open', path, () => {
      this.#mustBeFolder(dirname(path))
      let inode = this.disk.present.get(path)
      if (inode === undefined) {
        inode = new Inode()
        this.disk.change({ kind: 'set', path, inode })
      } else if (mode === 'fresh') inode.truncate(0)
      return this.#handle(path, inode)
    })
  }

  async read(path: string): Promise<Uint8Array | undefined> {
    return await this.#do('read', path, () => this.disk.present.get(path)?.present.slice())
  }

  async facts(path: string): Promise<FileFacts | undefined> {
    return await this.#do('read', path, () => {
      const inode = this.disk.present.get(path)
      if (inode !== undefined) return { kind: 'file' as const, bytes: inode.present.length, changed: inode.changed }
      const isFolder = this.disk.folders.has(path) && [...this.disk.present.keys()].some((name) => isWithin(name, path))
      return isFolder ? { kind: 'folder' as const, bytes: 0, changed: 0 } : undefined
    })
  }

  async rename(from: string, to: string): Promise<void> {
    await this.#do('rename', to, () => {
      if (![...this.disk.present.keys()].some((path) => isWithin(path, from))) throw failure('ENOENT')
      for (const folder of [...this.disk.folders])
        if (isWithin(folder, from)) this.disk.folders.add(to + folder.slice(from.length))
      this.disk.change({ kind: 'move', from, to })
    })
  }

  async remove(path: string): Promise<void> {
    await this.#do('remove', path, () => {
      if ([...this.disk.present.keys()].some((name) => isWithin(name, path))) this.disk.change({ kind: 'remove', path })
    })
  }

  async list(folder: string): Promise<readonly string[]> {
    return await this.#do('list', folder, () => {
      const names = [...this.disk.present.keys(), ...this.disk.folders]
        .filter((path) => isWithin(path, folder) && path !== folder)
        .map((path) => path.slice(folder.length + 1).split(/[\\/]/)[0] ?? '')
      return [...new Set(names)]
    })
  }

  async makeFolder(path: string): Promise<void> {
    await this.#do('makeFolder', path, () => {
      for (let folder = path; folder !== dirname(folder); folder = dirname(folder)) this.disk.folders.add(folder)
    })
  }

  async syncFolder(path: string): Promise<void> {
    await this.#do('syncFolder', path, () => this.disk.flushFolder(path))
  }

  /** Someone else writes a file, safely. */
  async writeOutside(path: string, content: string | Uint8Array): Promise<void> {
    const inode = new Inode()
    inode.append(typeof content === 'string' ? new TextEncoder().encode(content) : content)
    inode.flush()
    this.#touch(inode)
    this.disk.change({ kind: 'set', path, inode })
    this.disk.flushFolder(dirname(path))
  }

  textOf(path: string): string | undefined {
    const inode = this.disk.present.get(path)
    return inode === undefined ? undefined : new TextDecoder().decode(inode.present)
  }

  #handle(path: string, inode: Inode): FileHandle {
    return {
      write: async (bytes) =>
        await this.#do('write', path, (fault) => {
          const count = fault === 'short' ? 1 + this.#chance.whole(bytes.length) : bytes.length
          inode.append(bytes.slice(0, count))
          this.#touch(inode)
          return count
        }),
      sync: async () =>
        await this.#do(
          'sync',
          path,
          () => inode.flush(),
          () => inode.failFlush(),
        ),
      truncate: async (length) => await this.#do('truncate', path, () => inode.truncate(length)),
      close: async () => undefined,
    }
  }

  #touch(inode: Inode): void {
    this.#ticks += 1
    inode.changed = Date.UTC(2030, 0, 1) + this.#ticks
  }

  async #do<T>(operation: Operation, path: string, act: (fault?: Fault) => T, onFailure?: () => void): Promise<T> {
    if (this.#off) throw new PowerCut(`power is off (${operation} ${path})`)
    const index = this.operations
    this.operations += 1
    const fault = this.#plan(operation, index, path)
    if (fault === 'delay') await new Promise((resolve) => setImmediate(resolve))
    else await Promise.resolve()
    if (this.#off) throw new PowerCut(`power is off (${operation} ${path})`)
    if (fault === 'cut') {
      // Half of the cuts come just after the operation, half just before; a write may be caught in the middle.
      if (this.#chance.next() < 0.5) act('short')
      this.cutPower()
      throw new PowerCut(`power was cut at ${operation} ${path}`)
    }
    if (fault === 'fail') {
      onFailure?.()
      if (operation === 'write' && this.#chance.next() < 0.5) act('short')
      throw failure(operation === 'write' ? 'ENOSPC' : 'EIO')
    }
    return act(fault)
  }

  #mustBeFolder(path: string): void {
    if (!this.disk.folders.has(path)) throw failure('ENOENT')
  }
}

function failure(code: string): Error {
  return Object.assign(new Error(`${code} (made by the lab)`), { code })
}

/**
 * A disk with a memory of what is safe. A file has its present bytes and the bytes that survive a power cut; a folder has its
 * present names and the changes of names not yet flushed. Harsh where POSIX permits it: unflushed bytes may be lost, torn
 * or garbage, unflushed renames may or may not have happened, a failed flush may drop what it was to write.
 */
import { dirname, sep } from 'node:path'
import type { Chance } from './seeded.js'

export class Inode {
  present = new Uint8Array()
  safe = new Uint8Array()
  /** Ranges that a failed flush dropped although the present bytes still show them; a later flush does not bring them back. */
  dropped: { readonly from: number; readonly to: number }[] = []
  changed = 0

  append(bytes: Uint8Array): void {
    const joined = new Uint8Array(this.present.length + bytes.length)
    joined.set(this.present)
    joined.set(bytes, this.present.length)
    this.present = joined
  }

  truncate(length: number): void {
    this.present = this.present.slice(0, length)
    this.dropped = this.dropped
      .filter((range) => range.from < length)
      .map((range) => ({ from: range.from, to: Math.min(range.to, length) }))
  }

  flush(): void {
    const flushed = this.present.slice()
    for (const { from, to } of this.dropped) flushed.fill(0, from, to)
    this.safe = flushed
  }

  failFlush(): void {
    this.dropped.push({ from: Math.min(this.safe.length, this.present.length), to: this.present.length })
  }
}

type NameChange =
  | { readonly kind: 'set'; readonly path: string; readonly inode: Inode }
  | { readonly kind: 'move'; readonly from: string; readonly to: string }
  | { readonly kind: 'remove'; readonly path: string }

/** Names of files; folders exist once made (making one is safe at once, as the store makes them before use). */
export class Disk {
  present = new Map<string, Inode>()
  #safe = new Map<string, Inode>()
  #pending: { readonly folders: readonly string[]; readonly change: NameChange }[] = []
  readonly folders = new Set<string>()

  change(change: NameChange): void {
    applyChange(this.present, change)
    const paths = change.kind === 'move' ? [change.from, change.to] : [change.path]
    this.#pending.push({ folders: paths.map((path) => dirname(path)), change })
  }

  /** A journal keeps order: flushing a folder makes everything up to its last change safe. */
  flushFolder(folder: string): void {
    const last = this.#pending.findLastIndex((entry) => entry.folders.includes(folder))
    for (const { change } of this.#pending.splice(0, last + 1)) applyChange(this.#safe, change)
  }

  /** Power is cut: what was not flushed is decided by chance. */
  cut(chance: Chance): void {
    const happened = this.#pending.slice(0, chance.whole(this.#pending.length + 1))
    for (const { change } of happened) applyChange(this.#safe, change)
    this.#pending = []
    this.present = new Map(this.#safe)
    for (const inode of new Set(this.present.values())) {
      inode.safe = tear(inode, chance)
      inode.present = inode.safe.slice()
      inode.dropped = []
    }
    this.#safe = new Map(this.present)
  }
}

function applyChange(names: Map<string, Inode>, change: NameChange): void {
  if (change.kind === 'set') names.set(change.path, change.inode)
  else if (change.kind === 'remove') {
    for (const path of [...names.keys()]) if (isWithin(path, change.path)) names.delete(path)
  } else {
    const moved = [...names].filter(([path]) => isWithin(path, change.from))
    for (const [path] of moved) names.delete(path)
    for (const [path, inode] of moved) names.set(change.to + path.slice(change.from.length), inode)
  }
}

export const isWithin = (path: string, folder: string) => path === folder || path.startsWith(folder + sep)

/** Safe bytes, then some of the unflushed ones: none, a part, all, or as many but of garbage. */
function tear(inode: Inode, chance: Chance): Uint8Array<ArrayBuffer> {
  const { present, safe } = inode
  const grew = present.length > safe.length && safe.every((byte, index) => byte === present[index])
  if (!grew)
    return chance.next() < 0.5 || present.length === safe.length
      ? safe
      : present.slice(0, Math.min(present.length, safe.length))
  const length = safe.length + chance.whole(present.length - safe.length + 1)
  const torn = present.slice(0, length)
  if (chance.next() < 0.3) torn.fill(chance.whole(256), safe.length)
  return torn
}

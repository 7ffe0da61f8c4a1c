/**
 * The few file operations the store needs, as an interface, so that tests can fail, shorten, delay or kill each of them.
 *
 * What the store may rely on is what POSIX promises: bytes are safe after `sync` of the file, names are safe after
 * `syncFolder`, `rename` replaces its target in one step. Nothing else is assumed to survive a power cut.
 */

export interface FileHandle {
  /** Writes at the end; may write fewer bytes than given and returns how many. */
  write(bytes: Uint8Array): Promise<number>
  sync(): Promise<void>
  truncate(length: number): Promise<void>
  close(): Promise<void>
}

export interface FileFacts {
  readonly kind: 'file' | 'folder' | 'other'
  readonly bytes: number
  /** Milliseconds since 1970. */
  readonly changed: number
}

export interface FileSystem {
  /** `append` keeps what is there, `fresh` empties it; both create a missing file. */
  open(path: string, mode: 'append' | 'fresh'): Promise<FileHandle>
  /** `undefined` when there is no such file. */
  read(path: string): Promise<Uint8Array | undefined>
  facts(path: string): Promise<FileFacts | undefined>
  rename(from: string, to: string): Promise<void>
  /** Removes a file, or a folder with all it holds; nothing happens when there is none. */
  remove(path: string): Promise<void>
  list(folder: string): Promise<readonly string[]>
  makeFolder(path: string): Promise<void>
  syncFolder(path: string): Promise<void>
}

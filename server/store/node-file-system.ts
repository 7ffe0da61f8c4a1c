/** The machine's own files. */
import { lstat, mkdir, open, readdir, readFile, rename, rm } from 'node:fs/promises'
import type { FileFacts, FileHandle, FileSystem } from './file-system.js'

const isMissing = (error: unknown) => (error as NodeJS.ErrnoException).code === 'ENOENT'

async function unlessMissing<T>(work: Promise<T>): Promise<T | undefined> {
  try {
    return await work
  } catch (error) {
    if (isMissing(error)) return undefined
    throw error
  }
}

async function openFile(path: string, mode: 'append' | 'fresh'): Promise<FileHandle> {
  const handle = await open(path, mode === 'append' ? 'a' : 'w')
  return {
    write: async (bytes) => (await handle.write(bytes)).bytesWritten,
    sync: () => handle.datasync(),
    truncate: (length) => handle.truncate(length),
    close: () => handle.close(),
  }
}

/** Links are reported as `other`, so that a link planted in the data folder is never followed. */
async function readFacts(path: string): Promise<FileFacts | undefined> {
  const found = await unlessMissing(lstat(path))
  if (found === undefined) return undefined
  const kind = found.isFile() ? 'file' : found.isDirectory() ? 'folder' : 'other'
  return { kind, bytes: found.size, changed: found.mtimeMs }
}

async function syncFolder(path: string): Promise<void> {
  // Windows cannot open a folder for this and orders renames by itself.
  if (process.platform === 'win32') return
  const handle = await open(path, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}

export const nodeFileSystem: FileSystem = {
  open: openFile,
  read: (path) => unlessMissing(readFile(path)),
  facts: readFacts,
  rename,
  remove: (path) => rm(path, { recursive: true, force: true }),
  list: (folder) => readdir(folder),
  makeFolder: async (path) => {
    await mkdir(path, { recursive: true })
  },
  syncFolder,
}

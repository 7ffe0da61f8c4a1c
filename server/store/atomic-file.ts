/** Replacing a file so that a reader, or a restart after a power cut, finds the old bytes or the new ones, never a part. */
import { dirname } from 'node:path'
import type { FileHandle, FileSystem } from './file-system.js'

/** Unfinished files carry this ending; a start removes those a kill left behind. */
export const unfinishedEnding = '.unfinished'

/** Writes all bytes although single writes may be short. */
export async function writeFully(handle: FileHandle, bytes: Uint8Array): Promise<void> {
  let done = 0
  while (done < bytes.length) {
    const written = await handle.write(done === 0 ? bytes : bytes.subarray(done))
    if (written <= 0) throw new Error(`the file system took 0 of ${bytes.length - done} bytes`)
    done += written
  }
}

/** Temporary file, flush, rename, flush of the folder: in this order, or a cut could leave an empty file under the name. */
export async function replaceFile(files: FileSystem, path: string, content: string | Uint8Array): Promise<void> {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content
  const unfinished = path + unfinishedEnding
  const handle = await files.open(unfinished, 'fresh')
  try {
    await writeFully(handle, bytes)
    await handle.sync()
  } finally {
    await handle.close()
  }
  await files.rename(unfinished, path)
  await files.syncFolder(dirname(path))
}

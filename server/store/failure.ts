/** Failures of the file system in words an operator can act on. */
import { Trouble } from '../../shared/contracts/index.js'

const words: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EACCES: 'permission was denied',
  EPERM: 'permission was denied',
  EROFS: 'the file system is read-only',
  EIO: 'the disk reported an input or output error',
  EMFILE: 'too many files are open',
  ENOENT: 'the data folder is gone',
}

export function describeFailure(error: unknown): string {
  const code = (error as NodeJS.ErrnoException | null)?.code
  const known = code === undefined ? undefined : words[code]
  return known ?? (error instanceof Error ? error.message : String(error))
}

/** Passes a Trouble on as it is; anything else the store threw means that nothing could be written. */
export function asTrouble(error: unknown): Trouble {
  return error instanceof Trouble ? error : new Trouble('STORE_UNAVAILABLE', { reason: describeFailure(error) })
}

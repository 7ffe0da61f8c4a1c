/** Reads a file that someone wants to import, and refuses in words what cannot be a notebook before it travels. */
import { readNotebook } from '../../shared/contracts/index.js'
import { limits } from '../../shared/contracts/limits.js'
import { Refusal } from '../live/requests.js'

/** The part of a `File` that is needed. */
export interface ImportedFile {
  readonly name: string
  readonly size: number
  text(): Promise<string>
}

export async function readImport(file: ImportedFile): Promise<unknown> {
  if (file.size > limits.notebookBytes)
    throw new Refusal(
      'BODY_TOO_LARGE',
      `"${file.name}" has ${file.size} bytes; a notebook file has at most ${limits.notebookBytes}.`,
    )
  const reading = readNotebook(await file.text())
  if (!reading.ok) throw new Refusal('NOTEBOOK_REFUSED', reading.reason)
  return reading.notebook
}

/** Stored results of one notebook: data that can be computed again, so a damaged file is passed over, not refused. */
import { z } from 'zod'
import { CellResult, limits } from '../../shared/contracts/index.js'
import { replaceFile } from './atomic-file.js'
import type { FileSystem } from './file-system.js'

/** Beyond this a notebook's results are cut, oldest first: they are a convenience, not the document. */
export const resultsBytes = 8 * limits.resultBytes

const ResultsFile = z.object({ results: z.array(z.unknown()) })

export async function readResultsFile(files: FileSystem, path: string): Promise<readonly CellResult[]> {
  const bytes = await files.read(path)
  if (bytes === undefined) return []
  try {
    const file = ResultsFile.parse(JSON.parse(new TextDecoder().decode(bytes)))
    return file.results.flatMap((value) => {
      const result = CellResult.safeParse(value)
      return result.success ? [result.data] : []
    })
  } catch {
    return []
  }
}

export async function writeResultsFile(files: FileSystem, path: string, results: readonly CellResult[]): Promise<void> {
  let left = resultsBytes
  const kept: string[] = []
  for (const result of [...results].reverse()) {
    const text = JSON.stringify(result)
    left -= text.length
    if (left < 0) break
    kept.push(text)
  }
  await replaceFile(files, path, `{"results": [\n${kept.reverse().join(',\n')}\n]}\n`)
}

/** The local compiler as an eraser: resolves when it has answered once, so that nobody waits for its start. */
import type { Eraser } from '../../kernel/cells/program/index.js'
import type { ErasedSource } from '../../shared/contracts/index.js'
import { asker } from '../workers/questions.js'

export async function startCompiler(): Promise<Eraser> {
  const worker = new Worker(new URL('../workers/compile.worker.ts', import.meta.url), { type: 'module' })
  const ask = asker<readonly string[], readonly ErasedSource[]>(worker)
  await ask(['const warm = 1'])
  return ask
}

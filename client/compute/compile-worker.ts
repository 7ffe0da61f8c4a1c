/** The local compiler as an eraser: resolves when it has answered once, so that nobody waits for its start. */
import type { Eraser } from '../../kernel/cells/program/index.js'
import type { ErasedSource } from '../../shared/contracts/index.js'
import compileWorker from '../workers/compile.worker.ts?worker&url'
import { asker } from '../workers/questions.js'
import { startWorker } from '../workers/start-worker.js'

export async function startCompiler(): Promise<Eraser> {
  const ask = asker<readonly string[], readonly ErasedSource[]>(startWorker(compileWorker))
  await ask(['const warm = 1'])
  return ask
}

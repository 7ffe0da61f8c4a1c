/** The local compiler as an eraser: resolves when it has answered once, so that nobody waits for its start. */
import type { Eraser } from '../../kernel/cells/program/index.js'
import type { ErasedSource } from '../../shared/contracts/index.js'
import CompilerWorker from '../workers/compile.worker.ts?worker'
import { asker } from '../workers/questions.js'

/** A compiler that is silent for so long has been brought down by a source. [ms] */
const patience = 15_000

/** The eraser fails once its worker is lost, and stays failed: whoever uses it starts another. */
export async function startCompiler(): Promise<Eraser> {
  const worker = new CompilerWorker()
  const ask = asker<readonly string[], readonly ErasedSource[]>(worker)
  const erase: Eraser = (sources) => {
    let timer: ReturnType<typeof setTimeout> | undefined
    const silence = new Promise<never>((_, reject) => {
      timer = setTimeout(() => {
        worker.terminate()
        reject(new Error(`the compiler gave no answer within ${patience / 1000} s`))
      }, patience)
    })
    return Promise.race([ask(sources), silence]).finally(() => clearTimeout(timer))
  }
  await erase(['const warm = 1'])
  return erase
}

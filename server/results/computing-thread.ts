/**
 * The thread that computes notebooks for the server. Checking units loads TypeScript and takes a second or two without a
 * pause; on the server's own thread that would hold up every request.
 */
import { parentPort, workerData } from 'node:worker_threads'
import { withDimensions } from '../../kernel/cells/index.js'
import type { SizingCell } from '../../kernel/cells/program/index.js'
import { openToolchain } from '../toolchain.js'
import type { ComputingAnswer } from './computing.js'

const toolchain = openToolchain({ folder: String((workerData as { folder: unknown }).folder) })

parentPort?.on('message', (cells: readonly SizingCell[]) => {
  void answer(cells).then((reply) => parentPort?.postMessage(reply))
})

async function answer(cells: readonly SizingCell[]): Promise<ComputingAnswer> {
  try {
    const { pipeline } = await toolchain
    const { results } = await pipeline.compute(cells, {}, 'all')
    const { names } = await pipeline.check(cells)
    return { results: withDimensions(results, names) }
  } catch (error) {
    return { error: error instanceof Error ? error.message : String(error) }
  }
}

/** Opens the built kernel with what it needs in Node. Apart from `serve.ts`, so that serving can be tested without a build. */
import { withDimensions } from '../kernel/cells/index.js'
import { pipelineKernel } from './pipeline-kernel.js'
import type { OpenedKernel } from './serve.js'
import { openToolchain } from './toolchain.js'

/** The first computation carries dimensions, so that a reader sees units before any browser has computed. */
export async function openPipelineKernel(folder: string): Promise<OpenedKernel> {
  const toolchain = await openToolchain(folder)
  const { pipeline } = toolchain
  const kernel = pipelineKernel(toolchain, async (cells) => {
    const { results } = await pipeline.compute(cells, {}, 'all')
    return withDimensions(results, (await pipeline.check(cells)).names)
  })
  return { kernel, close: () => toolchain.close() }
}

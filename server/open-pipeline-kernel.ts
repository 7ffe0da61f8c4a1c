/** Opens the built kernel with what it needs in Node. Apart from `serve.ts`, so that serving can be tested without a build. */
import { withDimensions } from '../kernel/cells/index.js'
import { pipelineKernel } from './pipeline-kernel.js'
import type { OpenedKernel } from './serve.js'
import { openToolchain } from './toolchain.js'

export async function openPipelineKernel(folder: string): Promise<OpenedKernel> {
  const toolchain = await openToolchain(folder)
  const { pipeline } = toolchain
  const kernel = pipelineKernel(toolchain, async (cells) => {
    const { results } = await pipeline.compute(cells, {}, 'all')
    const { names } = await pipeline.check(cells)
    return withDimensions(results, names)
  })
  return { kernel, close: () => toolchain.close() }
}

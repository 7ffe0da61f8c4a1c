/** Opens the built kernel with what it needs in Node. Apart from `serve.ts`, so that serving can be tested without a build. */
import { analyse } from '../kernel/cells/analyse/index.js'
import { compile } from '../kernel/cells/compile/index.js'
import { order } from '../kernel/cells/order/index.js'
import { pipelineKernel } from './pipeline-kernel.js'
import type { OpenedKernel } from './serve.js'
import { openToolchain } from './toolchain.js'

export async function openPipelineKernel(folder: string): Promise<OpenedKernel> {
  const toolchain = await openToolchain(folder)
  const names = new Set(toolchain.kernel.names)
  const kernel = pipelineKernel(toolchain, async (cells) => {
    const graph = await analyse(cells, toolchain.erase, names)
    const program = order(graph, compile(graph), toolchain.kernel.hash)
    return (await toolchain.host.evaluate(program, {}, 'all')).results
  })
  return { kernel, close: () => toolchain.close() }
}

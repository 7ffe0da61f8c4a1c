/** Opens the built kernel with what it needs in Node. Apart from `serve.ts`, so that serving can be tested without a build. */
import { pipelineKernel } from './pipeline-kernel.js'
import { Computing } from './results/index.js'
import type { OpenedKernel } from './serve.js'
import { openToolchain } from './toolchain.js'

export async function openPipelineKernel(folder: string): Promise<OpenedKernel> {
  const toolchain = await openToolchain({ folder })
  const computing = new Computing(new URL('./results/computing-thread.js', import.meta.url), folder)
  return {
    kernel: pipelineKernel(toolchain, (cells) => computing.compute(cells)),
    async close() {
      await computing.close()
      await toolchain.close()
    },
  }
}

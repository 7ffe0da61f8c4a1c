/** The last step of the kernel's build: `methods.json` beside the kernel, from its declarations and by way of the kernel itself. */
import { readFile, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import type typescript from 'typescript'
import { gatherMethods } from '../../kernel/cells/catalogue/index.js'
import type { KernelDeclarations } from '../../kernel/cells/program/index.js'
import type { MethodCatalogue } from '../../shared/contracts/index.js'
import { openToolchain } from '../toolchain.js'
import { catalogueFile } from './catalogue-file.js'
import { computeExamples } from './compute-examples.js'

/** `folder` holds `sandbox.js`, `kernel.json` and `declarations.json`, and ends in a slash. */
export async function writeCatalogue(folder: string): Promise<void> {
  const compiler = createRequire(import.meta.url)('typescript') as typeof typescript
  const declarations = JSON.parse(await readFile(join(folder, 'declarations.json'), 'utf8')) as KernelDeclarations
  const { kernel, pipeline, close } = await openToolchain({ folder })
  try {
    const methods = await computeExamples(gatherMethods(compiler, declarations), {
      typescript: compiler,
      pipeline,
      kernelNames: kernel.names,
    })
    const catalogue: MethodCatalogue = { kernelHash: kernel.hash, methods: [...methods] }
    await writeFile(join(folder, catalogueFile), JSON.stringify(catalogue))
  } finally {
    await close()
  }
}

/** What tests of the Node host need built: the sandbox and the child, straight from the sources. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import ts from 'typescript'
import { bundleSandboxText } from '../../kernel/cells/evaluate/bundle.mjs'
import { createNodeHost, createNodeNumbersHost, type NodeHostOptions } from '../../kernel/cells/host-node/index.js'

export interface NodeBench {
  readonly sandboxText: string
  readonly kernelHash: string
  readonly childPath: string
  open(options?: Partial<NodeHostOptions>): ReturnType<typeof createNodeHost>
  openNumbers(): ReturnType<typeof createNodeNumbersHost>
}

export async function prepareNodeBench(): Promise<NodeBench> {
  const { text: sandboxText, hash: kernelHash } = await bundleSandboxText()
  const source = readFileSync(new URL('../../kernel/cells/host-node/child.ts', import.meta.url), 'utf8')
  const compilerOptions = { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2023 }
  const childPath = join(mkdtempSync(join(tmpdir(), 'hoverfolio-child-')), 'child.js')
  writeFileSync(childPath, ts.transpileModule(source, { compilerOptions }).outputText)
  return {
    sandboxText,
    kernelHash,
    childPath,
    open: (options = {}) => createNodeHost({ sandboxText, childPath, ...options }),
    openNumbers: () => createNodeNumbersHost({ sandboxText, childPath }),
  }
}

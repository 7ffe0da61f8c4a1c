/**
 * The cell pipeline put together for Node: esbuild-wasm erases types, the built kernel runs in isolated child processes,
 * TypeScript checks. Used by the command and, for shipped and imported notebooks, by the server.
 */
import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'
import { stop, transform } from 'esbuild-wasm'
import type typescript from 'typescript'
import { createChecker } from '../kernel/cells/check/index.js'
import { createEraser, guardTransform } from '../kernel/cells/compile/index.js'
import { createNodeHost } from '../kernel/cells/host-node/index.js'
import { createPipeline, type Pipeline } from '../kernel/cells/index.js'
import type { Checker, Eraser, EvaluationHost, KernelDeclarations } from '../kernel/cells/program/index.js'

/** What `.build/kernel/kernel.json` says: the hash results are keyed by, and the names cells see. */
export interface KernelIdentity {
  readonly hash: string
  readonly names: readonly string[]
}

export interface Toolchain {
  readonly kernel: KernelIdentity
  readonly erase: Eraser
  readonly host: EvaluationHost
  readonly pipeline: Pipeline
  close(): Promise<void>
}

/** Folder the build wrote the kernel to; this module is built to `.build/server/`. */
export const kernelFolder = fileURLToPath(new URL('../kernel/', import.meta.url))

export interface ToolchainOptions {
  readonly folder?: string
  /** Begin loading TypeScript (9 MB) at once, while esbuild starts in its own process, because a check will surely be asked for. */
  readonly checkSoon?: boolean
}

/** Opens the toolchain. Unless told otherwise TypeScript is loaded when a check is first asked for, not before. */
export async function openToolchain({
  folder = kernelFolder,
  checkSoon = false,
}: ToolchainOptions = {}): Promise<Toolchain> {
  const [kernelText, sandboxText] = await Promise.all([
    readFile(`${folder}kernel.json`, 'utf8'),
    readFile(`${folder}sandbox.js`, 'utf8'),
  ])
  const kernel = JSON.parse(kernelText) as KernelIdentity
  const erase = createEraser(guardTransform(transform, { restart: () => stop(), after }))
  const host = createNodeHost({ sandboxText })
  if (checkSoon) erase(['']).catch(() => undefined)
  const early = checkSoon ? openChecker(folder) : undefined
  early?.catch(() => undefined)
  const pipeline = createPipeline({ erase, host, kernel, checker: () => early ?? openChecker(folder) })
  return { kernel, erase, host, pipeline, close: () => host.close() }
}

/** `require`, because `import` would first search all 9 MB of TypeScript for names to export (1.5 s more). */
async function openChecker(folder: string): Promise<Checker> {
  const declarations = JSON.parse(await readFile(`${folder}declarations.json`, 'utf8')) as KernelDeclarations
  const compiler = createRequire(import.meta.url)('typescript') as typeof typescript
  return createChecker(compiler, declarations)
}

/** The clock of the guard that replaces a compiler which a hostile source has brought down. */
function after(milliseconds: number, call: () => void): () => void {
  const timer = setTimeout(call, milliseconds)
  return () => clearTimeout(timer)
}

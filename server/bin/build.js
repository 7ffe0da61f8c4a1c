/**
 * The build, in the order in which each step needs the one before:
 * TypeScript -> kernel bundle for the isolated evaluator -> kernel declarations for the checker -> client.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { buildFolder, ensureInstalled, root, runTool } from './preparation.js'

/** Makes `.build` from the present sources. */
export async function build(say) {
  say('Building: types and server ...')
  runTool('typescript/bin/tsc', ['-b', 'server', 'client'])
  say('Building: kernel ...')
  await buildKernel()
  say('Building: page ...')
  runTool('vite/bin/vite.js', ['build', '--config', 'client/vite.config.ts', '--logLevel', 'warn'])
}

/** `.build/kernel/`: sandbox.js (what cells run against), kernel.json (its identity), declarations.json (what the checker reads). */
export async function buildKernel() {
  const folder = join(buildFolder, 'kernel')
  mkdirSync(folder, { recursive: true })
  const { bundleSandbox } = await import('../../kernel/cells/evaluate/bundle.mjs')
  const { hash } = await bundleSandbox(join(folder, 'sandbox.js'))
  const { preloaded } = await import('../../.build/kernel/library/preloaded.js')
  writeFileSync(join(folder, 'kernel.json'), JSON.stringify({ hash, names: Object.keys(preloaded) }))
  const { gatherDeclarations } = await import('../../.build/kernel/cells/check/index.js')
  const declarations = gatherDeclarations({ readFile: readSource, listFiles })
  writeFileSync(join(folder, 'declarations.json'), JSON.stringify(declarations))
}

/** Text of a file below the root. */
function readSource(path) {
  return readFileSync(join(root, path), 'utf8')
}

/** Paths below a folder of the root, relative to the root. */
function listFiles(folder) {
  const start = join(root, folder)
  if (!existsSync(start)) return []
  return readdirSync(start, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length).replaceAll('\\', '/'))
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const say = (sentence) => process.stdout.write(`${sentence}\n`)
  ensureInstalled(say)
  await build(say)
  say('Built.')
}

/**
 * The build, in the order in which each step needs the one before:
 * TypeScript -> kernel bundle for the isolated evaluator -> kernel declarations for the checker -> method catalogue -> client.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { buildFolder, root, runTool } from './preparation.js'

/** Makes `.build` from the present sources. */
export async function build(say) {
  say('Building: types and server ...')
  runTool('typescript/bin/tsc', ['-b', 'server', 'client'])
  say('Building: kernel ...')
  await buildKernel()
  say('Building: page ...')
  runTool('vite/bin/vite.js', ['build', '--config', 'client/vite.config.ts', '--logLevel', 'warn'])
}

/** `.build/kernel/`: sandbox.js (what cells run against), kernel.json (its identity), declarations.json (what the checker reads), methods.json (the catalogue). */
export async function buildKernel() {
  const folder = join(buildFolder, 'kernel')
  mkdirSync(folder, { recursive: true })
  const { bundleSandbox } = await import('../../kernel/cells/evaluate/bundle.mjs')
  const { hash } = await bundleSandbox(join(folder, 'sandbox.js'))
  const { preloaded } = await import('../../.build/kernel/library/preloaded.js')
  writeFileSync(join(folder, 'kernel.json'), JSON.stringify({ hash, names: Object.keys(preloaded) }))
  const { gatherDeclarations } = await import('../../.build/kernel/cells/check/index.js')
  const declarations = gatherDeclarations({
    buildFolder,
    typescriptFolder: join(root, 'node_modules/typescript/lib'),
    readFile: (path) => (existsSync(path) ? readFileSync(path, 'utf8') : undefined),
  })
  writeFileSync(join(folder, 'declarations.json'), JSON.stringify(declarations))
  const { writeCatalogue } = await import('../../.build/server/catalogue/write-catalogue.js')
  await writeCatalogue(join(folder, '/'))
}

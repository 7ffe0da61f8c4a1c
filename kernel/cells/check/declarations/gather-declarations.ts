/**
 * Gathers the declarations a checker works from. Pure: the build hands in how files are listed and read, so that this layer
 * names no platform.
 */
import type { KernelDeclarations } from '../../program/index.js'

export interface DeclarationSources {
  /** Folder of `tsc` output that mirrors the project: holds `kernel/library/preloaded.d.ts` and `shared/contracts/`. */
  readonly buildFolder: string
  /** Folder of TypeScript's own library files: `node_modules/typescript/lib`. */
  readonly typescriptFolder: string
  /** Text of a file; `undefined` when there is none. */
  readonly readFile: (path: string) => string | undefined
}

/** The file whose `preloaded` cells see, inside the build folder. */
const preloaded = 'kernel/library/preloaded.d.ts'
const index = 'kernel/library/index.d.ts'

/**
 * Follows relative imports from the kernel's index, and the references of TypeScript's `lib.es2023.d.ts`. Imports of packages are left
 * out: what they would describe is then `any`, and nothing that cells see comes from them.
 *
 * @throws Error when the kernel or TypeScript's library is not where it was said to be
 */
export function gatherDeclarations(sources: DeclarationSources): KernelDeclarations {
  const files: Record<string, string> = {}
  for (const start of [preloaded, index]) gatherModule(sources, start, files)
  gatherLibrary(sources, 'es2023', files)
  return { files, preloadedPath: `/${preloaded}` }
}

function gatherModule(sources: DeclarationSources, path: string, files: Record<string, string>): void {
  const target = `/${path}`
  if (files[target] !== undefined) return
  const text = sources.readFile(`${sources.buildFolder}/${path}`)
  if (text === undefined)
    throw new Error(`There is no "${path}" in ${sources.buildFolder}; build the kernel (tsc -b kernel/library) first.`)
  files[target] = text.replace(/^\/\/# sourceMappingURL=.*$/m, '')
  for (const [, specifier] of text.matchAll(/(?:from|import\()\s*['"](\.{1,2}\/[^'"]+)\.js['"]/g))
    gatherModule(sources, joinPath(path, `${specifier}.d.ts`), files)
}

function joinPath(from: string, relative: string): string {
  const parts = from.split('/').slice(0, -1)
  for (const part of relative.split('/')) {
    if (part === '..') parts.pop()
    else if (part !== '.') parts.push(part)
  }
  return parts.join('/')
}

function gatherLibrary(sources: DeclarationSources, name: string, files: Record<string, string>): void {
  const target = `/lib/lib.${name}.d.ts`
  if (files[target] !== undefined) return
  const text = sources.readFile(`${sources.typescriptFolder}/lib.${name}.d.ts`)
  if (text === undefined)
    throw new Error(`There is no "lib.${name}.d.ts" in ${sources.typescriptFolder}; install typescript 5.9.3 first.`)
  files[target] = text
  for (const [, reference] of text.matchAll(/\/\/\/ <reference lib="([^"]+)"/g))
    if (reference !== undefined) gatherLibrary(sources, reference, files)
}

/** A TypeScript program over the kernel's declarations alone, held in memory. */
import type ts from 'typescript'
import type { KernelDeclarations } from '../program/index.js'

export function kernelProgram(typescript: typeof ts, { files, preloadedPath }: KernelDeclarations): ts.Program {
  const options: ts.CompilerOptions = {
    strict: true,
    exactOptionalPropertyTypes: true,
    noEmit: true,
    skipLibCheck: true,
    types: [],
    lib: ['lib.es2023.d.ts'],
    target: typescript.ScriptTarget.ES2023,
    module: typescript.ModuleKind.ESNext,
    moduleResolution: typescript.ModuleResolutionKind.Bundler,
  }
  return typescript.createProgram([preloadedPath], options, {
    fileExists: (path) => files[path] !== undefined,
    readFile: (path) => files[path],
    getSourceFile: (path) => {
      const text = files[path]
      return text === undefined ? undefined : typescript.createSourceFile(path, text, typescript.ScriptTarget.ES2023)
    },
    getDefaultLibFileName: () => '/lib/lib.es2023.d.ts',
    getCurrentDirectory: () => '/',
    getCanonicalFileName: (path) => path,
    useCaseSensitiveFileNames: () => true,
    getNewLine: () => '\n',
    writeFile: () => undefined,
  })
}

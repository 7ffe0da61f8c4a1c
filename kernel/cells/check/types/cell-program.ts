/**
 * One TypeScript program over all cells of a notebook: each cell a global script, the kernel's declarations as modules, a
 * preamble that makes them global. Files that did not change keep their parsed form between programs.
 */
import type ts from 'typescript'
import type { AnalysedCell, KernelDeclarations } from '../../program/index.js'
import { type KernelNames, readKernelNames, writePreamble } from './preamble.js'

const preamblePath = '/preamble.d.ts'

export interface CellProgram {
  readonly program: ts.Program
  readonly checker: ts.TypeChecker
  /** The file of a cell; absent for text that the parser cannot hold. */
  fileOf(cell: AnalysedCell): ts.SourceFile | undefined
}

export class ProgramBuilder {
  readonly #typescript: typeof ts
  readonly #declarations: KernelDeclarations
  readonly #options: ts.CompilerOptions
  readonly #parsed = new Map<string, { readonly text: string; readonly file: ts.SourceFile | undefined }>()
  #names: KernelNames | undefined
  #last: ts.Program | undefined

  constructor(typescript: typeof ts, declarations: KernelDeclarations) {
    this.#typescript = typescript
    this.#declarations = declarations
    this.#options = {
      strict: true,
      noEmit: true,
      skipLibCheck: true,
      types: [],
      lib: ['lib.es2023.d.ts'],
      target: typescript.ScriptTarget.ES2023,
      module: typescript.ModuleKind.ESNext,
      moduleResolution: typescript.ModuleResolutionKind.Bundler,
      moduleDetection: typescript.ModuleDetectionKind.Legacy,
    }
  }

  /** The program over these cells. Cells gone since the last call are forgotten. */
  build(cells: readonly AnalysedCell[], shadowed: readonly string[]): CellProgram {
    const texts = new Map(cells.map((cell) => [pathOf(cell), cell.source]))
    for (const path of this.#parsed.keys()) if (path.startsWith('/cell/') && !texts.has(path)) this.#parsed.delete(path)
    const roots = [...texts].flatMap(([path, text]) => (this.#parse(path, text) === undefined ? [] : [path]))
    const without = new Set([...shadowed, ...roots.flatMap((path) => this.#typesDeclaredIn(path))])
    texts.set(preamblePath, writePreamble(this.#kernelNames(), this.#modules(), without))
    const program = this.#create([preamblePath, ...roots], texts)
    return {
      program,
      checker: program.getTypeChecker(),
      fileOf: (cell) => program.getSourceFile(pathOf(cell)),
    }
  }

  #create(roots: readonly string[], texts: ReadonlyMap<string, string>): ts.Program {
    const read = (path: string): string | undefined => texts.get(path) ?? this.#declarations.files[path]
    const host: ts.CompilerHost = {
      getSourceFile: (path) => {
        const text = read(path)
        return text === undefined ? undefined : this.#parse(path, text)
      },
      fileExists: (path) => read(path) !== undefined,
      readFile: read,
      getDefaultLibFileName: () => '/lib/lib.es2023.d.ts',
      getDefaultLibLocation: () => '/lib',
      getCurrentDirectory: () => '/',
      getCanonicalFileName: (path) => path,
      useCaseSensitiveFileNames: () => true,
      getNewLine: () => '\n',
      writeFile: () => {},
      directoryExists: () => true,
      getDirectories: () => [],
    }
    this.#last = this.#typescript.createProgram({
      rootNames: [...roots],
      options: this.#options,
      host,
      ...(this.#last === undefined ? {} : { oldProgram: this.#last }),
    })
    return this.#last
  }

  /** `undefined` where the nesting of the text is deeper than the parser can follow. */
  #parse(path: string, text: string): ts.SourceFile | undefined {
    const known = this.#parsed.get(path)
    if (known?.text === text) return known.file
    let file: ts.SourceFile | undefined
    try {
      file = this.#typescript.createSourceFile(path, text, this.#typescript.ScriptTarget.ES2023, true)
    } catch {
      file = undefined
    }
    this.#parsed.set(path, { text, file })
    return file
  }

  #typesDeclaredIn(path: string): readonly string[] {
    const typescript = this.#typescript
    const statements = this.#parsed.get(path)?.file?.statements ?? []
    return statements.flatMap((statement) =>
      typescript.isTypeAliasDeclaration(statement) || typescript.isInterfaceDeclaration(statement)
        ? [statement.name.text]
        : [],
    )
  }

  #kernelNames(): KernelNames {
    this.#names ??= this.#readNames()
    return this.#names
  }

  #readNames(): KernelNames {
    const { values, types } = this.#modules()
    const paths = [...new Set([values, types])].map((path) => path.replace(/\.js$/, '.d.ts'))
    const program = this.#create(paths, new Map())
    const files = paths.flatMap((path) => program.getSourceFile(path) ?? [])
    return readKernelNames(this.#typescript, program.getTypeChecker(), files)
  }

  #modules(): { readonly values: string; readonly types: string } {
    const { preloadedPath, files } = this.#declarations
    const index = preloadedPath.replace(/[^/]*$/, 'index.d.ts')
    const script = (path: string) => path.replace(/\.d\.ts$/, '.js')
    return { values: script(preloadedPath), types: script(files[index] === undefined ? preloadedPath : index) }
  }
}

function pathOf(cell: AnalysedCell): string {
  return `/cell/${cell.id}.ts`
}

/**
 * One TypeScript program over all cells of a notebook: each cell a global script, the kernel's declarations as modules, a
 * preamble that makes them global. Files that did not change keep their parsed form between programs. The program is that of a
 * language service, so that an editor can ask about the very same view of the cells that is checked.
 */
import type ts from 'typescript'
import type { CellId } from '../../../../shared/contracts/index.js'
import type { KernelDeclarations, SizingCell } from '../../program/index.js'
import { type KernelNames, readKernelNames, writePreamble } from './preamble.js'

const preamblePath = '/preamble.d.ts'
const cellFolder = '/cell/'

export interface CellProgram {
  readonly program: ts.Program
  readonly checker: ts.TypeChecker
  /** Text of the preamble: changes when a cell comes to own a kernel name. */
  readonly preamble: string
  /** The file of a cell; absent for text that the parser cannot hold. */
  fileOf(cell: Pick<SizingCell, 'id'>): ts.SourceFile | undefined
}

interface Parsed {
  readonly text: string
  /** Absent where the nesting of the text is deeper than the parser can follow. */
  readonly file: (ts.SourceFile & { version?: string }) | undefined
}

export class ProgramBuilder {
  readonly #typescript: typeof ts
  readonly #declarations: KernelDeclarations
  readonly #options: ts.CompilerOptions
  readonly #parsed = new Map<string, Parsed>()
  #names: KernelNames | undefined
  #roots: readonly string[] = []
  #texts: ReadonlyMap<string, string> = new Map()
  #shadowed: readonly string[] = []
  #versions = 0
  readonly service: ts.LanguageService

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
    this.service = typescript.createLanguageService(this.#host(), this.#registry())
  }

  /**
   * The program over these cells; the same one as long as nothing changed. Cells gone since the last call are forgotten.
   * Without `shadowed`, the kernel names that gave way at the last call still do.
   */
  build(cells: readonly SizingCell[], shadowed: readonly string[] = this.#shadowed): CellProgram {
    this.#shadowed = shadowed
    const texts = new Map(cells.map((cell) => [pathOf(cell), cell.source]))
    for (const path of this.#parsed.keys())
      if (path.startsWith(cellFolder) && !texts.has(path)) this.#parsed.delete(path)
    const roots = [...texts].flatMap(([path, text]) => (this.#parse(path, text) === undefined ? [] : [path]))
    const without = new Set([...shadowed, ...roots.flatMap((path) => this.#typesDeclaredIn(path))])
    const preamble = writePreamble(this.#kernelNames(), this.#modules(), without)
    texts.set(preamblePath, preamble)
    const program = this.#create([preamblePath, ...roots], texts)
    return {
      program,
      checker: program.getTypeChecker(),
      preamble,
      fileOf: (cell) => program.getSourceFile(pathOf(cell)),
    }
  }

  #create(roots: readonly string[], texts: ReadonlyMap<string, string>): ts.Program {
    this.#roots = roots
    this.#texts = texts
    const program = this.service.getProgram()
    if (program === undefined) throw new Error('TypeScript made no program of the cells.')
    return program
  }

  #read = (path: string): string | undefined => this.#texts.get(path) ?? this.#declarations.files[path]

  #host(): ts.LanguageServiceHost {
    return {
      getCompilationSettings: () => this.#options,
      getScriptFileNames: () => [...this.#roots],
      getScriptVersion: (path) => this.#document(path)?.version ?? '',
      getScriptSnapshot: (path) => {
        const text = this.#read(path)
        return text === undefined ? undefined : this.#typescript.ScriptSnapshot.fromString(text)
      },
      fileExists: (path) => this.#read(path) !== undefined,
      readFile: this.#read,
      getDefaultLibFileName: () => '/lib/lib.es2023.d.ts',
      getCurrentDirectory: () => '/',
      useCaseSensitiveFileNames: () => true,
      getNewLine: () => '\n',
      directoryExists: () => true,
      getDirectories: () => [],
    }
  }

  /** Hands out our own parsed files, so that nothing is parsed twice. */
  #registry(): ts.DocumentRegistry {
    const document = (path: string) => {
      const file = this.#document(path)
      if (file === undefined) throw new Error(`TypeScript asked for "${path}", which is not there.`)
      return file
    }
    return {
      acquireDocument: document,
      acquireDocumentWithKey: document,
      updateDocument: document,
      updateDocumentWithKey: document,
      getKeyForCompilationSettings: () => 'cells' as ts.DocumentRegistryBucketKey,
      releaseDocument: () => {},
      releaseDocumentWithKey: () => {},
      reportStats: () => '',
    }
  }

  #document(path: string): Parsed['file'] {
    const text = this.#read(path)
    return text === undefined ? undefined : this.#parse(path, text)
  }

  /** `undefined` where the nesting of the text is deeper than the parser can follow. */
  #parse(path: string, text: string): Parsed['file'] {
    const known = this.#parsed.get(path)
    if (known?.text === text) return known.file
    let file: Parsed['file']
    try {
      file = this.#typescript.createSourceFile(path, text, this.#typescript.ScriptTarget.ES2023, true)
      this.#versions += 1
      file.version = String(this.#versions)
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

/** The path under which a cell is known. */
export function pathOf(cell: Pick<SizingCell, 'id'>): string {
  return `${cellFolder}${cell.id}.ts`
}

/** The cell of a path; absent for the kernel's declarations and the library's. */
export function cellAt(path: string): CellId | undefined {
  return path.startsWith(cellFolder) ? (path.slice(cellFolder.length, -'.ts'.length) as CellId) : undefined
}

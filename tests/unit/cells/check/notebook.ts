/** Cells as the checker gets them: read by the real analysis, against the kernel's declarations made from its sources. */
import typescript from 'typescript'
import { analyse } from '../../../../kernel/cells/analyse/index.js'
import { createChecker, gatherDeclarations } from '../../../../kernel/cells/check/index.js'
import type { CheckReport, Eraser, Graph, KernelDeclarations } from '../../../../kernel/cells/program/index.js'
import { preloaded } from '../../../../kernel/library/index.js'
import { CellId } from '../../../../shared/contracts/index.js'

const root = new URL('../../../../', import.meta.url).pathname.replace(/\/$/, '')

/** Erases types by TypeScript itself; which compiler does it makes no difference to what the checker sees. */
export const erase: Eraser = async (sources) =>
  sources.map((source) => {
    const out = typescript.transpileModule(source, {
      reportDiagnostics: true,
      compilerOptions: {
        target: typescript.ScriptTarget.ES2023,
        module: typescript.ModuleKind.ESNext,
        verbatimModuleSyntax: true,
        sourceMap: true,
      },
    })
    const problem = out.diagnostics?.[0]
    if (problem === undefined) {
      const code = out.outputText.replace(/^\/\/# sourceMappingURL.*$/m, '')
      return { ok: true, code, map: out.sourceMapText ?? '' }
    }
    const place = problem.file?.getLineAndCharacterOfPosition(problem.start ?? 0) ?? { line: 0, character: 0 }
    const message = typescript.flattenDiagnosticMessageText(problem.messageText, ' ')
    return { ok: false, line: place.line + 1, column: place.character + 1, message }
  })

/** What the build gathers, made in memory so that a test never sees stale declarations. */
export function kernelDeclarations(): KernelDeclarations {
  const emitted = new Map<string, string>()
  const program = typescript.createProgram([`${root}/kernel/library/index.ts`], {
    target: typescript.ScriptTarget.ES2023,
    lib: ['lib.es2023.d.ts'],
    module: typescript.ModuleKind.NodeNext,
    moduleResolution: typescript.ModuleResolutionKind.NodeNext,
    types: [],
    strict: true,
    declaration: true,
    emitDeclarationOnly: true,
    noCheck: true,
    skipLibCheck: true,
    rootDir: root,
    outDir: '/declarations',
  })
  program.emit(undefined, (path, text) => emitted.set(path, text), undefined, true)
  return gatherDeclarations({
    buildFolder: '/declarations',
    typescriptFolder: `${root}/node_modules/typescript/lib`,
    readFile: (path) => emitted.get(path) ?? typescript.sys.readFile(path),
  })
}

export const declarations = kernelDeclarations()
export const checker = createChecker(typescript, declarations)
export const kernelNames: ReadonlySet<string> = new Set(Object.keys(preloaded))

export async function graphOf(sources: Readonly<Record<string, string>>): Promise<Graph> {
  const cells = Object.entries(sources).map(([id, source]) => ({ id: CellId.parse(id), source }))
  return analyse(cells, erase, kernelNames)
}

/** Checks cells by id, in page order. */
export async function check(sources: Readonly<Record<string, string>>): Promise<CheckReport> {
  return checker.check(await graphOf(sources))
}

/** Checks one cell and gives the dimensions of its names as one record. */
export async function checkCell(source: string): Promise<{
  readonly names: Readonly<Record<string, string | null>>
  readonly report: CheckReport
  readonly said: readonly string[]
}> {
  const report = await check({ cell: source })
  return {
    names: Object.fromEntries(report.names.map(({ name, dimension }) => [name, dimension])),
    report,
    said: report.findings.map(({ kind, line, column, message }) => `${kind} ${line}:${column} ${message}`),
  }
}

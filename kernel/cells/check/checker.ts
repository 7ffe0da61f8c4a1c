/**
 * Checks a notebook's cells: TypeScript's complaints and wrong units as findings, and the dimension of every name.
 *
 * `typescript` is handed in (exactly 5.9.3), so that the browser can give the copy it has loaded for the editor.
 */
import type ts from 'typescript'
import { type CellId, type Finding, formatDimension, type NameDimension } from '../../../shared/contracts/index.js'
import type { AnalysedCell, Checker, CheckReport, Graph, KernelDeclarations, SizingCell } from '../program/index.js'
import { type Inferred, inferCells } from './dimensions/infer-cells.js'
import type { Report } from './dimensions/reports.js'
import type { Shape } from './dimensions/shape.js'
import { inDependencyOrder } from './order.js'
import { type Repair, repairsOf } from './repairs.js'
import { type CellProgram, cellAt, ProgramBuilder, pathOf } from './types/cell-program.js'
import { nestedTooDeeply, type TypeComplaint } from './types/type-findings.js'
import { TypeMemory } from './types/type-memory.js'

type Kind = 'type' | 'dimension'

/** TypeScript's view of the cells, for an editor's questions: the one that is checked, not a second one. */
export interface CellLanguage {
  readonly typescript: typeof ts
  readonly service: ts.LanguageService
  /** The cells as they now stand; only those whose text changed cost anything. */
  setCells(cells: readonly SizingCell[]): void
  /** What the last check found of a name or an expression where it stands; nothing when its cell changed since. */
  dimensionAt(node: ts.Node): { readonly dimension?: string; readonly why?: string }
  /** Plain mends for what the last check reported in a cell; none when the cell changed since. */
  repairs(cell: CellId): readonly Repair[]
  /** The path of a cell, as the service knows it. */
  fileOf(cell: CellId): string
  /** The cell of a path; absent for the kernel's declarations and the library's. */
  cellOf(file: string): CellId | undefined
}

export interface LanguageChecker extends Checker {
  readonly language: CellLanguage
}

export function createChecker(typescript: typeof ts, declarations: KernelDeclarations): LanguageChecker {
  const builder = new ProgramBuilder(typescript, declarations)
  const memory = new TypeMemory(typescript)
  let latest: Inferred | undefined
  return {
    check(graph) {
      const { report, inferred } = check(typescript, builder, memory, graph)
      latest = inferred
      return report
    },
    language: {
      typescript,
      service: builder.service,
      setCells: (cells) => void builder.build(cells),
      dimensionAt: (node) => described(latest?.shapeAt(node)),
      repairs(cell) {
        const file = builder.service.getProgram()?.getSourceFile(pathOf({ id: cell }))
        const reports = latest?.reports.filter(({ node }) => node.getSourceFile() === file) ?? []
        return reports.flatMap((report) => repairsOf(typescript, report))
      },
      fileOf: (id) => pathOf({ id }),
      cellOf: cellAt,
    },
  }
}

function check(typescript: typeof ts, builder: ProgramBuilder, memory: TypeMemory, graph: Graph): Checked {
  const program = builder.build(graph.cells, graph.shadowed)
  const readable = inDependencyOrder(graph).filter((cell) => cell.code !== undefined)
  const checked = readable.flatMap((cell) => {
    const file = program.fileOf(cell)
    return file === undefined ? [] : [{ cell, file }]
  })
  const said = memory.complaints(graph, program, readable)
  const complaints = checked.flatMap(({ cell, file }) => typeFindings(cell, file, said.get(cell) ?? []))
  const inferred = infer(typescript, program, checked, disputedNames(graph))
  const wrongUnits = inferred === undefined ? [] : inferred.reports.flatMap((report) => unitFinding(checked, report))
  const report = {
    findings: inPageOrder(graph, [...complaints, ...wrongUnits, ...tooDeep(readable, program)]),
    names: graph.cells.flatMap((cell) => namesOf(graph, program, inferred, cell)),
  }
  return { report, inferred }
}

interface Checked {
  readonly report: CheckReport
  readonly inferred: Inferred | undefined
}

function described(shape: Shape | undefined): { readonly dimension?: string; readonly why?: string } {
  if (shape?.kind === 'number') return { dimension: formatDimension(shape.dimension) }
  return shape?.kind === 'unknown' && shape.why !== undefined ? { why: shape.why } : {}
}

interface CheckedCell {
  readonly cell: AnalysedCell
  readonly file: ts.SourceFile
}

function typeFindings(cell: AnalysedCell, file: ts.SourceFile, complaints: readonly TypeComplaint[]): Finding[] {
  return complaints.map(({ start, end, severity, message }) =>
    finding(cell, file, 'type', severity, start, end, message),
  )
}

/** `undefined` where a source is nested so deeply that following it exhausts the stack. */
function infer(
  typescript: typeof ts,
  program: CellProgram,
  checked: readonly CheckedCell[],
  disputed: ReadonlySet<string>,
): Inferred | undefined {
  try {
    return inferCells(
      typescript,
      program.checker,
      checked.map(({ file }) => file),
      disputed,
    )
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return undefined
  }
}

function disputedNames(graph: Graph): ReadonlySet<string> {
  const declared = graph.cells.flatMap((cell) => cell.declares.map(({ name }) => name))
  return new Set(declared.filter((name) => !graph.owner.has(name)))
}

function unitFinding(checked: readonly CheckedCell[], { node, message, severity }: Report): Finding[] {
  const place = checked.find(({ file }) => file === node.getSourceFile())
  if (place === undefined) return []
  return [finding(place.cell, place.file, 'dimension', severity, node.getStart(), node.end, message)]
}

function tooDeep(readable: readonly AnalysedCell[], program: CellProgram): Finding[] {
  return readable
    .filter((cell) => program.fileOf(cell) === undefined)
    .map((cell) => ({ cell: cell.id, line: 1, column: 1, kind: 'type', severity: 'warning', message: nestedTooDeeply }))
}

function finding(
  cell: AnalysedCell,
  file: ts.SourceFile,
  kind: Kind,
  severity: Finding['severity'],
  start: number,
  end: number,
  message: string,
): Finding {
  const from = file.getLineAndCharacterOfPosition(start)
  const to = file.getLineAndCharacterOfPosition(end)
  return {
    cell: cell.id,
    line: from.line + 1,
    column: from.character + 1,
    endLine: to.line + 1,
    endColumn: to.character + 1,
    kind,
    severity,
    message,
  }
}

function inPageOrder(graph: Graph, findings: readonly Finding[]): readonly Finding[] {
  const page = new Map(graph.cells.map((cell, index) => [cell.id, index]))
  return [...findings].sort(
    (a, b) => (page.get(a.cell) ?? 0) - (page.get(b.cell) ?? 0) || a.line - b.line || a.column - b.column,
  )
}

/** Unknown for a name with two owners, and for everything that is no number. */
function namesOf(
  graph: Graph,
  program: CellProgram,
  inferred: Inferred | undefined,
  cell: AnalysedCell,
): readonly NameDimension[] {
  if (cell.code === undefined) return []
  const file = program.fileOf(cell)
  const shapes = file === undefined ? undefined : inferred?.shapesOf(file)
  return cell.declares.map(({ name }) => {
    const owned = graph.owner.get(name) === cell.id
    const shape = owned ? shapes?.get(name) : undefined
    const dimension = shape?.kind === 'number' ? formatDimension(shape.dimension) : null
    const columns = shape === undefined ? undefined : inferred?.columnsOf(shape)
    const why = shape?.kind === 'unknown' ? shape.why : undefined
    return {
      cell: cell.id,
      name,
      dimension,
      ...(columns === undefined ? {} : { columns }),
      ...(why === undefined ? {} : { why }),
    }
  })
}

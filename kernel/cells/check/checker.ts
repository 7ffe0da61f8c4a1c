/**
 * Checks a notebook's cells: TypeScript's complaints and wrong units as findings, and the dimension of every name.
 *
 * `typescript` is handed in (exactly 5.9.3), so that the browser can give the copy it has loaded for the editor.
 */
import type ts from 'typescript'
import { type Finding, formatDimension, type NameDimension } from '../../../shared/contracts/index.js'
import type { AnalysedCell, Checker, CheckReport, Graph, KernelDeclarations } from '../program/index.js'
import { type Inferred, inferCells } from './dimensions/infer-cells.js'
import type { Report } from './dimensions/reports.js'
import { inDependencyOrder } from './order.js'
import { type CellProgram, ProgramBuilder } from './types/cell-program.js'
import { typeComplaints } from './types/type-findings.js'

type Kind = 'type' | 'dimension'

export function createChecker(typescript: typeof ts, declarations: KernelDeclarations): Checker {
  const builder = new ProgramBuilder(typescript, declarations)
  return {
    check: (graph) => check(typescript, builder, graph),
  }
}

function check(typescript: typeof ts, builder: ProgramBuilder, graph: Graph): CheckReport {
  const program = builder.build(graph.cells, graph.shadowed)
  const readable = inDependencyOrder(graph).filter((cell) => cell.code !== undefined)
  const checked = readable.flatMap((cell) => {
    const file = program.fileOf(cell)
    return file === undefined ? [] : [{ cell, file }]
  })
  const complaints = checked.flatMap(({ cell, file }) => typeFindings(typescript, program, cell, file))
  const inferred = infer(typescript, program, checked)
  const wrongUnits = inferred === undefined ? [] : inferred.reports.flatMap((report) => unitFinding(checked, report))
  return {
    findings: inPageOrder(graph, [...complaints, ...wrongUnits, ...tooDeep(readable, program)]),
    names: graph.cells.flatMap((cell) => namesOf(graph, program, inferred, cell)),
  }
}

interface CheckedCell {
  readonly cell: AnalysedCell
  readonly file: ts.SourceFile
}

/** In dependency order, so that TypeScript knows the type of a name before it meets the name: long chains need no stack. */
function typeFindings(typescript: typeof ts, program: CellProgram, cell: AnalysedCell, file: ts.SourceFile): Finding[] {
  try {
    return typeComplaints(typescript, program.program, file).map(({ start, end, message }) =>
      finding(cell, file, 'type', 'error', start, end, message),
    )
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return [cannotFollow(cell)]
  }
}

/** `undefined` where a source is nested so deeply that following it exhausts the stack. */
function infer(typescript: typeof ts, program: CellProgram, checked: readonly CheckedCell[]): Inferred | undefined {
  try {
    return inferCells(
      typescript,
      program.checker,
      checked.map(({ file }) => file),
    )
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return undefined
  }
}

function unitFinding(checked: readonly CheckedCell[], { node, message, severity }: Report): Finding[] {
  const place = checked.find(({ file }) => file === node.getSourceFile())
  if (place === undefined) return []
  return [finding(place.cell, place.file, 'dimension', severity, node.getStart(), node.end, message)]
}

function tooDeep(readable: readonly AnalysedCell[], program: CellProgram): Finding[] {
  return readable.filter((cell) => program.fileOf(cell) === undefined).map(cannotFollow)
}

function cannotFollow(cell: AnalysedCell): Finding {
  const message = 'This cell is nested too deeply to be checked; split it into named steps.'
  return { cell: cell.id, line: 1, column: 1, kind: 'type', severity: 'warning', message }
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
  return cell.declares.map(({ name }) => {
    const owned = graph.owner.get(name) === cell.id
    const shape = file === undefined || !owned ? undefined : inferred?.shapeOf(file, name)
    return { cell: cell.id, name, dimension: shape?.kind === 'number' ? formatDimension(shape.dimension) : null }
  })
}

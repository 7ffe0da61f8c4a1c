/** TypeScript's complaints about a cell, as findings. What another part of the house says better is left to it. */
import type ts from 'typescript'
import { markedDimension, markerTexts } from './marker.js'

/** The reader of cells and the graph speak about these: names that do not exist or have two owners, cycles. */
const spokenElsewhere: ReadonlySet<number> = new Set([
  2451, 2300, 2393, 2567, 2440, 2304, 2552, 2503, 2580, 2581, 2582, 2583, 2584, 2585, 2591, 2592, 2593, 2662, 2663,
  18004,
])
/** Of these, the ones that count when they are about a type: no other part reads types. */
const unknownNames: ReadonlySet<number> = new Set([2304, 2552, 2503, 2583, 2585])
/** A second declaration; of a type, no other part sees it. */
const secondDeclarations: ReadonlySet<number> = new Set([2300])
/** A parameter or variable without annotation is welcome: the dimension core follows what it is given. */
const unannotated: ReadonlySet<number> = new Set([7005, 7006, 7010, 7011, 7019, 7022, 7023, 7024, 7031, 7034])
/** Comparisons of types that TypeScript takes for disjoint because their markers are. */
const comparisons: ReadonlySet<number> = new Set([2367, 2678])

export interface TypeComplaint {
  readonly start: number
  readonly end: number
  readonly severity: 'error' | 'warning'
  readonly message: string
}

export const nestedTooDeeply = 'This cell is nested too deeply to be checked; split it into named steps.'

/** Never throws: a cell that exhausts TypeScript's stack is told so. */
export function typeComplaints(
  typescript: typeof ts,
  program: ts.Program,
  file: ts.SourceFile,
): readonly TypeComplaint[] {
  try {
    return readComplaints(typescript, program, file)
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    return [{ start: 0, end: 0, severity: 'warning', message: nestedTooDeeply }]
  }
}

function readComplaints(typescript: typeof ts, program: ts.Program, file: ts.SourceFile): readonly TypeComplaint[] {
  const syntactic = program.getSyntacticDiagnostics(file)
  const diagnostics = syntactic.length > 0 ? syntactic : program.getSemanticDiagnostics(file)
  const checker = program.getTypeChecker()
  return diagnostics.flatMap((diagnostic) => {
    const { start, length } = diagnostic
    if (start === undefined || length === undefined || diagnostic.category !== typescript.DiagnosticCategory.Error)
      return []
    if (unannotated.has(diagnostic.code)) return []
    const node = nodeAt(typescript, file, start)
    if (spokenElsewhere.has(diagnostic.code) && !isAboutType(typescript, diagnostic.code, node)) return []
    if (isOnlyMarker(typescript, checker, diagnostic, node)) return []
    return [{ start, end: start + length, severity: 'error', message: flatten(diagnostic.messageText) }]
  })
}

function isAboutType(typescript: typeof ts, code: number, node: ts.Node): boolean {
  if (unknownNames.has(code)) return typescript.isPartOfTypeNode(node)
  const parent = node.parent
  return (
    secondDeclarations.has(code) &&
    parent !== undefined &&
    (typescript.isTypeAliasDeclaration(parent) ||
      typescript.isInterfaceDeclaration(parent) ||
      typescript.isTypeElement(parent))
  )
}

/** The innermost node that begins at a position. */
function nodeAt(typescript: typeof ts, file: ts.SourceFile, position: number): ts.Node {
  let at: ts.Node = file
  for (;;) {
    const inner: ts.Node | undefined = typescript.forEachChild(at, (child) =>
      child.getStart(file) <= position && position < child.end ? child : undefined,
    )
    if (inner === undefined) return at
    at = inner
  }
}

/** Whether nothing but a clash of dimension markers is behind a complaint, so that the dimension core is its one voice. */
function isOnlyMarker(
  typescript: typeof ts,
  checker: ts.TypeChecker,
  diagnostic: ts.Diagnostic,
  node: ts.Node,
): boolean {
  if (comparisons.has(diagnostic.code)) return comparesMarked(typescript, checker, node)
  const { messageText } = diagnostic
  return typeof messageText !== 'string' && endsInMarker(messageText)
}

function endsInMarker(chain: ts.DiagnosticMessageChain): boolean {
  if (isAboutMarker(chain.messageText)) return true
  return chain.next !== undefined && chain.next.length > 0 && chain.next.every(endsInMarker)
}

function isAboutMarker(text: string): boolean {
  return markerTexts.some((marker) => text.includes(marker))
}

function comparesMarked(typescript: typeof ts, checker: ts.TypeChecker, node: ts.Node): boolean {
  let at = node
  while (at.parent !== undefined && !typescript.isBinaryExpression(at) && !typescript.isCaseClause(at)) at = at.parent
  const operand = typescript.isBinaryExpression(at) ? at.left : typescript.isCaseClause(at) ? at.expression : undefined
  return operand !== undefined && markedDimension(typescript, checker, checker.getTypeAtLocation(operand)) !== undefined
}

/** One sentence per step of the explanation; the marker itself means nothing to a reader. */
function flatten(message: string | ts.DiagnosticMessageChain): string {
  if (typeof message === 'string') return inPlainWords(message)
  const steps = [inPlainWords(message.messageText), ...(message.next ?? []).map(flatten)]
  return steps
    .filter((step) => !isAboutMarker(step))
    .map((step) => (step.endsWith('.') ? step : `${step}.`))
    .join(' ')
}

/** TypeScript names a namespace of the kernel by the file it was declared in, which no reader of a cell has seen. */
function inPlainWords(message: string): string {
  return message.replace(
    /type 'typeof import\("[^"]*\/library\/([\w-]+)(?:\/index)?"\)'/g,
    (_, name: string) => `"${name}" of the kernel`,
  )
}

/** The dimension core as a whole: follows all cells in an order in which each comes after what it reads. */
import type ts from 'typescript'
import { applyFunction, inferCall } from './calls.js'
import { columnsOf } from './columns.js'
import { inferExpression, note } from './expressions.js'
import { declaredNumber, shapeOfType } from './from-type.js'
import { coverFunction, followFunction } from './functions.js'
import type { Inference } from './inference.js'
import { readElements, readProperty } from './members.js'
import { Memory } from './memory.js'
import { Mutations } from './mutations.js'
import { assignTo, bindName } from './patterns.js'
import { type Report, Reports } from './reports.js'
import { Scope } from './scope.js'
import { type NumberShape, noBindings, type Shape } from './shape.js'
import { runStatements } from './statements.js'
import { reportSums } from './temperatures.js'

/** Expressions looked at in one check. A notebook of 20 cells takes a few thousand; a source made to be slow ends here. */
const stepsAllowed = 400_000

export interface Inferred {
  readonly reports: readonly Report[]
  /** Shapes of the top-level constants and variables of a cell, as they are when it has run. */
  shapesOf(cell: ts.SourceFile): ReadonlyMap<string, Shape>
  /** What was found of an expression or a name where it stands; a function called with several dimensions has several, and none. */
  shapeAt(node: ts.Node): Shape | undefined
  /** Dimensions of the fields of a record, or of the records in a list. */
  columnsOf(shape: Shape): Readonly<Record<string, string>> | undefined
}

export function inferCells(
  typescript: typeof ts,
  checker: ts.TypeChecker,
  cells: readonly ts.SourceFile[],
  disputed: ReadonlySet<string>,
): Inferred {
  const inference = newInference(typescript, checker, disputed)
  for (const cell of cells) inference.mutations.read(cell)
  for (const cell of cells) {
    inference.statements(cell.statements, inference.top, [])
    for (let closure = inference.pending.shift(); closure !== undefined; closure = inference.pending.shift())
      inference.cover(closure)
  }
  reportSums(inference)
  return {
    reports: inference.reports.all(),
    shapesOf: (cell) => shapesAtTop(inference, cell),
    shapeAt: (node) => inference.found.get(node),
    columnsOf: (shape) => columnsOf(inference, shape),
  }
}

function newInference(typescript: typeof ts, checker: ts.TypeChecker, disputed: ReadonlySet<string>): Inference {
  const declaredOf = new Map<ts.Type, NumberShape | undefined>()
  const inference: Inference = {
    typescript,
    checker,
    reports: new Reports(),
    top: new Scope(),
    disputed,
    remembered: new Memory(),
    mutations: new Mutations(typescript, checker),
    covered: new Set(),
    pending: [],
    sums: new Map(),
    forgiven: new Set(),
    found: new Map(),
    active: new Map(),
    selfCalls: 0,
    steps: stepsAllowed,
    trying: 0,
    depth: 0,
    expression: (node, scope) => inferExpression(inference, node, scope),
    note: (node, shape) => void note(inference, node, shape),
    statements: (nodes, scope, returned) => runStatements(inference, nodes, scope, returned),
    bind: (name, shape, scope) => bindName(inference, name, shape, scope),
    assign: (target, shape, scope) => assignTo(inference, target, shape, scope),
    call: (node, scope) => inferCall(inference, node, scope),
    apply: (name, closure, args, site) => applyFunction(inference, name, closure, args, site),
    follow: (closure, args, site, mode) => followFunction(inference, closure, args, site, mode),
    cover: (closure) => coverFunction(inference, closure),
    property: (shape, name, node) => readProperty(inference, shape, name, node),
    elementOf: (shape) => readElements(inference, shape),
    fromType: (type, bindings = noBindings) => shapeOfType(inference, type, bindings),
    declared: (type) => {
      if (!declaredOf.has(type)) declaredOf.set(type, declaredNumber(inference, type))
      return declaredOf.get(type)
    },
  }
  return inference
}

function shapesAtTop(inference: Inference, cell: ts.SourceFile): ReadonlyMap<string, Shape> {
  const shapes = new Map<string, Shape>()
  for (const statement of cell.statements) {
    if (!inference.typescript.isVariableStatement(statement)) continue
    for (const { name } of statement.declarationList.declarations)
      for (const identifier of identifiersIn(inference.typescript, name)) {
        const symbol = inference.checker.getSymbolAtLocation(identifier)
        const shape = symbol === undefined ? undefined : inference.top.read(symbol)
        if (shape !== undefined) shapes.set(identifier.text, shape)
      }
  }
  return shapes
}

function identifiersIn(typescript: typeof ts, pattern: ts.BindingName): readonly ts.Identifier[] {
  if (typescript.isIdentifier(pattern)) return [pattern]
  return pattern.elements.flatMap((element) =>
    typescript.isBindingElement(element) ? identifiersIn(typescript, element.name) : [],
  )
}

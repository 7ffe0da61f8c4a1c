/** The dimension core as a whole: follows all cells in an order in which each comes after what it reads. */
import type ts from 'typescript'
import { inferCall } from './calls.js'
import { inferExpression } from './expressions.js'
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

/** Expressions looked at in one check. A notebook of 20 cells takes a few thousand; a source made to be slow ends here. */
const stepsAllowed = 400_000

export interface Inferred {
  readonly reports: readonly Report[]
  /** The shape of a top-level name of a cell; `undefined` when the cell does not declare it. */
  shapeOf(cell: ts.SourceFile, name: string): Shape | undefined
}

export function inferCells(typescript: typeof ts, checker: ts.TypeChecker, cells: readonly ts.SourceFile[]): Inferred {
  const inference = newInference(typescript, checker)
  for (const cell of cells) inference.mutations.read(cell)
  for (const cell of cells) {
    inference.statements(cell.statements, inference.top, [])
    for (let closure = inference.pending.shift(); closure !== undefined; closure = inference.pending.shift())
      inference.cover(closure)
  }
  return {
    reports: inference.reports.all(),
    shapeOf: (cell, name) => shapeAtTop(inference, cell, name),
  }
}

function newInference(typescript: typeof ts, checker: ts.TypeChecker): Inference {
  const declaredOf = new Map<ts.Type, NumberShape | undefined>()
  const inference: Inference = {
    typescript,
    checker,
    reports: new Reports(),
    top: new Scope(),
    remembered: new Memory(),
    mutations: new Mutations(typescript, checker),
    covered: new Set(),
    pending: [],
    active: new Set(),
    steps: stepsAllowed,
    trying: 0,
    depth: 0,
    expression: (node, scope) => inferExpression(inference, node, scope),
    statements: (nodes, scope, returned) => runStatements(inference, nodes, scope, returned),
    bind: (name, shape, scope) => bindName(inference, name, shape, scope),
    assign: (target, shape, scope) => assignTo(inference, target, shape, scope),
    call: (node, scope) => inferCall(inference, node, scope),
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

function shapeAtTop(inference: Inference, cell: ts.SourceFile, name: string): Shape | undefined {
  for (const statement of cell.statements) {
    const node = declarationOf(inference.typescript, statement, name)
    const symbol = node === undefined ? undefined : inference.checker.getSymbolAtLocation(node)
    if (symbol !== undefined) return inference.top.read(symbol)
  }
  return undefined
}

/** The identifier that declares a top-level name in a statement. */
function declarationOf(typescript: typeof ts, statement: ts.Statement, name: string): ts.Identifier | undefined {
  if (!typescript.isVariableStatement(statement)) return undefined
  for (const { name: pattern } of statement.declarationList.declarations) {
    const found = nameIn(typescript, pattern, name)
    if (found !== undefined) return found
  }
  return undefined
}

function nameIn(typescript: typeof ts, pattern: ts.BindingName, name: string): ts.Identifier | undefined {
  if (typescript.isIdentifier(pattern)) return pattern.text === name ? pattern : undefined
  for (const element of pattern.elements) {
    const found = typescript.isBindingElement(element) ? nameIn(typescript, element.name, name) : undefined
    if (found !== undefined) return found
  }
  return undefined
}

/** The course of statements: what runs once, either way, or again and again. */
import type ts from 'typescript'
import { declareClass } from './classes.js'
import { defineFunction } from './functions.js'
import type { Inference, Returned } from './inference.js'
import { itemsApart } from './items-apart.js'
import { matchDeclared } from './matching.js'
import { comparison } from './operators.js'
import type { Scope } from './scope.js'
import { nothing, other, type RecordShape, type Shape, unknown, unknownBecause } from './shape.js'
import { alternatives, repeated } from './state.js'

/** Gives whether the statements leave the function before their end. */
export function runStatements(
  inference: Inference,
  nodes: readonly ts.Statement[],
  scope: Scope,
  returned: Returned[],
): boolean {
  for (const node of nodes) if (inference.typescript.isFunctionDeclaration(node)) hoist(inference, node, scope)
  for (const node of nodes) if (runStatement(inference, node, scope, returned)) return true
  return false
}

function hoist(inference: Inference, node: ts.FunctionDeclaration, scope: Scope): void {
  const closure = defineFunction(inference, node, scope)
  if (node.name !== undefined && node.body !== undefined) inference.bind(node.name, closure, scope)
}

function runStatement(inference: Inference, node: ts.Statement, scope: Scope, returned: Returned[]): boolean {
  const t = inference.typescript
  if (t.isVariableStatement(node)) declare(inference, node.declarationList, scope)
  else if (t.isExpressionStatement(node)) inference.expression(node.expression, scope)
  else if (t.isReturnStatement(node)) return leave(inference, node, scope, returned)
  else if (t.isBlock(node)) return inference.statements(node.statements, scope, returned)
  else if (t.isIfStatement(node)) return choose(inference, node, scope, returned)
  else if (t.isIterationStatement(node, false)) loop(inference, node, scope, returned)
  else if (t.isSwitchStatement(node)) choices(inference, node, scope, returned)
  else if (t.isTryStatement(node)) attempt(inference, node, scope, returned)
  else if (t.isLabeledStatement(node)) return runStatement(inference, node.statement, scope, returned)
  else if (t.isClassDeclaration(node)) declareClass(inference, node, scope)
  else if (t.isThrowStatement(node)) {
    inference.expression(node.expression, scope)
    return true
  }
  return false
}

/** `const x = ...`: an annotation is held against the value and then believed. */
function declare(inference: Inference, list: ts.VariableDeclarationList, scope: Scope): void {
  for (const declaration of list.declarations) {
    const { initializer } = declaration
    const shape = initializer === undefined ? undefined : inference.expression(initializer, scope)
    const annotated =
      declaration.type === undefined ? undefined : inference.checker.getTypeFromTypeNode(declaration.type)
    const { made } = inference.reports
    if (annotated !== undefined && shape !== undefined && initializer !== undefined)
      matchDeclared(inference, { node: initializer, shape }, annotated, declaration.name.getText())
    // What clashes with its annotation is said once; from there on the annotation is believed.
    const believed = inference.reports.made > made ? undefined : shape
    const named = annotated === undefined ? undefined : valueOfAnnotated(inference, annotated, believed)
    const value = named ?? shape ?? (inference.typescript.isIdentifier(declaration.name) ? nothing : undefined)
    if (value !== undefined) inference.bind(declaration.name, value, scope)
  }
}

function valueOfAnnotated(inference: Inference, type: ts.Type, shape: Shape | undefined): Shape | undefined {
  const declared = inference.declared(type)
  if (declared !== undefined) return declared
  if (shape === undefined) {
    const named = inference.fromType(type)
    return named.kind === 'unknown' ? undefined : named
  }
  if (shape.kind === 'unknown') {
    const named = inference.fromType(type)
    return named.kind === 'unknown' ? shape : named
  }
  return shape.kind === 'record' ? withDeclaredFields(inference, type, shape) : undefined
}

/** Fields that a record may have besides those it is given: `const parts: { wing?: Mass } = {}`. */
function withDeclaredFields(inference: Inference, type: ts.Type, shape: RecordShape): Shape {
  const fields = new Map(shape.fields)
  if (!type.isUnion())
    for (const property of inference.checker.getPropertiesOfType(type))
      if (!fields.has(property.name)) fields.set(property.name, declaredField(inference, property))
  const rest = inference.checker.getIndexTypeOfType(type, inference.typescript.IndexKind.String)
  return { kind: 'record', fields, ...(rest === undefined ? {} : { rest: inference.fromType(rest) }) }
}

function declaredField(inference: Inference, property: ts.Symbol): Shape {
  const shape = inference.fromType(inference.checker.getTypeOfSymbol(property))
  if (shape.kind !== 'unknown' || shape.why !== undefined) return shape
  return unknownBecause(`the declaration of ${property.name} gives it no dimension`)
}

function leave(inference: Inference, node: ts.ReturnStatement, scope: Scope, returned: Returned[]): boolean {
  const shape = node.expression === undefined ? other : inference.expression(node.expression, scope)
  returned.push({ node: node.expression ?? node, shape })
  return !inference.mutations.runsAtOnce(functionAround(inference, node))
}

function functionAround(inference: Inference, node: ts.Node): ts.Node {
  let at = node.parent
  while (at.parent !== undefined && !inference.typescript.isFunctionLike(at)) at = at.parent
  return at
}

function choose(inference: Inference, node: ts.IfStatement, scope: Scope, returned: Returned[]): boolean {
  inference.expression(node.expression, scope)
  const otherwise = node.elseStatement
  return alternatives(inference, node, scope, [
    () => runStatement(inference, node.thenStatement, scope, returned),
    () => otherwise !== undefined && runStatement(inference, otherwise, scope, returned),
  ])
}

function loop(inference: Inference, node: ts.IterationStatement, scope: Scope, returned: Returned[]): void {
  const t = inference.typescript
  if (t.isForStatement(node) && node.initializer !== undefined) {
    if (t.isVariableDeclarationList(node.initializer)) declare(inference, node.initializer, scope)
    else inference.expression(node.initializer, scope)
  }
  repeated(inference, node, scope, () => once(inference, node, scope, returned))
}

/** One pass of a loop. */
function once(inference: Inference, node: ts.IterationStatement, scope: Scope, returned: Returned[]): void {
  const t = inference.typescript
  if (t.isForOfStatement(node) || t.isForInStatement(node)) {
    for (const item of itemsOf(inference, node, scope)) {
      if (t.isVariableDeclarationList(node.initializer))
        for (const { name } of node.initializer.declarations) inference.bind(name, item, scope)
      else inference.assign(node.initializer, item, scope)
      runStatement(inference, node.statement, scope, returned)
    }
    return
  }
  if (t.isForStatement(node)) {
    if (node.condition !== undefined) inference.expression(node.condition, scope)
  } else if (t.isWhileStatement(node)) inference.expression(node.expression, scope)
  runStatement(inference, node.statement, scope, returned)
  if (t.isForStatement(node) && node.incrementor !== undefined) inference.expression(node.incrementor, scope)
  if (t.isDoStatement(node)) inference.expression(node.expression, scope)
}

function itemsOf(inference: Inference, node: ts.ForInOrOfStatement, scope: Scope): readonly Shape[] {
  const all = inference.expression(node.expression, scope)
  if (!inference.typescript.isForOfStatement(node)) return [other]
  const element = inference.elementOf(all)
  return all.kind === 'list' ? itemsApart(inference, all, element, node.statement) : [element]
}

function choices(inference: Inference, node: ts.SwitchStatement, scope: Scope, returned: Returned[]): void {
  const subject = { node: node.expression, shape: inference.expression(node.expression, scope) }
  const ways = node.caseBlock.clauses.map((clause) => () => {
    if (inference.typescript.isCaseClause(clause)) {
      const tested = { node: clause.expression, shape: inference.expression(clause.expression, scope) }
      comparison(inference, '===', subject, tested, clause.expression)
    }
    return inference.statements(clause.statements, scope, returned)
  })
  alternatives(inference, node, scope, [...ways, () => false])
}

function attempt(inference: Inference, node: ts.TryStatement, scope: Scope, returned: Returned[]): void {
  const { catchClause, finallyBlock } = node
  alternatives(inference, node, scope, [
    () => inference.statements(node.tryBlock.statements, scope, returned),
    () => {
      if (catchClause?.variableDeclaration !== undefined)
        inference.bind(catchClause.variableDeclaration.name, unknown, scope)
      return catchClause !== undefined && inference.statements(catchClause.block.statements, scope, returned)
    },
  ])
  if (finallyBlock !== undefined) inference.statements(finallyBlock.statements, scope, returned)
}

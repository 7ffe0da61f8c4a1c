/** From a cell's code, types erased, to a formula for each top-level name that has one. */
import { type AnyNode, type Expression as Code, type Function as FunctionNode, type Program, parse } from 'acorn'
import type { Expression, Formula } from '../../../shared/contracts/index.js'
import { namesAssigned } from './assigned.js'
import { type Names, readExpression, withPath } from './read-expression.js'

/** `shadowed`: kernel names that cells of this notebook own, so that they mean what those cells say. */
export function readFormulas(code: string, shadowed: ReadonlySet<string>): readonly Formula[] {
  const program = parseCode(code)
  if (program === undefined) return []
  const names: Names = { locals: new Set(), shadowed }
  const changed = namesAssigned(program)
  const found = program.body.flatMap((statement) => formulasOfStatement(statement, names))
  return found.filter(
    ({ name, expression }) => !changed.has(name) && expression.kind !== 'unwritten' && expression.kind !== 'list',
  )
}

/** What cannot be parsed has findings elsewhere, and no formulas. */
function parseCode(code: string): Program | undefined {
  try {
    return parse(code, { ecmaVersion: 2023, sourceType: 'script', allowReturnOutsideFunction: true })
  } catch {
    return undefined
  }
}

function formulasOfStatement(statement: AnyNode, names: Names): Formula[] {
  if (statement.type === 'FunctionDeclaration')
    return statement.id === null ? [] : functionFormula(statement.id.name, statement, names)
  if (statement.type === 'ExpressionStatement') return statedFormula(statement.expression, names)
  if (statement.type !== 'VariableDeclaration') return []
  return statement.declarations.flatMap(({ id, init }) => {
    if (init === null || init === undefined) return []
    if (id.type === 'Identifier') return valueFormula(id.name, init, names)
    return id.type === 'ObjectPattern' ? memberFormulas(id, init, names) : []
  })
}

/** `result('power', ...)` that no constant keeps. */
function statedFormula(code: Code, names: Names): Formula[] {
  const name = statementName(code, 'result', names)
  return name === undefined ? [] : valueFormula(name, code, names)
}

function valueFormula(name: string, init: Code, names: Names): Formula[] {
  if (init.type === 'ArrowFunctionExpression' || init.type === 'FunctionExpression')
    return functionFormula(name, init, names)
  if (statementName(init, 'result', names) !== undefined && init.type === 'CallExpression')
    return [{ name, expression: readArgument(init.arguments[1], names) }]
  if (statementName(init, 'assumption', names) !== undefined && init.type === 'CallExpression') {
    const expression = readArgument(init.arguments[1], names)
    // A plain value is stated, not worked out.
    return expression.kind === 'quantity' ? [] : [{ name, expression }]
  }
  const expression = readExpression(init, names)
  return expression.kind === 'quantity' ? [] : [{ name, expression }]
}

/** The name that `result('name', ...)` or `assumption('name', ...)` states. */
function statementName(code: Code, method: 'result' | 'assumption', { shadowed }: Names): string | undefined {
  if (code.type !== 'CallExpression' || code.callee.type !== 'Identifier' || code.callee.name !== method)
    return undefined
  const first = code.arguments[0]
  if (shadowed.has(method) || first?.type !== 'Literal' || typeof first.value !== 'string') return undefined
  return first.value
}

function readArgument(argument: AnyNode | undefined, names: Names): Expression {
  return argument === undefined ? { kind: 'unwritten' } : readExpression(argument, names)
}

/** `const { power, torque: shaftTorque } = rotor.hover(...)`: each name is a member of the one value. */
function memberFormulas(pattern: Extract<AnyNode, { type: 'ObjectPattern' }>, init: Code, names: Names): Formula[] {
  const whole = readExpression(init, names)
  return pattern.properties.flatMap((property): Formula[] => {
    if (property.type !== 'Property' || property.computed || property.value.type !== 'Identifier') return []
    if (property.key.type !== 'Identifier') return []
    const expression = withPath(whole, property.key.name)
    return expression === undefined ? [] : [{ name: property.value.name, expression }]
  })
}

/** A function whose body is one expression, or constants and then a `return`; any other body has no formula. */
function functionFormula(name: string, code: FunctionNode | AnyNode, names: Names): Formula[] {
  if (
    code.type !== 'ArrowFunctionExpression' &&
    code.type !== 'FunctionExpression' &&
    code.type !== 'FunctionDeclaration'
  )
    return []
  const parameters = code.params.flatMap((parameter) => (parameter.type === 'Identifier' ? [parameter.name] : []))
  if (parameters.length !== code.params.length || code.async || code.generator) return []
  const locals = new Set([...names.locals, ...parameters])
  if (code.body.type !== 'BlockStatement')
    return [{ name, parameters, expression: readExpression(code.body, { ...names, locals }) }]
  const changed = namesAssigned(code.body)
  const where: { name: string; expression: Expression }[] = []
  for (const statement of code.body.body) {
    if (statement.type === 'ReturnStatement') {
      if (statement.argument === null || statement.argument === undefined) return []
      const expression = readExpression(statement.argument, { ...names, locals })
      return [{ name, parameters, expression, ...(where.length === 0 ? {} : { where }) }]
    }
    if (statement.type !== 'VariableDeclaration') return []
    for (const { id, init } of statement.declarations) {
      if (id.type !== 'Identifier' || init === null || init === undefined || changed.has(id.name)) return []
      where.push({ name: id.name, expression: readExpression(init, { ...names, locals }) })
      locals.add(id.name)
    }
  }
  return []
}

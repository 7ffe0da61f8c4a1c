/** One expression of a cell as a formula. What has no form in mathematics becomes `unwritten`; nothing here fails. */
import type { AnyNode } from 'acorn'
import type { Argument, Case, Comparison, Expression, Term } from '../../../shared/contracts/index.js'
import { readMathematics } from './mathematics.js'
import { readProduct, unitText } from './products.js'

export interface Names {
  /** Arguments and names of the function that the expression stands in. */
  readonly locals: ReadonlySet<string>
  /** Kernel names that cells own. */
  readonly shadowed: ReadonlySet<string>
}

export const unwritten: Expression = { kind: 'unwritten' }

const comparisons: Readonly<Record<string, Comparison>> = {
  '<': '<',
  '<=': '≤',
  '>': '>',
  '>=': '≥',
  '===': '=',
  '==': '=',
  '!==': '≠',
  '!=': '≠',
}

export function readExpression(node: AnyNode, names: Names): Expression {
  const read = (part: AnyNode) => readExpression(part, names)
  switch (node.type) {
    case 'Literal':
      return readLiteral(node.value)
    case 'Identifier':
      return readIdentifier(node.name, names)
    case 'ChainExpression':
    case 'ParenthesizedExpression':
      return read(node.expression)
    case 'MemberExpression':
      return readMember(node, names)
    case 'CallExpression':
      return readCall(node, names)
    case 'UnaryExpression':
      if (node.operator === '+') return read(node.argument)
      if (node.operator === '!') return { kind: 'not', of: read(node.argument) }
      return node.operator === '-' ? negative(read(node.argument)) : unwritten
    case 'BinaryExpression':
      return readBinary(node, names)
    case 'LogicalExpression':
      if (node.operator === '??') return unwritten
      return {
        kind: 'logic',
        word: node.operator === '&&' ? 'and' : 'or',
        left: read(node.left),
        right: read(node.right),
      }
    case 'ConditionalExpression':
      return { kind: 'cases', cases: readCases(node, names) }
    case 'ArrayExpression':
      return {
        kind: 'list',
        items: node.elements.map((item) => (item === null ? unwritten : read(item))),
      }
    default:
      return unwritten
  }
}

function readLiteral(value: unknown): Expression {
  if (typeof value === 'number') return { kind: 'quantity', value }
  if (typeof value === 'string' || typeof value === 'boolean') return { kind: 'text', text: String(value) }
  return value === null ? { kind: 'text', text: 'no value' } : unwritten
}

function readIdentifier(name: string, { locals }: Names): Expression {
  if (locals.has(name)) return { kind: 'local', name, path: [] }
  if (name === 'Infinity') return { kind: 'constant', constant: 'infinity' }
  if (name === 'undefined') return { kind: 'text', text: 'no value' }
  return { kind: 'name', name, path: [] }
}

function negative(of: Expression): Expression {
  return of.kind === 'quantity' ? { ...of, value: -of.value } : { kind: 'negative', of }
}

function readBinary(node: Extract<AnyNode, { type: 'BinaryExpression' }>, names: Names): Expression {
  if (node.left.type === 'PrivateIdentifier') return unwritten
  const read = (part: AnyNode) => readExpression(part, names)
  const sign = comparisons[node.operator]
  if (sign !== undefined) return { kind: 'comparison', sign, left: read(node.left), right: read(node.right) }
  switch (node.operator) {
    case '+':
    case '-':
      return { kind: 'sum', terms: readTerms(node, names) }
    case '*':
    case '/':
      return readProduct(node, names, read)
    case '**':
      return { kind: 'power', base: read(node.left), exponent: read(node.right) }
    case '%':
      return { kind: 'remainder', of: read(node.left), by: read(node.right) }
    default:
      return unwritten
  }
}

/** `a + b - c` is one sum of three; a sum in brackets on the right keeps them. */
function readTerms(node: Extract<AnyNode, { type: 'BinaryExpression' }>, names: Names): Term[] {
  const terms: Term[] = []
  let left: AnyNode = node
  while (left.type === 'BinaryExpression' && (left.operator === '+' || left.operator === '-')) {
    terms.unshift({ minus: left.operator === '-', of: readExpression(left.right, names) })
    left = left.left
  }
  return [{ minus: false, of: readExpression(left, names) }, ...terms]
}

function readCases(node: AnyNode, names: Names): Case[] {
  if (node.type !== 'ConditionalExpression') return [{ value: readExpression(node, names) }]
  return [
    { when: readExpression(node.test, names), value: readExpression(node.consequent, names) },
    ...readCases(node.alternate, names),
  ]
}

function readMember(node: Extract<AnyNode, { type: 'MemberExpression' }>, names: Names): Expression {
  const key = keyOf(node)
  if (key === undefined || node.object.type === 'Super') return unwritten
  if (node.object.type === 'Identifier' && !isOwned(node.object.name, names)) {
    if (node.object.name === 'u') {
      if (key === 'g0') return { kind: 'constant', constant: 'g0' }
      const unit = unitText(node, names)
      if (unit !== undefined) return { kind: 'unit', unit }
    }
    if (node.object.name === 'Math' && (key === 'PI' || key === 'E'))
      return { kind: 'constant', constant: key === 'PI' ? 'pi' : 'e' }
  }
  return withPath(readExpression(node.object, names), key) ?? unwritten
}

/** The member of what an expression stands for; `undefined` where a formula has no way of saying it. */
export function withPath(whole: Expression, key: string): Expression | undefined {
  if (whole.kind === 'name' || whole.kind === 'local' || whole.kind === 'call')
    return { ...whole, path: [...whole.path, key] }
  return undefined
}

export function isOwned(name: string, { locals, shadowed }: Names): boolean {
  return locals.has(name) || shadowed.has(name)
}

/** The name of a member; an index counts when it is written as a number or text. */
function keyOf(node: Extract<AnyNode, { type: 'MemberExpression' }>): string | undefined {
  if (!node.computed) return node.property.type === 'Identifier' ? node.property.name : undefined
  if (node.property.type !== 'Literal') return undefined
  const { value } = node.property
  return typeof value === 'number' || typeof value === 'string' ? String(value) : undefined
}

function readCall(node: Extract<AnyNode, { type: 'CallExpression' }>, names: Names): Expression {
  const method = methodName(node.callee)
  if (method === undefined) return unwritten
  const given = node.arguments.map((argument) =>
    argument.type === 'SpreadElement' ? unwritten : readExpression(argument, names),
  )
  const [owner, member] = method.split('.')
  if (owner === 'Math' && member !== undefined && !isOwned('Math', names)) return readMathematics(member, given)
  return {
    kind: 'call',
    method,
    with: node.arguments.flatMap((argument) => readArguments(argument, names)),
    path: [],
  }
}

/** `rotor.hover`, `hoverAt`, `masses.reduce`. */
function methodName(callee: AnyNode): string | undefined {
  if (callee.type === 'Identifier') return callee.name
  if (callee.type !== 'MemberExpression' || callee.object.type === 'Super') return undefined
  const key = keyOf(callee)
  const owner = methodName(callee.object)
  return key === undefined || owner === undefined ? undefined : `${owner}.${key}`
}

/** A record of arguments is given by name; one whose value is called the same needs no second naming. */
function readArguments(argument: AnyNode, names: Names): Argument[] {
  if (argument.type !== 'ObjectExpression') return [{ of: readExpression(argument, names) }]
  return argument.properties.map((property): Argument => {
    if (property.type !== 'Property' || property.computed || property.key.type !== 'Identifier')
      return { of: unwritten }
    const of = readExpression(property.value, names)
    const same = (of.kind === 'name' || of.kind === 'local') && of.path.length === 0 && of.name === property.key.name
    return same ? { of } : { name: property.key.name, of }
  })
}

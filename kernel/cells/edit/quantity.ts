/** A quantity in the source: one number, alone or in a chain of units, of which only the number is rewritten. */
import type { AnyNode } from 'acorn'
import { unitBySymbol } from '../../../shared/contracts/index.js'
import { shortestNumber } from './number-text.js'

export interface Quantity {
  readonly value: number
  /** Text of the whole with another value in it, everything else as it stands. */
  written(value: number): string
  /** Place of the number, its sign included. */
  readonly number: { readonly from: number; readonly to: number }
  numberFor(value: number): string
}

/** `undefined` where the expression is not one number in a chain of units of `u`. */
export function readQuantity(node: AnyNode, source: string): Quantity | undefined {
  const numbers: AnyNode[] = []
  if (!isChain(node, numbers) || numbers.length !== 1) return undefined
  const [number] = numbers as [AnyNode]
  const computed = (each: number) => evaluate(node, number, each)
  const unit = computed(1)
  if (!Number.isFinite(unit) || unit === 0) return undefined
  const numberFor = (value: number) => {
    const text = shortestNumber(value, unit, computed)
    // `--5` is something else, so a sign behind a sign stands in brackets.
    return text.startsWith('-') && needsBrackets(node, number) ? `(${text})` : text
  }
  return {
    value: computed(numberOf(number)),
    number: { from: number.start, to: number.end },
    numberFor,
    written: (value) =>
      `${source.slice(node.start, number.start)}${numberFor(value)}${source.slice(number.end, node.end)}`,
  }
}

/** The name of every variable that an expression reads, units of `u` left out. */
export function namesIn(node: AnyNode): readonly string[] {
  const names = new Set<string>()
  const visit = (each: AnyNode): void => {
    if (unitFactor(each) !== undefined) return
    if (each.type === 'Identifier') names.add(each.name)
    else if (each.type === 'MemberExpression' && !each.computed) visit(each.object)
    else if (each.type === 'Property' && !each.computed) visit(each.value)
    else
      for (const child of Object.values(each).flat())
        if (typeof child === 'object' && child !== null && 'type' in child) visit(child as AnyNode)
  }
  visit(node)
  return [...names]
}

function isChain(node: AnyNode, numbers: AnyNode[]): boolean {
  if (isNumber(node)) {
    numbers.push(node)
    return true
  }
  if (unitFactor(node) !== undefined) return true
  if (node.type === 'ParenthesizedExpression') return isChain(node.expression, numbers)
  if (node.type === 'UnaryExpression') return node.operator === '-' && isChain(node.argument, numbers)
  if (node.type !== 'BinaryExpression') return false
  const { operator, left, right } = node
  if (operator === '*') return isChain(left, numbers) && isChain(right, numbers)
  if (operator === '/') return isChain(left, numbers) && isUnits(right)
  return operator === '**' && isUnits(node)
}

function isUnits(node: AnyNode): boolean {
  if (unitFactor(node) !== undefined) return true
  if (node.type === 'ParenthesizedExpression') return isUnits(node.expression)
  if (node.type !== 'BinaryExpression') return false
  if (node.operator === '**') return isUnits(node.left) && isNumber(node.right)
  return (node.operator === '*' || node.operator === '/') && isUnits(node.left) && isUnits(node.right)
}

/** A number as written, with its sign. */
function isNumber(node: AnyNode): boolean {
  if (node.type === 'UnaryExpression') return node.operator === '-' && isNumber(node.argument) && isPlain(node.argument)
  return isPlain(node)
}

const isPlain = (node: AnyNode) => node.type === 'Literal' && typeof node.value === 'number'

function numberOf(node: AnyNode): number {
  if (node.type === 'UnaryExpression') return -numberOf(node.argument)
  return node.type === 'Literal' ? Number(node.value) : Number.NaN
}

/** The factor of `u.Wh`. */
function unitFactor(node: AnyNode): number | undefined {
  if (node.type !== 'MemberExpression' || node.computed || node.object.type !== 'Identifier') return undefined
  if (node.object.name !== 'u' || node.property.type !== 'Identifier') return undefined
  return unitBySymbol.get(node.property.name)?.factor
}

/** The expression as it will compute, with `value` at the place of `number`: the same steps in the same order. */
function evaluate(node: AnyNode, number: AnyNode, value: number): number {
  if (node === number) return value
  const at = (each: AnyNode) => evaluate(each, number, value)
  if (isNumber(node)) return numberOf(node)
  if (node.type === 'ParenthesizedExpression') return at(node.expression)
  if (node.type === 'UnaryExpression') return -at(node.argument)
  if (node.type !== 'BinaryExpression') return unitFactor(node) ?? Number.NaN
  const left = at(node.left as AnyNode)
  const right = at(node.right)
  return node.operator === '*' ? left * right : node.operator === '/' ? left / right : left ** right
}

/** True where the sign of a negative number would meet another sign. */
function needsBrackets(root: AnyNode, number: AnyNode): boolean {
  if (root === number) return false
  if (root.type === 'UnaryExpression') return root.argument === number || needsBrackets(root.argument, number)
  if (root.type === 'BinaryExpression')
    return needsBrackets(root.left as AnyNode, number) || needsBrackets(root.right, number)
  return false
}

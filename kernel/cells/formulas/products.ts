/** Products and quotients: factors in the order of the source, numbers joined with the units they are multiplied by. */
import type { AnyNode } from 'acorn'
import { type Expression, unitBySymbol } from '../../../shared/contracts/index.js'
import type { Names } from './read-expression.js'

/** One factor of `a * b / c`; `below` stands after a division sign. */
interface Factor {
  readonly below: boolean
  readonly node: AnyNode
}

/** `a * b / c * d` is one fraction; `235 * u.Wh / u.kg` is one number with a unit. */
export function readProduct(node: AnyNode, names: Names, read: (node: AnyNode) => Expression): Expression {
  const over: Expression[] = []
  const under: Expression[] = []
  let open: { value: number; unit: string } | undefined
  const close = () => {
    if (open !== undefined)
      over.push({ kind: 'quantity', value: open.value, ...(open.unit === '' ? {} : { unit: open.unit }) })
    open = undefined
  }
  for (const { below, node: factor } of factorsOf(node)) {
    const unit = unitText(factor, names)
    if (open !== undefined && unit !== undefined) {
      open.unit = below ? `${open.unit === '' ? '1' : open.unit}/${unit}` : `${open.unit} ${unit}`.trim()
      continue
    }
    close()
    const part = read(factor)
    if (part.kind === 'quantity' && !below) open = { value: part.value, unit: part.unit ?? '' }
    else (below ? under : over).push(part)
  }
  close()
  return fraction(over, under)
}

function fraction(over: readonly Expression[], under: readonly Expression[]): Expression {
  const above = productOf(over)
  return under.length === 0 ? above : { kind: 'quotient', over: above, under: productOf(under) }
}

function productOf(factors: readonly Expression[]): Expression {
  const [only, ...others] = factors.flatMap((factor) => (factor.kind === 'product' ? factor.factors : [factor]))
  if (only === undefined) return { kind: 'quantity', value: 1 }
  return others.length === 0 ? only : { kind: 'product', factors: [only, ...others] }
}

/** From left to right; what stands in brackets on the right is one factor. */
function factorsOf(node: AnyNode): Factor[] {
  const factors: Factor[] = []
  let left = node
  while (left.type === 'BinaryExpression' && (left.operator === '*' || left.operator === '/')) {
    factors.unshift({ below: left.operator === '/', node: left.right })
    left = left.left
  }
  return [{ below: false, node: left }, ...factors]
}

/** `u.kg` is `kg`, `u.m ** 2` is `m^2`; standard gravity is a constant, not a unit. */
export function unitText(node: AnyNode, names: Names): string | undefined {
  if (node.type === 'BinaryExpression' && node.operator === '**' && node.left.type !== 'PrivateIdentifier') {
    const unit = unitText(node.left, names)
    const exponent = node.right.type === 'Literal' ? node.right.value : undefined
    return unit === undefined || typeof exponent !== 'number' || /\d$/.test(unit) ? undefined : `${unit}^${exponent}`
  }
  if (node.type !== 'MemberExpression' || node.computed || node.object.type !== 'Identifier') return undefined
  if (node.object.name !== 'u' || names.locals.has('u') || names.shadowed.has('u')) return undefined
  if (node.property.type !== 'Identifier' || node.property.name === 'g0') return undefined
  return unitBySymbol.has(node.property.name) ? node.property.name : undefined
}

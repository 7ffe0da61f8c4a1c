/** The names of the sheet that an expression reads, each once. */
import type { Expression } from '../../contracts/index.js'

export function namesRead(expression: Expression): readonly string[] {
  const names = new Set<string>()
  const waiting: Expression[] = [expression]
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (next.kind === 'name') names.add(next.name)
    if (next.kind === 'call') names.add(next.method.split('.')[0] ?? '')
    waiting.push(...partsOf(next))
  }
  return [...names]
}

function partsOf(expression: Expression): readonly Expression[] {
  switch (expression.kind) {
    case 'negative':
    case 'root':
    case 'not':
      return [expression.of]
    case 'sum':
      return expression.terms.map((term) => term.of)
    case 'product':
      return expression.factors
    case 'quotient':
      return [expression.over, expression.under]
    case 'remainder':
      return [expression.of, expression.by]
    case 'power':
      return [expression.base, expression.exponent]
    case 'function':
      return expression.of
    case 'call':
      return expression.with.map((argument) => argument.of)
    case 'comparison':
    case 'logic':
      return [expression.left, expression.right]
    case 'cases':
      return expression.cases.flatMap(({ when, value }) => (when === undefined ? [value] : [when, value]))
    case 'list':
      return expression.items
    default:
      return []
  }
}

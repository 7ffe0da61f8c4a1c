/** Members of `Math` as mathematics writes them. */
import type { Expression } from '../../../shared/contracts/index.js'

/** How a function is called in a formula, where that differs from its member of `Math`. */
const named: Readonly<Record<string, string>> = {
  asin: 'arcsin',
  acos: 'arccos',
  atan: 'arctan',
  atan2: 'arctan',
  log: 'ln',
  log10: 'lg',
  log2: 'lb',
  sign: 'sgn',
  log1p: 'log1p',
  expm1: 'expm1',
}

/** A call of `Math.member`; `given` are its arguments. */
export function readMathematics(member: string, given: readonly Expression[]): Expression {
  const [first, second] = given
  if (first === undefined) return { kind: 'unwritten' }
  switch (member) {
    case 'sqrt':
      return { kind: 'root', degree: 2, of: first }
    case 'cbrt':
      return { kind: 'root', degree: 3, of: first }
    case 'pow':
      return second === undefined ? { kind: 'unwritten' } : { kind: 'power', base: first, exponent: second }
    case 'exp':
      return { kind: 'power', base: { kind: 'constant', constant: 'e' }, exponent: first }
    case 'hypot':
      return {
        kind: 'root',
        degree: 2,
        of: { kind: 'sum', terms: given.map((of) => ({ minus: false, of: squared(of) })) },
      }
    default:
      return { kind: 'function', name: named[member] ?? member, of: given }
  }
}

function squared(base: Expression): Expression {
  return { kind: 'power', base, exponent: { kind: 'quantity', value: 2 } }
}

/**
 * Slips that change a dimension, made in a correct notebook: an operator swapped, a factor dropped, two arguments exchanged. Whether a slip
 * changes a dimension is judged by the operands of the correct notebook; one whose dimension is not known counts as if it did.
 */
import type ts from 'typescript'
import type { Shape } from '../../../../../kernel/cells/check/dimensions/shape.js'
import { formatDimension } from '../../../../../shared/contracts/index.js'

export interface Mutant {
  readonly cell: string
  readonly line: number
  /** `needs:3: 85 * u.km becomes 85`, to list the misses. */
  readonly about: string
  readonly source: string
}

export interface Correct {
  readonly cell: string
  readonly file: ts.SourceFile
  readonly shapeAt: (node: ts.Node) => Shape | undefined
}

/** Every slip of a cell, in the order of its text. */
export function mutantsOf(typescript: typeof ts, correct: Correct): readonly Mutant[] {
  const made: Mutant[] = []
  const add = (node: ts.Node, text: string): void => {
    made.push(mutant(correct, node, text))
  }
  const visit = (node: ts.Node): void => {
    if (typescript.isBinaryExpression(node)) arithmetic(correct, node, add)
    else if (typescript.isCallExpression(node)) exchangeEach(typescript, correct, node.arguments, add)
    else if (typescript.isObjectLiteralExpression(node)) {
      const values = node.properties.flatMap((one) => (typescript.isPropertyAssignment(one) ? [one.initializer] : []))
      exchangeEach(typescript, correct, values, add)
    }
    typescript.forEachChild(node, visit)
  }
  visit(correct.file)
  return made
}

function mutant({ cell, file }: Correct, node: ts.Node, text: string): Mutant {
  const start = node.getStart(file)
  const line = file.getLineAndCharacterOfPosition(start).line + 1
  const short = (words: string) => words.replace(/\s+/g, ' ').slice(0, 70)
  return {
    cell,
    line,
    about: `${cell}:${line}: ${short(node.getText(file))} becomes ${short(text)}`,
    source: file.text.slice(0, start) + text + file.text.slice(node.end),
  }
}

/** Base units of a number; `?` where they are not known, `undefined` for what is no number, and for zero, which fits anywhere. */
function dimensionOf({ shapeAt }: Correct, node: ts.Node): string | undefined {
  const shape = shapeAt(node)
  if (shape === undefined || shape.kind === 'unknown') return '?'
  return shape.kind === 'number' && shape.free !== true ? formatDimension(shape.dimension) : undefined
}

function arithmetic(correct: Correct, node: ts.BinaryExpression, add: (node: ts.Node, text: string) => void): void {
  const { left, right, operatorToken } = node
  const text = (part: ts.Node) => part.getText(correct.file)
  const [a, b] = [dimensionOf(correct, left), dimensionOf(correct, right)]
  if (a === undefined || b === undefined) return
  const operator = text(operatorToken)
  if (operator === '*' || operator === '/') {
    if (b !== '1') {
      add(node, `${text(left)} ${operator === '*' ? '/' : '*'} ${text(right)}`)
      add(node, text(left))
    }
    if (operator === '*' && a !== '1') add(node, text(right))
  } else if (operator === '+' || operator === '-') {
    if (a !== '1' || b !== '1') add(node, `${text(left)} * ${text(right)}`)
  } else if (operator === '**' && a !== '1') add(node, text(left))
}

/** Neighbours with different dimensions change places. */
function exchangeEach(
  typescript: typeof ts,
  correct: Correct,
  values: readonly ts.Expression[],
  add: (node: ts.Node, text: string) => void,
): void {
  for (const [index, first] of values.entries()) {
    const second = values[index + 1]
    if (second === undefined || typescript.isSpreadElement(first) || typescript.isSpreadElement(second)) continue
    const [a, b] = [correct.shapeAt(first), correct.shapeAt(second)]
    if (a?.kind !== 'number' || b?.kind !== 'number') continue
    const known = [dimensionOf(correct, first), dimensionOf(correct, second)]
    if (known[0] === known[1] || known.includes(undefined)) continue
    const between = correct.file.text.slice(first.end, second.getStart(correct.file))
    const swapped = second.getText(correct.file) + between + first.getText(correct.file)
    add(spanOf(first, second), swapped)
  }
}

/** Both values and what stands between them, as one place. */
function spanOf(first: ts.Expression, second: ts.Expression): ts.Node {
  const file = first.getSourceFile()
  return {
    getStart: () => first.getStart(file),
    end: second.end,
    getText: () => file.text.slice(first.getStart(file), second.end),
  } as ts.Node
}

/** Mends that are plain: a number that lacks its unit, a unit of another dimension than the one wanted. */
import type ts from 'typescript'
import { type Dimension, sameDimension, unitTable } from '../../../shared/contracts/index.js'
import type { Report } from './dimensions/reports.js'

export interface Repair {
  /** Where the mistake is marked. */
  readonly marked: { readonly start: number; readonly end: number }
  readonly title: string
  /** What to write in place of this stretch of the cell's text. */
  readonly start: number
  readonly end: number
  readonly text: string
}

/** More choices than this are no help. */
const mostChoices = 3

/** Repairs of one report; none where only the author can know what was meant. */
export function repairsOf(typescript: typeof ts, { node, mend }: Report): readonly Repair[] {
  if (mend === undefined) return []
  const place = unitPlace(typescript, mend.node)
  if (place === undefined) return []
  const marked = { start: node.getStart(), end: node.end }
  return unitsOf(mend.wanted).map((unit) => ({
    marked,
    title: place.title(unit),
    start: place.start,
    end: place.end,
    text: place.text(unit),
  }))
}

/** SI first, then in the order of the table. */
function unitsOf(wanted: Dimension): readonly string[] {
  const fitting = unitTable.filter((unit) => sameDimension(unit.dimension, wanted) && unit.symbol !== 'g0')
  const inSI = fitting.filter((unit) => unit.factor === 1)
  const others = fitting.filter((unit) => unit.factor !== 1)
  return [...inSI, ...others].slice(0, mostChoices).map((unit) => unit.symbol)
}

interface UnitPlace {
  readonly start: number
  readonly end: number
  readonly title: (unit: string) => string
  readonly text: (unit: string) => string
}

function unitPlace(typescript: typeof ts, node: ts.Node): UnitPlace | undefined {
  const inner = typescript.isParenthesizedExpression(node) ? node.expression : node
  if (isNumber(typescript, inner))
    return {
      start: inner.getStart(),
      end: inner.end,
      title: (unit) => `Multiply by u.${unit}`,
      text: (unit) => `${inner.getText()} * u.${unit}`,
    }
  const written = unitIn(typescript, inner)
  return written === undefined
    ? undefined
    : {
        start: written.getStart(),
        end: written.end,
        title: (unit) => `Write u.${unit} in place of ${written.getText()}`,
        text: (unit) => `u.${unit}`,
      }
}

function isNumber(typescript: typeof ts, node: ts.Node): boolean {
  if (typescript.isPrefixUnaryExpression(node)) return isNumber(typescript, node.operand)
  return typescript.isNumericLiteral(node)
}

/** The unit in `85 * u.km`. */
function unitIn(typescript: typeof ts, node: ts.Node): ts.PropertyAccessExpression | undefined {
  const isUnit = (one: ts.Node): one is ts.PropertyAccessExpression =>
    typescript.isPropertyAccessExpression(one) && typescript.isIdentifier(one.expression) && one.expression.text === 'u'
  if (isUnit(node)) return node
  if (!typescript.isBinaryExpression(node) || node.operatorToken.kind !== typescript.SyntaxKind.AsteriskToken)
    return undefined
  return isUnit(node.right) && isNumber(typescript, node.left) ? node.right : undefined
}

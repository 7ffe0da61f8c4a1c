/** The sentences of the dimension core: each names what came and what would be accepted. */
import type ts from 'typescript'
import {
  type Dimension,
  describeDimension,
  formatDimension,
  quantityNames,
  sameDimension,
  type UnitDefinition,
  unitTable,
} from '../../../../shared/contracts/index.js'
import type { NumberShape } from './shape.js'

/** An expression as the author wrote it, short enough for a sentence. */
export function spoken(node: ts.Node): string {
  const text = node.getText().replace(/\s+/g, ' ')
  return text.length <= 40 ? text : `${text.slice(0, 37)}...`
}

/** `m`, `a force, in N`, `kg m^3 s^-2`: what has a unit of its own among the base units needs no name. */
function inWords({ dimension }: NumberShape): string {
  const text = formatDimension(dimension)
  if (text === '1') return 'a pure number'
  const name = quantityNames[text]
  if (name === undefined || /^[a-z]+$/i.test(text)) return text
  const unit = siUnitOf(dimension)
  return `${name}, in ${unit === undefined ? text : (unit.typeset ?? unit.symbol)}`
}

function siUnitOf(dimension: Dimension): UnitDefinition | undefined {
  return unitTable.find((unit) => unit.factor === 1 && sameDimension(unit.dimension, dimension))
}

/** `range (m) and cruiseSpeed (a speed, in m/s)`. */
export function pair(left: ts.Node, a: NumberShape, right: ts.Node, b: NumberShape): string {
  return `${spoken(left)} (${inWords(a)}) and ${spoken(right)} (${inWords(b)})`
}

/** Why something made from a mistake is not known: one mistake is said once. */
export const saidWrong = 'it is made from a step that is already reported'

const verbs: Readonly<Record<string, string>> = { '+': 'add', '-': 'subtract', '%': 'take the remainder of' }

export function clash(operator: string, left: ts.Node, a: NumberShape, right: ts.Node, b: NumberShape): string {
  return `Cannot ${verbs[operator] ?? 'compare'} ${pair(left, a, right, b)}: both sides of ${operator} need the same dimension.`
}

export function branchesClash(left: ts.Node, a: NumberShape, right: ts.Node, b: NumberShape): string {
  return `The two branches give ${pair(left, a, right, b)}: both need the same dimension.`
}

/** Of `reduce`: the result would depend on how many elements there are. */
export function drift(from: NumberShape, to: NumberShape): string {
  return `The running value is ${inWords(from)} and becomes ${inWords(to)}: it needs the same dimension in every round.`
}

export function fallbackClash(operator: string, left: ts.Node, a: NumberShape, right: ts.Node, b: NumberShape): string {
  return `The two sides of ${operator} give ${pair(left, a, right, b)}: both need the same dimension.`
}

export function argumentsClash(name: string, left: ts.Node, a: NumberShape, right: ts.Node, b: NumberShape): string {
  return `${name} cannot mix ${pair(left, a, right, b)}: all its values need the same dimension.`
}

export function wants(subject: string, wanted: readonly Dimension[], got: NumberShape): string {
  const accepted = [...new Set(wanted.map(describeDimension))].join(' or ')
  return `${subject} wants ${accepted} but got ${describeDimension(got.dimension)}.`
}

/** A bare number is taken as SI when it runs; the reader cannot see that it was meant so. */
export function lacksUnit(subject: string, wanted: readonly Dimension[]): string {
  const accepted = [...new Set(wanted.map(describeDimension))].join(' or ')
  return `${subject} wants ${accepted} but got a number without a unit, which is taken as SI; multiply it by its unit, as in 2 * u.${wanted.map(siUnitOf)[0]?.symbol ?? 'kg'}.`
}

export function wantsPure(name: string, node: ts.Node, got: NumberShape): string {
  return `${name} wants a pure number but got ${spoken(node)} with ${describeDimension(got.dimension)}; divide it by a unit or by a reference value first.`
}

/** A whole number of several turns is more likely an angle in degrees than one in radians. */
export function looksLikeDegrees(subject: string, number: string): string {
  return `${subject} takes ${number} as radians, which is more than a turn; write ${number} * u.deg for degrees, or ${number} * u.rad if it is meant.`
}

export function unitClash(unit: string, unitDimension: Dimension, subject: string, got: NumberShape): string {
  return `The unit '${unit}' has ${describeDimension(unitDimension)}, but ${subject} has ${describeDimension(got.dimension)}.`
}

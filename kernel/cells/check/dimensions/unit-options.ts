/**
 * Options that speak about a value in words: `unit: 'km'`, and bounds beside it (`range`, `atLeast`, `within`). Kernel types
 * give these as text and plain numbers, so they are held against the value here.
 */
import type ts from 'typescript'
import { parseUnit, pureNumber } from '../../../../shared/contracts/index.js'
import type { Given } from './given.js'
import type { Inference } from './inference.js'
import { argumentsClash, looksLikeDegrees, spoken, unitClash, wantsPure } from './messages.js'
import { agree, isPure, type NumberShape, quantity, type RecordShape, type Shape } from './shape.js'

/** A number and where it is written. */
interface Stated {
  readonly node: ts.Node
  readonly shape: NumberShape
}

/** [rad] */
const degree = Math.PI / 180

const companions = ['value', 'actual', 'values', 'atLeast', 'atMost', 'within', 'range', 'low', 'high'] as const

/** Kinds of a distribution whose numbers are of the dimension of the value. */
const alongside = ['normal', 'uniform', 'triangular'] as const

/** Looks at a call's arguments: a plain value beside its options, and records with a unit inside. */
export function checkUnitOptions(inference: Inference, callee: string, args: readonly Given[]): void {
  const values = args.flatMap((given) => stated(given))
  const value = values.length === 1 ? values[0] : undefined
  for (const { node, shape } of args) if (shape.kind === 'record') checkRecord(inference, callee, node, shape, value, 0)
  const rows = args.find(({ shape }) => shape.kind === 'list')?.shape
  for (const given of args) if (rows !== undefined) checkColumns(inference, given, rows)
}

/** `units: { power: 'kW' }` beside a list of records: each unit is held against its column. */
function checkColumns(inference: Inference, { node, shape }: Given, rows: Shape): void {
  if (shape.kind !== 'record') return
  const units = writtenFields(inference, node, shape).get('units')
  const row = inference.elementOf(rows)
  if (units?.shape.kind !== 'record' || (row.kind !== 'record' && row.kind !== 'typed')) return
  for (const [name, unit] of writtenFields(inference, units.node, units.shape)) {
    const column = inference.property(row, name)
    if (column.kind === 'number') saysWrongUnit(inference, unit, { words: `the column ${name}`, shape: column })
  }
}

function stated(given: Given | undefined): Stated[] {
  return given?.shape.kind === 'number' ? [{ node: given.node, shape: given.shape }] : []
}

function checkRecord(
  inference: Inference,
  callee: string,
  node: ts.Node,
  record: RecordShape,
  value: Stated | undefined,
  depth: number,
): void {
  if (depth > 3) return
  const fields = writtenFields(inference, node, record)
  const numbers = [
    ...(value === undefined ? [] : [value]),
    ...companions.flatMap((name) => numbersIn(inference, fields.get(name))),
    ...numbersOfDistribution(inference, fields.get('distribution')),
  ]
  if (fields.has('unit') || value !== undefined || fields.has('actual'))
    hold(inference, callee, fields.get('unit'), numbers)
  for (const { node: inner, shape } of fields.values())
    if (shape.kind === 'record') checkRecord(inference, callee, inner, shape, undefined, depth + 1)
}

/** Of the dimension of the value they are about; the factor of a lognormal is a pure number, which is held here. */
function numbersOfDistribution(inference: Inference, given: Given | undefined): Stated[] {
  if (given?.shape.kind !== 'record') return []
  const fields = writtenFields(inference, given.node, given.shape)
  for (const { node, shape } of numbersIn(inference, fields.get('lognormal')))
    if (!isPure(shape)) inference.reports.add(node, wantsPure('lognormal', node, shape))
  return alongside.flatMap((name) => numbersIn(inference, fields.get(name)))
}

/** The fields of a record that is written in the call. */
function writtenFields(inference: Inference, node: ts.Node, record: RecordShape): ReadonlyMap<string, Given> {
  const fields = new Map<string, Given>()
  if (!inference.typescript.isObjectLiteralExpression(node)) return fields
  for (const property of node.properties) {
    const written = writtenValue(inference, property)
    const shape = property.name === undefined ? undefined : record.fields.get(property.name.getText())
    if (property.name !== undefined && written !== undefined && shape !== undefined)
      fields.set(property.name.getText(), { node: written, shape })
  }
  return fields
}

function writtenValue(inference: Inference, property: ts.ObjectLiteralElementLike): ts.Node | undefined {
  if (inference.typescript.isPropertyAssignment(property)) return property.initializer
  return inference.typescript.isShorthandPropertyAssignment(property) ? property.name : undefined
}

function numbersIn(inference: Inference, given: Given | undefined): Stated[] {
  if (given?.shape.kind !== 'list') return stated(given)
  const { items, element } = given.shape
  const literal = inference.typescript.isArrayLiteralExpression(given.node) ? given.node : undefined
  if (literal === undefined || items === undefined)
    return element === undefined ? [] : stated({ node: given.node, shape: element })
  return literal.elements.flatMap((node, index) => {
    const shape = items[index]
    return shape === undefined ? [] : stated({ node, shape })
  })
}

/** All numbers must agree with the first that has a dimension, and the unit with it; the first that does not is said. */
function hold(inference: Inference, callee: string, unit: Given | undefined, numbers: readonly Stated[]): void {
  const reference = numbers.find(({ shape }) => shape.free !== true)
  if (
    unit !== undefined &&
    saysWrongUnit(inference, unit, reference && { ...reference, words: spoken(reference.node) })
  )
    return
  const odd = numbers.find(({ shape }) => reference !== undefined && !agree(reference.shape, shape))
  if (reference !== undefined && odd !== undefined)
    inference.reports.add(odd.node, argumentsClash(callee, reference.node, reference.shape, odd.node, odd.shape))
}

interface Subject {
  readonly words: string
  readonly shape: NumberShape
  readonly node?: ts.Node
}

function saysWrongUnit(inference: Inference, unit: Given, reference: Subject | undefined): boolean {
  if (unit.shape.kind !== 'other' || unit.shape.text === undefined) return false
  const reading = parseUnit(unit.shape.text)
  if (!reading.ok) {
    inference.reports.add(unit.node, reading.message)
    return true
  }
  const { dimension } = reading.unit
  if (reference === undefined) return false
  if (agree(quantity(dimension), reference.shape)) {
    const { node, shape, words } = reference
    const degrees = reading.unit.factor === degree && Math.abs(shape.constant ?? 0) > 2 * Math.PI
    if (node !== undefined && degrees)
      inference.reports.add(node, looksLikeDegrees(`'${unit.shape.text}'`, words), 'warning', {
        node,
        wanted: pureNumber,
      })
    return degrees
  }
  inference.reports.add(unit.node, unitClash(unit.shape.text, dimension, reference.words, reference.shape))
  return true
}

/**
 * Substituted lines: `symbol = formula = numbers with units = result`, from a formula and the results that the sheet shows. Nothing is
 * computed; where a number is not there, or belongs to another text, the line stops short and says why.
 */
import {
  type Expression,
  type Formula,
  formatDimension,
  type NamedValue,
  parseUnit,
  type ResultValue,
} from '../../contracts/index.js'
import { formatQuantity, humaniseName, unitFor } from '../quantity/index.js'
import type { CellView, KnownName, SheetContext } from '../view.js'
import { type Box, listed, row, word } from './box.js'
import { layOutExpression, type NameBox, quantityBox, type WrittenBox } from './lay-out.js'
import { namesRead } from './names-read.js'
import { symbolOf } from './symbols.js'

export interface Line {
  readonly name: string
  /** The symbol, then each stage that an equals sign leads to. */
  readonly symbol: Box
  readonly stages: readonly Box[]
  /** What a reader must know before trusting it. */
  readonly notes: readonly string[]
}

/** The lines of a cell in the order of its source; functions give their formula for any argument. */
export function linesOf(cell: CellView, context: SheetContext): Line[] {
  const own = new Map((cell.result?.values ?? []).map((value) => [value.name, value]))
  return (cell.formulas ?? []).flatMap((formula) => {
    const value = own.get(formula.name)
    if (formula.parameters !== undefined) return functionLines(formula, formula.parameters, context)
    // Without a value yet, a call may give anything; what is written out gives a number.
    const shown =
      value === undefined ? cell.result === undefined && formula.expression.kind !== 'call' : hasLine(value.value)
    return shown ? [valueLine(formula, value, cell, context)] : []
  })
}

/** Records, lists and figures are no lines of a calculation. */
function hasLine(value: ResultValue): boolean {
  return value.kind === 'number' || value.kind === 'truth'
}

function functionLines(formula: Formula, parameters: readonly string[], context: SheetContext): Line[] {
  const symbols = symbolBox(context)
  const local = (name: string): Box => symbols(name, [], true)
  const steps = formula.where ?? []
  const line: Line = {
    name: formula.name,
    symbol: row(word(formula.name), listed('(', parameters.map(local), ')')),
    stages: [layOutExpression(formula.expression, symbols)],
    notes: parameters.length === 0 ? [] : [`for any ${parameters.map(humaniseName).join(' and ')}`],
  }
  return [
    line,
    ...steps.map(
      ({ name, expression }): Line => ({
        name: `${formula.name}.${name}`,
        symbol: row(word('with\u00a0'), local(name)),
        stages: [layOutExpression(expression, symbols)],
        notes: [],
      }),
    ),
  ]
}

function valueLine(formula: Formula, value: NamedValue | undefined, cell: CellView, context: SheetContext): Line {
  const { name } = formula
  const expression = fromItsOrigin(formula.expression, cell)
  const symbols = symbolBox(context)
  const line = { name, symbol: symbols(name, [], false) }
  const written = layOutExpression(expression, symbols)
  const read = namesRead(expression).flatMap((one) => context.known(one) ?? [])
  const late = [cell.state, ...read.map(({ state }) => state)].find((state) => state !== 'current')
  if (value === undefined || late !== undefined)
    return { ...line, stages: [written], notes: [`${late ?? 'not computed'}: the numbers follow when it is computed`] }
  const result = numberBox(value, [])
  if (context.known(name)?.trial === true)
    return {
      ...line,
      stages: result.box === undefined ? [] : [result.box],
      notes: ['trial value in place of the formula'],
    }
  const numbers = substituted(expression, context, name)
  const single = expression.kind === 'name'
  return {
    ...line,
    stages: [
      written,
      ...(numbers.put && !single ? [numbers.box] : []),
      ...(result.box === undefined ? [] : [result.box]),
    ],
    notes: [...trialNotes(read), ...(numbers.bare && !single ? ['numbers whose unit is not known are in SI'] : [])],
  }
}

/** `hover.power` where `hover` is a call in this cell: the call says more than the name of a record. */
function fromItsOrigin(expression: Expression, cell: CellView): Expression {
  if (expression.kind !== 'name' || expression.path.length === 0) return expression
  const origin = cell.formulas?.find((formula) => formula.name === expression.name && formula.parameters === undefined)
  if (origin?.expression.kind !== 'call') return expression
  return { ...origin.expression, path: [...origin.expression.path, ...expression.path] }
}

function trialNotes(read: readonly KnownName[]): string[] {
  const tried = read.filter(({ trial }) => trial).map(({ value }) => value.label ?? humaniseName(value.name))
  if (tried.length === 0) return []
  return [`with the trial value${tried.length === 1 ? '' : 's'} of ${tried.join(' and ')}`]
}

/** Names as symbols: TeX that their author gave, or made from the name. */
function symbolBox(context: SheetContext): NameBox {
  return (name, path, local) => {
    const stated = local || path.length > 0 ? undefined : context.known(name)?.value
    const words = stated?.label ?? [name, ...path].map(humaniseName).join(' ')
    if (stated?.symbol !== undefined && stated.symbol.trim() !== '')
      return { box: 'symbol', symbol: { kind: 'tex', tex: stated.symbol }, words }
    return { box: 'symbol', symbol: symbolOf([name, ...path]), words }
  }
}

/** The formula with numbers in place of names; `put` when there was at least one, `bare` when a unit was not known. */
function substituted(
  expression: Expression,
  context: SheetContext,
  result: string,
): { box: Box; put: boolean; bare: boolean } {
  const symbols = symbolBox(context)
  let put = false
  let bare = false
  const numbers: NameBox = (name, path, local) => {
    const known = local ? undefined : context.known(name)
    const number = known === undefined ? undefined : numberBox(known.value, path)
    if (number?.box === undefined) return symbols(name, path, local)
    put = true
    bare ||= number.bare
    return number.box
  }
  const box = layOutExpression(expression, numbers, writtenInUnits(context, result))
  return { box, put, bare }
}

/** Among numbers in the reader's units those that the author wrote are put into them as well; the formula before keeps them as written. */
function writtenInUnits({ units = 'as written' }: SheetContext, result: string): WrittenBox {
  return (value, written) => {
    const reading = written === undefined ? undefined : parseUnit(written)
    if (reading?.ok !== true) return quantityBox(value, written)
    const si = value * reading.unit.factor
    const dimension = formatDimension(reading.unit.dimension)
    const unit = unitFor(units, { unit: written, dimension, name: result, largest: Math.abs(si) })
    return unit === written ? quantityBox(value, written) : { box: 'number', ...numberAndUnit(si, dimension, unit) }
  }
}

function numberAndUnit(si: number, dimension: string, unit: string | undefined): { number: string; unit: string } {
  const shown = formatQuantity(si, dimension, unit)
  return { number: shown.number, unit: shown.unit }
}

/** A value, or a member of one, as a number in its display unit or as a word; no box for anything else. */
function numberBox(named: NamedValue, path: readonly string[]): { box: Box | undefined; bare: boolean } {
  const value = memberOf(named.value, path)
  if (value?.kind === 'truth') return { box: word(value.value ? 'true' : 'false'), bare: false }
  if (value?.kind === 'text' && value.text.length <= 60) return { box: word(value.text), bare: false }
  if (value?.kind !== 'number') return { box: undefined, bare: false }
  const { dimension, unit: asked } = unitsOf(named, path)
  const { number, unit } = formatQuantity(value.si, dimension, asked)
  return { box: { box: 'number', number, unit }, bare: dimension === null && asked === undefined }
}

/** Of a value, or of a field of a record or of a record in a list; a count is a pure number. */
function unitsOf(named: NamedValue, path: readonly string[]): { dimension: string | null; unit: string | undefined } {
  if (path.length === 0) return { dimension: named.dimension, unit: named.unit }
  const field = path.at(-1) ?? ''
  if (named.value.kind === 'list' && field === 'length') return { dimension: '1', unit: undefined }
  const deep = named.value.kind === 'list' ? 2 : 1
  if (path.length !== deep) return { dimension: null, unit: undefined }
  return { dimension: named.columns?.[field] ?? null, unit: named.units?.[field] }
}

function memberOf(value: ResultValue, path: readonly string[]): ResultValue | undefined {
  let at: ResultValue | undefined = value
  for (const key of path) {
    if (at?.kind === 'record') at = at.entries.find(([name]) => name === key)?.[1]
    else if (at?.kind === 'list' && key === 'length') at = { kind: 'number', si: at.length }
    else if (at?.kind === 'list') at = at.items[Number(key)]
    else return undefined
  }
  return at
}

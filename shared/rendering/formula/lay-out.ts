/** From an expression to boxes: brackets where they are needed, signs as the trade writes them, names as symbols or as their numbers. */
import type { Argument, Expression, Term } from '../../contracts/index.js'
import { displayUnit, formatNumber, typesetUnitText } from '../quantity/index.js'
import { type Box, between, brackets, listed, row, tight, word } from './box.js'
import { isLetter } from './symbols.js'

/** What stands for a name: its symbol, or its number. */
export type NameBox = (name: string, path: readonly string[], local: boolean) => Box

/** What stands for a number that the author wrote, with its unit. */
export type WrittenBox = (value: number, unit: string | undefined) => Box

/** A call shows this many arguments; the source has all. */
const mainArguments = 6
/** Digits of numbers that the author wrote. */
const writtenDigits = 15

/** How tightly an expression binds; a part that binds less than its place asks for stands in brackets. */
const binding = { logic: 0, comparison: 1, sum: 2, sign: 3, product: 4, power: 6, whole: 7 } as const

const constants = { pi: 'π', e: 'e', infinity: '∞' } as const

export function layOutExpression(expression: Expression, nameBox: NameBox, writtenBox: WrittenBox = quantityBox): Box {
  const layOut = (part: Expression) => layOutExpression(part, nameBox, writtenBox)
  const bound = (part: Expression, least: number) => bracketed(layOut(part), bindingOf(part), least)
  switch (expression.kind) {
    case 'quantity':
      return writtenBox(expression.value, expression.unit)
    case 'name':
      return nameBox(expression.name, expression.path, false)
    case 'local':
      return nameBox(expression.name, expression.path, true)
    case 'constant':
      return constantBox(expression.constant)
    case 'unit':
      return word(typesetUnitText(expression.unit))
    case 'negative':
      return row(tight('−'), bound(expression.of, binding.product))
    case 'sum':
      return sumBox(expression.terms, bound)
    case 'product':
      return productBox(
        expression.factors.map((factor, index) => bound(factor, index === 0 ? binding.sign : binding.product + 0.5)),
      )
    case 'quotient':
      return { box: 'fraction', over: layOut(expression.over), under: layOut(expression.under) }
    case 'remainder':
      return row(bound(expression.of, binding.product), between('mod'), bound(expression.by, binding.power))
    case 'power':
      return {
        box: 'power',
        base: powerBase(layOut(expression.base), expression.base),
        exponent: layOut(expression.exponent),
      }
    case 'root':
      return { box: 'root', degree: expression.degree, of: layOut(expression.of) }
    case 'function':
      return functionBox(expression.name, expression.of.map(layOut))
    case 'call':
      return callBox(expression.method, expression.with, expression.path, layOut)
    case 'comparison':
      return row(bound(expression.left, binding.sum), between(expression.sign), bound(expression.right, binding.sum))
    case 'logic':
      return row(
        bound(expression.left, binding.comparison),
        between(expression.word),
        bound(expression.right, binding.comparison),
      )
    case 'not':
      return row(word('not '), bound(expression.of, binding.power))
    case 'cases':
      return {
        box: 'cases',
        rows: expression.cases.map(({ value, when }) => ({
          value: layOut(value),
          ...(when === undefined ? {} : { when: layOut(when) }),
        })),
      }
    case 'list':
      return listed('[', shortened(expression.items.map(layOut)), ']')
    case 'text':
      return word(expression.text.length > 60 ? `${expression.text.slice(0, 60)}…` : expression.text)
    case 'unwritten':
      return word('…')
  }
}

/** A number as its author wrote it, with the unit beside it. */
export function quantityBox(value: number, unit: string | undefined): Box {
  const symbol = unit === undefined ? '' : displayUnit(value, null, unit).symbol || typesetUnitText(unit)
  return { box: 'number', number: formatNumber(value, writtenDigits), unit: symbol }
}

function constantBox(constant: 'pi' | 'e' | 'g0' | 'infinity'): Box {
  if (constant !== 'g0')
    return {
      box: 'symbol',
      symbol: { kind: 'text', base: constants[constant], subscript: '' },
      words: constants[constant],
    }
  return { box: 'symbol', symbol: { kind: 'text', base: 'g', subscript: '0' }, words: 'standard gravity' }
}

function bindingOf(expression: Expression): number {
  switch (expression.kind) {
    case 'logic':
      return binding.logic
    case 'comparison':
      return binding.comparison
    case 'sum':
    case 'remainder':
    case 'cases':
      return binding.sum
    case 'negative':
      return binding.sign
    case 'product':
    case 'not':
      return binding.product
    default:
      return binding.whole
  }
}

/** A negative number binds like a sign, wherever it came from. */
function bracketed(box: Box, binds: number, least: number): Box {
  const negative = box.box === 'number' && box.number.startsWith('−')
  return (negative ? binding.sign : binds) < least ? brackets(box) : box
}

function sumBox(terms: readonly Term[], bound: (part: Expression, least: number) => Box): Box {
  return row(
    ...terms.flatMap(({ minus, of }, index) => {
      if (index === 0) return [bound(of, binding.sum)]
      const negativeTerm = bound(of, of.kind === 'sum' && !minus ? binding.sum : binding.sign + 0.5)
      return [between(minus ? '−' : '+'), negativeTerm]
    }),
  )
}

/** Letters stand side by side; words and numbers are parted by a raised dot, so that two never read as one. */
function productBox(factors: readonly Box[]): Box {
  return row(
    ...factors.flatMap((factor, index) => {
      const before = factors[index - 1]
      if (before === undefined) return [factor]
      return [isShort(before, true) && isShort(factor, false) ? tight('\u2062') : between('·'), factor]
    }),
  )
}

function isShort(box: Box, first: boolean): boolean {
  switch (box.box) {
    case 'symbol':
      return box.symbol.kind === 'tex' || isLetter(box.symbol.base)
    case 'number':
      return first && box.unit === '' && /^[\d.]+$/.test(box.number)
    case 'power':
      return isShort(box.base, first) && box.base.box !== 'number'
    case 'root':
      return true
    default:
      return false
  }
}

/** The base of a power: one symbol, or anything in brackets. */
function powerBase(box: Box, expression: Expression): Box {
  if (box.box === 'number') return box.unit === '' && /^[\d.\u202f]+$/.test(box.number) ? box : brackets(box)
  const single =
    box.box === 'symbol' ||
    box.box === 'fence' ||
    box.box === 'root' ||
    expression.kind === 'call' ||
    expression.kind === 'unit'
  return single ? box : brackets(box)
}

function functionBox(name: string, given: readonly Box[]): Box {
  const [only] = given
  if (only !== undefined && given.length === 1) {
    if (name === 'abs') return { box: 'fence', open: '|', close: '|', of: only }
    if (name === 'floor') return { box: 'fence', open: '⌊', close: '⌋', of: only }
    if (name === 'ceil') return { box: 'fence', open: '⌈', close: '⌉', of: only }
  }
  return given.length === 1 && only !== undefined
    ? row(word(name), brackets(only))
    : row(word(name), listed('(', given, ')'))
}

function callBox(
  method: string,
  given: readonly Argument[],
  path: readonly string[],
  layOut: (part: Expression) => Box,
): Box {
  const items = given.map(({ name, of }) =>
    name === undefined ? layOut(of) : row(word(name), { ...between('='), breaks: false }, layOut(of)),
  )
  const member = path.length === 0 ? [] : [word(`.${path.join('.')}`)]
  return row(word(method), listed('(', shortened(items), ')'), ...member)
}

function shortened(items: readonly Box[]): readonly Box[] {
  return items.length > mainArguments ? [...items.slice(0, mainArguments), word('…')] : items
}

/**
 * Reads an equation as doc comments write it (`P = k kappa T v_i/B + n rho A V_tip^3 sigma c_d/8`) into boxes. Factors stand side by
 * side, `/` takes what stands before it in its product, and a sentence is no equation: what cannot be read is left as text.
 */
import { type Box, between, brackets, listed, row, tight, word } from '../formula/box.js'
import { greekLetter } from '../formula/symbols.js'
import { type Token, tokensOf } from './equation-tokens.js'

const functions = new Set(
  'sqrt exp ln log10 log sin cos tan asin acos atan sinh cosh tanh min max abs round ceil floor'.split(' '),
)
/** Names of more than one letter that the trade writes as symbols; other words stand alone between signs. */
const symbols = new Set('FM AR SM Re dp'.split(' '))
const units = new Set(
  'm km mm cm ft in kg g lb s min h N kN W kW hp J kJ Wh kWh Pa kPa psf K rad deg rpm A V kt knots'.split(' '),
)
const relations: Readonly<Record<string, string>> = { '=': '=', '<': '<', '>': '>', '<=': '≤', '>=': '≥' }
const sums: Readonly<Record<string, string>> = { '+': '+', '-': '−', '+-': '±' }
/** Words of a sentence: where one stands no equation is read. */
const prose = new Set(
  'a an and are as at by each else for from goes has holds if in is it no none nothing of on one or over per the to where which with'.split(
    ' ',
  ),
)

/** The equation as boxes; `undefined` where it cannot be read as one. */
export function readEquation(text: string): Box | undefined {
  const tokens = tokensOf(text)
  if (tokens === undefined || tokens.length === 0) return undefined
  const reader = new EquationReader(tokens)
  try {
    return reader.all()
  } catch (error) {
    if (error instanceof NoEquation) return undefined
    throw error
  }
}

class NoEquation extends Error {}

/** A factor: how it looks, and whether it is a word, which must not stand beside another factor. */
interface Factor {
  readonly box: Box
  readonly kind: 'number' | 'symbol' | 'word' | 'unit' | 'group'
}

class EquationReader {
  readonly #tokens: readonly Token[]
  #at = 0

  constructor(tokens: readonly Token[]) {
    this.#tokens = tokens
  }

  /** Statements parted by commas, each an expression or a chain of relations. */
  all(): Box {
    const parts = [this.#statement()]
    while (this.#takes(',')) parts.push(this.#statement())
    if (this.#at < this.#tokens.length) throw new NoEquation()
    return row(...parts.flatMap((part, index) => (index === 0 ? [part] : [separator, part])))
  }

  #statement(): Box {
    const parts = [this.#sum()]
    for (;;) {
      const sign = this.#sign()
      const relation = sign === undefined ? undefined : relations[sign]
      if (relation === undefined) return row(...parts)
      this.#at += 1
      parts.push(between(relation), this.#sum())
    }
  }

  #sum(): Box {
    const parts: Box[] = []
    const first = this.#sign()
    if (first !== undefined && sums[first] !== undefined) {
      this.#at += 1
      parts.push(tight(sums[first]))
    }
    parts.push(this.#product())
    for (;;) {
      const sign = this.#sign()
      if (sign === undefined || sums[sign] === undefined) return row(...parts)
      this.#at += 1
      parts.push(between(sums[sign]), this.#product())
    }
  }

  #product(): Box {
    let product = [this.#power()]
    for (;;) {
      if (this.#takes('/')) product = [{ box: fraction(productBox(product), this.#power().box), kind: 'group' }]
      else if (this.#takes('*')) product.push(this.#power())
      else if (this.#factorFollows()) product.push(this.#power())
      else return productBox(product)
    }
  }

  #factorFollows(): boolean {
    const token = this.#tokens[this.#at]
    return token !== undefined && (token.kind !== 'sign' || token.text === '(' || token.text === '[')
  }

  #power(): Factor {
    const base = this.#single()
    if (!this.#takes('^')) return base
    const negative = this.#takes('-')
    const exponent = bare(this.#single().box)
    const above = negative ? row(tight('−'), exponent) : exponent
    return {
      box: { box: 'power', base: base.box, exponent: above },
      kind: base.kind === 'number' ? 'number' : 'symbol',
    }
  }

  #single(): Factor {
    const token = this.#tokens[this.#at]
    if (token === undefined) throw new NoEquation()
    this.#at += 1
    if (token.kind === 'number') return { box: numberBox(token.text), kind: 'number' }
    if (token.kind === 'name') return this.#named(token)
    if (token.text === '(' || token.text === '[') return { box: this.#group(token.text), kind: 'group' }
    if (token.text === '|') return { box: this.#magnitude(), kind: 'group' }
    throw new NoEquation()
  }

  #named(token: Extract<Token, { kind: 'name' }>): Factor {
    if (functions.has(token.base)) return this.#function(token.base)
    if (token.base === 'sum') return { box: row(word('Σ'), tight('\u2062'), this.#run()), kind: 'group' }
    const derivative = this.#derivative(token)
    if (derivative !== undefined) return derivative
    const factor = nameFactor(token)
    const next = this.#tokens[this.#at]
    if (next?.kind !== 'sign' || next.text !== '(' || !next.joined) return factor
    this.#at += 1
    return { box: row(factor.box, listed('(', this.#items(')'), ')')), kind: 'symbol' }
  }

  /** `dT/dt` is one thing, whatever stands before it. */
  #derivative(token: Extract<Token, { kind: 'name' }>): Factor | undefined {
    const [line, under] = this.#tokens.slice(this.#at, this.#at + 2)
    if (line?.kind !== 'sign' || line.text !== '/' || under?.kind !== 'name') return undefined
    if (!isDifferential(token.base) || !isDifferential(under.base)) return undefined
    this.#at += 2
    return { box: fraction(nameFactor(token).box, nameFactor(under).box), kind: 'group' }
  }

  /** All that a sum runs over: the factors up to the next sign. */
  #run(): Box {
    const factors = [this.#power()]
    while (this.#factorFollows()) factors.push(this.#power())
    return productBox(factors)
  }

  #group(open: string): Box {
    const close = open === '(' ? ')' : ']'
    const parts = this.#items(close)
    const [only] = parts
    if (parts.length === 1 && only !== undefined) return { box: 'fence', open, close, of: only }
    return listed(open, parts, close)
  }

  #items(close: string): Box[] {
    const parts = [this.#statement()]
    while (this.#takes(',')) parts.push(this.#statement())
    if (!this.#takes(close)) throw new NoEquation()
    return parts
  }

  #magnitude(): Box {
    const of = this.#sum()
    if (!this.#takes('|')) throw new NoEquation()
    return { box: 'fence', open: '|', close: '|', of }
  }

  /** `sqrt(x)`, `cos a`, `sin^2 t`. */
  #function(name: string): Factor {
    const exponent = this.#takes('^') ? this.#single().box : undefined
    const head: Box = exponent === undefined ? word(name) : { box: 'power', base: word(name), exponent: bare(exponent) }
    const [first, ...others] = this.#takes('(') ? this.#items(')') : [this.#operand()]
    if (first === undefined) throw new NoEquation()
    if (others.length > 0) return { box: row(head, listed('(', [first, ...others], ')')), kind: 'group' }
    if (name === 'sqrt' && exponent === undefined)
      return { box: { box: 'root', degree: 2, of: bare(first) }, kind: 'group' }
    return { box: row(head, brackets(bare(first))), kind: 'group' }
  }

  /** `sin t`, and `sin 2d` where a number stands close before a letter. */
  #operand(): Box {
    const factor = this.#power()
    const next = this.#tokens[this.#at]
    const close = factor.kind === 'number' && next?.kind === 'name' && next.joined
    return close ? productBox([factor, this.#power()]) : factor.box
  }

  #sign(): string | undefined {
    const token = this.#tokens[this.#at]
    return token?.kind === 'sign' ? token.text : undefined
  }

  #takes(sign: string): boolean {
    if (this.#sign() !== sign) return false
    this.#at += 1
    return true
  }
}

const separator: Box = { box: 'sign', sign: ',', space: 'both', breaks: true }

/** Factors side by side; words and sentences have no place among them. */
function productBox(factors: readonly Factor[]): Box {
  const boxes: Box[] = []
  factors.forEach((factor, index) => {
    const before = factors[index - 1]
    if (before !== undefined) {
      if (factor.kind === 'word' || before.kind === 'word') throw new NoEquation()
      if (factor.kind === 'number' && before.kind === 'number') throw new NoEquation()
      boxes.push(factor.kind === 'number' ? between('·') : tight('\u2062'))
    }
    boxes.push(factor.box)
  })
  return row(...boxes)
}

/** `T/(2 rho A)`: the fraction's line stands for the brackets. */
function fraction(over: Box, under: Box): Box {
  return { box: 'fraction', over: bare(over), under: bare(under) }
}

function bare(box: Box): Box {
  return box.box === 'fence' && box.open !== '|' ? box.of : box
}

/** `1.458e-6` as 1.458 · 10⁻⁶. */
function numberBox(text: string): Box {
  const [digits = '', exponent] = text.split('e')
  const number: Box = { box: 'number', number: digits, unit: '' }
  if (exponent === undefined) return number
  const above: Box = { box: 'number', number: exponent.replace('-', '−'), unit: '' }
  const power: Box = { box: 'power', base: { box: 'number', number: '10', unit: '' }, exponent: above }
  return digits === '1' ? power : row(number, between('·'), power)
}

function isDifferential(base: string): boolean {
  const [, changed = ''] = /^d([A-Za-z]+)$/.exec(base) ?? []
  return changed.length === 1 || greekLetter(changed) !== undefined
}

function nameFactor({ base, subscript, primes }: Extract<Token, { kind: 'name' }>): Factor {
  if (prose.has(base) && subscript === '' && base.length > 1) throw new NoEquation()
  if (base === 'int' || base === 'integral') return { box: symbolBox('∫', subscript, primes), kind: 'symbol' }
  const letter = greekLetter(base)
  const isSymbol = base.length === 1 || letter !== undefined || symbols.has(base) || subscript !== ''
  if (isSymbol) return { box: symbolBox(letter ?? base, subscript, primes), kind: 'symbol' }
  if (isDifferential(base)) {
    const changed = base.slice(1)
    return { box: row(word('d'), symbolBox(greekLetter(changed) ?? changed, '', primes)), kind: 'symbol' }
  }
  return { box: word(base), kind: units.has(base) ? 'unit' : 'word' }
}

function symbolBox(base: string, subscript: string, primes: string): Box {
  const below = subscript
    .split(',')
    .map((part) => greekLetter(part) ?? part)
    .join(', ')
  const symbol: Box = { box: 'symbol', symbol: { kind: 'text', base, subscript: below }, words: base }
  return primes === '' ? symbol : { box: 'power', base: symbol, exponent: word('′'.repeat(primes.length)) }
}

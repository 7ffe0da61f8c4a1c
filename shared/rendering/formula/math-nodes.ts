/** Boxes as MathML. Text enters as text nodes only; an author's TeX takes the same untrusting way as in prose. */
import { type Attributes, appendChildren, type Child, mathNamespace, setAttributes } from '../dom.js'
import { texSymbol } from '../prose/index.js'
import type { Box, NameSymbol } from './box.js'
import { isLetter } from './symbols.js'

const thin = '0.1667em'
const medium = '0.2222em'
const thick = '0.2778em'

/** One `math` element per piece: browsers break a line between elements and never inside one. */
export function mathPieces(document: Document, box: Box): Node[] {
  const pieces = brokenAt(box)
  return pieces.flatMap((piece, index) => {
    const made = node(document, 'math', { 'aria-hidden': 'true', displaystyle: 'true' }, boxNode(document, piece))
    return index === 0 ? [made] : [document.createElement('wbr'), made]
  })
}

/** A row parted before each sign between two parts and after each comma. */
function brokenAt(box: Box): Box[] {
  if (box.box !== 'row') return [box]
  const pieces: Box[][] = [[]]
  for (const part of box.parts) {
    const breaks = part.box === 'sign' && part.breaks
    const last = pieces.at(-1) ?? []
    if (breaks && part.space === 'both' && last.length > 0) pieces.push([part])
    else last.push(part)
    if (breaks && part.space === 'after') pieces.push([])
  }
  return pieces.filter((parts) => parts.length > 0).map((parts): Box => ({ box: 'row', parts }))
}

export function boxNode(document: Document, box: Box): Node {
  const draw = (part: Box) => boxNode(document, part)
  const made = (tag: string, attributes: Attributes, ...children: Child[]) =>
    node(document, tag, attributes, ...children)
  switch (box.box) {
    case 'row':
      return made('mrow', {}, box.parts.map(draw))
    case 'symbol':
      return symbolNode(document, box.symbol)
    case 'word':
      return upright(document, box.text)
    case 'number':
      return numberNode(document, box.number, box.unit)
    case 'sign':
      return signNode(document, box)
    case 'fraction':
      return made('mfrac', {}, draw(box.over), draw(box.under))
    case 'power':
      return powerNode(document, box)
    case 'root':
      return box.degree === 2 ? made('msqrt', {}, draw(box.of)) : made('mroot', {}, draw(box.of), made('mn', {}, '3'))
    case 'fence':
      return made(
        'mrow',
        {},
        made('mo', { form: 'prefix', fence: 'true', stretchy: 'true' }, box.open),
        draw(box.of),
        made('mo', { form: 'postfix', fence: 'true', stretchy: 'true' }, box.close),
      )
    case 'cases':
      return casesNode(document, box)
  }
}

function symbolNode(document: Document, symbol: NameSymbol): Node {
  if (symbol.kind === 'tex') return texSymbol(document, symbol.tex)
  const base = letters(document, symbol.base)
  return symbol.subscript === '' ? base : node(document, 'msub', {}, base, letters(document, symbol.subscript))
}

function letters(document: Document, text: string): Element {
  if (/^\d+$/.test(text)) return node(document, 'mn', {}, text)
  return isLetter(text) ? node(document, 'mi', {}, text) : upright(document, text)
}

/** Words are identifiers, not `mtext`: a sign beside nothing but text would lose the room around it. */
function upright(document: Document, text: string): Element {
  return node(document, 'mi', { class: 'upright', mathvariant: 'normal' }, text)
}

/** Subscript and exponent of one name stand above each other. */
function powerNode(document: Document, { base, exponent }: Extract<Box, { box: 'power' }>): Node {
  const above = boxNode(document, exponent)
  if (base.box !== 'symbol' || base.symbol.kind === 'tex' || base.symbol.subscript === '')
    return node(document, 'msup', {}, boxNode(document, base), above)
  const { base: name, subscript } = base.symbol
  return node(document, 'msubsup', {}, letters(document, name), letters(document, subscript), above)
}

function numberNode(document: Document, number: string, unit: string): Node {
  const digits = raised(document, 'mn', number)
  if (unit === '') return digits
  const space = unit === '°' ? [] : [node(document, 'mspace', { width: thin })]
  return node(document, 'mrow', {}, digits, space, raised(document, 'mi', unit))
}

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹'

/** Superscript characters become superscripts: fonts carry ² and ³ but seldom the others. */
function raised(document: Document, tag: 'mn' | 'mi', text: string): Node {
  const parts = text.split(/([⁰¹²³⁴⁵⁶⁷⁸⁹⁻]+)/)
  const nodes: Node[] = []
  for (let index = 0; index < parts.length; index += 2) {
    const plain = tag === 'mi' ? upright(document, parts[index] ?? '') : node(document, tag, {}, parts[index] ?? '')
    const exponent = parts[index + 1]
    if (exponent !== undefined) {
      const digits = [...exponent].map((mark) => (mark === '⁻' ? '−' : String(superscripts.indexOf(mark)))).join('')
      nodes.push(node(document, 'msup', {}, plain, node(document, 'mn', {}, digits)))
    } else if (parts[index] !== '') nodes.push(plain)
  }
  return nodes.length === 1 && nodes[0] !== undefined ? nodes[0] : node(document, 'mrow', {}, nodes)
}

function signNode(document: Document, { sign, space }: Extract<Box, { box: 'sign' }>): Node {
  if (sign === '\u2062') return node(document, 'mspace', { width: thin })
  const room = /^[=<>≤≥≠]$/.test(sign) ? thick : medium
  const word = /^[a-z]+$/.test(sign)
  const spacing =
    space === 'both'
      ? { lspace: word ? thick : room, rspace: word ? thick : room }
      : space === 'after'
        ? { lspace: '0', rspace: thin }
        : { lspace: '0', rspace: '0' }
  return node(document, 'mo', { form: 'infix', stretchy: 'false', ...spacing }, sign)
}

function casesNode(document: Document, { rows }: Extract<Box, { box: 'cases' }>): Node {
  const cell = (...children: Child[]) => node(document, 'mtd', { columnalign: 'left' }, ...children)
  return node(
    document,
    'mrow',
    {},
    node(document, 'mo', { form: 'prefix', fence: 'true', stretchy: 'true' }, '{'),
    node(
      document,
      'mtable',
      {},
      rows.map(({ value, when }) =>
        node(
          document,
          'mtr',
          {},
          cell(boxNode(document, value)),
          cell(
            node(document, 'mtext', {}, when === undefined ? 'otherwise' : 'if\u00a0'),
            when === undefined ? null : boxNode(document, when),
          ),
        ),
      ),
    ),
  )
}

function node(document: Document, tag: string, attributes: Attributes, ...children: Child[]): Element {
  const made = document.createElementNS(mathNamespace, tag)
  setAttributes(made, attributes)
  appendChildren(made, children)
  return made
}

/** Superscripts as elements: fonts carry ² and ³ but seldom the others, and a mixture of two fonts reads badly. */
import { element } from '../dom.js'

const superscriptRun = /[⁰¹²³⁴⁵⁶⁷⁸⁹⁻·]+/g
const plain: Readonly<Record<string, string>> = {
  '⁰': '0',
  '¹': '1',
  '²': '2',
  '³': '3',
  '⁴': '4',
  '⁵': '5',
  '⁶': '6',
  '⁷': '7',
  '⁸': '8',
  '⁹': '9',
  '⁻': '−',
}

/** Nodes for text with superscript characters; `m²` and `m³` keep the glyph, longer exponents become `<sup>`. */
export function typesetNodes(document: Document, text: string): Node[] {
  const nodes: Node[] = []
  let at = 0
  for (const match of text.matchAll(superscriptRun)) {
    if (match[0] === '²' || match[0] === '³' || match[0] === '·') continue
    if (match.index > at) nodes.push(document.createTextNode(text.slice(at, match.index)))
    const digits = [...match[0]].map((mark) => plain[mark] ?? '.').join('')
    nodes.push(element(document, 'sup', {}, digits))
    at = match.index + match[0].length
  }
  if (at < text.length) nodes.push(document.createTextNode(text.slice(at)))
  return nodes
}

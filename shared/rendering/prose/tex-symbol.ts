/** An author's symbol in TeX as a part of a formula, by the same untrusting way as formulas in prose. */
import { mathNamespace } from '../dom.js'
import { lateParts } from '../late-parts.js'
import { rebuildHtml } from './rebuild.js'

/** One MathML node for the symbol; TeX that cannot be read, or not yet, is shown as it was written. */
export function texSymbol(document: Document, tex: string): Node {
  const mathml = lateParts()?.texToMathml(tex, false)
  const math = mathml === undefined ? undefined : rebuildHtml(document, mathml).firstChild
  const made = document.createElementNS(mathNamespace, 'mrow')
  if (math !== undefined && math !== null && (math as Element).localName === 'math')
    made.append(...Array.from(math.childNodes))
  else {
    const text = document.createElementNS(mathNamespace, 'mtext')
    text.append(tex)
    made.append(text)
  }
  return made
}

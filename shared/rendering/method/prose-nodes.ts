/** Text of a doc comment: what stands in backticks is code, and a method among it leads to its place in the catalogue. */
import { methodAddress } from '../../contracts/method-address.js'
import { methodSubjects } from '../../contracts/method-subjects.js'
import { element } from '../dom.js'
import { typesetNodes, typesetUnitText } from '../quantity/index.js'

const subjects: ReadonlySet<string> = new Set(methodSubjects)

export function proseNodes(document: Document, text: string): Node[] {
  return text.split(/`([^`]+)`/).flatMap((part, index): Node[] => {
    if (index % 2 === 1) return [codeNode(document, part)]
    return part === '' ? [] : typesetNodes(document, withUnits(part))
  })
}

/** `[kg/m^3]` as a typeset unit. */
function withUnits(text: string): string {
  return text.replace(/\[([A-Za-z][\w ^/*()-]*)\]/g, (_, unit: string) => `[${typesetUnitText(unit)}]`)
}

function codeNode(document: Document, text: string): Node {
  const code = element(document, 'code', {}, text)
  const [subject = '', name = ''] = text.split('.')
  return subjects.has(subject) && /^\w+$/.test(name) && text === `${subject}.${name}`
    ? element(document, 'a', { href: methodAddress(text) }, code)
    : code
}

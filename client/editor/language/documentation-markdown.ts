/** A name's documentation as CommonMark, in the order in which an engineer asks: what, equation, arguments, validity, source. */
import { methodAddress } from '../../../shared/contracts/method-address.js'
import { methodSubjects } from '../../../shared/contracts/method-subjects.js'
import type { Documentation } from './protocol.js'

const sections: readonly (readonly [tag: string, heading: string])[] = [
  ['equation', 'Equation'],
  ['param', 'Takes'],
  ['returns', 'Gives'],
  ['method', 'Method'],
  ['validity', 'Valid for'],
  ['throws', 'Refuses'],
  ['source', 'Source'],
]

/** Everything below the display line; empty when nothing is known. */
export function documentationMarkdown(
  documentation: Pick<Documentation, 'text' | 'tags'> & Partial<Pick<Documentation, 'display'>>,
): string {
  const parts: string[] = []
  if (documentation.text !== '') parts.push(documentation.text)
  for (const [tag, heading] of sections) {
    const texts = documentation.tags.filter((each) => each.tag === tag).map((each) => textOfTag(each))
    if (texts.length > 0) parts.push(`**${heading}:** ${texts.join('; ')}`)
  }
  const example = documentation.tags.find((each) => each.tag === 'example')
  if (example !== undefined) parts.push(codeBlock(example.text))
  const method = methodOf(documentation.display ?? '')
  if (method !== undefined) parts.push(`[${method} in the catalogue of methods](${methodAddress(method)})`)
  return parts.join('\n\n')
}

/** The display line as a block of code, then the documentation. */
export function fullMarkdown(documentation: Documentation): string {
  const below = documentationMarkdown(documentation)
  const display = documentation.display === '' ? '' : codeBlock(documentation.display)
  return [display, below].filter((part) => part !== '').join('\n\n')
}

/**
 * An equation keeps its underscores and stars, and stands on one line: a broken line that begins with a minus would be a list. An option
 * record needs no name of its own.
 */
function textOfTag({ tag, text }: Documentation['tags'][number]): string {
  if (tag === 'equation') return `\`${text.replaceAll('`', "'").replace(/\s*\n\s*/g, ' ')}\``
  if (tag === 'param') return text.replace(/^options?(?:\s+-)?\s+/, '').replace(/^(\w+)(?:\s+-)?\s+/, '`$1` ')
  return text
}

function codeBlock(text: string): string {
  const fence = text.includes('```') ? '````' : '```'
  return `${fence}cell\n${text}\n${fence}`
}

const subjects: ReadonlySet<string> = new Set(methodSubjects)

/** The kernel's method that a display line is of: `rotor.hover(options: ...): Hover`. */
export function methodOf(display: string): string | undefined {
  const [, subject = '', name = ''] = /^(\w+)\.(\w+)[<(]/.exec(display) ?? []
  return subjects.has(subject) ? `${subject}.${name}` : undefined
}

/**
 * While a person types, a cell is unreadable for a moment. The names it seems to declare are guessed from its text, so that
 * the cells that read them are held back for that moment instead of complaining about unknown names.
 */
import type { Declaration } from '../program/index.js'

const simple = /^(?:export\s+)?(const|let|function|class)\s+([\p{ID_Start}$_][\p{ID_Continue}$]*)/u
const pattern = /^(?:export\s+)?(const|let)\s*[{[]([^=]*)/
const word = /[\p{ID_Start}$_][\p{ID_Continue}$]*/gu

export function guessDeclarations(source: string): Declaration[] {
  const guessed = new Map<string, Declaration>()
  source.split('\n').forEach((text, index) => {
    const one = simple.exec(text)
    const many = pattern.exec(text)
    const names = one !== null ? [one[2] ?? ''] : (many?.[2]?.match(word) ?? [])
    const form = ((one ?? many)?.[1] ?? 'const') as Declaration['form']
    for (const name of names)
      if (!guessed.has(name))
        guessed.set(name, { name, form, line: index + 1, column: text.indexOf(name) + 1, reads: [] })
  })
  return [...guessed.values()]
}

/**
 * `export interface A` and `import type A` vanish when types are erased, and with them every trace that the cell was written
 * as a module, whose names other cells cannot see. They are searched in the source by their words, and so that a text, a
 * comment or a regular expression cannot be mistaken for them, the compiler is asked: with `#` in place of the word the source
 * is unreadable if, and only if, the word was code.
 */
import type { Eraser } from '../program/index.js'
import type { Problem } from './problem.js'
import { refuse } from './refused-forms.js'

const gap = String.raw`(?:\s|\/\*[^]*?\*\/)+`
const candidates = new RegExp(
  String.raw`(?<![.\w$])(?:(export)${gap}(?:default${gap})?(?:type|interface|declare|namespace|module|as)|(import)${gap}type)\b`,
  'g',
)

/** More than these are not asked about; a cell that long is not a cell. */
const mostQuestions = 8

/** The first of a readable source, or `undefined`. */
export async function typeOnlyForm(source: string, erase: Eraser): Promise<Problem | undefined> {
  const found = [...source.matchAll(candidates)].slice(0, mostQuestions)
  if (found.length === 0) return undefined
  const answers = await erase(
    found.map(({ index }) => `${source.slice(0, index)}######${source.slice(index + '######'.length)}`),
  )
  const first = found.find((_, index) => answers[index]?.ok === false)
  if (first === undefined) return undefined
  const before = source.slice(0, first.index).split('\n')
  const place = { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 }
  return refuse(first[1] === undefined ? 'import' : 'export', place, '######'.length)
}

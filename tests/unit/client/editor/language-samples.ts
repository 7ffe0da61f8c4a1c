/** Cells with the caret written as `|`, asked as the worker asks: against the kernel's declarations made from its sources. */
import typescript from 'typescript'
import { answerLanguage } from '../../../../client/editor/language/answer.js'
import type {
  CellText,
  LanguageAsk,
  LanguageCall,
  LanguageQuestions,
} from '../../../../client/editor/language/protocol.js'
import { createChecker } from '../../../../kernel/cells/check/index.js'
import { declarations } from '../../cells/check/notebook.js'
import { cellId } from './ids.js'

const { language } = createChecker(typescript, declarations)

/** Puts one question about the place marked `|`, which stands in exactly one cell. */
export function askAt<K extends LanguageAsk>(
  ask: K,
  cells: Readonly<Record<string, string>>,
  more: Record<string, unknown> = {},
): LanguageQuestions[K]['answer'] {
  let question: Record<string, unknown> = more
  const texts = Object.entries(cells).map(([id, marked]): CellText => {
    const offset = marked.indexOf('|')
    if (offset >= 0) question = { cell: cellId(id), offset, ...more }
    return { id: cellId(id), source: marked.replace('|', '') }
  })
  // Which question goes with which ask is known to the caller only.
  const call: unknown = { ask, question, cells: texts }
  return answerLanguage(language, call as LanguageCall) as LanguageQuestions[K]['answer']
}

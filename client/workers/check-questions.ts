/** What the checker's worker is asked: about a notebook as a whole, or by the editor about one place, from one view of the cells. */
import type { CheckReport, Graph } from '../../kernel/cells/program/index.js'
import type { LanguageAnswer, LanguageCall } from '../editor/language/protocol.js'

export type CheckQuestion = { readonly check: Graph } | { readonly language: LanguageCall }
export type CheckAnswer = CheckReport | LanguageAnswer

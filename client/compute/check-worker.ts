/** The checker's worker, started at the first question. */
import type { CheckReport, Graph } from '../../kernel/cells/program/index.js'
import type { LanguageAnswer, LanguageCall } from '../editor/language/protocol.js'
import CheckerWorker from '../workers/check.worker.ts?worker'
import type { CheckAnswer, CheckQuestion } from '../workers/check-questions.js'
import { asker } from '../workers/questions.js'
import { latestOnly } from './latest.js'

export interface CheckWorker {
  /** `null` for a question that a newer one has overtaken. */
  check(graph: Graph): Promise<CheckReport | null>
  /** The editor's questions about a place; none is skipped. */
  language(call: LanguageCall): Promise<LanguageAnswer>
}

export function openCheckWorker(): CheckWorker {
  let asked: ((question: CheckQuestion) => Promise<CheckAnswer>) | undefined
  const ask = (question: CheckQuestion) => {
    asked ??= asker<CheckQuestion, CheckAnswer>(new CheckerWorker())
    return asked(question)
  }
  return {
    check: latestOnly((graph: Graph) => ask({ check: graph }) as Promise<CheckReport>),
    language: (call) => ask({ language: call }) as Promise<LanguageAnswer>,
  }
}

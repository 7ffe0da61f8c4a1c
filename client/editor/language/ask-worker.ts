/** In the page: puts the editor's questions to the worker, each with all cells as they stand. */
import type { AskLanguage, CellText, LanguageAnswer, LanguageCall, LanguageQuestions } from './protocol.js'

/** `post` sends one call to the worker and resolves with its answer; `cells` are the sizing cells at this moment. */
export function languageAsker(
  post: (call: LanguageCall) => Promise<LanguageAnswer>,
  cells: () => readonly CellText[],
): AskLanguage {
  return (ask, question) => {
    const call = { ask, question, cells: cells() } as LanguageCall
    return post(call) as Promise<LanguageQuestions[typeof ask]['answer']>
  }
}

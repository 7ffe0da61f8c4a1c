/**
 * The checker in a worker of its own: TypeScript is 9 MB, so it is fetched only here, and only once the sheet can be read. The
 * editor's questions about a place are answered from the same view of the cells.
 */
import { createChecker, type LanguageChecker } from '../../kernel/cells/check/index.js'
import type { KernelDeclarations } from '../../kernel/cells/program/index.js'
import { answerLanguage } from '../editor/language/answer.js'
import type { CheckAnswer, CheckQuestion } from './check-questions.js'
import { answerer } from './questions.js'

const checker: Promise<LanguageChecker> = openChecker()
checker.catch(() => undefined)

answerer<CheckQuestion, CheckAnswer>(self, async (question) => {
  const { check, language } = await checker
  return 'check' in question ? check(question.check) : answerLanguage(language, question.language)
})

async function openChecker(): Promise<LanguageChecker> {
  const [{ default: typescript }, declarations] = await Promise.all([import('typescript'), fetchDeclarations()])
  return createChecker(typescript, declarations)
}

async function fetchDeclarations(): Promise<KernelDeclarations> {
  const response = await fetch('/kernel/declarations.json')
  if (!response.ok) throw new Error(`the kernel's declarations could not be fetched (status ${response.status})`)
  return (await response.json()) as KernelDeclarations
}

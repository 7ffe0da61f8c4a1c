/** The checker in a worker of its own: TypeScript is 9 MB, so it is fetched only here, and only once the sheet can be read. */
import { createChecker } from '../../kernel/cells/check/index.js'
import type { Checker, CheckReport, Graph, KernelDeclarations } from '../../kernel/cells/program/index.js'
import { answerer } from './questions.js'

const checker: Promise<Checker> = openChecker()
checker.catch(() => undefined)

answerer<Graph, CheckReport>(self, async (graph) => (await checker).check(graph))

async function openChecker(): Promise<Checker> {
  const [{ default: typescript }, declarations] = await Promise.all([import('typescript'), fetchDeclarations()])
  return createChecker(typescript, declarations)
}

async function fetchDeclarations(): Promise<KernelDeclarations> {
  const response = await fetch('/kernel/declarations.json')
  if (!response.ok) throw new Error(`the kernel's declarations could not be fetched (status ${response.status})`)
  return (await response.json()) as KernelDeclarations
}

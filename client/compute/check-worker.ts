/** The checker as a question to its worker, started at the first question; overtaken questions are skipped. */
import type { CheckReport, Graph } from '../../kernel/cells/program/index.js'
import { asker } from '../workers/questions.js'
import { latestOnly } from './latest.js'

export function checkInWorker(): (graph: Graph) => Promise<CheckReport | null> {
  let ask: ((graph: Graph) => Promise<CheckReport>) | undefined
  return latestOnly((graph: Graph) => {
    ask ??= asker<Graph, CheckReport>(
      new Worker(new URL('../workers/check.worker.ts', import.meta.url), { type: 'module' }),
    )
    return ask(graph)
  })
}

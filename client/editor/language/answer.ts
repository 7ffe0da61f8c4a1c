/** In the worker: answers the editor's questions from the checker's own view of the cells. */
import type { CellLanguage } from '../../../kernel/cells/check/index.js'
import { declarationAt, declaredNamesOf, meaningAt } from './meaning.js'
import { proposalAt, proposalsAt } from './proposals.js'
import type { LanguageAnswer, LanguageCall } from './protocol.js'
import { renameTargetAt, renamingAt } from './renaming.js'
import { signatureAt } from './signature.js'

/** Never throws for any text: a feature that fails inside TypeScript has nothing to say. */
export function answerLanguage(cells: CellLanguage, call: LanguageCall): LanguageAnswer {
  cells.setCells(call.cells)
  switch (call.ask) {
    case 'proposals':
      return quietly([], () => proposalsAt(cells, call.question))
    case 'proposal':
      return quietly(null, () => proposalAt(cells, call.question))
    case 'signature':
      return quietly(null, () => signatureAt(cells, call.question))
    case 'meaning':
      return quietly(null, () => meaningAt(cells, call.question))
    case 'declaration':
      return quietly(null, () => declarationAt(cells, call.question))
    case 'renameTarget':
      return quietly(cannotRename, () => renameTargetAt(cells, call.question))
    case 'renaming':
      return quietly(cannotRename, () => renamingAt(cells, call.question))
    case 'repairs':
      return quietly([], () => cells.repairs(call.question.cell))
    case 'declaredNames':
      return quietly([], () => declaredNamesOf(cells, call.question))
  }
}

const cannotRename = { ok: false, message: 'The name cannot be changed while the cell cannot be read.' } as const

function quietly<T>(otherwise: T, work: () => T): T {
  try {
    return work()
  } catch {
    return otherwise
  }
}

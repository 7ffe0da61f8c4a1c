/** Two sides by their names: revisions, or the text as it stands with what results it has. */
import { type ComparedSide, compareSides } from '../../kernel/cells/revision/index.js'
import type { ComparedName, NotebookId, RevisionComparison } from '../../shared/contracts/index.js'
import type { Revisions } from './revisions.js'

export interface Sides {
  readonly from: ComparedSide
  readonly to: ComparedSide
}

/** @throws Trouble REVISION_UNKNOWN */
export async function sidesOf(
  revisions: Revisions,
  id: NotebookId,
  from: ComparedName,
  to: ComparedName,
): Promise<Sides> {
  return { from: await sideOf(revisions, id, from), to: await sideOf(revisions, id, to) }
}

/** @throws Trouble REVISION_UNKNOWN */
export async function compareNamed(
  revisions: Revisions,
  id: NotebookId,
  from: ComparedName,
  to: ComparedName,
): Promise<RevisionComparison> {
  const sides = await sidesOf(revisions, id, from, to)
  return compareSides(sides.from, sides.to)
}

async function sideOf(revisions: Revisions, id: NotebookId, name: ComparedName): Promise<ComparedSide> {
  if (name === 'live') return { label: 'as it stands', content: await revisions.live(id) }
  const { record } = await revisions.read(id, name)
  return { label: `revision ${name}`, content: record.content }
}

/** What issuing a revision freezes: the text and the results that belong to it, as the server has them at one moment. */
import { freezeText, type TextToFreeze } from '../../kernel/cells/revision/index.js'
import type { CellResult, RevisionContent, UnsettledCell } from '../../shared/contracts/index.js'
import type { ServerKernel } from '../kernel.js'
import type { LiveDocument } from '../live/index.js'
import { type ResultShelf, type Shelved, sizingCells } from '../results/index.js'

/** Someone who types without a pause does not put it off for ever. */
const attempts = 20

/** Results are looked up while others may type, so it is tried until the text was the same before and after. */
export async function freeze(
  document: LiveDocument,
  shelf: ResultShelf,
  kernel: ServerKernel,
): Promise<RevisionContent> {
  for (let attempt = 1; ; attempt += 1) {
    const { content, notebook } = document
    const shelved = await shelf.read(document)
    const methods = (await kernel.methods?.(sizingCells(document))) ?? []
    if (document.content !== content && attempt < attempts) continue
    return contentOf(notebook, shelved, kernel.hash, methods)
  }
}

/** What a notebook with these results would freeze. */
export function contentOf(
  notebook: TextToFreeze,
  shelved: Shelved,
  kernelHash: string,
  methods: readonly string[],
): RevisionContent {
  const text = freezeText(notebook)
  return {
    text,
    results: inPageOrder(shelved.current, text),
    kernelHash,
    methods: [...methods],
    unsettled: unsettledOf(text, shelved),
  }
}

function inPageOrder(results: readonly CellResult[], { cells }: RevisionContent['text']): CellResult[] {
  const byCell = new Map(results.map((result) => [result.cell, result]))
  return cells.flatMap(({ id }) => byCell.get(id) ?? [])
}

function unsettledOf({ cells }: RevisionContent['text'], { current, outOfDate }: Shelved): UnsettledCell[] {
  const results = new Map(current.map((result) => [result.cell, result]))
  const older = new Set(outOfDate.map((result) => result.cell))
  return cells.flatMap(({ id: cell, kind, number }): UnsettledCell[] => {
    if (kind !== 'sizing') return []
    const result = results.get(cell)
    if (result === undefined) return [{ cell, number, state: older.has(cell) ? 'out of date' : 'not computed' }]
    return result.outcome === 'computed' ? [] : [{ cell, number, state: result.outcome }]
  })
}

/** `cell 4 (failed), cells 5 and 6 (held back)`. */
export function unsettledWords(cells: readonly UnsettledCell[]): string {
  const states = new Map<string, string[]>()
  for (const { number, state } of cells) states.set(state, [...(states.get(state) ?? []), number])
  return [...states]
    .map(([state, numbers]) => `${numbers.length === 1 ? 'cell' : 'cells'} ${listed(numbers)} (${state})`)
    .join(', ')
}

function listed(numbers: readonly string[]): string {
  const [last, ...before] = [...numbers].reverse()
  return before.length === 0 ? (last ?? '') : `${before.reverse().join(', ')} and ${last}`
}

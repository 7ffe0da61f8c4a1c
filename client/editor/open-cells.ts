/** The cells that are open in an editor, by buffer, so that one set of language providers serves them all. */
import type { CellId, NameDimension } from '../../shared/contracts/index.js'
import type { EditorContext } from './context.js'
import { Emitter, type editor as monacoEditor } from './monaco.js'

export interface OpenCell {
  readonly cell: CellId
  readonly context: EditorContext
  dimensions: DimensionsByName
  /** Why the dimension of a name is not known, where that is known. */
  reasons: ReadonlyMap<string, string>
}

/** Dimension of each top-level name of the notebook, by cell and name. */
export type DimensionsByName = ReadonlyMap<string, string | null>

/** Longer than the editor takes a caret for moving. [ms] */
const settled = 1200

const open = new Map<string, OpenCell>()
const dimensionsChanged = new Emitter<void>()

/** Fires when inferred units may have changed. */
export const onDimensions = dimensionsChanged.event

export const openCellOf = (model: monacoEditor.ITextModel): OpenCell | undefined => open.get(model.uri.toString())

export function registerOpenCell(model: monacoEditor.ITextModel, cell: OpenCell): () => void {
  const key = model.uri.toString()
  open.set(key, cell)
  return () => open.delete(key)
}

export function setDimensions(cell: OpenCell, names: readonly NameDimension[]): void {
  const before = cell.dimensions
  cell.dimensions = new Map(names.map((name) => [dimensionKey(name.cell, name.name), name.dimension]))
  cell.reasons = new Map(
    names.flatMap(({ cell: owner, name, why }) =>
      why === undefined ? [] : [[dimensionKey(owner, name), why] as const],
    ),
  )
  const changed = before.size !== names.length || [...cell.dimensions].some(([key, now]) => before.get(key) !== now)
  if (!changed) return
  dimensionsChanged.fire()
  // Left of a caret that is moving the editor keeps the width of tags and cuts new ones short; they are drawn again in full.
  setTimeout(() => dimensionsChanged.fire(), settled)
}

export const dimensionKey = (cell: CellId, name: string): string => `${cell} ${name}`

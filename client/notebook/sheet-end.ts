/** Below the last cell: where the next one begins, and what concerns all cells. */
import type { CellKind } from '../../shared/contracts/index.js'

export interface SheetEndCommands {
  add(kind: CellKind): void
  /** Opens or folds every cell. */
  foldAll(folded: boolean): void
  renumber(): void
  /** The notebook file is about to be fetched; false keeps it from being fetched. */
  mayExport(): boolean
}

export function makeSheetEnd(document: Document, notebook: string, commands: SheetEndCommands): HTMLElement {
  const end = document.createElement('div')
  end.className = 'sheet-end'
  const button = (label: string, act: () => void) => {
    const made = document.createElement('button')
    made.type = 'button'
    made.className = 'small-button'
    made.textContent = label
    made.addEventListener('click', act)
    return made
  }
  const adding = (kind: CellKind, label: string) => {
    const made = button(label, () => commands.add(kind))
    made.dataset.add = kind
    return made
  }
  const whole = document.createElement('div')
  whole.className = 'whole'
  whole.append(
    button('Open all', () => commands.foldAll(false)),
    button('Fold all', () => commands.foldAll(true)),
    button('Renumber cells', () => commands.renumber()),
    exportLink(document, notebook, commands),
  )
  end.append(adding('rationale', 'Add rationale'), adding('sizing', 'Add sizing'), whole)
  return end
}

/** The server gives the file, so that it is the very one it keeps, review threads and revisions included. */
function exportLink(document: Document, notebook: string, commands: SheetEndCommands): HTMLAnchorElement {
  const link = document.createElement('a')
  link.href = `/api/notebooks/${encodeURIComponent(notebook)}/file`
  link.download = ''
  link.className = 'small-button'
  link.textContent = 'Export file'
  link.addEventListener('click', (event) => {
    if (!commands.mayExport()) event.preventDefault()
  })
  return link
}

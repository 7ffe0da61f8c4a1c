/** Below the last cell: where the next one begins, and what concerns all cells. */
import type { CellKind } from '../../shared/contracts/index.js'
import type { UnitSystem } from '../../shared/rendering/page.js'

export interface SheetEndCommands {
  add(kind: CellKind): void
  /** Opens or folds every cell. */
  foldAll(folded: boolean): void
  renumber(): void
  /** The notebook file is about to be fetched; false keeps it from being fetched. */
  mayExport(): boolean
  /** In which units a file is to show its values. */
  units(): UnitSystem
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
  )
  end.append(
    adding('rationale', 'Add rationale'),
    adding('sizing', 'Add sizing'),
    whole,
    makeExports(document, notebook, commands),
  )
  return end
}

/** What can be taken away, in words: the server gives each, as it keeps the notebook. */
const exportsOffered: readonly (readonly [path: string, label: string, about: string])[] = [
  ['sheet.html', 'Sheet as one file', 'Opens in any browser without a network: sheet, register, requirements, methods'],
  ['register.csv', 'Register as a table', 'Assumptions with values, ranges, sources and where they are used (CSV)'],
  ['compliance.csv', 'Requirements as a table', 'Actual, limit and margin of each requirement (CSV)'],
  ['file', 'Export file', 'The notebook itself, which Import on the list of notebooks takes in again (JSON)'],
]

function makeExports(document: Document, notebook: string, commands: SheetEndCommands): HTMLElement {
  const line = document.createElement('div')
  line.className = 'whole exports'
  for (const [path, label, about] of exportsOffered) {
    const link = document.createElement('a')
    const address = `/api/notebooks/${encodeURIComponent(notebook)}/${path}`
    link.href = address
    link.download = ''
    link.className = 'small-button'
    link.textContent = label
    link.title = about
    link.addEventListener('click', (event) => {
      if (!commands.mayExport()) event.preventDefault()
      const units = commands.units()
      // The notebook itself has no units but those that its author wrote.
      if (path !== 'file') link.href = units === 'as written' ? address : `${address}?units=${units}`
    })
    line.append(link)
  }
  return line
}

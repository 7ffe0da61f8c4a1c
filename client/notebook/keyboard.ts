/** Keys of the page, of the cell that has the focus and of the one that is being edited, by the one table of keys. */
import { type CellId, commandOf, type KeyCommand, type KeyPlace } from '../../shared/contracts/index.js'

export interface PageKeys {
  undo(): void
  redo(): void
  /** Stops a run if there is one to stop. */
  stop(): boolean
  search(): void
  /** Into the side drawer, or back to the sheet. */
  drawer(): void
  /** A key on a cell, or while writing in it. False when it is not for the page: it then goes on to whoever else wants it. */
  inCell(command: KeyCommand, cell: CellId): boolean
}

export function listenToKeys(document: Document, keys: PageKeys): void {
  // On the way down, so that the page has its keys before whoever else wants them.
  document.addEventListener(
    'keydown',
    (event) => {
      if (event.isComposing) return
      const { places, cell } = whereIs(event.target)
      const command = commandOf(event, places)
      if (command !== undefined && obey(command, keys, cell)) swallow(event)
    },
    true,
  )
}

function obey(command: KeyCommand, keys: PageKeys, cell: CellId | undefined): boolean {
  if (command === 'stop') return keys.stop()
  if (command === 'undo' || command === 'redo' || command === 'search' || command === 'drawer') {
    keys[command]()
    return true
  }
  return cell !== undefined && keys.inCell(command, cell)
}

/**
 * The innermost place first. While writing, Escape leaves the cell; only then does it stop a run, or who types and leaves would stop
 * the very run that was to compute it.
 */
function whereIs(target: EventTarget | null): { readonly places: readonly KeyPlace[]; readonly cell?: CellId } {
  const cell = target instanceof Element ? target.closest<HTMLElement>('.cell') : null
  const id = cell?.dataset.cell as CellId | undefined
  if (cell === null || id === undefined) return { places: ['page'] }
  if (target === cell) return { places: ['cell', 'page'], cell: id }
  const writing = target instanceof Element && target.closest('.surface') !== null
  return writing ? { places: ['editor', 'page'], cell: id } : { places: ['page'] }
}

function swallow(event: KeyboardEvent): void {
  event.preventDefault()
  event.stopPropagation()
}

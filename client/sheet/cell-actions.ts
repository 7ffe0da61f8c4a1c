/** What can be done with a cell, as plain buttons on the rule below it. Only the cell at hand lends its buttons to the Tab key. */
import type { CellId, CellKind } from '../../shared/contracts/index.js'

export interface CellCommands {
  edit(id: CellId): void
  add(kind: CellKind, after: CellId): void
  move(id: CellId, by: -1 | 1): void
  remove(id: CellId): void
  /** Tells the reader something, aloud and on the page. */
  say(sentence: string): void
}

export function makeActions(document: Document, id: CellId, commands: CellCommands): HTMLElement {
  const group = document.createElement('div')
  group.className = 'actions'
  group.setAttribute('role', 'group')
  group.setAttribute('aria-label', 'Change this cell')
  const button = (label: string, action: string, act: () => void) => {
    const made = document.createElement('button')
    made.type = 'button'
    made.className = 'small-button'
    made.textContent = label
    made.dataset.action = action
    made.tabIndex = -1
    made.addEventListener('click', act)
    group.append(made)
  }
  button('Edit', 'edit', () => commands.edit(id))
  button('Add rationale', 'add-rationale', () => commands.add('rationale', id))
  button('Add sizing', 'add-sizing', () => commands.add('sizing', id))
  button('Up', 'up', () => commands.move(id, -1))
  button('Down', 'down', () => commands.move(id, 1))
  button('Remove', 'remove', () => commands.remove(id))
  return group
}

/** The buttons of the cell at hand are in the Tab order, those of the others are not. */
export function takeTabOrder(section: Element, at: boolean): void {
  for (const button of section.querySelectorAll<HTMLElement>('.actions button')) button.tabIndex = at ? 0 : -1
}

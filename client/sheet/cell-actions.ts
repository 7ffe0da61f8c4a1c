/**
 * What can be done with a cell, as plain buttons on the rule below it: the common ones, and the others when asked for. Only the cell at
 * hand lends its buttons to the Tab key.
 */
import { type CellId, type CellKind, keysForAria } from '../../shared/contracts/index.js'

export interface CellCommands {
  edit(id: CellId): void
  /** Adds a cell beside the named one. */
  add(kind: CellKind, beside: CellId, where: 'above' | 'below'): void
  move(id: CellId, by: -1 | 1): void
  /** Moves the cell to that place of the page, counted from 0. */
  moveTo(id: CellId, place: number): void
  duplicate(id: CellId): void
  /** Splits the cell that is being edited before the line of the caret. */
  split(id: CellId): void
  joinWithNext(id: CellId): void
  /** From rationale to sizing and back. */
  changeKind(id: CellId): void
  remove(id: CellId): void
  /** Tells the reader something, aloud and on the page. */
  say(sentence: string): void
}

export function makeActions(document: Document, id: CellId, kind: CellKind, commands: CellCommands): HTMLElement {
  const group = document.createElement('div')
  group.className = 'actions'
  group.setAttribute('role', 'group')
  group.setAttribute('aria-label', 'Change this cell')
  const row = document.createElement('div')
  const more = document.createElement('div')
  more.hidden = true
  const button = (into: HTMLElement, label: string, action: string, act: () => void, keys = '') => {
    const made = document.createElement('button')
    made.type = 'button'
    made.className = 'small-button'
    made.textContent = label
    made.dataset.action = action
    made.tabIndex = -1
    if (keys !== '') made.setAttribute('aria-keyshortcuts', keys)
    made.addEventListener('click', act)
    into.append(made)
    return made
  }
  button(row, 'Edit', 'edit', () => commands.edit(id), keysForAria('edit', 'cell'))
  button(row, 'Add rationale', 'add-rationale', () => commands.add('rationale', id, 'below'))
  button(row, 'Add sizing', 'add-sizing', () => commands.add('sizing', id, 'below'))
  button(row, 'Up', 'up', () => commands.move(id, -1), keysForAria('move up', 'cell'))
  button(row, 'Down', 'down', () => commands.move(id, 1), keysForAria('move down', 'cell'))
  button(row, 'Remove', 'remove', () => commands.remove(id), keysForAria('remove', 'cell'))
  const opener = button(row, 'More', 'more', () => openMore(opener, more))
  opener.setAttribute('aria-expanded', 'false')
  button(more, 'Rationale above', 'add-rationale-above', () => commands.add('rationale', id, 'above'))
  button(more, 'Sizing above', 'add-sizing-above', () => commands.add('sizing', id, 'above'))
  button(more, 'Duplicate', 'duplicate', () => commands.duplicate(id))
  button(more, 'Split at the caret', 'split', () => commands.split(id), keysForAria('split', 'editor'))
  button(more, 'Join with next', 'join', () => commands.joinWithNext(id), keysForAria('join', 'cell'))
  const other = kind === 'rationale' ? 'sizing' : 'rationale'
  button(more, `Make it ${other}`, 'kind', () => commands.changeKind(id))
  group.append(row, more)
  return group
}

function openMore(opener: HTMLElement, more: HTMLElement): void {
  more.hidden = !more.hidden
  opener.setAttribute('aria-expanded', String(!more.hidden))
}

/** The buttons of the cell at hand are in the Tab order, those of the others are not, and show no more than the common ones. */
export function takeTabOrder(section: Element, at: boolean): void {
  const lent = section.querySelectorAll<HTMLElement>('.actions button, .questions button')
  for (const button of lent) button.tabIndex = at ? 0 : -1
  if (at) return
  const opener = section.querySelector<HTMLElement>('.actions [data-action="more"]')
  const more = section.querySelector<HTMLElement>('.actions > :last-child')
  if (opener?.getAttribute('aria-expanded') === 'true' && more !== null) openMore(opener, more)
}

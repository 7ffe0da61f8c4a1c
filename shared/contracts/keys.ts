/**
 * Every key of the page in one table: what is listened for, what buttons announce and what the page of words and keys says all come from
 * here. `Ctrl` is the command key on keyboards that have one. Keys of the browser and of every text field are not repeated.
 */

/** Where a key works: on the whole page, on a cell or a figure that has the focus, while writing, in the search field, while dragging, in the side drawer. */
export type KeyPlace = 'page' | 'cell' | 'editor' | 'figure' | 'search' | 'drag' | 'drawer'

export interface KeyEntry {
  /** What the page does at it. */
  readonly command: string
  /** One or more, parted by commas: `Ctrl+Shift+Z, Ctrl+Y`. */
  readonly keys: string
  /** In words that complete "this key ...". */
  readonly does: string
  readonly where: KeyPlace
}

export const keyTable = [
  { command: 'undo', keys: 'Ctrl+Z', does: 'undo your own last step, in any cell', where: 'page' },
  { command: 'redo', keys: 'Ctrl+Shift+Z, Ctrl+Y', does: 'make it again', where: 'page' },
  { command: 'stop', keys: 'Escape', does: 'stop a long computation; the last good values stay', where: 'page' },
  { command: 'search', keys: 'Ctrl+Alt+F', does: 'search in the notebook', where: 'page' },
  {
    command: 'drawer',
    keys: 'Ctrl+Alt+E',
    does: 'go into the side drawer, which opens; from inside it, back to the sheet',
    where: 'page',
  },
  { command: 'edit', keys: 'Enter', does: 'write in the cell', where: 'cell' },
  { command: 'add below', keys: 'Insert', does: 'add a cell of the same kind below', where: 'cell' },
  { command: 'add above', keys: 'Shift+Insert', does: 'add a cell of the same kind above', where: 'cell' },
  { command: 'move up', keys: 'Alt+ArrowUp', does: 'move the cell up', where: 'cell' },
  { command: 'move down', keys: 'Alt+ArrowDown', does: 'move the cell down', where: 'cell' },
  { command: 'open', keys: 'ArrowRight', does: 'open a folded cell', where: 'cell' },
  { command: 'fold', keys: 'ArrowLeft', does: 'fold the cell to its heading', where: 'cell' },
  { command: 'join', keys: 'Ctrl+Alt+J', does: 'join the cell with the next one', where: 'cell' },
  { command: 'remove', keys: 'Delete', does: 'remove the cell; undo brings it back', where: 'cell' },
  {
    command: 'leave',
    keys: 'Escape',
    does: 'close what is open, then leave the cell; Tab goes on from there',
    where: 'editor',
  },
  { command: 'propose', keys: 'Ctrl+Space', does: 'propose names and arguments', where: 'editor' },
  { command: 'mend', keys: 'Ctrl+.', does: 'offer mends for what is marked at the caret', where: 'editor' },
  {
    command: 'declaration',
    keys: 'Ctrl+Alt+D',
    does: 'go to the cell that declares the name at the caret (also Ctrl and click)',
    where: 'editor',
  },
  { command: 'rename', keys: 'F2', does: 'rename the name at the caret in every cell', where: 'editor' },
  { command: 'split', keys: 'Ctrl+Alt+S', does: 'split the cell before the line of the caret', where: 'editor' },
  { command: 'join', keys: 'Ctrl+Alt+J', does: 'join the cell with the next one', where: 'editor' },
  { command: 'next value', keys: 'ArrowRight', does: 'read the next value of the series', where: 'figure' },
  { command: 'previous value', keys: 'ArrowLeft', does: 'read the value before it', where: 'figure' },
  { command: 'next series', keys: 'ArrowDown', does: 'read the next series, at the value nearest', where: 'figure' },
  { command: 'previous series', keys: 'ArrowUp', does: 'read the series before it', where: 'figure' },
  { command: 'first value', keys: 'Home', does: 'read the first value of the series', where: 'figure' },
  { command: 'last value', keys: 'End', does: 'read the last value of the series', where: 'figure' },
  { command: 'leave values', keys: 'Escape', does: 'leave the values', where: 'figure' },
  { command: 'next', keys: 'Enter', does: 'go to the next place found', where: 'search' },
  { command: 'previous', keys: 'Shift+Enter', does: 'go to the previous place found', where: 'search' },
  { command: 'close', keys: 'Escape', does: 'end the search at the place found last', where: 'search' },
  { command: 'cancel', keys: 'Escape', does: 'leave the dragged cell where it was', where: 'drag' },
  { command: 'close drawer', keys: 'Escape', does: 'close the drawer', where: 'drawer' },
] as const satisfies readonly KeyEntry[]

export type KeyCommand = (typeof keyTable)[number]['command']

/** What is needed of a keyboard event. */
export interface PressedKey {
  readonly key: string
  readonly code: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
  readonly shiftKey: boolean
  getModifierState?(modifier: string): boolean
}

/** The command of a pressed key at the first of the places that knows it, `undefined` when it means nothing there. */
export function commandOf(pressed: PressedKey, places: readonly KeyPlace[]): KeyCommand | undefined {
  for (const place of places)
    for (const { command, keys, where } of keyTable)
      if (where === place && keys.split(', ').some((combination) => matches(pressed, combination))) return command
  return undefined
}

/** As `aria-keyshortcuts` wants it: `Control+Shift+Z Control+Y`. */
export function keysForAria(command: KeyCommand, where: KeyPlace): string {
  const entry = keyTable.find((each) => each.command === command && each.where === where)
  return (entry?.keys ?? '').split(', ').join(' ').replaceAll('Ctrl', 'Control')
}

function matches(pressed: PressedKey, combination: string): boolean {
  const parts = combination.split('+')
  const key = parts.at(-1) ?? ''
  const asked = (modifier: string) => parts.includes(modifier)
  if (asked('Ctrl') !== (pressed.ctrlKey || pressed.metaKey) || asked('Alt') !== pressed.altKey) return false
  if (asked('Shift') !== pressed.shiftKey) return false
  // AltGr types letters on many keyboards and arrives as Ctrl+Alt.
  if (asked('Alt') && pressed.getModifierState?.('AltGraph') === true) return false
  const letter = /^[A-Z]$/.test(key)
  if (!letter) return pressed.key === key
  // With Alt some systems report the sign that the key would type.
  return pressed.key.toUpperCase() === key || (asked('Alt') && pressed.code === `Key${key}`)
}

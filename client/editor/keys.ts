/** Keys of the cell editor beyond those of every text field, in words. */
export const editorKeys: readonly { readonly keys: string; readonly does: string }[] = [
  { keys: 'Escape', does: 'close what is open, then leave the cell; Tab goes on from there' },
  { keys: 'Ctrl+Space', does: 'propose names and arguments' },
  { keys: 'Ctrl+Alt+D', does: 'go to the cell that declares the name at the caret (also Ctrl and click)' },
  { keys: 'F2', does: 'rename the name at the caret in every cell' },
  { keys: 'Ctrl+Z, Ctrl+Y', does: 'undo and redo your own edits, in any cell' },
]

/** All keys as one description, for people who cannot see a list. */
export const keysInWords: string = editorKeys.map(({ keys, does }) => `${keys}: ${does}.`).join(' ')

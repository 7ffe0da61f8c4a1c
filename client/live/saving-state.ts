/** How safe the author's edits are, in words. */

export interface SavingState {
  readonly connected: boolean
  /** A first answer of the server has come, so the text may be edited. */
  readonly ready: boolean
  readonly unsaved: number
  /** Why the server does not take an edit. */
  readonly refusal?: string
}

export function savingWords(state: SavingState): string {
  if (state.refusal !== undefined) return `not saved: ${state.refusal}`
  if (!state.connected) {
    if (!state.ready) return 'connecting'
    return state.unsaved === 0
      ? 'not connected; edits will be kept here'
      : `not connected: ${edits(state.unsaved)} kept here`
  }
  return state.unsaved === 0 ? 'all edits saved' : 'saving'
}

const edits = (count: number) => (count === 1 ? '1 edit' : `${count} edits`)

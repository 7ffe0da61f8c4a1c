/** Keys that work anywhere on the page. */

export interface PageKeys {
  undo(): void
  redo(): void
  /** Stops a run if there is one to stop. */
  stop(): boolean
}

export function listenToKeys(document: Document, keys: PageKeys): void {
  // On the way down, so that Escape stops a run before it closes an editor.
  document.addEventListener(
    'keydown',
    (event) => {
      if (event.isComposing) return
      if (event.key === 'Escape' && keys.stop()) return swallow(event)
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return
      const key = event.key.toLowerCase()
      if (key === 'z' && !event.shiftKey) keys.undo()
      else if ((key === 'z' && event.shiftKey) || key === 'y') keys.redo()
      else return
      swallow(event)
    },
    true,
  )
}

function swallow(event: KeyboardEvent): void {
  event.preventDefault()
  event.stopPropagation()
}

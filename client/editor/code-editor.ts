/**
 * The way to the code editor, without the editor: its code (megabytes) is fetched when a sizing cell is first edited, or
 * earlier when the page has nothing else to do.
 */
import type { EditorContext } from './context.js'
import type { OpenSurface } from './editing-surface.js'

const load = () => import('./cell-editor.js')
let loading: ReturnType<typeof load> | undefined

/** Loads the editor's code once; a failed attempt is tried again at the next call. */
export function loadCodeEditor(): Promise<unknown> {
  return loadOnce()
}

function loadOnce(): ReturnType<typeof load> {
  loading ??= load().catch((error: unknown) => {
    loading = undefined
    throw error
  })
  return loading
}

/** Surfaces of the code editor. Opening rejects when its code cannot be loaded; the sheet then uses the plain text area. */
export function codeEditor(context: EditorContext): OpenSurface {
  return async (options) => {
    const editor = await loadOnce()
    return editor.openCellEditor(context, options)
  }
}

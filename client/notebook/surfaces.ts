/** Which editing surface a cell opens in, by its kind: this is the one place to change when another surface takes over. */

import type { CellKind } from '../../shared/contracts/index.js'
import { codeEditor, loadCodeEditor } from '../editor/code-editor.js'
import type { EditorContext } from '../editor/context.js'
import type { OpenSurface } from '../editor/editing-surface.js'
import { plainUntilLoaded } from '../editor/plain-until-loaded.js'
import { openTextArea } from '../sheet/text-area.js'

/** Prose in a text area; code in the code editor, and as plain text until that is loaded or when it cannot be. */
export function surfaces(context: EditorContext): (kind: CellKind) => OpenSurface {
  const code = plainUntilLoaded(
    (options) => openTextArea({ ...options, manner: 'code' }),
    codeEditor(context),
    loadCodeEditor,
  )
  return (kind) => (kind === 'rationale' ? (options) => openTextArea({ ...options, manner: 'prose' }) : code)
}

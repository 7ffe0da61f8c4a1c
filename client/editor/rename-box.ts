/** Asks for a new name right below the old one. Enter changes it in every cell, Escape leaves everything as it was. */
import { type IPosition, editor as monacoEditor } from './monaco.js'

/** `rename` does the work and resolves with a sentence when it cannot be done. */
export function openRenameBox(
  editor: monacoEditor.IStandaloneCodeEditor,
  at: IPosition,
  name: string,
  rename: (newName: string) => Promise<string | null>,
): void {
  const { form, input, output } = makeForm(editor.getContainerDomNode().ownerDocument, name)
  const widget: monacoEditor.IContentWidget = {
    allowEditorOverflow: true,
    suppressMouseDown: false,
    // Only now is it on the screen and able to take the focus.
    afterRender: () => {
      if (shown) return
      shown = true
      input.focus()
      input.select()
    },
    getId: () => 'cell.rename',
    getDomNode: () => form,
    getPosition: () => ({
      position: at,
      preference: [
        monacoEditor.ContentWidgetPositionPreference.BELOW,
        monacoEditor.ContentWidgetPositionPreference.ABOVE,
      ],
    }),
  }
  let open = true
  let shown = false
  const close = () => {
    if (!open) return
    open = false
    editor.removeContentWidget(widget)
  }
  form.addEventListener('submit', async (event) => {
    event.preventDefault()
    const refusal = await rename(input.value)
    output.textContent = refusal ?? ''
    if (refusal !== null) return input.focus()
    close()
    editor.focus()
  })
  form.addEventListener('keydown', (event) => {
    event.stopPropagation()
    if (event.key !== 'Escape') return
    event.preventDefault()
    close()
    editor.focus()
  })
  form.addEventListener('focusout', (event) => {
    if (!(event.relatedTarget instanceof Node && form.contains(event.relatedTarget))) close()
  })
  editor.addContentWidget(widget)
}

function makeForm(document: Document, name: string) {
  const form = document.createElement('form')
  form.className = 'rename-box'
  const label = document.createElement('label')
  label.textContent = `New name of ${name} in every cell`
  const input = document.createElement('input')
  input.value = name
  input.spellcheck = false
  input.autocomplete = 'off'
  label.append(input)
  const output = document.createElement('output')
  form.append(label, output)
  return { form, input, output }
}

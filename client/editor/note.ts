/** A sentence at the caret that goes away with the next thing the person does; screen readers hear it. */
import { type IPosition, editor as monacoEditor } from './monaco.js'

export function showNote(editor: monacoEditor.IStandaloneCodeEditor, at: IPosition, sentence: string): void {
  const note = editor.getContainerDomNode().ownerDocument.createElement('p')
  note.className = 'editor-note'
  note.setAttribute('role', 'status')
  note.textContent = sentence
  const widget: monacoEditor.IContentWidget = {
    allowEditorOverflow: true,
    getId: () => 'cell.note',
    getDomNode: () => note,
    getPosition: () => ({
      position: at,
      preference: [
        monacoEditor.ContentWidgetPositionPreference.BELOW,
        monacoEditor.ContentWidgetPositionPreference.ABOVE,
      ],
    }),
  }
  editor.addContentWidget(widget)
  const ends = [editor.onDidChangeCursorPosition, editor.onDidChangeModelContent, editor.onDidBlurEditorWidget].map(
    (event: (listener: () => void) => { dispose(): void }) =>
      event(() => {
        for (const end of ends) end.dispose()
        editor.removeContentWidget(widget)
      }),
  )
}

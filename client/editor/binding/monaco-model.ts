/** One editor and its buffer as the binding sees them: offsets instead of lines, edits instead of events. */
import type { editor as monacoEditor } from 'monaco-editor/editor'
import { Range, Selection } from '../monaco.js'
import type { BoundModel, OffsetSelection, TextEdit } from './bound-model.js'

export function boundMonaco(editor: monacoEditor.IStandaloneCodeEditor, model: monacoEditor.ITextModel): BoundModel {
  const rangeOf = (start: number, end: number) => {
    const from = model.getPositionAt(start)
    const to = model.getPositionAt(end)
    return new Range(from.lineNumber, from.column, to.lineNumber, to.column)
  }
  return {
    value: () => model.getValue(),
    apply(edits) {
      model.applyEdits(
        edits.map(({ at, removed, inserted }) => ({
          range: rangeOf(at, at + removed),
          text: inserted,
          forceMoveMarkers: false,
        })),
      )
    },
    onEdits(listener) {
      const end = model.onDidChangeContent((event) => {
        const edits = event.changes.map(
          ({ rangeOffset, rangeLength, text }): TextEdit => ({ at: rangeOffset, removed: rangeLength, inserted: text }),
        )
        listener(edits.sort((a, b) => a.at - b.at))
      })
      return () => end.dispose()
    },
    selections: () =>
      (editor.getSelections() ?? []).map(
        (selection): OffsetSelection => ({
          anchor: model.getOffsetAt(selection.getSelectionStart()),
          caret: model.getOffsetAt(selection.getPosition()),
        }),
      ),
    select(selections) {
      if (selections.length === 0) return
      editor.setSelections(
        selections.map(({ anchor, caret }) => {
          const from = model.getPositionAt(anchor)
          const to = model.getPositionAt(caret)
          return new Selection(from.lineNumber, from.column, to.lineNumber, to.column)
        }),
      )
    },
  }
}

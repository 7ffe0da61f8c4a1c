/** The code editor as an editing surface for one sizing cell. Loaded late (code-editor.ts); everything here may be heavy. */
import './look/cell-editor.css'
import type { NameDimension } from '../../shared/contracts/index.js'
import { applyRenaming } from './apply-renaming.js'
import { boundMonaco } from './binding/monaco-model.js'
import { TextBinding } from './binding/text-binding.js'
import type { EditorContext } from './context.js'
import type { CaretPlace, EditingSurface, SurfaceOptions } from './editing-surface.js'
import { marksOf } from './findings.js'
import { keysInWords } from './keys.js'
import { cellLanguage, registerCellLanguage } from './look/cell-language.js'
import { editorOptions, modelOptions, quietServices, scrollbar } from './look/options.js'
import { dressInPaper } from './look/theme.js'
import { type IPosition, KeyCode, KeyMod, editor as monacoEditor, Uri } from './monaco.js'
import { showNote } from './note.js'
import { type OpenCell, registerOpenCell, setDimensions } from './open-cells.js'
import { registerProviders } from './providers.js'
import { openRenameBox } from './rename-box.js'

/** How long a text outlives its editor. [ms] */
const lingering = 2000

let prepared = false
let opened = 0

/** What concerns the page as a whole, done before the first editor. */
function prepareOnce(): void {
  if (prepared) return
  prepared = true
  dressInPaper()
  registerCellLanguage()
  registerProviders(cellLanguage)
  void document.fonts.ready.then(() => monacoEditor.remeasureFonts())
}

export function openCellEditor(context: EditorContext, options: SurfaceOptions): EditingSurface {
  const { container, text, undo } = options
  container.classList.add('cell-editor')
  opened += 1
  // The first editor brings its services with it, so it comes before anything that would make others.
  const editor = monacoEditor.create(
    container,
    { ...editorOptions(container, options.label), model: null },
    quietServices,
  )
  container.querySelector('textarea')?.setAttribute('aria-description', keysInWords)
  prepareOnce()
  const model = monacoEditor.createModel('', cellLanguage, Uri.parse(`file:///cells/${options.cell}-${opened}.ts`))
  model.updateOptions(modelOptions)
  leaveUndoToTheNotebook(model, undo)
  editor.setModel(model)
  const open: OpenCell = { cell: options.cell, context, dimensions: new Map(), reasons: new Map() }
  const endOpen = registerOpenCell(model, open)
  const binding = new TextBinding(boundMonaco(editor, model), text, undo, options.onRefused)
  const mark = (findings: SurfaceOptions['findings'] = []) =>
    monacoEditor.setModelMarkers(
      model,
      'cells',
      marksOf(model, findings, (cell) => context.numberOf(cell)),
    )
  addKeys(editor, open, options)
  keepHeight(editor, container)
  mark(options.findings)
  setDimensions(open, options.dimensions ?? [])
  if (options.caret !== undefined) placeCaret(editor, options.caret)
  return {
    focus(caret) {
      if (caret !== undefined) placeCaret(editor, caret)
      editor.focus()
    },
    hasFocus: () => editor.hasWidgetFocus(),
    caret: () => placeOf(editor.getPosition()),
    setFindings: mark,
    setDimensions: (names: readonly NameDimension[]) => setDimensions(open, names),
    dispose() {
      binding.dispose()
      endOpen()
      editor.dispose()
      // What was asked for before the editor went may still read the text; a model that is gone would throw at it.
      setTimeout(() => model.dispose(), lingering)
      container.classList.remove('cell-editor')
      container.style.removeProperty('height')
      container.replaceChildren()
    },
  }
}

const placeOf = (position: IPosition | null): CaretPlace => ({
  line: position?.lineNumber ?? 1,
  column: position?.column ?? 1,
})

function placeCaret(editor: monacoEditor.IStandaloneCodeEditor, { line, column }: CaretPlace): void {
  editor.setPosition({ lineNumber: line, column })
  editor.revealPosition({ lineNumber: line, column })
}

/** The editor's own undo would fight with edits of others; every way to it leads to the notebook's. */
function leaveUndoToTheNotebook(model: monacoEditor.ITextModel, undo: SurfaceOptions['undo']): void {
  Object.assign(model, {
    undo: () => void undo.undo(),
    redo: () => void undo.redo(),
    canUndo: () => undo.canUndo(),
    canRedo: () => undo.canRedo(),
  })
}

/** Beyond so many lines the editor scrolls by itself: it draws every line that has room, and thousands would hold up each key. */
const tallestLines = 300

/** As tall as its text: the page scrolls, the cell does not, as long as people write it. */
function keepHeight(editor: monacoEditor.IStandaloneCodeEditor, container: HTMLElement): void {
  const tallest = tallestLines * editor.getOption(monacoEditor.EditorOption.lineHeight)
  let scrolls = false
  const followText = () => {
    const height = editor.getContentHeight()
    container.style.height = `${Math.min(height, tallest)}px`
    if (height > tallest !== scrolls) {
      scrolls = height > tallest
      editor.updateOptions({ scrollbar: { ...scrollbar, vertical: scrolls ? 'visible' : 'hidden' } })
    }
    editor.layout()
  }
  editor.onDidContentSizeChange((event) => {
    if (event.contentHeightChanged) followText()
  })
  followText()
}

function addKeys(editor: monacoEditor.IStandaloneCodeEditor, open: OpenCell, options: SurfaceOptions): void {
  editor.addAction({
    id: 'cell.leave',
    label: 'Leave the cell',
    keybindings: [KeyCode.Escape],
    keybindingContext: '!suggestWidgetVisible && !parameterHintsVisible && !editorHasMultipleSelections',
    run: () => options.onLeave('cell'),
  })
  editor.addAction({
    id: 'cell.declaration',
    label: 'Go to the cell that declares the name',
    keybindings: [KeyMod.CtrlCmd | KeyMod.Alt | KeyCode.KeyD],
    run: () => goToDeclaration(editor, open, editor.getPosition()),
  })
  editor.addAction({
    id: 'cell.rename',
    label: 'Rename in every cell',
    keybindings: [KeyCode.F2],
    run: () => rename(editor, open, options),
  })
  editor.onMouseDown(({ event, target }) => {
    const onText = target.type === monacoEditor.MouseTargetType.CONTENT_TEXT
    if (onText && event.leftButton && (event.ctrlKey || event.metaKey))
      void goToDeclaration(editor, open, target.position)
  })
}

async function goToDeclaration(
  editor: monacoEditor.IStandaloneCodeEditor,
  { cell, context }: OpenCell,
  position: IPosition | null,
): Promise<void> {
  const model = editor.getModel()
  if (model === null || position === null) return
  const place = await context.ask('declaration', { cell, offset: model.getOffsetAt(position) }).catch(() => null)
  if (place === null) return showNote(editor, position, 'No cell declares a name here.')
  if (place.cell === cell) return placeCaret(editor, place)
  context.goTo(place.cell, place)
}

async function rename(
  editor: monacoEditor.IStandaloneCodeEditor,
  { cell, context }: OpenCell,
  options: SurfaceOptions,
): Promise<void> {
  const model = editor.getModel()
  const position = editor.getPosition()
  if (model === null || position === null) return
  const at = { cell, offset: model.getOffsetAt(position) }
  const target = await context.ask('renameTarget', at).catch(() => null)
  if (target === null) return
  if (!target.ok) return showNote(editor, position, target.message)
  openRenameBox(editor, model.getPositionAt(target.span.start), target.name, async (newName) => {
    const renaming = await context.ask('renaming', { ...at, newName }).catch(() => null)
    if (renaming === null) return 'The cells cannot be read just now; try again in a moment.'
    if (!renaming.ok) return renaming.message
    const done = applyRenaming(renaming.edits, target.name, (id) => context.textOf(id), options.undo)
    return done ? null : 'The cells changed meanwhile; look at the name and try again.'
  })
}

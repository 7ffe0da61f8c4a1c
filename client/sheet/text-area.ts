/** The plain text area as an editing surface: grows with its text, and leaves undo to the notebook. */
import { limits } from '../../shared/contracts/index.js'
import type { CaretPlace, EditingSurface, SurfaceOptions } from '../editor/editing-surface.js'
import { tooLong } from '../live/document.js'
import { offsetOfPlace, placeOfOffset } from './caret-place.js'
import { TextSynchronizer } from './text-synchronizer.js'

export interface TextAreaOptions extends Omit<SurfaceOptions, 'cell' | 'findings'> {
  /** Code is neither wrapped nor spell-checked; a line takes no line breaks and is left with Enter. */
  readonly manner: 'code' | 'prose' | 'line'
}

export function openTextArea(options: TextAreaOptions): EditingSurface {
  const area = options.container.ownerDocument.createElement('textarea')
  dress(area, options)
  options.container.replaceChildren(area)
  const grow = () => {
    area.style.height = 'auto'
    area.style.height = `${area.scrollHeight + area.offsetHeight - area.clientHeight}px`
  }
  const synchronizer = new TextSynchronizer(area, options.text, grow)
  area.addEventListener('input', () => {
    takeInput(area, synchronizer, options)
    grow()
  })
  area.addEventListener('compositionstart', () => synchronizer.hold(true))
  area.addEventListener('compositionend', () => synchronizer.hold(false))
  area.addEventListener('beforeinput', (event) => leaveUndoToTheNotebook(event, options))
  area.addEventListener('keydown', (event) => {
    const done = event.key === 'Escape' || (event.key === 'Enter' && options.manner === 'line')
    if (!done || event.isComposing) return
    event.preventDefault()
    event.stopPropagation()
    options.onLeave('cell')
  })
  const focus = (caret?: CaretPlace) => {
    grow()
    if (caret !== undefined) {
      const offset = offsetOfPlace(area.value, caret)
      area.setSelectionRange(offset, offset)
    }
    area.focus()
  }
  return {
    focus,
    hasFocus: () => area.ownerDocument.activeElement === area,
    caret: () => placeOfOffset(area.value, area.selectionStart),
    setFindings: () => undefined,
    setDimensions: () => undefined,
    dispose() {
      synchronizer.close()
      options.container.replaceChildren()
    },
  }
}

function dress(area: HTMLTextAreaElement, { manner, label }: TextAreaOptions): void {
  area.className = `text-area ${manner}`
  area.setAttribute('aria-label', label)
  area.rows = 1
  area.spellcheck = manner === 'prose'
  area.wrap = 'soft'
  area.setAttribute('autocapitalize', manner === 'code' ? 'off' : 'sentences')
  area.autocomplete = 'off'
}

/** The browser's own undo would fight with edits of others; the notebook's answers instead. */
function leaveUndoToTheNotebook(event: InputEvent, options: TextAreaOptions): void {
  if (event.inputType !== 'historyUndo' && event.inputType !== 'historyRedo') return
  event.preventDefault()
  if (event.inputType === 'historyUndo') options.undo.undo()
  else options.undo.redo()
}

function takeInput(area: HTMLTextAreaElement, synchronizer: TextSynchronizer, options: TextAreaOptions): void {
  const line = options.manner === 'line'
  if (line && area.value.includes('\n')) area.value = area.value.replace(/\s*\n\s*/g, ' ')
  const refusal = tooLong(area.value, line ? limits.titleCharacters : limits.sourceCharacters - 1)
  if (refusal === null) synchronizer.takeOwn()
  else {
    synchronizer.revert()
    options.onRefused(refusal)
  }
}

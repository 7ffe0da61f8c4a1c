/** The notebook's title, edited where it stands. */
import type * as Y from 'yjs'
import type { EditingSurface } from '../editor/editing-surface.js'
import { openTextArea } from '../sheet/text-area.js'

export class TitleEditor {
  readonly #heading: HTMLElement
  readonly #button: HTMLButtonElement
  readonly #container: HTMLElement
  #surface: EditingSurface | undefined

  constructor(heading: HTMLElement, open: () => void) {
    const document = heading.ownerDocument
    this.#heading = heading
    this.#button = document.createElement('button')
    this.#button.type = 'button'
    this.#button.className = 'small-button edit-title'
    this.#button.textContent = 'Edit title'
    this.#button.addEventListener('click', open)
    this.#container = document.createElement('div')
    this.#container.className = 'surface'
    const actions = document.createElement('div')
    actions.className = 'title-actions'
    actions.append(this.#button)
    heading.after(actions)
  }

  get editing(): boolean {
    return this.#surface !== undefined
  }

  open(text: Y.Text, undo: Y.UndoManager, say: (sentence: string) => void): void {
    if (this.editing) return
    this.#heading.dataset.editing = ''
    this.#heading.after(this.#container)
    this.#surface = openTextArea({
      container: this.#container,
      text,
      undo,
      label: 'Title of the notebook',
      manner: 'line',
      onLeave: () => {
        this.close()
        this.#button.focus()
      },
      onRefused: say,
    })
    this.#surface.focus({ line: 1, column: text.length + 1 })
  }

  close(): void {
    this.#surface?.dispose()
    this.#surface = undefined
    this.#container.remove()
    delete this.#heading.dataset.editing
  }
}

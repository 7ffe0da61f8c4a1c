/** The bar above the sheet: where one is, how safe the edits are, who else is here, and what can be done with the whole. */

import { keysForAria } from '../../shared/contracts/keys.js'

export interface BarCommands {
  undo(): void
  redo(): void
  computeAll(): void
  stop(): void
  search(): void
  print(): void
  drawer(): void
}

export class Bar {
  readonly element: HTMLElement
  readonly #saving: HTMLElement
  readonly #readers: HTMLElement
  readonly #undo: HTMLButtonElement
  readonly #redo: HTMLButtonElement
  readonly #compute: HTMLButtonElement
  readonly #stop: HTMLButtonElement
  readonly #progress: HTMLElement
  readonly #drawer: HTMLButtonElement

  /** `units` is the switch of units, which keeps itself. */
  constructor(document: Document, commands: BarCommands, units: HTMLElement) {
    this.element = document.createElement('header')
    this.element.className = 'bar'
    const mark = link(document, '/', 'Hoverfolio')
    mark.className = 'mark'
    mark.title = 'All notebooks'
    this.#saving = words(document, 'saving', 'connecting')
    this.#readers = words(document, 'readers', '')
    this.#progress = words(document, 'progress', '')
    this.#progress.hidden = true
    this.#undo = button(document, 'Undo', keysForAria('undo', 'page'), commands.undo)
    this.#redo = button(document, 'Redo', keysForAria('redo', 'page'), commands.redo)
    this.#compute = button(document, 'Compute all', '', commands.computeAll)
    this.#stop = button(document, 'Stop (Esc)', 'Escape', commands.stop)
    this.#stop.className = 'stop'
    this.#stop.hidden = true
    this.#drawer = button(document, 'Side drawer', keysForAria('drawer', 'page'), commands.drawer)
    this.#drawer.setAttribute('aria-controls', 'drawer')
    this.setDrawer(false)
    const tools = document.createElement('div')
    tools.className = 'tools'
    tools.append(
      this.#undo,
      this.#redo,
      this.#compute,
      this.#progress,
      this.#stop,
      button(document, 'Search', keysForAria('search', 'page'), commands.search),
      button(document, 'Print sheets', '', commands.print),
      this.#drawer,
      units,
    )
    this.element.append(mark, link(document, '/words', 'Words and keys'), this.#saving, this.#readers, tools)
    this.setUndo(false, false)
  }

  setSaving(state: string, safe: boolean): void {
    if (this.#saving.textContent !== state) this.#saving.textContent = state
    this.#saving.toggleAttribute('data-unsafe', !safe)
  }

  setReaders(count: number): void {
    this.#readers.textContent = count === 1 ? '1 reader here' : `${count} readers here`
  }

  setUndo(canUndo: boolean, canRedo: boolean): void {
    // Not `disabled`: a button that loses the focus while it is pressed repeatedly would lose the keyboard's place.
    this.#undo.setAttribute('aria-disabled', String(!canUndo))
    this.#redo.setAttribute('aria-disabled', String(!canRedo))
  }

  setDrawer(open: boolean): void {
    this.#drawer.setAttribute('aria-expanded', String(open))
  }

  focusDrawerButton(): void {
    this.#drawer.focus()
  }

  setRunning(running: boolean): void {
    if (!running && this.#stop === document.activeElement) this.#compute.focus()
    this.#stop.hidden = !running
    this.#progress.hidden = !running
  }

  /** Not announced: it changes too often to be listened to. */
  setProgress(text: string): void {
    if (this.#progress.textContent !== text) this.#progress.textContent = text
  }
}

function link(document: Document, address: string, label: string): HTMLAnchorElement {
  const made = document.createElement('a')
  made.href = address
  made.textContent = label
  return made
}

function words(document: Document, name: string, text: string): HTMLElement {
  const made = document.createElement('span')
  made.className = name
  made.textContent = text
  return made
}

function button(document: Document, label: string, keys: string, act: () => void): HTMLButtonElement {
  const made = document.createElement('button')
  made.type = 'button'
  made.textContent = label
  if (keys !== '') made.setAttribute('aria-keyshortcuts', keys)
  made.addEventListener('click', () => {
    if (made.getAttribute('aria-disabled') !== 'true') act()
  })
  return made
}

/**
 * Moving a cell by its grip, with mouse, pen or finger: a line shows where it would land, Escape leaves it where it was. The keyboard
 * has the same way with its own keys, so the grip itself is not a stop of the Tab key.
 */
import type { CellId } from '../../shared/contracts/index.js'
import { commandOf } from '../../shared/contracts/keys.js'
import { gapAt, placeForGap } from './drop-place.js'

/** A press that moves less than this is no drag. [px] */
const beginsAt = 4
/** So near to the upper or lower edge of the window the page scrolls under the drag. [px] */
const scrollZone = 72
const scrollStep = 14

export interface DragEvents {
  moveTo(id: CellId, place: number): void
  onCancelled(): void
}

export function makeGrip(document: Document): HTMLElement {
  const grip = document.createElement('span')
  grip.className = 'grip'
  grip.title = 'Drag to move the cell'
  grip.setAttribute('aria-hidden', 'true')
  return grip
}

/** Listens for drags among the cells in `rows`. */
export function listenToDrags(rows: HTMLElement, events: DragEvents): void {
  rows.addEventListener('pointerdown', (event) => {
    const grip = event.target
    if (!(grip instanceof HTMLElement) || !grip.classList.contains('grip') || event.button !== 0) return
    const cell = grip.closest<HTMLElement>('.cell')
    if (cell === null) return
    event.preventDefault()
    new Drag(rows, cell, grip, event, events)
  })
}

class Drag {
  readonly #rows: HTMLElement
  readonly #cell: HTMLElement
  readonly #grip: HTMLElement
  readonly #pointer: number
  readonly #events: DragEvents
  readonly #line: HTMLElement
  readonly #startY: number
  readonly #listening = new AbortController()
  #y: number
  #begun = false
  #frame = 0

  constructor(rows: HTMLElement, cell: HTMLElement, grip: HTMLElement, event: PointerEvent, events: DragEvents) {
    this.#rows = rows
    this.#cell = cell
    this.#grip = grip
    this.#pointer = event.pointerId
    this.#events = events
    this.#startY = event.clientY
    this.#y = event.clientY
    this.#line = rows.ownerDocument.createElement('div')
    this.#line.className = 'drop-line'
    grip.setPointerCapture(event.pointerId)
    const { signal } = this.#listening
    grip.addEventListener('pointermove', (move) => this.#move(move), { signal })
    grip.addEventListener('pointerup', () => this.#drop(), { signal })
    grip.addEventListener('pointercancel', () => this.#cancel(), { signal })
    // Before anything else on the page hears of it: Escape also stops runs and leaves editors.
    window.addEventListener('keydown', (key) => this.#key(key), { signal, capture: true })
  }

  #move(event: PointerEvent): void {
    this.#y = event.clientY
    if (!this.#begun) {
      if (Math.abs(this.#y - this.#startY) < beginsAt) return
      this.#begun = true
      this.#cell.dataset.dragged = ''
      this.#rows.append(this.#line)
      this.#scroll()
    }
    this.#show()
  }

  #show(): void {
    const cells = this.#cells()
    const edges = cells.map((cell) => cell.getBoundingClientRect())
    const gap = gapAt(edges, this.#y)
    const edge = edges[gap]?.top ?? edges.at(-1)?.bottom ?? 0
    this.#line.style.top = `${edge - this.#rows.getBoundingClientRect().top}px`
  }

  #scroll(): void {
    const up = this.#y < scrollZone
    if (up || this.#y > window.innerHeight - scrollZone) {
      window.scrollBy(0, up ? -scrollStep : scrollStep)
      this.#show()
    }
    this.#frame = requestAnimationFrame(() => this.#scroll())
  }

  #drop(): void {
    const cells = this.#cells()
    const from = cells.indexOf(this.#cell)
    const edges = cells.map((cell) => cell.getBoundingClientRect())
    const place = placeForGap(from, gapAt(edges, this.#y))
    const begun = this.#begun
    this.#end()
    // A cell that someone removed while it was dragged is nowhere now.
    if (begun && from >= 0 && place !== from) this.#events.moveTo(this.#cell.dataset.cell as CellId, place)
  }

  #key(event: KeyboardEvent): void {
    if (commandOf(event, ['drag']) !== 'cancel') return
    event.preventDefault()
    event.stopImmediatePropagation()
    this.#cancel()
  }

  #cancel(): void {
    const begun = this.#begun
    this.#end()
    if (begun) this.#events.onCancelled()
  }

  #end(): void {
    cancelAnimationFrame(this.#frame)
    this.#listening.abort()
    this.#line.remove()
    delete this.#cell.dataset.dragged
    if (this.#grip.hasPointerCapture(this.#pointer)) this.#grip.releasePointerCapture(this.#pointer)
  }

  #cells(): HTMLElement[] {
    return [...this.#rows.querySelectorAll<HTMLElement>(':scope > .cell')]
  }
}

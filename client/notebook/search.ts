/** The search strip below the bar: how often a text stands in the notebook, and the way from one place to the next. */
import { type CellId, commandOf, keysForAria } from '../../shared/contracts/index.js'
import { findInSheet, type Hit, mostHits } from './find.js'

export interface SearchEvents {
  /** The search ended here: the focus goes to this cell, or back to where it came from. */
  onEnd(cell: CellId | undefined): void
  /** The text of a cell that is being edited. */
  textOf(cell: CellId): string
  say(sentence: string): void
}

/** Pause in typing after which the sheet is searched. [ms] */
const pause = 120

export class Search {
  readonly element: HTMLElement
  readonly #rows: HTMLElement
  readonly #events: SearchEvents
  readonly #field: HTMLInputElement
  readonly #count: HTMLElement
  #hits: readonly Hit[] = []
  #at = -1
  #pause: ReturnType<typeof setTimeout> | undefined

  constructor(rows: HTMLElement, events: SearchEvents) {
    this.#rows = rows
    this.#events = events
    const document = rows.ownerDocument
    this.element = document.createElement('search')
    this.element.className = 'search'
    this.element.hidden = true
    this.#field = document.createElement('input')
    this.#field.type = 'text'
    this.#field.autocomplete = 'off'
    this.#field.spellcheck = false
    this.#field.placeholder = 'source, prose, names of results'
    this.#field.setAttribute('aria-label', 'Search in the notebook')
    this.#count = document.createElement('span')
    this.#count.className = 'count'
    this.element.append(
      this.#field,
      this.#count,
      this.#button('Previous', keysForAria('previous', 'search'), () => this.#step(-1)),
      this.#button('Next', keysForAria('next', 'search'), () => this.#step(1)),
      this.#button('End search', keysForAria('close', 'search'), () => this.close()),
    )
    this.#field.addEventListener('input', () => {
      clearTimeout(this.#pause)
      this.#pause = setTimeout(() => this.#search(), pause)
    })
    this.element.addEventListener('keydown', (event) => this.#key(event))
  }

  open(): void {
    this.element.hidden = false
    this.#field.focus()
    this.#field.select()
    if (this.#field.value !== '') this.#search()
  }

  close(): void {
    const cell = this.#hits[this.#at]?.cell
    clearTimeout(this.#pause)
    this.element.hidden = true
    this.#hits = []
    this.#at = -1
    this.#mark()
    this.#events.onEnd(cell)
  }

  /** The sheet was drawn anew: the places are found again. */
  refresh(): void {
    if (this.element.hidden || this.#field.value === '') return
    clearTimeout(this.#pause)
    this.#pause = setTimeout(() => {
      this.#hits = this.#find()
      this.#at = Math.min(this.#at, this.#hits.length - 1)
      this.#mark()
      this.#showCount()
    }, pause)
  }

  #key(event: KeyboardEvent): void {
    const command = event.isComposing ? undefined : commandOf(event, ['search'])
    if (command === undefined || (event.target !== this.#field && command !== 'close')) return
    event.preventDefault()
    event.stopPropagation()
    if (command === 'close') this.close()
    else this.#step(command === 'next' ? 1 : -1)
  }

  #search(): void {
    clearTimeout(this.#pause)
    this.#pause = undefined
    this.#hits = this.#find()
    this.#at = this.#hits.length > 0 ? this.#firstInView() : -1
    this.#show()
  }

  #find(): readonly Hit[] {
    return findInSheet(this.#rows, this.#field.value, (cell) => this.#events.textOf(cell))
  }

  /** The first place that is not above what is in view, so that a search does not throw the reader back to the top. */
  #firstInView(): number {
    const index = this.#hits.findIndex(({ cell }) => {
      const section = this.#rows.querySelector(`:scope > [data-cell="${CSS.escape(cell)}"]`)
      return section !== null && section.getBoundingClientRect().bottom > 0
    })
    return Math.max(index, 0)
  }

  #step(by: -1 | 1): void {
    if (this.#pause !== undefined) this.#search()
    else if (this.#hits.length > 0) {
      this.#at = (this.#at + by + this.#hits.length) % this.#hits.length
      this.#show()
    }
  }

  #show(): void {
    this.#mark()
    this.#showCount()
    const hit = this.#hits[this.#at]
    if (hit === undefined) return
    // A place in a folded part is opened, all the way up.
    for (
      let fold = hit.element.closest('details');
      fold !== null;
      fold = fold.parentElement?.closest('details') ?? null
    )
      fold.open = true
    hit.element.scrollIntoView({ block: 'center' })
  }

  #mark(): void {
    for (const marked of this.#rows.querySelectorAll('[data-found]')) marked.removeAttribute('data-found')
    const current = this.#hits[this.#at]
    current?.element.setAttribute('data-found', '')
    // Browsers that cannot mark letters still show the line.
    if (!('highlights' in CSS)) return
    const ranges = this.#hits.flatMap((hit) => (hit.range === undefined ? [] : [hit.range]))
    CSS.highlights.set('found', new Highlight(...ranges))
    CSS.highlights.set('found-now', new Highlight(...(current?.range === undefined ? [] : [current.range])))
  }

  #showCount(): void {
    const count = this.#hits.length
    const all = count === mostHits ? `${count} or more` : String(count)
    const words =
      this.#field.value.trim() === ''
        ? ''
        : count === 0
          ? 'not found in source, prose or names of results'
          : `${this.#at + 1} of ${all}`
    if (this.#count.textContent === words) return
    this.#count.textContent = words
    const number = this.#rows
      .querySelector(`:scope > [data-cell="${CSS.escape(this.#hits[this.#at]?.cell ?? '')}"]`)
      ?.getAttribute('aria-label')
    if (words !== '') this.#events.say(number == null ? `${words}.` : `${words}, ${number}.`)
  }

  #button(label: string, keys: string, act: () => void): HTMLButtonElement {
    const button = this.#rows.ownerDocument.createElement('button')
    button.type = 'button'
    button.textContent = label
    button.setAttribute('aria-keyshortcuts', keys)
    button.addEventListener('click', act)
    return button
  }
}

/** One number of the sheet and the three things it can be asked: where it came from, what moves it, how sure it is. */
import { element, formatQuantity, marginsOf, marginWords, type SheetView } from '../../shared/rendering/page.js'
import type { DrawerView } from '../drawer/drawer.js'
import { type Askable, allAskable, askable } from './askable.js'
import type { AskedPart } from './asking.js'
import { type Ask, asks, type NumberMemory } from './number-memory.js'
import { NumberTabs } from './number-tabs.js'

export interface NumberSources {
  view(): SheetView
  /** The cells have been read, so that a number can be asked. */
  ready(): boolean
  /** The parts, made at the first question: they are large and most readers ask nothing. */
  parts(): Promise<Readonly<Record<Ask, AskedPart>>>
  readonly memory: NumberMemory
}

export class NumberView implements DrawerView {
  readonly name = 'number'
  readonly title = 'Number'
  readonly element = element(document, 'div', { class: 'number-view' })
  readonly #sources: NumberSources
  readonly #choice = element(document, 'select', {
    'aria-label': 'The number that is asked about',
  }) as HTMLSelectElement
  readonly #value = element(document, 'p', { class: 'number-value' })
  readonly #teaching = element(document, 'p', { class: 'number-teaching' })
  readonly #tabs: NumberTabs
  #options = ''
  #target: string | undefined
  #ask: Ask = asks[0]
  #parts: Readonly<Record<Ask, AskedPart>> | undefined
  #visible = false
  /** A question waits for the cells to be read, or for its number to be there. */
  #waiting = false

  constructor(sources: NumberSources) {
    this.#sources = sources
    this.#tabs = new NumberTabs((ask) => this.#choose(this.#target, ask))
    const kept = sources.memory.read()
    if (kept !== undefined) {
      this.#target = kept.target
      this.#ask = kept.ask
    }
    this.element.append(
      element(document, 'div', { class: 'number-head' }, this.#choice, this.#value),
      this.#teaching,
      this.#tabs.element,
    )
    this.#choice.addEventListener('change', () => this.#choose(this.#choice.value, this.#ask))
  }

  /** Asks a number one of the three things; the drawer shows this view next. */
  put(target: string, ask: Ask = this.#ask): void {
    this.#choose(target, ask)
  }

  show(): void {
    this.#visible = true
    this.#draw()
    this.#showPart()
  }

  update(): void {
    this.#draw()
    if (this.#waiting) this.#showPart()
    else if (this.#target !== undefined) this.#parts?.[this.#ask].update()
  }

  hide(): void {
    this.#visible = false
    this.#parts?.[this.#ask].leave()
  }

  #choose(target: string | undefined, ask: Ask): void {
    if (target === undefined || target === '') return
    if (target !== this.#target || ask !== this.#ask) this.#parts?.[this.#ask].leave()
    this.#target = target
    this.#ask = ask
    this.#sources.memory.write({ target, ask })
    this.#draw()
    if (this.#visible) this.#showPart()
  }

  #showPart(): void {
    const [target, ask] = [this.#target, this.#ask]
    if (target === undefined) return
    this.#waiting = !this.#sources.ready() || askable(this.#sources.view(), target) === undefined
    if (this.#waiting) return
    if (this.#parts !== undefined) {
      this.#parts[ask].show(target)
      return
    }
    this.#sources.parts().then(
      (parts) => {
        if (this.#parts === undefined) {
          this.#parts = parts
          this.#tabs.fill((each) => parts[each].element)
        }
        if (this.#visible) this.#showPart()
      },
      () => {
        this.#say('What answers questions about numbers did not load; load the page again.')
      },
    )
  }

  #draw(): void {
    const view = this.#sources.view()
    const all = allAskable(view)
    const chosen = all.find(({ name }) => name === this.#target)
    this.#drawChoice(all, chosen)
    this.#drawValue(chosen, view)
    this.#tabs.show(this.#ask, chosen !== undefined)
    if (chosen !== undefined) this.#say('')
    else if (this.#target === undefined) this.#say(all.length === 0 ? nothingToAsk : teaching)
    else
      this.#say(`"${this.#target}" is no number of this sheet any more. ${all.length === 0 ? '' : 'Choose another.'}`)
  }

  #say(words: string): void {
    if (this.#teaching.textContent !== words) this.#teaching.textContent = words
  }

  /** Only when the numbers of the sheet changed: an open list of choices would close. */
  #drawChoice(all: readonly Askable[], chosen: Askable | undefined): void {
    const options = JSON.stringify(all.map(({ name, label, place }) => [name, label, place]))
    if (options !== this.#options) {
      this.#options = options
      const places = [...new Set(all.map(({ place }) => place))]
      this.#choice.replaceChildren(
        element(document, 'option', { value: '', disabled: '' }, 'Choose a number'),
        ...places.map((place) =>
          element(
            document,
            'optgroup',
            { label: `Cell ${place}` },
            all
              .filter((one) => one.place === place)
              .map(({ name, label }) => element(document, 'option', { value: name }, label)),
          ),
        ),
      )
    }
    this.#choice.hidden = all.length === 0
    this.#choice.value = chosen?.name ?? ''
  }

  #drawValue(chosen: Askable | undefined, view: SheetView): void {
    if (chosen === undefined) {
      this.#value.replaceChildren()
      return
    }
    const { value, cell, place } = chosen
    const si = value.value.kind === 'number' ? value.value.si : Number.NaN
    const state = view.cells.find(({ id }) => id === cell)?.state ?? 'current'
    const margin = marginsOf(view).find((one) => one.value.name === chosen.name)
    const drawn = element(
      document,
      'p',
      { class: 'number-value' },
      element(document, 'strong', {}, formatQuantity(si, value.dimension, value.unit).text),
      ' in ',
      element(document, 'a', { href: `#cell-${cell}` }, `cell ${place}`),
      state === 'current' ? null : `, ${state}`,
      margin === undefined
        ? null
        : `. By this much the requirement is ${margin.requirement.met ? 'met' : 'missed'}: ${marginWords(margin.requirement)}`,
    )
    if (!this.#value.isEqualNode(drawn)) this.#value.replaceChildren(...drawn.childNodes)
  }
}

const teaching =
  'Every number of the sheet can be asked where it came from (trace), what moves it (drivers) and how sure it is (spread). So can the margin of a requirement. Choose one above, press one of the three words below the results of a cell, or press a number or a requirement itself.'

const nothingToAsk =
  'Numbers are asked here where they came from, what moves them and how sure they are. No cell has worked out a number yet.'

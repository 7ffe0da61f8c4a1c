/** Which units this reader wants to see: a switch in the bar, remembered in this browser for all notebooks. The document is never touched. */
import { type SheetView, type UnitSystem, unitSystems, viewInUnits } from '../../shared/rendering/page.js'

/** The part of the browser's storage that is used; it may refuse, and then the choice holds for this visit. */
export type UnitsMemory = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>

const key = 'hoverfolio units'

const meanings: Readonly<Record<UnitSystem, string>> = {
  'as written': 'Units that the author chose, else SI',
  SI: 'SI units throughout, whatever the author chose',
  aviation: 'Units of aviation: ft, nmi, kt, ft/min, lb; power and energy as they are',
}

export class ReaderUnits {
  readonly element: HTMLElement
  readonly #memory: UnitsMemory | undefined
  readonly #onChange: (system: UnitSystem) => void
  readonly #buttons = new Map<UnitSystem, HTMLButtonElement>()
  #system: UnitSystem

  constructor(document: Document, memory: UnitsMemory | undefined, onChange: (system: UnitSystem) => void) {
    this.#memory = memory
    this.#onChange = onChange
    this.#system = this.#read()
    this.element = document.createElement('div')
    this.element.className = 'units'
    this.element.setAttribute('role', 'group')
    this.element.setAttribute('aria-label', 'Units')
    for (const system of unitSystems) {
      const button = document.createElement('button')
      button.type = 'button'
      button.textContent = system
      button.title = meanings[system]
      button.addEventListener('click', () => this.choose(system))
      this.#buttons.set(system, button)
      this.element.append(button)
    }
    this.#show()
  }

  get system(): UnitSystem {
    return this.#system
  }

  /** The view as this reader sees it. */
  of(view: SheetView): SheetView {
    return viewInUnits(view, this.#system)
  }

  choose(system: UnitSystem): void {
    if (system === this.#system) return
    this.#system = system
    try {
      if (system === 'as written') this.#memory?.removeItem(key)
      else this.#memory?.setItem(key, system)
    } catch {
      // A full or forbidden storage: the switch still works, it only is not remembered.
    }
    this.#show()
    this.#onChange(system)
  }

  #show(): void {
    for (const [system, button] of this.#buttons) button.setAttribute('aria-pressed', String(system === this.#system))
  }

  #read(): UnitSystem {
    try {
      const kept = this.#memory?.getItem(key)
      return unitSystems.find((system) => system === kept) ?? 'as written'
    } catch {
      return 'as written'
    }
  }
}

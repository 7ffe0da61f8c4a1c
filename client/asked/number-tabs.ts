/** Trace, drivers and spread as a row of tabs over the one that is shown. */
import { element } from '../../shared/rendering/page.js'
import { type Ask, asks } from './number-memory.js'

const titles: Readonly<Record<Ask, string>> = { trace: 'Trace', drivers: 'Drivers', spread: 'Spread' }

export class NumberTabs {
  readonly element = element(document, 'div', { class: 'number-asks' })
  readonly #tabs = new Map<Ask, HTMLButtonElement>()
  readonly #panels = new Map<Ask, HTMLElement>()
  #shown: Ask = asks[0]

  constructor(onChoose: (ask: Ask) => void) {
    const list = element(document, 'div', { class: 'number-tabs', role: 'tablist', 'aria-label': 'What is asked' })
    for (const ask of asks) {
      const tab = element(
        document,
        'button',
        { type: 'button', id: `ask-tab-${ask}`, role: 'tab', 'aria-controls': `ask-${ask}` },
        titles[ask],
      ) as HTMLButtonElement
      tab.addEventListener('click', () => onChoose(ask))
      this.#tabs.set(ask, tab)
      list.append(tab)
      const panel = element(document, 'div', {
        id: `ask-${ask}`,
        role: 'tabpanel',
        'aria-labelledby': `ask-tab-${ask}`,
      })
      panel.hidden = true
      this.#panels.set(ask, panel)
    }
    list.addEventListener('keydown', (event) => this.#move(event, onChoose))
    this.element.append(list, ...this.#panels.values())
  }

  fill(partOf: (ask: Ask) => HTMLElement): void {
    for (const [ask, panel] of this.#panels) panel.replaceChildren(partOf(ask))
  }

  /** `possible` where there is a number to ask. */
  show(ask: Ask, possible: boolean): void {
    this.#shown = ask
    this.element.hidden = !possible
    for (const [each, tab] of this.#tabs) {
      tab.setAttribute('aria-selected', String(each === ask))
      tab.tabIndex = each === ask ? 0 : -1
    }
    for (const [each, panel] of this.#panels) panel.hidden = each !== ask
  }

  /** The pattern of tabs: arrows, Home and End go from one to the next and show it. */
  #move(event: KeyboardEvent, onChoose: (ask: Ask) => void): void {
    const at = asks.indexOf(this.#shown)
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: asks.length - 1 }[event.key]
    const ask = to === undefined ? undefined : asks[(to + asks.length) % asks.length]
    if (ask === undefined || event.ctrlKey || event.altKey || event.metaKey) return
    event.preventDefault()
    onChoose(ask)
    this.#tabs.get(ask)?.focus()
  }
}

/** The strip that says that the sheet shows a trial, and what can be done about it; on paper a line of caution in the head of each sheet. */
import { element } from '../../shared/rendering/page.js'
import { itemWords, listWords, type TriedItem } from './trial-words.js'

export interface TrialStripCommands {
  adopt(): void
  discard(): void
  copyLink(): void
}

/** More would push the sheet off a small page. */
const mostListed = 3

export class TrialStrip {
  readonly element: HTMLElement
  readonly #words = element(document, 'span', { class: 'trial-list' })
  readonly #caution = element(document, 'p', { class: 'trial-caution', role: 'note', hidden: true })

  /** Takes its places in the sheet: below the head, where it stays in sight, and in the head for paper. */
  constructor(main: HTMLElement, commands: TrialStripCommands) {
    const button = (words: string, act: () => void) => {
      const made = element(document, 'button', { type: 'button' }, words)
      made.addEventListener('click', act)
      return made
    }
    this.element = element(
      document,
      'section',
      { class: 'trial-strip', 'aria-label': 'Trial values', hidden: true },
      element(document, 'p', {}, element(document, 'strong', {}, 'Trial:'), ' ', this.#words),
      element(
        document,
        'div',
        { class: 'trial-buttons' },
        button('Adopt', commands.adopt),
        button('Discard', commands.discard),
        button('Copy link', commands.copyLink),
      ),
    )
    const head = main.querySelector('.sheet-head')
    head?.after(this.element)
    head?.querySelector('.caution')?.after(this.#caution)
  }

  show(items: readonly TriedItem[]): void {
    const none = items.length === 0
    this.element.hidden = none
    this.#caution.hidden = none
    setText(this.#words, listWords(items, mostListed))
    setText(
      this.#caution,
      none ? '' : `This sheet shows trial values, not the document: ${items.map(itemWords).join('; ')}.`,
    )
  }
}

function setText(target: Element, text: string): void {
  if (target.textContent !== text) target.textContent = text
}

/** The three words below the results of a cell, and what pressing them or a number asks. */
import { marginName } from '../../shared/contracts/index.js'
import type { CellView } from '../../shared/rendering/page.js'
import { askableIn } from './askable.js'
import { type Ask, asks, isAsk } from './number-memory.js'

/** Puts the words on the line of the state, where the cell has a number to ask; drawn anew with the column. */
export function offerQuestions(column: Element, cell: CellView): void {
  const state = column.querySelector(':scope > .state')
  const [first] = askableIn(cell)
  if (state === null || first === undefined || state.querySelector('.questions') !== null) return
  const words = document.createElement('span')
  words.className = 'questions'
  for (const ask of asks) {
    const button = document.createElement('button')
    button.type = 'button'
    button.className = 'link-button'
    button.dataset.ask = ask
    button.dataset.name = first.name
    button.textContent = ask
    button.tabIndex = -1
    button.setAttribute('aria-label', `${ask}, ${first.label}`)
    words.append(' · ', button)
  }
  state.append(words)
}

/** Follows presses on the words, on the numbers themselves, and on requirements, whose margins are asked about. */
export function followQuestions(root: HTMLElement, put: (name: string, ask?: Ask) => void): void {
  root.addEventListener('click', (event) => {
    if (!(event.target instanceof Element)) return
    const button = event.target.closest<HTMLElement>('.questions [data-ask]')
    const ask = button?.dataset.ask
    if (button?.dataset.name !== undefined && isAsk(ask)) {
      put(button.dataset.name, ask)
      return
    }
    const row = event.target.closest<HTMLElement>('.result .value[data-value-kind="number"], .result .requirement')
    const { name } = row?.dataset ?? {}
    // A number that is being marked, to be copied, is not asked anything.
    if (name === undefined || window.getSelection()?.isCollapsed === false) return
    put(row?.classList.contains('requirement') === true ? marginName(name) : name)
  })
}

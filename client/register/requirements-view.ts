/** The requirements in the drawer: what has to hold, whether it does, and whether it still would at the worst corner and in most samples. */
import {
  element,
  marginsOf,
  type RequirementSureness,
  renderRequirements,
  requirementRows,
  type SheetView,
} from '../../shared/rendering/page.js'
import type { AskedNumbersSources } from '../asked/asked-numbers.js'
import { editionOf } from '../asked/edition.js'
import { OneAtATime } from '../asked/one-at-a-time.js'
import { RunningLine } from '../asked/running-line.js'
import type { DrawerView } from '../drawer/drawer.js'

export interface RequirementsSources {
  view(): SheetView
  /** What numbers are evaluated with. */
  readonly numbers: AskedNumbersSources
  /** Aloud. */
  say(sentence: string): void
  /** Asks the margin of a requirement where it came from, what moves it and how sure it is. */
  askMargin(requirement: string): void
}

interface Answer {
  readonly edition: string
  readonly sureness: RequirementSureness
}

export class RequirementsView implements DrawerView {
  readonly name = 'requirements'
  readonly title = 'Requirements'
  readonly element = element(document, 'div', { class: 'requirements-view' })
  readonly #sources: RequirementsSources
  readonly #ask = element(document, 'button', { type: 'button' }, 'Work out worst corner and P90')
  readonly #state = element(document, 'p', { class: 'requirements-state', role: 'status' })
  readonly #table = element(document, 'div')
  readonly #turns: OneAtATime<'sureness'>
  readonly #running: RunningLine
  #answer: Answer | undefined
  #trouble = ''

  constructor(sources: RequirementsSources) {
    this.#sources = sources
    this.#turns = new OneAtATime({ now: () => performance.now(), onState: () => this.#showState() })
    this.#running = new RunningLine(() => this.#turns.stop())
    this.#ask.addEventListener('click', () => void this.#workOut())
    this.#table.addEventListener('click', ({ target }) => {
      const name = target instanceof Element ? target.closest<HTMLElement>('[data-margin]')?.dataset.margin : undefined
      if (name !== undefined && target instanceof Element && target.closest('button') !== null) sources.askMargin(name)
    })
    const controls = element(document, 'div', { class: 'requirements-controls' }, this.#ask, this.#running.element)
    this.element.append(controls, this.#state, this.#table)
  }

  show(): void {
    this.update()
  }

  hide(): void {
    this.#turns.stop()
  }

  update(): void {
    const view = this.#sources.view()
    const rows = requirementRows(view)
    this.#ask.hidden = rows.length === 0
    const drawn = renderRequirements(document, rows, this.#answer?.sureness)
    offerMargins(drawn, new Set(marginsOf(view).map(({ requirement }) => requirement.name)))
    // What has the focus stays where nothing changed.
    if (this.#table.firstElementChild?.isEqualNode(drawn) !== true) this.#table.replaceChildren(drawn)
    this.#showState()
  }

  async #workOut(): Promise<void> {
    const edition = editionOf(this.#sources.view())
    this.#trouble = ''
    await this.#turns.run(
      'sureness',
      async (turn) => {
        const { workOutSureness } = await import('./work-out-sureness.js')
        await workOutSureness(this.#sources.numbers, turn, (sureness) => {
          if (!turn.mine()) return
          this.#answer = { edition, sureness }
          this.update()
        })
      },
      (fault) => {
        this.#trouble = `It could not be worked out: ${fault instanceof Error ? fault.message : String(fault)}`
      },
    )
    if (this.#trouble === '' && this.#answer?.edition === edition)
      this.#sources.say('Worst corner and P90 are in the table of requirements.')
  }

  #showState(): void {
    this.#running.show(this.#turns.running, 'Working out')
    const outdated = this.#answer !== undefined && this.#answer.edition !== editionOf(this.#sources.view())
    const words =
      this.#trouble !== '' ? this.#trouble : outdated ? wordsOutdated : this.#answer === undefined ? '' : wordsKnown
    if (this.#state.textContent !== words) this.#state.textContent = words
  }
}

/** What stands in the column of margins, to be pressed. */
function offerMargins(table: HTMLElement, askable: ReadonlySet<string>): void {
  for (const place of table.querySelectorAll<HTMLElement>('[data-margin]')) {
    const { margin: name = '' } = place.dataset
    if (!askable.has(name)) continue
    const words = place.textContent ?? ''
    const label = `margin of ${name}, ${words}: trace, drivers, spread`
    place.replaceChildren(
      element(document, 'button', { type: 'button', class: 'link-button', 'aria-label': label }, words),
    )
  }
}

const wordsKnown =
  'Worst corner: every assumption with a range or distribution at the end that takes most from the margin (range, or P5 and P95). P90: the margin that 90 % of the samples keep; bare ranges are held there.'
const wordsOutdated = 'Worst corner and P90 are of values that have changed since; work them out again.'

/** The trial as the notebook page has it: values, strip, link, and what the register and other views ask for, told of each other's news. */
import type { Graph, Overrides } from '../../kernel/cells/program/index.js'
import type { CellResult, Point } from '../../shared/contracts/index.js'
import { type AssumptionRow, assumptionRows, numberOf, type SheetView } from '../../shared/rendering/page.js'
import { sessionStorageOf } from '../drawer/memory.js'
import type { RegisterTrials } from '../register/register-view.js'
import type { AskLive } from '../register/write-assumption.js'
import { adoptTrials } from './adopt.js'
import { pageAddress, type TrialAddress } from './page-address.js'
import { fitToAssumptions, readTrialFragment, trialFragment } from './trial-link.js'
import { type TrialMemory, trialMemory } from './trial-memory.js'
import { TrialStrip } from './trial-strip.js'
import { TrialValues } from './trial-values.js'
import { itemWords, listWords, triedItems } from './trial-words.js'

export interface PageTrialParts {
  readonly main: HTMLElement
  readonly memory: TrialMemory
  readonly address: TrialAddress
  readonly live: AskLive
  view(): SheetView
  /** From the last reading; absent before it. */
  graph(): Graph | undefined
  /** The document's results of the present text. */
  own(): Iterable<CellResult | undefined>
  tryOut(overrides: Overrides): void
  /** Somebody is about to try something. */
  prepare(): void
  /** Something is on trial now, or nothing any more. */
  onStanding(): void
  say(sentence: string): void
  /** Aloud, and on the page for a while. */
  tell(sentence: string): void
}

/** In the place of a fingerprint. */
export const trialFingerprint = 'none: trial values are shown'

/** The trial of this tab, at the address it was opened with. */
export function openTrial(
  page: Window,
  notebook: string,
  parts: Omit<PageTrialParts, 'memory' | 'address'>,
): PageTrial {
  const memory = trialMemory(notebook, sessionStorageOf(page))
  return new PageTrial({ ...parts, memory, address: pageAddress(page) })
}

export class PageTrial {
  readonly values: TrialValues
  readonly #parts: PageTrialParts
  readonly #strip: TrialStrip
  #graph: Graph | undefined
  /** Asked for by a link before the cells were read. */
  #asked: Point | undefined
  #standing = false

  constructor(parts: PageTrialParts) {
    this.#parts = parts
    this.values = new TrialValues(parts.memory, { said: (name) => this.#said(name), onChange: () => this.#changed() })
    this.#strip = new TrialStrip(parts.main, {
      adopt: () => void this.#adoptAll(),
      discard: () => this.values.discardAll(),
      copyLink: () => void this.#copyLink(),
    })
    parts.address.onFragment(() => this.#readLink())
    this.#readLink()
  }

  /** Something is tried: what is shown is not the document. */
  get standing(): boolean {
    return this.#standing
  }

  /** For the register. */
  get register(): RegisterTrials {
    return {
      tried: (name) => this.values.point()[name],
      set: (name, value) => this.values.set(name, value),
      discard: (name) => this.values.discard(name),
      adopt: (name) => this.#adopt(name),
      prepare: () => this.#parts.prepare(),
    }
  }

  /** The sheet is drawn, perhaps of another text. */
  follow(): void {
    const graph = this.#parts.graph()
    if (graph !== undefined && graph !== this.#graph) this.#takeGraph(graph)
    this.values.settle()
    this.#show()
  }

  #takeGraph(graph: Graph): void {
    this.#graph = graph
    const gone = this.values.know(this.#known(graph), graph.failed.size === 0)
    if (gone.length > 0)
      this.#parts.tell(`No longer tried, since the notebook has no such assumption any more: ${gone.join(', ')}.`)
    const asked = this.#asked
    this.#asked = undefined
    if (asked !== undefined) this.#tryLink(asked, graph)
    else this.#changed()
  }

  #known(graph: Graph): readonly string[] {
    return graph.cells.flatMap(({ assumptions }) => assumptions)
  }

  #changed(): void {
    this.#parts.tryOut(this.values.point())
    this.#show()
    const standing = Object.keys(this.values.point()).length > 0
    if (standing === this.#standing) return
    this.#standing = standing
    this.#parts.onStanding()
    this.#parts.say(
      standing
        ? `The sheet shows trial values, not the document: ${listWords(this.#items(), 3)}.`
        : 'Nothing is tried any more: the sheet shows the document.',
    )
  }

  #show(): void {
    this.#strip.show(this.#items())
  }

  #items() {
    return triedItems(this.values.point(), this.#rows())
  }

  #rows(): readonly AssumptionRow[] {
    return assumptionRows(this.#parts.view())
  }

  #said(name: string): number | undefined {
    for (const result of this.#parts.own()) {
      const record = result?.assumptions.find((each) => each.name === name)
      if (record !== undefined) return numberOf(record.value)
    }
    return undefined
  }

  async #adopt(name: string): Promise<string | null> {
    const item = this.#items().find((each) => each.name === name)
    const { adopted, refusals } = await adoptTrials(this.values, [name], this.#rows(), this.#parts.live)
    if (adopted.length > 0 && item !== undefined) this.#parts.say(`Adopted: ${itemWords(item)}.`)
    return refusals[0] ?? null
  }

  async #adoptAll(): Promise<void> {
    const names = Object.keys(this.values.point())
    const { adopted, refusals } = await adoptTrials(this.values, names, this.#rows(), this.#parts.live)
    const done = adopted.length === 1 ? '1 value is' : `${adopted.length} values are`
    if (refusals.length > 0) this.#parts.tell(`${adopted.length === 0 ? '' : `${done} adopted. `}${refusals.join(' ')}`)
    else if (adopted.length > 0) this.#parts.say(`${done} adopted, as one step that can be undone.`)
  }

  async #copyLink(): Promise<void> {
    const link = this.#parts.address.link(trialFragment(this.values.point()))
    await this.#parts.address.copy(link).then(
      () =>
        this.#parts.tell(
          'The link to this trial is copied. Whoever opens it sees the trial; the document stays as it is.',
        ),
      () => this.#parts.tell(`This browser does not let the page copy. The link to this trial is ${link}`),
    )
  }

  #readLink(): void {
    const reading = readTrialFragment(this.#parts.address.fragment())
    if (reading === undefined) return
    this.#parts.address.forgetFragment()
    if (!reading.ok) this.#parts.tell(reading.message)
    else if (this.#graph === undefined) this.#asked = reading.point
    else this.#tryLink(reading.point, this.#graph)
  }

  /** A link shows what its sender saw: it takes the place of what was tried before. */
  #tryLink(asked: Point, graph: Graph): void {
    const { point, message } = fitToAssumptions(asked, this.#known(graph))
    if (message !== null) this.#parts.tell(message)
    if (Object.keys(point).length > 0) this.values.replace(point)
    else this.#changed()
  }
}

/** The views of the notebook's drawer, in the order of their tabs. */
import type { ReadProgram } from '../../kernel/cells/evidence/index.js'
import { type NumbersHost, readersOf } from '../../kernel/cells/program/index.js'
import { marginName } from '../../shared/contracts/index.js'
import type { SheetView } from '../../shared/rendering/page.js'
import { followQuestions } from '../asked/foot-questions.js'
import type { NumberMemory } from '../asked/number-memory.js'
import { NumberView } from '../asked/number-view.js'
import { followMethodLinks } from '../methods/follow-links.js'
import { MethodsView } from '../methods/methods-view.js'
import { RegisterView } from '../register/register-view.js'
import { RequirementsView } from '../register/requirements-view.js'
import { type AskLive, writeAssumption } from '../register/write-assumption.js'
import type { PageTrial } from '../trial/page-trial.js'
import type { DrawerView } from './drawer.js'

/** What views ask of the notebook; each takes the part it needs. */
export interface ViewSources {
  view(): SheetView
  /** The last reading; absent before it. */
  reading(): ReadProgram | undefined
  /** Isolates for what is asked about numbers. */
  numbers(): Promise<NumbersHost>
  /** Which number was asked what. */
  readonly memory: NumberMemory
  /** The sheet, on whose numbers is pressed. */
  readonly sheet: HTMLElement
  /** Aloud. */
  say(sentence: string): void
  /** Made with the page, since the title block shows the latest. */
  readonly revisions: DrawerView
  /** Absent before the server has answered. */
  readonly live: AskLive
  /** What is tried in place of the document's values. */
  readonly trial: Pick<PageTrial, 'register' | 'values'>
  /** Opens the drawer at a view. */
  open(name: string): void
}

export function drawerViews(sources: ViewSources): readonly DrawerView[] {
  const readers = (name: string) => readersOf(name, sources.reading()?.graph)
  const methods = new MethodsView(sources)
  followMethodLinks(document, (method) => {
    methods.choose(method)
    sources.open(methods.name)
  })
  const register = new RegisterView({
    view: sources.view,
    readers,
    write: (cell, name, change) => writeAssumption(sources.live, cell, name, change),
    trials: sources.trial.register,
  })
  const { view, reading, say } = sources
  const number = numberView(sources)
  const askMargin = (requirement: string) => {
    number.put(marginName(requirement))
    sources.open(number.name)
  }
  const requirements = new RequirementsView({ view, say, numbers: { view, reading, host: sources.numbers }, askMargin })
  return [register, requirements, number, methods, sources.revisions]
}

function numberView({ view, reading, numbers, memory, sheet, say, open, trial }: ViewSources): NumberView {
  const parts = async () => {
    const { askedParts } = await import('../asked/asked-parts.js')
    return askedParts({ view, reading, host: numbers, say, tryPoint: (point) => trial.values.tryPoint(point) })
  }
  const made = new NumberView({ view, ready: () => reading() !== undefined, parts, memory })
  followQuestions(sheet, (name, ask) => {
    made.put(name, ask)
    open(made.name)
  })
  return made
}

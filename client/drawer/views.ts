/** The views of the notebook's drawer, in the order of their tabs. */
import { type Graph, readersOf } from '../../kernel/cells/program/index.js'
import type { SheetView } from '../../shared/rendering/page.js'
import { followMethodLinks } from '../methods/follow-links.js'
import { MethodsView } from '../methods/methods-view.js'
import { RegisterView } from '../register/register-view.js'
import { RequirementsView } from '../register/requirements-view.js'
import { type AskLive, writeAssumption } from '../register/write-assumption.js'
import type { DrawerView } from './drawer.js'

/** What views ask of the notebook; each takes the part it needs. */
export interface ViewSources {
  view(): SheetView
  /** Of the last reading; absent before it. */
  graph(): Graph | undefined
  /** Made with the page, since the title block shows the latest. */
  readonly revisions: DrawerView
  /** Absent before the server has answered. */
  readonly live: AskLive
  /** Opens the drawer at a view. */
  open(name: string): void
}

export function drawerViews(sources: ViewSources): readonly DrawerView[] {
  const readers = (name: string) => readersOf(name, sources.graph())
  const methods = new MethodsView(sources)
  followMethodLinks(document, (method) => {
    methods.choose(method)
    sources.open(methods.name)
  })
  const register = new RegisterView({
    view: sources.view,
    readers,
    write: (cell, name, change) => writeAssumption(sources.live, cell, name, change),
  })
  return [register, new RequirementsView(sources), methods, sources.revisions]
}

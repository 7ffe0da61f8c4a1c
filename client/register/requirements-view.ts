/** The requirements in the drawer: what has to hold, and whether it does. */
import { renderRequirements, requirementRows, type SheetView } from '../../shared/rendering/page.js'
import type { DrawerView } from '../drawer/drawer.js'

export interface RequirementsSources {
  view(): SheetView
}

export class RequirementsView implements DrawerView {
  readonly name = 'requirements'
  readonly title = 'Requirements'
  readonly element = document.createElement('div')
  readonly #sources: RequirementsSources

  constructor(sources: RequirementsSources) {
    this.#sources = sources
    this.element.className = 'requirements-view'
  }

  show(): void {
    this.update()
  }

  update(): void {
    const drawn = renderRequirements(document, requirementRows(this.#sources.view()))
    // What has the focus stays where nothing changed.
    if (this.element.firstElementChild?.isEqualNode(drawn) !== true) this.element.replaceChildren(drawn)
  }
}

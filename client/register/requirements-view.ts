/** The requirements in the drawer: what has to hold, and whether it does. */
import { element, type RequirementRow, requirementRows, type SheetView } from '../../shared/rendering/page.js'
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
    this.element.replaceChildren(...requirementRows(this.#sources.view()).map(rowElement))
  }
}

function rowElement({ cell, number, record }: RequirementRow): HTMLElement {
  const words = `${record.name}: ${record.met ? 'met' : 'not met'}`
  return element(document, 'p', {}, words, ' ', element(document, 'a', { href: `#cell-${cell}` }, `row ${number}`))
}

/** The register in the drawer: what the document rests on. */
import {
  type AssumptionRow,
  assumptionRows,
  element,
  type Readers,
  type SheetView,
} from '../../shared/rendering/page.js'
import type { DrawerView } from '../drawer/drawer.js'

export interface RegisterSources {
  view(): SheetView
  readers: Readers
}

export class RegisterView implements DrawerView {
  readonly name = 'register'
  readonly title = 'Register'
  readonly element = document.createElement('div')
  readonly #sources: RegisterSources

  constructor(sources: RegisterSources) {
    this.#sources = sources
    this.element.className = 'register'
  }

  show(): void {
    this.update()
  }

  update(): void {
    const rows = assumptionRows(this.#sources.view(), this.#sources.readers)
    this.element.replaceChildren(...rows.map(rowElement))
  }
}

function rowElement({ name, number, cell }: AssumptionRow): HTMLElement {
  return element(document, 'p', {}, name, ' ', element(document, 'a', { href: `#cell-${cell}` }, `row ${number}`))
}

/** The register in the drawer: what the document rests on. */
import { assumptionRows, type Readers, renderRegister, type SheetView } from '../../shared/rendering/page.js'
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
    const drawn = renderRegister(document, rows)
    // What has the focus stays where nothing changed.
    if (this.element.firstElementChild?.isEqualNode(drawn) !== true) this.element.replaceChildren(drawn)
  }
}

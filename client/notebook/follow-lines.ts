/** A link to a line goes into the editor where that cell is being edited, else to the line on the sheet, unfolding it. */
import type { CellId } from '../../shared/contracts/index.js'
import type { CellSection } from '../sheet/cell-section.js'

export function followLine(event: MouseEvent, sectionOf: (id: CellId) => CellSection | undefined): void {
  const link = event.target instanceof Element ? event.target.closest('a') : null
  const place = /^#cell-(.+)-line-(\d+)$/.exec(link?.getAttribute('href') ?? '')
  const section = place === null ? undefined : sectionOf(place[1] as CellId)
  if (place === null || section === undefined) return
  if (section.editing) {
    event.preventDefault()
    section.surface?.focus({ line: Number(place[2]), column: 1 })
    return
  }
  const fold = section.element.querySelector<HTMLDetailsElement>('.source-fold')
  if (fold !== null) fold.open = true
}

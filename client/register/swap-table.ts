/** A table drawn anew in the place of the old one: what had the focus has it again, and nothing scrolls. */

/** Rows may have moved: heads and fields are known by name, links by their place. */
export function swapTable(place: Element, table: HTMLElement): void {
  const focused = document.activeElement
  const active = focused instanceof HTMLElement && place.contains(focused) ? focused : null
  const { scrollLeft = 0 } = place.firstElementChild ?? {}
  const panel = place.closest('.drawer-panel')
  const { scrollTop = 0 } = panel ?? {}
  const links = (within: Element) => [...within.querySelectorAll('a')]
  const link = active instanceof HTMLAnchorElement ? links(place).indexOf(active) : -1
  place.replaceChildren(table)
  table.scrollLeft = scrollLeft
  if (panel !== null) panel.scrollTop = scrollTop
  const again =
    active?.classList.contains('record-table-field') === true
      ? table
      : (links(table)[link] ??
        [...table.querySelectorAll('button')].find(
          ({ dataset }) =>
            active !== null &&
            (dataset.sort ?? dataset.field) !== undefined &&
            dataset.sort === active.dataset.sort &&
            dataset.field === active.dataset.field,
        ))
  again?.focus({ preventScroll: true })
}

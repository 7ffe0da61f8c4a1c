/** Replaces one part of a cell without taking away what the reader had there: opened folds, and the focus. */

export function replacePart(old: Element, fresh: Element): void {
  const open = [...old.querySelectorAll('details')].map((details) => details.open)
  const freshFolds = [...fresh.querySelectorAll('details')]
  if (freshFolds.length === open.length)
    freshFolds.forEach((details, index) => {
      if (!details.classList.contains('source-fold')) details.open = open[index] === true
    })
  const focused = old.contains(document.activeElement)
    ? focusables(old).indexOf(document.activeElement as HTMLElement)
    : -1
  old.replaceWith(fresh)
  if (focused >= 0) (focusables(fresh)[focused] ?? fresh.closest<HTMLElement>('.cell'))?.focus({ preventScroll: true })
}

function focusables(part: Element): HTMLElement[] {
  return [...part.querySelectorAll<HTMLElement>('a[href], button, summary, input, textarea, [tabindex]')]
}

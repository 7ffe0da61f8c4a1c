/**
 * Where a text stands on the sheet: in source lines, in prose as it is read, and in names of results. Works on what is drawn, so that it
 * needs no editor; letters count alike in either case.
 */
import type { CellId } from '../../shared/contracts/index.js'

export interface Hit {
  readonly cell: CellId
  /** The line, paragraph or value that holds it: what is brought into view. */
  readonly element: HTMLElement
  /** The very letters; absent where only the whole can be shown (a name behind a label). */
  readonly range?: Range
}

/** More would only slow down typing: nobody steps through thousands. */
export const mostHits = 2000

/** `textOf` gives the text of a cell that is being edited: an editor draws only what is in view. */
export function findInSheet(rows: HTMLElement, query: string, textOf: (cell: CellId) => string): readonly Hit[] {
  const wanted = query.trim().toLowerCase()
  if (wanted === '') return []
  const hits: Hit[] = []
  for (const section of rows.querySelectorAll<HTMLElement>(':scope > .cell')) {
    const cell = section.dataset.cell as CellId
    if (section.dataset.editing !== undefined) hits.push(...hitsInEditor(section, wanted, cell, textOf(cell)))
    for (const element of section.querySelectorAll<HTMLElement>(searched)) {
      hits.push(...hitsIn(element, wanted, cell))
      if (hits.length >= mostHits) return hits.slice(0, mostHits)
    }
  }
  return hits
}

/** Lines of code, blocks of prose, rows of values; the heading of a sizing cell is in its code already. */
const searched = '.source .line, .prose > *, .values > .value, figcaption'

function hitsInEditor(section: HTMLElement, wanted: string, cell: CellId, text: string): Hit[] {
  const element = section.querySelector<HTMLElement>('.surface')
  return element === null ? [] : startsOf(text, wanted).map(() => ({ cell, element }))
}

function hitsIn(element: HTMLElement, wanted: string, cell: CellId): Hit[] {
  if (element.matches('.value')) return hitsInValue(element, wanted, cell)
  return rangesIn(element, wanted).map((range) => ({ cell, element, range }))
}

function hitsInValue(row: HTMLElement, wanted: string, cell: CellId): Hit[] {
  const label = row.querySelector<HTMLElement>('dt')
  const ranges = label === null ? [] : rangesIn(label, wanted)
  if (ranges.length > 0) return ranges.map((range) => ({ cell, element: row, range }))
  return (row.dataset.name ?? '').toLowerCase().includes(wanted) ? [{ cell, element: row }] : []
}

/** Every place in the element's text, across the pieces into which colouring has cut it. */
function rangesIn(element: HTMLElement, wanted: string): Range[] {
  const starts = startsOf(element.textContent ?? '', wanted)
  return starts.map((start) => rangeOf(element, start, start + wanted.length))
}

function startsOf(text: string, wanted: string): number[] {
  const lower = text.toLowerCase()
  const starts: number[] = []
  for (let at = lower.indexOf(wanted); at >= 0; at = lower.indexOf(wanted, at + wanted.length)) starts.push(at)
  return starts
}

function rangeOf(element: HTMLElement, start: number, end: number): Range {
  const document = element.ownerDocument
  const range = document.createRange()
  const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT)
  let at = 0
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const length = node.nodeValue?.length ?? 0
    if (start >= at && start < at + length) range.setStart(node, start - at)
    if (end > at && end <= at + length) {
      range.setEnd(node, end - at)
      break
    }
    at += length
  }
  return range
}

/** What each part of the sheet is for, said while there is nothing in it. */
import { element } from '../dom.js'
import type { CellView } from '../view.js'

/** In place of the cells. */
export function renderNoCells(document: Document): HTMLElement {
  return element(
    document,
    'p',
    { class: 'empty' },
    'This notebook has no cells yet. Begin with a rationale cell: what must the aircraft do, and why is it laid out so? Sizing cells then work out its numbers.',
  )
}

/** In place of the prose of a rationale cell. */
export function renderNoProse(document: Document): HTMLElement {
  return element(
    document,
    'p',
    { class: 'empty' },
    'This rationale cell is empty. Prose goes here: what is decided, why, and where the numbers come from. ',
    code(document, '**bold**'),
    ', lists, tables and formulas such as ',
    code(document, '$W = m g$'),
    ' are set.',
  )
}

/** In place of the source of a sizing cell. */
export function renderNoSource(document: Document): HTMLElement {
  return element(
    document,
    'p',
    { class: 'empty' },
    'This sizing cell is empty. It takes TypeScript: numbers with their units, such as ',
    code(document, 'const payload = 400 * u.kg'),
    ', which every other cell can read.',
  )
}

/** In place of the values of a sizing cell that has none; null where something else stands there. */
export function renderNoResult(document: Document, { state, source, result }: CellView): HTMLElement | null {
  const note = (...words: readonly (string | HTMLElement)[]) => element(document, 'p', { class: 'no-result' }, words)
  if (source.trim() === '') return null
  if (state === 'not computed') return note('The values of the cell stand here once it is computed.')
  if (state !== 'current' || result === undefined || result.values.length + result.figures.length > 0) return null
  return note('No values: what a cell declares with ', code(document, 'const'), ' at its top level stands here.')
}

const code = (document: Document, text: string) => element(document, 'code', {}, text)

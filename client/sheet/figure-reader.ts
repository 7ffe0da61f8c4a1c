/**
 * Reading figures by pointer, touch and keyboard. Until a figure is entered this costs three listeners for the whole sheet; what reads and
 * draws is loaded with the first one.
 */
import type { Figure } from '../../shared/contracts/index.js'
import type { FigureCursor } from './figure-cursor.js'

export interface FigureReaderParts {
  /** The data that a figure on the page was drawn from. */
  figureOf(element: Element): Figure | undefined
  say(sentence: string): void
}

export function readFigures(sheet: HTMLElement, parts: FigureReaderParts): void {
  const cursors = new WeakMap<Element, Promise<FigureCursor | undefined>>()
  const cursorOf = (paper: HTMLElement) => {
    const known = cursors.get(paper)
    if (known !== undefined) return known
    const made = openCursor(paper, parts)
    cursors.set(paper, made)
    // A failed load is tried again when the figure is entered again.
    made.catch(() => cursors.delete(paper))
    return made
  }
  const enter = (event: Event) => {
    const paper = event.target instanceof Element ? event.target.closest<HTMLElement>('.figure-paper') : null
    if (paper === null) return
    const { type } = event
    cursorOf(paper).then(
      (cursor) => {
        if (type === 'focusin') cursor?.invite()
        else if (event instanceof PointerEvent) cursor?.point(event)
      },
      () =>
        parts.say(
          'The values of this figure cannot be read now: its reader did not load. The table below it has them.',
        ),
    )
  }
  sheet.addEventListener('pointerover', enter)
  sheet.addEventListener('pointerdown', enter)
  sheet.addEventListener('focusin', enter)
}

async function openCursor(paper: HTMLElement, parts: FigureReaderParts): Promise<FigureCursor | undefined> {
  const figure = parts.figureOf(paper)
  if (figure === undefined) return undefined
  const { FigureCursor } = await import('./figure-cursor.js')
  return new FigureCursor(paper, figure, parts.say)
}

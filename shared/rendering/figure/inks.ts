/**
 * Inks of figures as class names; the style sheet gives the colours for light, dark and print. Lines that differ also
 * differ in dash, points in shape and bars in pattern, so that nothing hangs on colour alone.
 */
import type { Ink, Mark } from '../../contracts/index.js'

export interface MarkStyle {
  readonly ink: Ink
  /** `stroke-dasharray`; undefined for a full line. */
  readonly dash: string | undefined
  readonly symbol: 'circle' | 'square' | 'triangle' | 'diamond2' | 'plus'
  /** How a surface is filled. */
  readonly fill: 'solid' | 'hatched' | 'light' | 'dotted'
}

/** Inks of series that ask for none, in turn. */
const turns: readonly Ink[] = ['accent', 'ink', 'second', 'third']
const dashes: readonly (string | undefined)[] = [undefined, '7 4', '2 3', '9 3 2 3', '12 4', '4 2']
const symbols = ['circle', 'square', 'triangle', 'diamond2', 'plus'] as const
const fills: Readonly<Record<Ink, MarkStyle['fill']>> = {
  accent: 'solid',
  ink: 'solid',
  second: 'hatched',
  third: 'dotted',
  faint: 'light',
  warning: 'hatched',
}
const isSeries: ReadonlySet<Mark['mark']> = new Set(['line', 'dot', 'area', 'band', 'bar', 'contour'])

/** Colours where no style sheet reaches: files that leave the page. */
export const inkColours: Readonly<Record<Ink, string>> = {
  ink: '#1c232b',
  accent: '#0b5b66',
  second: '#7a4a12',
  third: '#4b4f8c',
  faint: '#767b80',
  warning: '#9a2c1a',
}

/** One style per mark. Lines of a figure take dashes in turn; `broken` asks for one. */
export function markStyles(marks: readonly Mark[]): MarkStyle[] {
  const asked = new Set(marks.map((mark) => mark.ink))
  const free = turns.filter((ink) => !asked.has(ink))
  let unasked = 0
  let lines = 0
  let dots = 0
  return marks.map((mark) => {
    const ink = mark.ink ?? (isSeries.has(mark.mark) ? nextInk(free, unasked++) : 'ink')
    const broken = 'broken' in mark && mark.broken === true
    const lineTurn = mark.mark === 'line' && !broken ? lines++ : 0
    const dotTurn = mark.mark === 'dot' ? dots++ : 0
    return {
      ink,
      dash: broken ? '5 4' : mark.mark === 'rule' ? '1 3' : dashes[lineTurn % dashes.length],
      symbol: symbols[dotTurn % symbols.length] ?? 'circle',
      fill: fills[ink],
    }
  })
}

/** Inks that no mark asks for come first, so that a series without a wish does not look like one that has. */
function nextInk(free: readonly Ink[], turn: number): Ink {
  const inks = free.length > 0 ? free : turns
  return inks[turn % inks.length] ?? 'ink'
}

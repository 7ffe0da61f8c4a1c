/** Values that are not one number, in short words. */
import type { ResultValue } from '../../contracts/index.js'
import { countOf, formatNumber } from '../quantity/index.js'

const shownItems = 4
const shownText = 160

/** One line for any value; numbers inside lists and records are in SI. */
export function valueWords(value: ResultValue): string {
  switch (value.kind) {
    case 'number':
      return formatNumber(value.si)
    case 'text':
      return value.text.length > shownText ? `${value.text.slice(0, shownText)}…` : value.text
    case 'truth':
      return value.value ? 'true' : 'false'
    case 'nothing':
      return 'no value'
    case 'function':
      return 'function'
    case 'figure':
      return 'figure'
    case 'list':
      return listWords(value.items, value.length)
    case 'record':
      return `record of ${countOf(value.entries.length + value.more, 'entry', 'entries')}`
  }
}

function listWords(items: readonly ResultValue[], length: number): string {
  if (length === 0) return 'empty list'
  const simple = items.every((item) => item.kind === 'number' || item.kind === 'truth' || item.kind === 'text')
  if (items.every((item) => item.kind === 'record' && item.entries.length > 0))
    return `table of ${countOf(length, 'row')}`
  if (!simple) return `list of ${length}`
  const first = items.slice(0, length > shownItems + 1 ? shownItems : length).map(valueWords)
  // Sentences follow one another; anything shorter is a list.
  const sentences = first.every((words) => words.endsWith('.'))
  const shown = first.join(sentences ? ' ' : ', ')
  return length > first.length ? `${shown}${sentences ? '' : ','} … (${length} in all)` : shown
}

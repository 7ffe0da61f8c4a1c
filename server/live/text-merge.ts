/**
 * Three versions of a text: `base`, what someone made of it outside, and what it is by now in the live document. The outside
 * change is expressed as edits of the live text, so that both people's work stays.
 */
import { diffArrays } from 'diff'

export interface TextEdit {
  /** Place in the live text. */
  readonly at: number
  readonly remove: number
  readonly insert: string
}

interface Span {
  readonly base: number
  readonly baseLength: number
  readonly text: string
}

/** Edits of `live` that carry the change from `base` to `outside`; to be applied in the order given (last place first). */
export function mergeText(base: string, outside: string, live: string): readonly TextEdit[] {
  if (outside === live || outside === base) return []
  const place = placesInLive(base, live)
  const edits: TextEdit[] = []
  for (const span of changes(base, outside)) {
    for (const [from, to] of keptRuns(place, span.base, span.base + span.baseLength))
      edits.push({ at: from, remove: to - from, insert: '' })
    if (span.text !== '')
      edits.push({ at: insertionPlace(place, span.base, live.length), remove: 0, insert: span.text })
  }
  // Last place first keeps the earlier places right; at one place the deletion goes before the insertion.
  return edits
    .map((edit, index) => ({ edit, index }))
    .sort((a, b) => b.edit.at - a.edit.at || a.index - b.index)
    .map(({ edit }) => edit)
}

/** For each character of base its place in live, or -1 when it is gone there. */
function placesInLive(base: string, live: string): Int32Array {
  const place = new Int32Array(base.length).fill(-1)
  let baseAt = 0
  let liveAt = 0
  for (const span of [...changes(base, live), { base: base.length, baseLength: 0, text: '' }]) {
    while (baseAt < span.base) place[baseAt++] = liveAt++
    baseAt += span.baseLength
    liveAt += span.text.length
  }
  return place
}

/** Runs of base characters from..to that are still there, as places in live. */
function keptRuns(place: Int32Array, from: number, to: number): [number, number][] {
  const runs: [number, number][] = []
  for (let index = from; index < to; index += 1) {
    const at = place[index] ?? -1
    if (at < 0) continue
    const last = runs.at(-1)
    if (last !== undefined && last[1] === at) last[1] = at + 1
    else runs.push([at, at + 1])
  }
  return runs
}

/** Behind the nearest earlier base character that is still there; at the start when none is. */
function insertionPlace(place: Int32Array, at: number, liveLength: number): number {
  for (let index = at - 1; index >= 0; index -= 1)
    if ((place[index] ?? -1) >= 0) return Math.min((place[index] ?? 0) + 1, liveLength)
  return 0
}

/** Changed spans of a text: by lines first, then by words inside changed lines, then without the ends both have in common. */
function changes(before: string, after: string): readonly Span[] {
  const spans: Span[] = []
  for (const line of arraySpans(splitLines(before), splitLines(after), 0)) {
    const removed = before.slice(line.base, line.base + line.baseLength)
    if (removed === '' || line.text === '') spans.push(line)
    else if (removed.length + line.text.length > byWordsUpTo) spans.push(trimmed(line, removed))
    else
      for (const word of arraySpans(splitWords(removed), splitWords(line.text), line.base))
        spans.push(trimmed(word, before.slice(word.base, word.base + word.baseLength)))
  }
  return spans
}

/** Comparing words costs the square of their number; beyond this many characters whole runs of lines count as changed. */
const byWordsUpTo = 4000

/** Leaves out what removed and new text begin and end with alike, without cutting a surrogate pair in two. */
function trimmed(span: Span, removed: string): Span {
  const { text } = span
  const most = Math.min(removed.length, text.length)
  let start = 0
  while (start < most && removed[start] === text[start]) start += 1
  if (isHighSurrogate(text, start - 1)) start -= 1
  let end = 0
  while (end < most - start && removed.at(-1 - end) === text.at(-1 - end)) end += 1
  if (end > 0 && isLowSurrogate(text, text.length - end)) end -= 1
  return {
    base: span.base + start,
    baseLength: removed.length - start - end,
    text: text.slice(start, text.length - end),
  }
}

const isHighSurrogate = (text: string, at: number) => (text.charCodeAt(at) & 0xfc00) === 0xd800
const isLowSurrogate = (text: string, at: number) => (text.charCodeAt(at) & 0xfc00) === 0xdc00

const splitLines = (text: string) => text.match(/[^\n]*\n|[^\n]+/g) ?? []
const splitWords = (text: string) => text.match(/\w+|\s+|[^\w\s]/gu) ?? []

function arraySpans(before: readonly string[], after: readonly string[], offset: number): Span[] {
  const spans: Span[] = []
  let base = offset
  let open: { base: number; baseLength: number; text: string } | undefined
  for (const part of diffArrays([...before], [...after])) {
    const text = part.value.join('')
    if (part.added || part.removed) {
      open ??= { base, baseLength: 0, text: '' }
      if (part.added) open.text += text
      else open.baseLength += text.length
    } else if (open !== undefined) {
      spans.push(open)
      open = undefined
    }
    if (!part.added) base += text.length
  }
  if (open !== undefined) spans.push(open)
  return spans
}

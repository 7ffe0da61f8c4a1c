/** The smallest single replacement that turns one text into another, and what it does to a caret. */

/** Remove `removed` characters at `at`, then insert `inserted` there. Offsets count UTF-16 units, as Yjs and text areas do. */
export interface TextDifference {
  readonly at: number
  readonly removed: number
  readonly inserted: string
}

/**
 * Difference of two texts as one replacement, `null` when they are equal.
 *
 * A run of equal characters can make the place ambiguous ("aa" to "aaa"): when `caret`, the caret after the edit, is
 * given, the replacement is placed to end there, which is where the person typed. A surrogate pair is never cut.
 */
export function differenceOf(before: string, after: string, caret?: number): TextDifference | null {
  if (before === after) return null
  const tail = caret === undefined ? undefined : after.length - caret
  let suffix = commonSuffix(before, after, Math.min(before.length, after.length, tail ?? Number.POSITIVE_INFINITY))
  let prefix = commonPrefix(before, after, Math.min(before.length, after.length) - suffix)
  if (isLowSurrogate(before, before.length - suffix) || isLowSurrogate(after, after.length - suffix)) suffix -= 1
  if (isHighSurrogate(before, prefix - 1) || isHighSurrogate(after, prefix - 1)) prefix -= 1
  return {
    at: prefix,
    removed: before.length - suffix - prefix,
    inserted: after.slice(prefix, after.length - suffix),
  }
}

/** Where a caret at `offset` stands after a replacement made by someone else: it stays with the character before it. */
export function mapOffset(offset: number, difference: TextDifference): number {
  if (offset <= difference.at) return offset
  const end = difference.at + difference.removed
  if (offset >= end) return offset - difference.removed + difference.inserted.length
  return difference.at + Math.min(offset - difference.at, difference.inserted.length)
}

/** Applies a replacement to a plain text. */
export function applyDifference(text: string, difference: TextDifference): string {
  return text.slice(0, difference.at) + difference.inserted + text.slice(difference.at + difference.removed)
}

function commonPrefix(a: string, b: string, most: number): number {
  let length = 0
  while (length < most && a.charCodeAt(length) === b.charCodeAt(length)) length += 1
  return length
}

function commonSuffix(a: string, b: string, most: number): number {
  let length = 0
  while (length < most && a.charCodeAt(a.length - 1 - length) === b.charCodeAt(b.length - 1 - length)) length += 1
  return length
}

const isHighSurrogate = (text: string, index: number) => (text.charCodeAt(index) & 0xfc00) === 0xd800
const isLowSurrogate = (text: string, index: number) => (text.charCodeAt(index) & 0xfc00) === 0xdc00

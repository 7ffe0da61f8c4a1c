/** Fractional order keys between neighbours, tolerant of whatever keys a document arrives with. */
import { generateKeyBetween, generateNKeysBetween } from 'fractional-indexing'

/**
 * A key that sorts after `keys[index - 1]` and before the next larger one, or `null` when the keys there are of a foreign
 * make and the page must be numbered anew (`freshKeys`). `keys` are in page order; `index` is where the new one goes.
 */
export function keyAt(keys: readonly string[], index: number): string | null {
  const before = keys[index - 1] ?? null
  const after = keys.slice(index).find((key) => before === null || key > before) ?? null
  try {
    const key = generateKeyBetween(before, after)
    return (before === null || key > before) && (after === null || key < after) ? key : null
  } catch {
    return null
  }
}

/** Keys for `count` cells from nothing. */
export function freshKeys(count: number): readonly string[] {
  return generateNKeysBetween(null, null, count)
}

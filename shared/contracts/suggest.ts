/** "Did you mean": the nearest known word, if one is near enough to be a slip of the finger. */

/** Returns `; did you mean "x"?` or an empty string. */
export function suggest(word: string, known: Iterable<string>): string {
  let best: string | undefined
  let bestDistance = Math.max(1, Math.floor(word.length / 3)) + 0.5
  for (const candidate of known) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase())
    if (distance < bestDistance) {
      best = candidate
      bestDistance = distance
    }
  }
  return best === undefined ? '' : `; did you mean "${best}"?`
}

/** Ends a sentence that may have been given a suggestion, which ends it already. */
export function endSentence(words: string): string {
  return words.endsWith('?') ? words : `${words}.`
}

/** Levenshtein distance by rows. */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index)
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i]
    for (let j = 1; j <= b.length; j += 1)
      next[j] = Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1))
    row = next
  }
  return row[b.length] ?? 0
}

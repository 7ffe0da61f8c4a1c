/**
 * The longest rising subsequence of distinct numbers (M. L. Fredman, *On computing the length of longest increasing subsequences*,
 * Discrete Mathematics 11 (1), 1975), in n log n: whatever is not in it was moved.
 */
export function longestRising(numbers: readonly number[]): number[] {
  /** Places of the smallest last number of a rising run of each length. */
  const ends: number[] = []
  const before: (number | undefined)[] = []
  numbers.forEach((number, place) => {
    let low = 0
    let high = ends.length
    while (low < high) {
      const middle = (low + high) >> 1
      if ((numbers[ends[middle] ?? 0] ?? 0) < number) low = middle + 1
      else high = middle
    }
    before[place] = low === 0 ? undefined : ends[low - 1]
    ends[low] = place
  })
  const rising: number[] = []
  for (let place = ends.at(-1); place !== undefined; place = before[place]) rising.unshift(numbers[place] ?? 0)
  return rising
}

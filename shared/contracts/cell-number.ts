/**
 * Numbers in the margin: 1, 2, 3, and 3a, 3b for cells put in later, until the notebook is renumbered. A number names its cell on
 * paper and in messages, so it stays when the cell moves and is not given to another when the cell is removed.
 *
 * A cell without a number of its own (a file written by hand) is numbered by its place; the first change of the page's structure
 * makes all numbers shown the cells' own.
 */

/** What is needed of a cell, whatever else it holds. */
export interface NumberedCell {
  readonly id: string
  readonly number?: string | undefined
}

/** Longest number that is kept; longer ones in a document are passed over. */
export const longestCellNumber = 12

const ownPattern = /^(\d{1,6})([a-z]*)$/

/**
 * The number of each cell, all different. `cells` are in page order. Where two people put in a cell at one place at once, both ask for
 * 3a; the one with the smaller id has it and the other gets the next, so that everyone sees the same.
 */
export function marginNumbers<Id extends string>(
  cells: readonly (NumberedCell & { readonly id: Id })[],
): ReadonlyMap<Id, string> {
  const numbers = new Map<Id, string>()
  const owners = new Map<string, Id>()
  for (const { id, number } of cells) {
    if (number === undefined || number === '') continue
    const owner = owners.get(number)
    if (owner === undefined || id < owner) owners.set(number, id)
  }
  for (const [number, id] of owners) numbers.set(id, number)
  const taken = new Set(owners.keys())
  const inOrder: string[] = []
  for (const { id } of cells) {
    const number = numbers.get(id) ?? numberByPlace(inOrder, taken)
    numbers.set(id, number)
    taken.add(number)
    inOrder.push(number)
  }
  return numbers
}

/**
 * The number of a cell that is put in at place `index` among `numbers`, which are those of the page in order: the next whole number at
 * its end, letters after the number above elsewhere (3a, 3b, ... 3z, 3aa). Numbers of removed cells (`retired`) are not given out again.
 */
export function numberForPlace(numbers: readonly string[], index: number, retired: readonly string[] = []): string {
  const taken = new Set([...numbers, ...retired])
  return index >= numbers.length ? nextWhole(taken) : numberAfter(numbers.slice(0, index), taken)
}

/** The next whole number after the one above, letters when it is another's. */
function numberByPlace(above: readonly string[], taken: ReadonlySet<string>): string {
  const next = String(wholeAbove(above) + 1)
  return taken.has(next) ? numberAfter(above, taken) : next
}

function nextWhole(taken: ReadonlySet<string>): string {
  let highest = 0
  for (const number of taken) highest = Math.max(highest, wholeOf(number) ?? 0)
  return String(highest + 1)
}

const wholeAbove = (above: readonly string[]) => above.map(wholeOf).findLast((each) => each !== undefined) ?? 0

/** Letters after the nearest number above that is of our form; above all of them it is 0a. */
function numberAfter(above: readonly string[], taken: ReadonlySet<string>): string {
  const whole = wholeAbove(above)
  let last = 0
  for (const number of taken) if (wholeOf(number) === whole) last = Math.max(last, lettersOf(number))
  return `${whole}${lettersFor(last + 1)}`
}

function wholeOf(number: string): number | undefined {
  const digits = ownPattern.exec(number)?.[1]
  return digits === undefined ? undefined : Number(digits)
}

/** a is 1, z is 26, aa is 27; 0 without letters. */
function lettersOf(number: string): number {
  let count = 0
  for (const letter of ownPattern.exec(number)?.[2] ?? '') count = count * 26 + letter.charCodeAt(0) - 96
  return count
}

function lettersFor(count: number): string {
  let letters = ''
  for (let rest = count; rest > 0; rest = Math.floor((rest - 1) / 26))
    letters = String.fromCharCode(97 + ((rest - 1) % 26)) + letters
  return letters
}

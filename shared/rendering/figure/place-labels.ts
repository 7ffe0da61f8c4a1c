/** Labels that keep clear of each other, of points and of lines. */

/** Moves positions [px] apart to at least `gap`, in their order, inside `low` to `high` as far as they fit. */
export function spreadApart(positions: readonly number[], gap: number, low: number, high: number): number[] {
  const order = positions.map((_, index) => index).sort((a, b) => (positions[a] ?? 0) - (positions[b] ?? 0))
  const placed = order.map((index) => positions[index] ?? 0)
  for (let turn = 0; turn < placed.length; turn++)
    placed[turn] = Math.max(placed[turn] ?? 0, turn === 0 ? low : (placed[turn - 1] ?? low) + gap)
  for (let turn = placed.length - 1; turn >= 0; turn--)
    placed[turn] = Math.min(placed[turn] ?? 0, turn === placed.length - 1 ? high : (placed[turn + 1] ?? high) - gap)
  const result: number[] = []
  order.forEach((index, turn) => {
    result[index] = placed[turn] ?? 0
  })
  return result
}

export interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

export interface LabelPlace {
  readonly x: number
  readonly y: number
  readonly anchor: 'start' | 'middle' | 'end'
}

/** Height of a label's box [px]. */
const tall = 15

/** The first place whose box is inside `field` and clear of `taken`; it is then taken too. Null when there is none. */
export function firstFree(places: readonly LabelPlace[], width: number, taken: Box[], field: Box): LabelPlace | null {
  for (const place of places) {
    const box = labelBox(place, width)
    const inside =
      box.left >= field.left && box.right <= field.right && box.top >= field.top && box.bottom <= field.bottom
    if (!inside || taken.some((other) => overlap(box, other))) continue
    taken.push(box)
    return place
  }
  return null
}

export function labelBox({ x, y, anchor }: LabelPlace, width: number): Box {
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
  return { left, right: left + width, top: y - tall / 2, bottom: y + tall / 2 }
}

/** Places around a point, the nearest first. */
export function placesAround(x: number, y: number): LabelPlace[] {
  return [
    { x: x + 8, y, anchor: 'start' },
    { x: x - 8, y, anchor: 'end' },
    { x, y: y - 14, anchor: 'middle' },
    { x, y: y + 14, anchor: 'middle' },
    { x: x + 6, y: y + 12, anchor: 'start' },
    { x: x - 6, y: y - 12, anchor: 'end' },
    { x: x + 6, y: y - 12, anchor: 'start' },
    { x: x - 6, y: y + 12, anchor: 'end' },
    { x: x + 10, y: y + 24, anchor: 'start' },
    { x: x - 10, y: y - 24, anchor: 'end' },
  ]
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

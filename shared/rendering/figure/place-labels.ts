/** Labels that keep clear of each other. */

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

/** Finds room beside a point: right, left, above, below; null when every place is taken or outside `field`. */
export function placeBeside(
  x: number,
  y: number,
  width: number,
  size: number,
  taken: Box[],
  field: Box,
): LabelPlace | null {
  const half = size / 2
  const candidates: readonly (readonly [LabelPlace, number])[] = [
    [{ x: x + 8, y, anchor: 'start' }, x + 8],
    [{ x: x - 8, y, anchor: 'end' }, x - 8 - width],
    [{ x, y: y - size, anchor: 'middle' }, x - width / 2],
    [{ x, y: y + size, anchor: 'middle' }, x - width / 2],
  ]
  for (const [place, left] of candidates) {
    const box = { left, right: left + width, top: place.y - half, bottom: place.y + half }
    const inside =
      box.left >= field.left && box.right <= field.right && box.top >= field.top && box.bottom <= field.bottom
    if (!inside || taken.some((other) => overlap(box, other))) continue
    taken.push(box)
    return place
  }
  return null
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

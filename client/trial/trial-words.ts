/** What is on trial, in words: for the strip, for paper and for people who hear the page. DOM-free. */
import type { Point } from '../../shared/contracts/index.js'
import { type AssumptionRow, formatQuantity, humaniseName, numberOf } from '../../shared/rendering/page.js'

export interface TriedItem {
  readonly name: string
  /** `pack specific energy`. */
  readonly label: string
  /** `250 Wh/kg`. */
  readonly value: string
  /** `235 Wh/kg`; absent where the document's value is not known. */
  readonly said?: string
}

export function triedItems(point: Point, rows: readonly AssumptionRow[]): readonly TriedItem[] {
  const byName = new Map(rows.map((row) => [row.name, row]))
  return Object.entries(point).map(([name, si]) => {
    const row = byName.get(name)
    const label = humaniseName(name)
    if (row === undefined) return { name, label, value: `${formatQuantity(si, null).text} in SI` }
    const { record, dimension } = row
    const shown = (number: number) => formatQuantity(number, dimension, record.unit).text
    return { name, label, value: shown(si), said: shown(numberOf(record.value)) }
  })
}

/** `rotor radius 1.42 m instead of 1.3 m`. */
export function itemWords({ label, value, said }: TriedItem): string {
  return said === undefined ? `${label} ${value}` : `${label} ${value} instead of ${said}`
}

/** At most so many, and how many more there are. */
export function listWords(items: readonly TriedItem[], most: number): string {
  const more = items.length - most
  const words = items.slice(0, most).map(itemWords)
  if (more > 0) words.push(`${more} more, marked in the register`)
  return words.join('; ')
}

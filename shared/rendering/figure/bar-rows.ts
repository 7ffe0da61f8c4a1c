/** Rows of a bar figure: one per name, shared by all bar marks. */
import type { Figure } from '../../contracts/index.js'
import type { MarkOf } from './series.js'

export interface BarRow {
  /** Unique; a name given twice in one mark makes two rows. */
  readonly key: string
  readonly name: string
  /** The name as the axis has room for. */
  readonly shown: string
}

export interface Bar {
  readonly key: string
  /** SI. */
  readonly start: number
  readonly value: number
}

const longestName = 44

export function rowKeys(names: readonly string[]): string[] {
  const seen = new Map<string, number>()
  return names.map((name) => {
    const count = (seen.get(name) ?? 0) + 1
    seen.set(name, count)
    return `${count} ${name}`
  })
}

/** All rows in the order of their first mark, and how many bars stand side by side in a row. */
export function barRows(figure: Figure): { readonly rows: BarRow[]; readonly slots: number } {
  const rows = new Map<string, BarRow>()
  for (const mark of figure.marks) {
    if (mark.mark !== 'bar') continue
    rowKeys(mark.names).forEach((key, index) => {
      const name = mark.names[index] ?? ''
      if (!rows.has(key)) rows.set(key, { key, name, shown: shortened(name) })
    })
  }
  return { rows: [...rows.values()], slots: sharedSlots(figure) }
}

/** Bars with starts are pieces of one bar and share a row's height; others of one name stand side by side. */
export function sharedSlots(figure: Figure): number {
  const bars = figure.marks.filter((mark): mark is MarkOf<'bar'> => mark.mark === 'bar')
  if (bars.length < 2 || bars.some((mark) => mark.start !== undefined)) return 1
  const names = bars.map((mark) => new Set(mark.names))
  const shared = names.some((set, index) =>
    names.slice(index + 1).some((other) => [...set].some((name) => other.has(name))),
  )
  return shared ? bars.length : 1
}

export function barsOf(mark: MarkOf<'bar'>): Bar[] {
  return rowKeys(mark.names)
    .slice(0, mark.value.length)
    .map((key, index) => ({ key, start: mark.start?.[index] ?? 0, value: mark.value[index] ?? 0 }))
}

function shortened(name: string): string {
  return name.length > longestName ? `${name.slice(0, longestName - 1)}…` : name
}

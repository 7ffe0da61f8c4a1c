/** Numbers by name: those at the top level, and those in records. */
import type { CellResult, NamedValue, NumberChange, ResultNumber } from '../../../../shared/contracts/index.js'

type Found = Omit<NumberChange, 'from' | 'to' | 'change' | 'percent'> & { readonly si: ResultNumber }

/** Stated results come first, then as the later state has them. Assumptions are compared by themselves. */
export function compareNumbers(
  from: readonly CellResult[],
  to: readonly CellResult[],
): { changes: NumberChange[]; same: number } {
  const [before, after] = [numbersOf(from), numbersOf(to)]
  const changes: NumberChange[] = []
  let same = 0
  for (const name of new Set([...after.keys(), ...before.keys()])) {
    const [old, now] = [before.get(name), after.get(name)]
    if (old !== undefined && now !== undefined && old.si === now.si) same += 1
    else changes.push(changeOf(old, now))
  }
  return { changes: [...changes.filter((one) => one.stated), ...changes.filter((one) => !one.stated)], same }
}

/** Every number of the results by name. */
export function numbersOf(results: readonly CellResult[]): ReadonlyMap<string, Found> {
  const found = new Map<string, Found>()
  for (const { outcome, values, assumptions } of results) {
    if (outcome !== 'computed') continue
    const assumed = new Set(assumptions.map(({ name }) => name))
    for (const value of values)
      if (!assumed.has(value.name)) for (const one of numbersIn(value)) found.set(one.name, one)
  }
  return found
}

function numbersIn(named: NamedValue): Found[] {
  const { name, value, dimension, unit, label, stated = false, columns = {} } = named
  if (value.kind === 'number')
    return [
      {
        name,
        si: value.si,
        dimension,
        stated,
        ...(unit === undefined ? {} : { unit }),
        ...(label === undefined ? {} : { label }),
      },
    ]
  if (value.kind !== 'record') return []
  return value.entries.flatMap(([field, entry]): Found[] =>
    entry.kind === 'number'
      ? [
          {
            name: `${name}.${field}`,
            si: entry.si,
            dimension: Object.hasOwn(columns, field) ? (columns[field] ?? null) : null,
            stated: false,
          },
        ]
      : [],
  )
}

function changeOf(old: Found | undefined, now: Found | undefined): NumberChange {
  const { si: _, ...shown } = (now ?? old) as Found
  const stated = (old?.stated ?? false) || (now?.stated ?? false)
  const ends = {
    ...(old === undefined ? {} : { from: old.si }),
    ...(now === undefined ? {} : { to: now.si }),
  }
  if (typeof old?.si !== 'number' || typeof now?.si !== 'number') return { ...shown, ...ends, stated }
  const change = now.si - old.si
  return { ...shown, ...ends, stated, change, ...(old.si === 0 ? {} : { percent: (100 * change) / Math.abs(old.si) }) }
}

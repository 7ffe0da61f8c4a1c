/** What names do that cannot be changed by themselves: records, lists, functions, values that change on the way. */
import type { Acts } from '../../../../shared/contracts/index.js'
import type { UpstreamName } from './upstream.js'

/**
 * Something moves the number through such a name only where it is read by something that does, and is made from something that does. What
 * is made from no assumption at all has nothing that could move.
 */
export function deriveActs(
  names: readonly UpstreamName[],
  tried: ReadonlyMap<string, Acts>,
  target: string,
): ReadonlyMap<string, Acts> {
  const byName = new Map(names.map((one) => [one.name, one]))
  const acts = new Map<string, Acts>(names.map(({ name }) => [name, tried.get(name) ?? 'not known']))
  acts.set(target, 'moves')
  const open = new Set(names.flatMap(({ name }) => (tried.has(name) || name === target ? [] : [name])))
  const below = reach([...open], (name) => byName.get(name)?.reads ?? [])
  const above = readersOf(names)
  // Through names that are open themselves, so that a record of a record of what moves nothing moves nothing either.
  const through = (name: string, next: (name: string) => readonly string[]) =>
    [...walkOpen(name, open, next)].map((one) => acts.get(one) ?? 'not known')
  for (const name of open) {
    const made = through(name, (one) => byName.get(one)?.reads ?? [])
    const read = through(name, (one) => above.get(one) ?? [])
    const assumptions = [...(below.get(name) ?? [])].filter((one) => byName.get(one)?.assumption === true)
    if (assumptions.length === 0) acts.set(name, 'not known')
    else acts.set(name, weaker(strongest(made), strongest(read)))
  }
  return acts
}

const strength: readonly Acts[] = ['inactive', 'hardly', 'not known', 'moves']

function strongest(acts: readonly Acts[]): Acts {
  return acts.reduce<Acts>((most, one) => (strength.indexOf(one) > strength.indexOf(most) ? one : most), 'inactive')
}

function weaker(one: Acts, other: Acts): Acts {
  return strength.indexOf(one) < strength.indexOf(other) ? one : other
}

/** What is reached from a name, ending at names that were tried. */
function walkOpen(
  from: string,
  open: ReadonlySet<string>,
  next: (name: string) => readonly string[],
): ReadonlySet<string> {
  const ends = new Set<string>()
  const met = new Set([from])
  const waiting = [from]
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop())
    for (const one of next(name)) {
      if (met.has(one)) continue
      met.add(one)
      if (open.has(one)) waiting.push(one)
      else ends.add(one)
    }
  return ends
}

function reach(
  from: readonly string[],
  next: (name: string) => readonly string[],
): ReadonlyMap<string, ReadonlySet<string>> {
  return new Map(
    from.map((start) => {
      const met = new Set<string>()
      const waiting = [start]
      for (let name = waiting.pop(); name !== undefined; name = waiting.pop())
        for (const one of next(name))
          if (!met.has(one)) {
            met.add(one)
            waiting.push(one)
          }
      return [start, met] as const
    }),
  )
}

function readersOf(names: readonly UpstreamName[]): ReadonlyMap<string, readonly string[]> {
  const readers = new Map<string, string[]>()
  for (const { name, reads } of names) for (const read of reads) readers.set(read, [...(readers.get(read) ?? []), name])
  return readers
}

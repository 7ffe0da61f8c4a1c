/** Assumptions, requirements, advisories and figures of two states. */
import type {
  Advisory,
  AdvisoryChange,
  AssumptionChange,
  AssumptionRecord,
  CellId,
  CellResult,
  FigureChange,
  RequirementChange,
  RequirementRecord,
  RevisionContent,
} from '../../../../shared/contracts/index.js'

export function compareAssumptions(
  from: RevisionContent,
  to: RevisionContent,
): { changes: AssumptionChange[]; same: number } {
  const [before, after] = [assumptionsOf(from.results), assumptionsOf(to.results)]
  const dimensions = new Map(
    [...from.results, ...to.results].flatMap(({ values }) => values.map((v) => [v.name, v.dimension])),
  )
  const changes: AssumptionChange[] = []
  let same = 0
  for (const name of new Set([...after.keys(), ...before.keys()])) {
    const [old, now] = [before.get(name), after.get(name)]
    const differs = old === undefined || now === undefined ? [] : differences(old, now)
    if (old !== undefined && now !== undefined && differs.length === 0) same += 1
    else
      changes.push({
        name,
        dimension: dimensions.get(name) ?? null,
        ...(old === undefined ? {} : { from: old }),
        ...(now === undefined ? {} : { to: now }),
        differs,
      })
  }
  return { changes, same }
}

/** Parts of an assumption as a reader calls them, with what each consists of. */
const parts: readonly (readonly [name: string, of: readonly (keyof AssumptionRecord)[]])[] = [
  ['value', ['value']],
  ['range', ['low', 'high']],
  ['distribution', ['distribution', 'correlated']],
  ['source', ['source']],
  ['note', ['note']],
  ['owner', ['owner']],
  ['unit', ['unit']],
]

function differences(old: AssumptionRecord, now: AssumptionRecord): string[] {
  return parts.flatMap(([name, of]) => (of.every((key) => sameData(old[key], now[key])) ? [] : [name]))
}

function assumptionsOf(results: readonly CellResult[]): ReadonlyMap<string, AssumptionRecord> {
  return new Map(
    results.flatMap(({ outcome, assumptions }) =>
      outcome === 'computed' ? assumptions.map((one): [string, AssumptionRecord] => [one.name, one]) : [],
    ),
  )
}

export function compareRequirements(
  from: readonly CellResult[],
  to: readonly CellResult[],
): { changes: RequirementChange[]; same: number } {
  const [before, after] = [requirementsOf(from), requirementsOf(to)]
  const changes: RequirementChange[] = []
  let same = 0
  for (const name of new Set([...after.keys(), ...before.keys()])) {
    const [old, now] = [before.get(name), after.get(name)]
    if (old !== undefined && now !== undefined && sameData(old, now)) same += 1
    else changes.push({ name, ...(old === undefined ? {} : { from: old }), ...(now === undefined ? {} : { to: now }) })
  }
  return { changes, same }
}

function requirementsOf(results: readonly CellResult[]): ReadonlyMap<string, RequirementRecord> {
  return new Map(
    results.flatMap(({ outcome, requirements }) =>
      outcome === 'computed' ? requirements.map((one): [string, RequirementRecord] => [one.name, one]) : [],
    ),
  )
}

/** An advisory is the same as long as cell, code and method are, whatever the number in its message. */
export function compareAdvisories(from: RevisionContent, to: RevisionContent): AdvisoryChange[] {
  const [before, after] = [advisoriesOf(from), advisoriesOf(to)]
  const only = (these: typeof before, those: typeof before, change: AdvisoryChange['change']): AdvisoryChange[] =>
    [...these].flatMap(([key, found]) => (those.has(key) ? [] : [{ ...found, change }]))
  return [...only(after, before, 'new'), ...only(before, after, 'gone')]
}

function advisoriesOf({ results, text }: RevisionContent) {
  const numbers = numbersOfCells(text)
  const found = new Map<string, { cell: CellId; number: string; advisory: Advisory }>()
  for (const { cell, advisories } of results)
    for (const advisory of advisories) {
      const { code, method, quantity = '' } = advisory
      const key = JSON.stringify([cell, code, method, quantity])
      if (!found.has(key)) found.set(key, { cell, number: numbers.get(cell) ?? '', advisory })
    }
  return found
}

export function compareFigures(from: RevisionContent, to: RevisionContent): { changes: FigureChange[]; same: number } {
  const [before, after] = [figuresOf(from), figuresOf(to)]
  const changes: FigureChange[] = []
  let same = 0
  for (const key of new Set([...after.keys(), ...before.keys()])) {
    const [old, now] = [before.get(key), after.get(key)]
    const shown = now ?? old
    if (shown === undefined) continue
    if (old !== undefined && now !== undefined && sameData(old.figure, now.figure)) same += 1
    else
      changes.push({
        cell: shown.cell,
        number: shown.number,
        place: shown.place,
        caption: shown.figure.caption,
        change: old === undefined ? 'added' : now === undefined ? 'removed' : 'changed',
        ...(old === undefined ? {} : { from: old.figure }),
        ...(now === undefined ? {} : { to: now.figure }),
      })
  }
  return { changes, same }
}

function figuresOf({ results, text }: RevisionContent) {
  const numbers = numbersOfCells(text)
  return new Map(
    results.flatMap(({ cell, figures }) =>
      figures.map((figure, index) => {
        const place = index + 1
        return [`${cell} ${place}`, { cell, number: numbers.get(cell) ?? '', place, figure }] as const
      }),
    ),
  )
}

const numbersOfCells = (text: RevisionContent['text']) => new Map(text.cells.map(({ id, number }) => [id, number]))

function sameData(a: unknown, b: unknown): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}

/** What is wrong between cells: two owners, unknown names, names of others changed, circles. */
import { type CellId, suggest } from '../../../shared/contracts/index.js'
import { absentNames, belongsToLanguage, components, languageNames } from '../program/index.js'
import { type CellProblem, cellName, type Household } from './household.js'
import { type Problem, problem } from './problem.js'
import type { FreeName } from './read-cell.js'

/** Two owners of a name, on both; names of the language; names of the kernel, as a warning. */
export function declarationProblems({ cells, declarers, kernelNames }: Household): CellProblem[] {
  return cells.flatMap((cell) => {
    if (cell.reading.code === undefined) return []
    return cell.reading.declares.flatMap((declaration) => {
      const { name } = declaration
      const report = (found: Problem): CellProblem[] => [{ cell: cell.id, problem: found }]
      if (belongsToLanguage(name)) return report(problem('NAME_OF_LANGUAGE', { name }, declaration, name.length))
      const others = (declarers.get(name) ?? []).filter((other) => other.cell !== cell.id)
      if (others.length > 0) {
        const where = others.map((other) => `${cellName(other.cell)}, line ${other.declaration.line}`).join(' and ')
        return report(problem('NAME_TWICE', { name, others: where }, declaration, name.length))
      }
      return kernelNames.has(name) ? report(problem('KERNEL_NAME_OWNED', { name }, declaration, name.length)) : []
    })
  })
}

/** Free names that mean nothing, and assignments to names of others. */
export function freeNameProblems(household: Household): CellProblem[] {
  return household.cells.flatMap((cell) => {
    const assigned = new Set(cell.reading.assigns.map((use) => use.name))
    const found = [
      ...cell.reading.assigns.map((use) => assignmentProblem(use, household)),
      ...unknownProblems(
        cell.reading.reads.filter((use) => !assigned.has(use.name)),
        household,
      ),
    ]
    const assumptions = assumptionIsKernels(household) ? cell.reading.assumptionProblems : []
    return [...found, ...assumptions].flatMap((one) => (one === undefined ? [] : [{ cell: cell.id, problem: one }]))
  })
}

function assumptionIsKernels({ declarers, kernelNames }: Household): boolean {
  return kernelNames.has('assumption') && !declarers.has('assumption')
}

/** Finding what was meant costs each name a look at all others; beyond so many in one cell nobody reads it. */
const proposedFor = 100

function unknownProblems(uses: readonly FreeName[], { declarers, kernelNames }: Household): Problem[] {
  const unknown = uses.filter(({ name }) => !declarers.has(name) && !kernelNames.has(name))
  return unknown.map(({ name, place }, index) => {
    const reason = absentNames.get(name)
    if (reason !== undefined) return problem('NOT_IN_CELLS', { name, reason }, place, name.length)
    const others = index < proposedFor ? [...declarers.keys(), ...kernelNames, ...languageNames] : []
    return problem('NAME_UNKNOWN', { name, suggestion: suggest(name, others) }, place, name.length)
  })
}

function assignmentProblem({ name, place }: FreeName, { declarers, kernelNames }: Household): Problem {
  const first = declarers.get(name)?.[0]
  const owner =
    first !== undefined
      ? `${cellName(first.cell)} (line ${first.declaration.line})`
      : kernelNames.has(name)
        ? 'the kernel'
        : belongsToLanguage(name)
          ? 'the language'
          : undefined
  if (owner !== undefined) return problem('NOT_OWN_NAME', { name, owner }, place, name.length)
  return problem('ASSIGNED_UNDECLARED', { name }, place, name.length)
}

/** One problem on every cell of every circle, at the first name that leads round. */
export function cycleProblems(household: Household): CellProblem[] {
  const { cells, owner } = household
  const readings = new Map(cells.map((cell) => [cell.id, cell.reading]))
  const edges = (cell: CellId): Edge[] =>
    (readings.get(cell)?.reads ?? []).flatMap((use) => {
      const to = owner.get(use.name)
      return to === undefined || to === cell ? [] : [{ from: cell, to, use }]
    })
  const ids = cells.map((cell) => cell.id)
  const circles = components(ids, (cell) => edges(cell).map((edge) => edge.to)).filter((group) => group.length > 1)
  return circles.flatMap((circle) =>
    circle.map((cell) => {
      const way = wayRound(cell, new Set(circle), edges)
      const steps = way.map(({ use, to }) => `reads "${use.name}" of ${cellName(to)}`)
      const first = way[0]?.use ?? { name: '', place: { line: 1, column: 1 } }
      const path = `${cellName(cell)} ${steps.join(', which ')}`
      return { cell, problem: problem('CYCLE', { path }, first.place, first.name.length) }
    }),
  )
}

interface Edge {
  readonly from: CellId
  readonly to: CellId
  readonly use: FreeName
}

/** The shortest way from a cell of a circle back to itself, breadth first. */
function wayRound(start: CellId, circle: ReadonlySet<CellId>, edges: (cell: CellId) => Edge[]): Edge[] {
  const ways = new Map<CellId, Edge[]>()
  const queue: { cell: CellId; way: Edge[] }[] = [{ cell: start, way: [] }]
  for (let step = queue.shift(); step !== undefined; step = queue.shift())
    for (const edge of edges(step.cell)) {
      const way = [...step.way, edge]
      if (edge.to === start) return way
      if (!circle.has(edge.to) || ways.has(edge.to)) continue
      ways.set(edge.to, way)
      queue.push({ cell: edge.to, way })
    }
  return []
}

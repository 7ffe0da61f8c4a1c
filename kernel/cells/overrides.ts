/** Overrides are checked before anything runs: a slip of the finger must not look like a value that changes nothing. */
import { suggest } from '../../shared/contracts/index.js'
import { type Graph, type Overrides, PipelineTrouble } from './program/index.js'

/** @throws PipelineTrouble ASSUMPTION_UNKNOWN or OVERRIDE_INVALID */
export function checkOverrides(overrides: Overrides, graph: Graph): void {
  const known = graph.cells.flatMap((cell) => cell.assumptions)
  for (const [name, value] of Object.entries(overrides)) {
    if (!known.includes(name))
      throw new PipelineTrouble('ASSUMPTION_UNKNOWN', {
        name,
        suggestion: suggest(name, known),
        known: known.join(', '),
      })
    if (!Number.isFinite(value)) throw new PipelineTrouble('OVERRIDE_INVALID', { name, value: String(value) })
  }
}

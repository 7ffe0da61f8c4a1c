/** Failures at run time name lines of the code that ran; a person reads the TypeScript it was made from. */
import type { CellResult, SourcePlace } from '../../shared/contracts/index.js'
import { sourcePlace } from './analyse/index.js'
import { runnableLineOffset } from './compile/index.js'
import type { Graph, Program } from './program/index.js'

/** The result with the places of its error in the cells' own sources. Errors found before the run are there already. */
export function resultInSource(
  result: CellResult,
  { graph, program }: { readonly graph: Graph; readonly program: Program },
): CellResult {
  const { error } = result
  if (error?.place === undefined || program.failed.some((cell) => cell.id === result.cell)) return result
  const inSource = (place: SourcePlace): SourcePlace => {
    const map = graph.cells.find((cell) => cell.id === place.cell)?.map
    if (map === undefined) return place
    return { cell: place.cell, ...sourcePlace(map, { line: place.line - runnableLineOffset, column: place.column }) }
  }
  const { place, calledFrom } = error
  return {
    ...result,
    error: {
      ...error,
      place: inSource(place),
      ...(calledFrom === undefined ? {} : { calledFrom: calledFrom.map(inSource) }),
    },
  }
}

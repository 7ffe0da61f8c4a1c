/** What the subcommands that ask about one number have in common: the computed sheet, and the number on it. */
import { formulasOf } from '../../kernel/cells/formulas/index.js'
import { type Reading, withDimensions } from '../../kernel/cells/index.js'
import type { Overrides } from '../../kernel/cells/program/index.js'
import { type CellId, endSentence, type Notebook, suggest } from '../../shared/contracts/index.js'
import type { SheetView } from '../../shared/rendering/index.js'
import { sheetView } from '../pages/index.js'
import { openToolchain } from '../toolchain.js'
import { pageOrder, sizingCells } from './notebook-input.js'
import { readOverrides } from './overrides.js'
import { WrongCall } from './subcommand.js'

export interface ComputedSheet {
  readonly view: SheetView
  readonly reading: Reading
  readonly overrides: Overrides
}

/** Computes the notebook with the trial values of `--set`. */
export async function computeSheet(notebook: Notebook, settings: readonly string[]): Promise<ComputedSheet> {
  const toolchain = await openToolchain({ checkSoon: true })
  try {
    const ordered = { ...notebook, cells: [...pageOrder(notebook)] }
    const cells = sizingCells(ordered)
    const { pipeline } = toolchain
    const { names } = await pipeline.check(cells)
    const overrides = readOverrides(settings, await pipeline.assumptions(cells), names)
    const reading = await pipeline.read(cells)
    const results = withDimensions((await pipeline.evaluate(reading, overrides, 'all')).results, names)
    const shelved = { current: results, outOfDate: [] }
    return {
      view: sheetView(notebook.id ?? 'notebook', ordered, shelved, formulasOf(reading.graph)),
      reading,
      overrides,
    }
  } finally {
    await toolchain.close()
  }
}

/** The cell that has the number; an unknown name is a wrong call. */
export function placeOfNumber({ view, reading }: ComputedSheet, name: string): { name: string; cell: CellId } {
  const numbers = view.cells.flatMap(({ id, result }) =>
    (result?.values ?? []).flatMap((value) => (value.value.kind === 'number' ? [{ name: value.name, cell: id }] : [])),
  )
  const found = numbers.find((one) => one.name === name)
  if (found !== undefined) return found
  // Of a cell that failed nothing is known but its names: the engine says why there is no number.
  const owner = reading.graph.owner.get(name)
  const failed = view.cells.find(({ id, result }) => id === owner && result?.outcome !== 'computed')
  if (owner !== undefined && failed !== undefined) return { name, cell: owner }
  const names = numbers.map((one) => one.name)
  const refusal = endSentence(`This notebook has no number "${name}"${suggest(name, names)}`)
  throw new WrongCall(
    names.length === 0
      ? `${refusal} None of its cells has worked out a number.`
      : `${refusal} Its numbers are ${names.join(', ')}.`,
  )
}

/** The file and the name that a subcommand takes. */
export function fileAndName(positionals: readonly string[], subcommand: string): readonly [file: string, name: string] {
  const [file, name, ...others] = positionals
  if (file === undefined || name === undefined || others.length > 0)
    throw new WrongCall(
      `${subcommand} takes a notebook file and the name of one number, for instance notebooks/worked-sizing.json grossMass; it got ${positionals.length === 0 ? 'neither' : positionals.join(', ')}.`,
    )
  return [file, name]
}

/** What the subcommands that ask about one number have in common: the computed sheet, and the number on it. */
import { formulasOf } from '../../kernel/cells/formulas/index.js'
import { type Reading, withDimensions } from '../../kernel/cells/index.js'
import type { Overrides } from '../../kernel/cells/program/index.js'
import { type CellId, endSentence, type Notebook, requirementOf, suggest } from '../../shared/contracts/index.js'
import { marginsOf, type SheetView } from '../../shared/rendering/index.js'
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

/** The cell that has the number, or states the requirement whose margin it is; an unknown name is a wrong call. */
export function placeOfNumber({ view, reading }: ComputedSheet, name: string): { name: string; cell: CellId } {
  const numbers = view.cells.flatMap(({ id, result }) =>
    (result?.values ?? []).flatMap((value) => (value.value.kind === 'number' ? [{ name: value.name, cell: id }] : [])),
  )
  const margins = marginsOf(view).map(({ cell, value }) => ({ name: value.name, cell: cell.id }))
  const found = [...numbers, ...margins].find((one) => one.name === name)
  if (found !== undefined) return found
  // Of a cell that failed nothing is known but its names: the engine says why there is no number.
  const owner = reading.graph.owner.get(name)
  const failed = view.cells.find(({ id, result }) => id === owner && result?.outcome !== 'computed')
  if (owner !== undefined && failed !== undefined) return { name, cell: owner }
  throw new WrongCall(
    unknownWords(
      name,
      view,
      numbers.map((one) => one.name),
      margins.map((one) => one.name),
    ),
  )
}

function unknownWords(
  name: string,
  { cells }: SheetView,
  numbers: readonly string[],
  margins: readonly string[],
): string {
  const requirement = requirementOf(name)
  const stated = cells.flatMap(({ result }) => result?.requirements ?? []).filter((one) => one.name === requirement)
  if (stated.length > 1)
    return `${stated.length} requirements of this notebook have the name "${requirement}", so there is no telling whose margin is meant. Give each a name of its own.`
  const refusal = endSentence(`This notebook has no number "${name}"${suggest(name, [...numbers, ...margins])}`)
  if (numbers.length === 0 && margins.length === 0) return `${refusal} None of its cells has worked out a number.`
  const others = margins.length === 0 ? '' : `; margins that can be asked: ${margins.join(', ')}`
  return `${refusal} Its numbers are ${numbers.join(', ')}${others}.`
}

/** What a subcommand takes, in its usage. */
export const fileAndNameUsage = 'FILE NAME|"margin of REQUIREMENT"'

/** The file and the name that a subcommand takes. */
export function fileAndName(positionals: readonly string[], subcommand: string): readonly [file: string, name: string] {
  const [file, first, ...others] = positionals
  // Without quotes as well: no number is called "margin" and more.
  const name = first === 'margin' ? [first, ...others].join(' ') : first
  if (file === undefined || name === undefined || (others.length > 0 && first !== 'margin'))
    throw new WrongCall(
      `${subcommand} takes a notebook file and the name of one number or "margin of" and the name of a requirement, for instance notebooks/worked-sizing.json grossMass; it got ${positionals.length === 0 ? 'neither' : positionals.join(', ')}.`,
    )
  return [file, name]
}

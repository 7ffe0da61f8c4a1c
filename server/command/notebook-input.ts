/** Reading a notebook file for a subcommand: whatever is wrong with it is a wrong call with the reason. */
import { readFile, stat } from 'node:fs/promises'
import type { SizingCell } from '../../kernel/cells/program/index.js'
import { limits, type Notebook, readNotebook } from '../../shared/contracts/index.js'
import { WrongCall } from './subcommand.js'

/** Reads and validates the file; a byte limit is checked before anything is loaded. */
export async function readNotebookFile(path: string): Promise<Notebook> {
  const text = await readText(path)
  const reading = readNotebook(text)
  if (!reading.ok) throw new WrongCall(`${path}: ${reading.reason}`)
  return reading.notebook
}

/** The sizing cells in page order. */
export function sizingCells(notebook: Notebook): SizingCell[] {
  return pageOrder(notebook)
    .filter((cell) => cell.kind === 'sizing')
    .map((cell) => ({ id: cell.id, source: cell.source.join('\n') }))
}

/** Cells as the page shows them: by order key where every cell has one, else as the file lists them. */
export function pageOrder(notebook: Notebook): Notebook['cells'] {
  const { cells } = notebook
  if (!cells.every((cell) => cell.order !== undefined)) return cells
  return [...cells].sort((a, b) => compareText(a.order ?? '', b.order ?? '') || compareText(a.id, b.id))
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}

async function readText(path: string): Promise<string> {
  try {
    const { size } = await stat(path)
    if (size > limits.notebookBytes)
      throw new WrongCall(`${path} has ${size} bytes; a notebook holds at most ${limits.notebookBytes}.`)
    return await readFile(path, 'utf8')
  } catch (error) {
    if (error instanceof WrongCall) throw error
    throw new WrongCall(`${path} cannot be read: ${error instanceof Error ? error.message : String(error)}`)
  }
}

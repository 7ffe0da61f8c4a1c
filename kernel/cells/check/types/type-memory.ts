/**
 * Remembers TypeScript's complaints about a cell for as long as nothing they depend on changed: its text, the types of the
 * names it reads, the types that any cell declares, and what the kernel shows. So an edit that leaves the types of its names as
 * they were costs one cell, however many read it.
 */
import type ts from 'typescript'
import type { AnalysedCell, Graph } from '../../program/index.js'
import type { CellProgram } from './cell-program.js'
import { type TypeComplaint, typeComplaints } from './type-findings.js'

interface Remembered {
  readonly key: string
  readonly complaints: readonly TypeComplaint[]
  /** Types of the names that the cell declares, as text. */
  readonly types: ReadonlyMap<string, string>
}

export class TypeMemory {
  readonly #typescript: typeof ts
  #cells = new Map<string, Remembered>()

  constructor(typescript: typeof ts) {
    this.#typescript = typescript
  }

  /** Complaints by cell. `ordered` holds each cell after those it reads; cells of a cycle are looked at anew each time. */
  complaints(
    graph: Graph,
    program: CellProgram,
    ordered: readonly AnalysedCell[],
  ): ReadonlyMap<AnalysedCell, readonly TypeComplaint[]> {
    const answers = new Map<AnalysedCell, readonly TypeComplaint[]>()
    const done = new Map<string, Remembered>()
    const house = this.#houseKey(graph, program)
    for (const cell of ordered) {
      const file = program.fileOf(cell)
      if (file === undefined) continue
      const key = this.#key(graph, cell, done, house)
      const known = this.#cells.get(cell.id)
      const answer = key !== undefined && known?.key === key ? known : this.#look(program, cell, file, key ?? '')
      done.set(cell.id, answer)
      answers.set(cell, answer.complaints)
    }
    this.#cells = done
    return answers
  }

  #look(program: CellProgram, cell: AnalysedCell, file: ts.SourceFile, key: string): Remembered {
    const complaints = typeComplaints(this.#typescript, program.program, file)
    const { checker } = program
    const symbols = new Map(
      checker.getSymbolsInScope(file, this.#typescript.SymbolFlags.Value).map((symbol) => [symbol.name, symbol]),
    )
    const types = new Map<string, string>()
    for (const { name } of cell.declares) {
      const symbol = symbols.get(name)
      const type = symbol === undefined ? undefined : checker.getTypeOfSymbol(symbol)
      const text = type && checker.typeToString(type, undefined, this.#typescript.TypeFormatFlags.NoTruncation)
      types.set(name, text ?? '')
    }
    return { key, complaints, types }
  }

  /** What every cell depends on: kernel names in force, and cells that declare types or classes. */
  #houseKey(graph: Graph, program: CellProgram): string {
    const declaring = graph.cells.filter(({ source }) => /\b(?:type|interface|class|declare|namespace)\b/.test(source))
    return [program.preamble, ...declaring.map((cell) => cell.source)].join('\0')
  }

  /** `undefined` where a name is read from a cell not looked at yet: then nothing may be remembered. */
  #key(graph: Graph, cell: AnalysedCell, done: ReadonlyMap<string, Remembered>, house: string): string | undefined {
    const parts = [house, cell.source]
    for (const name of [...cell.reads, ...cell.declares.map((declaration) => declaration.name)]) {
      for (const other of graph.cells) {
        if (other.id === cell.id || !mentions(other, name)) continue
        const looked = done.get(other.id)
        if (looked === undefined && other.code !== undefined) return undefined
        parts.push(name, looked?.types.get(name) ?? other.source)
      }
    }
    return parts.join('\0')
  }
}

/** Whether a cell gives a name; one that cannot be read is taken to give every word in it. */
function mentions(cell: AnalysedCell, name: string): boolean {
  return cell.code === undefined
    ? cell.source.includes(name)
    : cell.declares.some((declaration) => declaration.name === name)
}

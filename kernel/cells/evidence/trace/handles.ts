/** A program in which numbers worked out on the way can be set from outside, as assumptions can. */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { type AnyNode, parse } from 'acorn'
import type { Fingerprint } from '../../../../shared/contracts/index.js'
import type { Program, RunnableCell } from '../../program/index.js'
import type { ReadProgram } from '../slice/index.js'

export interface HandledProgram {
  readonly program: Program
  /** Names that a point may set. */
  readonly handled: ReadonlySet<string>
}

/**
 * `const power = thrust * speed` becomes `const power = assumption("power", (thrust * speed))`, which gives what it is given as long as
 * nobody sets it. Only names with one constant value are taken: a name that changes later is not set by its first value.
 */
export function withHandles({ graph, program }: ReadProgram, names: ReadonlySet<string>): HandledProgram {
  const handled = new Set<string>()
  if (graph.owner.has('assumption')) return { program, handled }
  const codes = new Map(graph.cells.map(({ id, code }) => [id, code]))
  const cells = program.cells.map((cell) => {
    const code = codes.get(cell.id)
    const wanted = cell.declares.filter((name) => names.has(name) && !cell.assumptions.includes(name))
    if (code === undefined || wanted.length === 0) return cell
    return handleCell(cell, code, new Set(wanted), handled)
  })
  return { program: { ...program, cells }, handled }
}

function handleCell(cell: RunnableCell, code: string, wanted: ReadonlySet<string>, handled: Set<string>): RunnableCell {
  // The cell's own code begins on the second line of what runs.
  const offset = cell.code.indexOf('\n') + 1
  const values = constantValues(code).filter(
    ({ name, start, end }) =>
      wanted.has(name) && cell.code.slice(offset + start, offset + end) === code.slice(start, end),
  )
  if (values.length === 0) return cell
  let text = ''
  let at = 0
  for (const { name, start, end } of values) {
    text += `${cell.code.slice(at, offset + start)}assumption(${JSON.stringify(name)}, (${code.slice(start, end)}))`
    at = offset + end
    handled.add(name)
  }
  text += cell.code.slice(at)
  const fingerprint = bytesToHex(sha256(utf8ToBytes(JSON.stringify([cell.fingerprint, text])))) as Fingerprint
  return {
    ...cell,
    code: text,
    fingerprint,
    assumptions: [...cell.assumptions, ...values.map(({ name }) => name)],
  }
}

interface ConstantValue {
  readonly name: string
  readonly start: number
  readonly end: number
}

/** In the order of the code. */
function constantValues(code: string): readonly ConstantValue[] {
  return parse(code, { ecmaVersion: 2023, sourceType: 'script' }).body.flatMap((statement) => {
    if (statement.type !== 'VariableDeclaration' || statement.kind !== 'const') return []
    return statement.declarations.flatMap(({ id, init }) => {
      const value: AnyNode | null | undefined = init
      if (id.type !== 'Identifier' || value === null || value === undefined) return []
      return [{ name: id.name, start: value.start, end: value.end }]
    })
  })
}

/** Runs one compiled cell for its numbers alone: nothing is encoded, no figure, table, advisory or log line is kept. */
import type { ResultNumber } from '../../../../shared/contracts/index.js'
import {
  type Recorder,
  type RequirementStatement,
  type ResultStatement,
  setRecorder,
} from '../../../library/recorder.js'
import type { Overrides, RunnableCell } from '../../program/index.js'
import { bounds } from '../protocol.js'
import { type Crossing, crossOver } from './crossing.js'
import { cut, encodeNumber } from './encode.js'
import { describeFailure } from './failure.js'
import type { CompiledCell } from './run-cell.js'

export interface FinishedNumbers {
  readonly exports: ReadonlyMap<string, Crossing>
  /** Numbers under names that are no top-level names. */
  readonly stated: ReadonlyMap<string, number>
  readonly requirements: readonly [name: string, actual: ResultNumber, margin: ResultNumber][]
  /** Code and sentence of the failure, if it failed. */
  readonly failure?: readonly [code: string, message: string]
  readonly weight: number
}

/** Longest name of a requirement that is kept. */
const longestName = 200
/** What a finished cell weighs by itself, in items. */
const ownWeight = 40

/** Never throws, whatever the cell does. */
export function runForNumbers(
  cell: RunnableCell,
  compiled: CompiledCell,
  reads: Readonly<Record<string, unknown>>,
  overrides: Overrides,
): FinishedNumbers {
  const recorder = new NumbersRecorder(overrides, cell.assumptions)
  const exports = new Map<string, Crossing>()
  setRecorder(recorder)
  try {
    const declared = compiled(reads)
    let weight = ownWeight + 4 * recorder.requirements.length
    for (const name of cell.declares) {
      const crossing = crossOver(name, declared[name])
      exports.set(name, crossing)
      weight += crossing.weight
    }
    return { exports, stated: recorder.stated, requirements: recorder.requirements, weight }
  } catch (thrown) {
    const { code, message } = describeFailure(thrown)
    return { exports: new Map(), stated: new Map(), requirements: [], failure: [code, message], weight: ownWeight }
  } finally {
    setRecorder(undefined)
  }
}

/** A cell may call the recorder with anything; what is kept is numbers and short text. */
class NumbersRecorder implements Recorder {
  readonly stated = new Map<string, number>()
  readonly requirements: [string, ResultNumber, ResultNumber][] = []
  readonly #overrides: Overrides
  readonly #overridable: readonly string[]

  constructor(overrides: Overrides, overridable: readonly string[]) {
    this.#overrides = overrides
    this.#overridable = overridable
  }

  advisory(): void {}

  assumption({ name, value }: { readonly name: string; readonly value: number }): number {
    const trial = this.#overrides[name]
    return trial !== undefined && Object.hasOwn(this.#overrides, name) && this.#overridable.includes(name)
      ? trial
      : value
  }

  requirement({ name, actual, margin }: RequirementStatement): void {
    if (this.requirements.length >= bounds.requirements) return
    this.requirements.push([cut(String(name), longestName), number(actual), number(margin)])
  }

  result({ name, value }: ResultStatement): void {
    if (typeof value === 'number' && this.stated.size < bounds.requirements) this.stated.set(String(name), value)
  }
}

function number(value: unknown): ResultNumber {
  return encodeNumber(Number(value))
}

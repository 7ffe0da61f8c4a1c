/** Evaluating a few numbers at many points, by the part of the program that they need. */
import type { NumbersOutcome, Point } from '../../../../shared/contracts/index.js'
import type { NumbersHost, NumbersOptions, Program, StopSignal, WantedNumbers } from '../../program/index.js'
import { type ReadProgram, sliceProgram } from './slice-program.js'

export interface Evaluator {
  /** Outcomes in the order of the points; fewer when it was stopped. */
  evaluateMany(
    points: readonly Point[],
    signal?: StopSignal,
    onProgress?: (done: number) => void,
  ): Promise<readonly NumbersOutcome[]>
  /** Assumptions that can reach a wanted number, in evaluation order. */
  readonly assumptions: readonly string[]
  /** Only parts of cells are run; false where these did not give what the whole cells give. */
  readonly sliced: boolean
}

/**
 * Compares the slice with whole cells first, at the document's values and at `probes`: where one number differs, whole cells are used.
 */
export async function openEvaluator(
  read: ReadProgram,
  wanted: WantedNumbers,
  host: NumbersHost,
  { probes = [], signal }: { readonly probes?: readonly Point[]; readonly signal?: StopSignal } = {},
): Promise<Evaluator> {
  const slice = sliceProgram(read, wanted)
  const points = [{}, ...probes]
  const options: NumbersOptions = signal === undefined ? {} : { signal }
  const part = await host.evaluateNumbers(slice, points, wanted, options)
  const whole = await host.evaluateNumbers(read.program, points, wanted, options)
  const sliced = part.length === points.length && part.every((one, at) => sameOutcome(one, whole[at]))
  const program: Program = sliced ? slice : read.program
  return {
    evaluateMany: (many, stop, onProgress) =>
      host.evaluateNumbers(program, many, wanted, {
        ...(stop === undefined ? {} : { signal: stop }),
        ...(onProgress === undefined ? {} : { onProgress }),
      }),
    assumptions: slice.cells.flatMap(({ assumptions }) => assumptions),
    sliced,
  }
}

/** The same code ran in the same order, so numbers agree to the last digit or something is amiss. */
function sameOutcome(one: NumbersOutcome, other: NumbersOutcome | undefined): boolean {
  if (other === undefined || one.ok !== other.ok) return false
  if (!one.ok && !other.ok && one.code !== other.code) return false
  return flat(one) === flat(other)
}

function flat({ numbers, requirements }: NumbersOutcome): string {
  const text = (value: number) => (Object.is(value, -0) ? '-0' : String(value))
  return JSON.stringify([
    Object.entries(numbers).map(([name, value]) => [name, text(value)]),
    Object.entries(requirements).map(([name, { actual, margin }]) => [name, text(actual), text(margin)]),
  ])
}

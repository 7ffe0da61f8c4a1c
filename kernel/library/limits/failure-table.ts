/** The table of failure cases against flight phases: what becomes of the aircraft, what the case sizes, what remains. */
import { requireFinite, requireText } from '../check.js'
import { checkOptions, describeValue, InvalidInput } from '../errors.js'
import { requireChoice } from '../outside.js'
import type { Ratio } from '../quantity.js'
import { requireList } from '../shapes.js'

export type Outcome = 'continues' | 'diverts' | 'lands at once' | 'lost' | 'not evaluated'

/** The part of what `authority.trim` answers that a row is made of. */
export interface TrimAnswer {
  readonly feasible: boolean
  /** Largest thrust over weight. */
  readonly peakShare?: Ratio
  /** Axes given up. */
  readonly cannotHold?: readonly string[]
}

export interface FailureCase {
  /** What fails: `'lift rotor 3'`, `'pack B'`, `'cruise motor'`. */
  readonly failure: string
  /** In which phase: `'hover'`, `'cruise'`. */
  readonly phase: string
  /** What becomes of the aircraft; taken from `trim` where that is given. */
  readonly outcome?: Outcome
  /** Of the limit that decides, as a share; negative is lacking, and cannot stand beside "continues". */
  readonly margin?: Ratio
  /** Component and quantity that the case sizes. */
  readonly sizes?: string
  /** What is left to fly with. */
  readonly remains?: string
  /** Of a rotor that stands still: the answer of `authority.trim`. */
  readonly trim?: TrimAnswer
  /** What would have to be worked out, where nothing is. */
  readonly needs?: string
  /** Where the row comes from. */
  readonly source?: string
}

export interface FailureTableOptions {
  readonly cases: readonly FailureCase[]
  /** In the order of the flight; as they first come in the cases when left out. */
  readonly phases?: readonly string[]
}

export interface FailureRow {
  readonly failure: string
  readonly phase: string
  readonly outcome: Outcome | 'not considered'
  readonly sizes: string
  readonly remains: string
  readonly margin?: Ratio
  readonly source: string
}

export interface FailureTable {
  /** Failure by failure, in each the phases in order; a phase that no case speaks of is "not considered". */
  readonly rows: readonly FailureRow[]
  /** One record per failure with the outcome in each phase: the table at a glance. */
  readonly matrix: readonly Readonly<Record<string, string>>[]
  /** Rows that are not evaluated or not considered. */
  readonly open: Ratio
  /** Rows in which the aircraft is lost. */
  readonly lost: Ratio
}

const method = 'limits.failureTable'
const known = new Set(['cases', 'phases'])
const knownCase = new Set(['failure', 'phase', 'outcome', 'margin', 'sizes', 'remains', 'trim', 'needs', 'source'])
const outcomes = ['continues', 'diverts', 'lands at once', 'lost', 'not evaluated'] as const
const nothing = 'not stated'

/**
 * Failure cases against flight phases: outcome, what each sizes and what remains, with every gap in the thinking shown as one.
 *
 * @equation rows = failures x phases
 * @param options - `cases`: list of `{ failure, phase, outcome, margin, sizes, remains, trim, needs, source }`; `trim` is what `authority.trim` answered for a rotor that stands still; optional `phases` in their order
 * @returns `rows`, `matrix` (one record per failure, a column per phase), the number of rows that are `open`, and of those in which the aircraft is `lost`
 * @throws InvalidInput for no cases, a case without failure or phase, twice the same, a phase that is not in `phases`, an unknown outcome, a negative margin beside "continues", and an unknown option
 * @method Orders and completes; nothing is made up. With a `trim` the outcome is "lands at once" where all held axes are kept and "lost" where not, unless the author's own outcome is more cautious. A case
 * with neither outcome nor trim is "not evaluated" and says what it needs.
 * @validity As the methods behind the rows. "Lands at once" after a lost lift rotor is the house's reading: the next loss may not be borne.
 * @source Form: functional hazard assessment as in SAE ARP4761 (from memory). House convention otherwise.
 * @example
 * const cases = limits.failureTable({
 *   phases: ['hover', 'cruise'], cases: [
 *     { failure: 'lift rotor', phase: 'hover', trim: { feasible: true, peakShare: 0.21 } },
 *     { failure: 'cruise motor', phase: 'cruise', outcome: 'diverts', sizes: 'height over water', remains: 'glide of 5.4 km' },
 *   ],
 * })
 * cases.open // 2
 */
export function failureTable(options: FailureTableOptions): FailureTable {
  checkOptions(method, options, known)
  requireList(method, 'cases', options.cases, '{ failure, phase, outcome }')
  const cases = options.cases.map((one, index) => readCase(one, `cases[${index}]`))
  const phases = readPhases(options, cases)
  const failures = [...new Set(cases.map((one) => one.failure))]
  const byPlace = new Map<string, FailureRow>()
  for (const row of cases) {
    const place = JSON.stringify([row.failure, row.phase])
    if (byPlace.has(place))
      throw new InvalidInput({
        method,
        argument: `the case "${row.failure}" in "${row.phase}"`,
        value: 'given twice',
        accepted: 'given once',
      })
    byPlace.set(place, row)
  }
  const rows = failures.flatMap((failure) =>
    phases.map((phase) => byPlace.get(JSON.stringify([failure, phase])) ?? notConsidered(failure, phase)),
  )
  return {
    rows,
    matrix: failures.map((failure) => matrixRow(failure, rows)),
    open: rows.filter((row) => row.outcome === 'not evaluated' || row.outcome === 'not considered').length,
    lost: rows.filter((row) => row.outcome === 'lost').length,
  }
}

function readPhases(options: FailureTableOptions, cases: readonly FailureRow[]): readonly string[] {
  const { phases = [...new Set(cases.map((one) => one.phase))] } = options
  requireList(method, 'phases', phases, 'phase')
  phases.forEach((phase, index) => {
    requireText(method, `phases[${index}]`, phase)
  })
  cases.forEach((one, index) => {
    requireChoice(method, `cases[${index}].phase`, one.phase, phases)
  })
  return phases
}

function readCase(one: FailureCase, at: string): FailureRow {
  checkOptions(`${method} ${at}`, one, knownCase)
  requireText(method, `${at}.failure`, one.failure)
  requireText(method, `${at}.phase`, one.phase)
  for (const key of ['sizes', 'remains', 'needs', 'source'] as const)
    if (one[key] !== undefined) requireText(method, `${at}.${key}`, one[key])
  if (one.outcome !== undefined) requireChoice(method, `${at}.outcome`, one.outcome, outcomes)
  if (one.margin !== undefined) requireFinite(method, `${at}.margin`, one.margin, '1')
  const row = one.trim === undefined ? withoutTrim(one) : withTrim(one, one.trim, at)
  if (row.outcome === 'continues' && (one.margin ?? 0) < 0)
    throw new InvalidInput({
      method,
      argument: `${at}.outcome`,
      value: '"continues" with a negative margin',
      accepted: 'another outcome where a limit is lacking',
    })
  return row
}

function withoutTrim(one: FailureCase): FailureRow {
  const { failure, phase, outcome = 'not evaluated', sizes, remains, needs, margin, source } = one
  const missing =
    outcome === 'not evaluated' ? `needs ${needs ?? 'an outcome, or the answer of authority.trim'}` : nothing
  return {
    failure,
    phase,
    outcome,
    sizes: sizes ?? nothing,
    remains: remains ?? missing,
    ...(margin === undefined ? {} : { margin }),
    source: source ?? nothing,
  }
}

function withTrim(one: FailureCase, trim: TrimAnswer, at: string): FailureRow {
  if (typeof trim !== 'object' || trim === null || typeof trim.feasible !== 'boolean')
    throw new InvalidInput({
      method,
      argument: `${at}.trim`,
      value: describeValue(trim),
      accepted: 'what authority.trim answers',
    })
  const { feasible, peakShare, cannotHold = [] } = trim
  if (peakShare !== undefined) requireFinite(method, `${at}.trim.peakShare`, peakShare, '1')
  const { outcome = feasible ? 'lands at once' : 'lost' } = one
  // The author may be more cautious than the trim, never less.
  const judged = !feasible && outcome !== 'not evaluated' ? 'lost' : outcome
  const peak = peakShare === undefined ? '' : `: ${peakShare.toPrecision(3)} of the weight on one rotor`
  return {
    failure: one.failure,
    phase: one.phase,
    outcome: judged,
    sizes: one.sizes ?? (feasible ? `lift motor${peak}` : nothing),
    remains: one.remains ?? (feasible ? 'all held axes' : `cannot hold ${cannotHold.join(', ') || 'its axes'}`),
    ...(one.margin === undefined ? {} : { margin: one.margin }),
    source: one.source ?? 'authority.trim',
  }
}

function notConsidered(failure: string, phase: string): FailureRow {
  return { failure, phase, outcome: 'not considered', sizes: nothing, remains: nothing, source: nothing }
}

function matrixRow(failure: string, rows: readonly FailureRow[]): Readonly<Record<string, string>> {
  const mine = rows.filter((row) => row.failure === failure)
  return Object.fromEntries([['failure', failure], ...mine.map((row) => [row.phase, row.outcome] as const)])
}

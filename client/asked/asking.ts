/** What trace, drivers and spread ask of the page, and what the view that holds them asks of each. */
import type { Evaluator, ReadProgram } from '../../kernel/cells/evidence/index.js'
import type { StopSignal, WantedNumbers } from '../../kernel/cells/program/index.js'
import type { NumbersOutcome, Point } from '../../shared/contracts/index.js'
import type { SheetView } from '../../shared/rendering/page.js'

export interface Asking {
  view(): SheetView
  /** What was read last; absent before the first reading. */
  reading(): ReadProgram | undefined
  /**
   * Numbers of one's own choice at many points, in isolates beside the page's. Remembered until the text changes.
   *
   * @throws Error before the first reading, and where the isolates cannot be had; the message is for the reader.
   */
  open(wanted: WantedNumbers, options?: { probes?: readonly Point[]; signal?: StopSignal }): Promise<Evaluator>
  /** The number and all requirements at points; fewer outcomes than points when it was stopped. */
  evaluateMany(target: string, points: readonly Point[], signal: AbortSignal): Promise<readonly NumbersOutcome[]>
  /** Assumptions that can reach the number; undefined where that is not known. */
  reaching(target: string): readonly string[] | undefined
  /** Puts values in force as trial values. */
  tryPoint?(point: Point): void
  /** Aloud, to people who do not see the page. */
  say(sentence: string): void
  /** [ms] */
  now(): number
}

/** One of the three things a number can be asked. */
export interface AskedPart {
  readonly element: HTMLElement
  /** Asks for a number, by the name that the sheet shows it under. */
  show(target: string): void
  /** The sheet changed; called only while visible. */
  update(): void
  /** Another number or view is shown: nothing runs on for nobody. */
  leave(): void
}

/** What is known of requirements besides the values in force: the margin at the worst corner, and the margin that 90 % of samples keep. */
import type { Point, RequirementSpread } from '../../contracts/index.js'

/** Every uncertain assumption at the end that takes most from the margin. */
export interface CornerMargin {
  readonly requirement: string
  readonly ends: Point
  /** SI; absent where the corner does not compute. */
  readonly margin?: number
  /** Assumptions at an end of which it does not compute. */
  readonly failing: readonly string[]
}

export interface RequirementSureness {
  /** Absent where no range or distribution is stated. */
  readonly corners?: readonly CornerMargin[]
  /** Absent where no distribution is stated. */
  readonly spreads?: readonly RequirementSpread[]
}

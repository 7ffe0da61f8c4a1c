/** Sizing code as a concept designer writes it, over several cells, and the slips that each of its lines invites. */

/** A slip: this text of the program is written as that, and words that the one finding must contain. */
export type Slip = readonly [written: string, slipped: string, words: string]

export interface SizingProgram {
  readonly title: string
  readonly cells: readonly string[]
  /** Of names that a reader would ask about, in base units. */
  readonly names: Readonly<Record<string, string>>
  readonly slips: readonly Slip[]
}

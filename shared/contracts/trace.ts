/** Where a number came from, as data: from the engine that reads and perturbs to whoever draws it. SI throughout; never stored. */
import type { CellId } from './identifiers.js'

/**
 * What a step does to the number, all else as it stands. `moves`: changed alone by 1 % or 10 %, or turned over where it is a switch, it
 * gives another number, or none. `hardly`: only in digits that solving leaves open. `inactive`: not at all. `not known`: it was not tried,
 * or holds nothing that can be changed by itself.
 */
export type Acts = 'moves' | 'hardly' | 'inactive' | 'not known'

/** A value from which on something begins to move the number. */
export interface Waking {
  /** Whose value it is: the step's own name, or that of an assumption that decides about it. */
  readonly by: string
  /** From the value in force outwards [SI]. */
  readonly from: number
  /** From there on the number does not compute. */
  readonly fails: boolean
}

/** `assumption`, a `number` worked out on the way, or anything `other`: a record, a list, a function, text. */
export type StepKind = 'assumption' | 'number' | 'other'

/** One name on the way from assumptions to the number. */
export interface TraceStep {
  readonly name: string
  readonly cell: CellId
  /** Of the cell's own TypeScript, counted from 1. */
  readonly line: number
  readonly kind: StepKind
  /** In force [SI]; of numbers only. */
  readonly value?: number
  /** Names that it is made from, in the order of the text; each is a step. */
  readonly reads: readonly string[]
  /** Methods of the kernel called in what makes it: `rotor.hover`. */
  readonly methods: readonly string[]
  readonly acts: Acts
  /** Of a step that is inactive, or that a change of 1 % does not move; empty where nothing that was tried wakes it. */
  readonly wakes: readonly Waking[]
  /** It moves the number by a way that the text does not show. */
  readonly apart: boolean
}

export interface Trace {
  readonly target: string
  /** The number as it stands. */
  readonly base: number
  /** Each after what it reads; the target last. */
  readonly steps: readonly TraceStep[]
  /** Evaluations. */
  readonly runs: number
  /** Ended by the person before these were tried. */
  readonly left: readonly string[]
}

/**
 * A formula as data: how a name of a cell is worked out, read from the cell's own source. A sheet shows it as a hand calculation,
 * `symbol = formula = numbers with units = result`, with the numbers taken from stored results: nothing is computed for it.
 */

/** What a formula is made of. Names keep the author's spelling; how they look is the renderer's business. */
export type Expression =
  /** A number as written, with the unit it was multiplied by: `85 * u.km` is 85 and `km`. */
  | { readonly kind: 'quantity'; readonly value: number; readonly unit?: string }
  /** A name of the sheet, or a member of one: `hover.power` has the path `power`. Its number stands in a result. */
  | { readonly kind: 'name'; readonly name: string; readonly path: readonly string[] }
  /** An argument or a name inside a function: it has a number only while the function runs. */
  | { readonly kind: 'local'; readonly name: string; readonly path: readonly string[] }
  | { readonly kind: 'constant'; readonly constant: 'pi' | 'e' | 'g0' | 'infinity' }
  /** A unit alone: `power / u.kW`. */
  | { readonly kind: 'unit'; readonly unit: string }
  | { readonly kind: 'negative'; readonly of: Expression }
  | { readonly kind: 'sum'; readonly terms: readonly Term[] }
  | { readonly kind: 'product'; readonly factors: readonly Expression[] }
  | { readonly kind: 'quotient'; readonly over: Expression; readonly under: Expression }
  | { readonly kind: 'remainder'; readonly of: Expression; readonly by: Expression }
  | { readonly kind: 'power'; readonly base: Expression; readonly exponent: Expression }
  | { readonly kind: 'root'; readonly degree: 2 | 3; readonly of: Expression }
  /** A function of mathematics: `sin`, `ln`, `max`, `abs`, `floor`. */
  | { readonly kind: 'function'; readonly name: string; readonly of: readonly Expression[] }
  /** A method of the kernel or a function of the sheet, with a member of what it returns: `rotor.hover(...).power`. */
  | {
      readonly kind: 'call'
      readonly method: string
      readonly with: readonly Argument[]
      readonly path: readonly string[]
    }
  | { readonly kind: 'comparison'; readonly sign: Comparison; readonly left: Expression; readonly right: Expression }
  | { readonly kind: 'logic'; readonly word: 'and' | 'or'; readonly left: Expression; readonly right: Expression }
  | { readonly kind: 'not'; readonly of: Expression }
  /** The last case has no condition. */
  | { readonly kind: 'cases'; readonly cases: readonly Case[] }
  | { readonly kind: 'list'; readonly items: readonly Expression[] }
  | { readonly kind: 'text'; readonly text: string }
  /** What has no form in mathematics: shown as an ellipsis, the source beside it says the rest. */
  | { readonly kind: 'unwritten' }

export type Comparison = '<' | '≤' | '>' | '≥' | '=' | '≠'

export interface Term {
  readonly minus: boolean
  readonly of: Expression
}

export interface Argument {
  /** Given by name: `{ thrust: ... }`. */
  readonly name?: string
  readonly of: Expression
}

export interface Case {
  readonly when?: Expression
  readonly value: Expression
}

export interface Formula {
  /** The top-level name that it works out. */
  readonly name: string
  /** The arguments of a function, whose formula holds for any of them; absent for a value. */
  readonly parameters?: readonly string[]
  readonly expression: Expression
  /** Names inside a function that the expression reads, each worked out before it. */
  readonly where?: readonly { readonly name: string; readonly expression: Expression }[]
}

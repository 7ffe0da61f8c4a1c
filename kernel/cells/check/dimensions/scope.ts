/** Where names are bound: the top level of all cells, and one scope for each call of a function that is followed. */
import type ts from 'typescript'
import type { Self, Shape } from './shape.js'

export class Scope {
  readonly #values = new Map<ts.Symbol, Shape>()
  readonly #outer: Scope | undefined

  /** What `this` means here. */
  readonly self: Self | undefined

  constructor(outer?: Scope, self?: Self) {
    this.#outer = outer
    this.self = self ?? outer?.self
  }

  declare(symbol: ts.Symbol, shape: Shape): void {
    this.#values.set(symbol, shape)
  }

  read(symbol: ts.Symbol): Shape | undefined {
    return this.#values.get(symbol) ?? this.#outer?.read(symbol)
  }

  /** Gives a bound name another shape, in whichever scope holds it. */
  assign(symbol: ts.Symbol, shape: Shape): void {
    if (this.#values.has(symbol) || this.#outer === undefined) this.#values.set(symbol, shape)
    else this.#outer.assign(symbol, shape)
  }
}

/** Values of changing names where the course of statements parts and meets again. */
import type ts from 'typescript'
import type { Inference } from './inference.js'
import type { Scope } from './scope.js'
import { join, type Shape, sameShape, unknown } from './shape.js'

type Snapshot = ReadonlyMap<ts.Symbol, Shape | undefined>

function snapshot(symbols: readonly ts.Symbol[], scope: Scope): Snapshot {
  return new Map(symbols.map((symbol) => [symbol, scope.read(symbol)]))
}

function restore(state: Snapshot, scope: Scope): void {
  for (const [symbol, shape] of state) if (shape !== undefined) scope.assign(symbol, shape)
}

/** A name not yet given a value takes what the other side gives it. */
function meet(a: Shape | undefined, b: Shape | undefined): Shape | undefined {
  return a === undefined ? b : b === undefined ? a : join(a, b)
}

/**
 * Runs each way from the same state and joins what they leave; a way that returns `true` leaves the function and does not
 * count. Gives whether all ways leave.
 */
export function alternatives(
  inference: Inference,
  node: ts.Node,
  scope: Scope,
  ways: readonly (() => boolean)[],
): boolean {
  const symbols = inference.mutations.within(node)
  const before = snapshot(symbols, scope)
  const after: Snapshot[] = []
  for (const way of ways) {
    restore(before, scope)
    if (way() !== true) after.push(snapshot(symbols, scope))
  }
  for (const symbol of symbols) {
    const shape = after.map((state) => state.get(symbol)).reduce(meet, undefined)
    if (shape !== undefined) scope.assign(symbol, shape)
  }
  return after.length === 0
}

const passesAllowed = 4

/**
 * Runs a body that may repeat, until the names it changes settle. What is wrong in any pass is wrong in truth: the first runs from
 * the very state before the loop, the later ones from one that holds for every round.
 */
export function repeated(inference: Inference, node: ts.Node, scope: Scope, body: () => void): void {
  const symbols = inference.mutations.within(node)
  for (let pass = 1; pass <= passesAllowed; pass += 1) {
    const before = snapshot(symbols, scope)
    body()
    if (settle(before, scope, pass === passesAllowed)) return
  }
}

/** Joins the state after a pass with the one before it; gives whether nothing moved. */
function settle(before: Snapshot, scope: Scope, giveUp: boolean): boolean {
  let settled = true
  for (const [symbol, earlier] of before) {
    const joined = meet(earlier, scope.read(symbol))
    if (joined === undefined) continue
    const moved = !sameShape(earlier, joined)
    settled = settled && !moved
    scope.assign(symbol, moved && giveUp ? unknown : joined)
  }
  return settled || giveUp
}

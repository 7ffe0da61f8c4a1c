/** Which identifier means which name: the cell's own top level, or something free that another cell or the kernel owns. */

import type { Program } from 'acorn'
import { analyze, type Reference, type Scope, type Variable } from 'eslint-scope'

/** One use of a top-level or free name, anywhere in the cell. */
export interface Use {
  readonly name: string
  readonly start: number
  readonly node: Reference['identifier']
  readonly reads: boolean
  /** Assigns, other than the initial value of a declaration. */
  readonly writes: boolean
  /** The cell's own variable; absent for a free name. */
  readonly variable?: Variable
  /** The scope that the use stands in. */
  readonly scope: Scope
}

export interface Scopes {
  /** The cell's top-level variables in the order of the code. */
  readonly variables: readonly Variable[]
  /** Uses of these and of free names in the order of the code. */
  readonly uses: readonly Use[]
  readonly top: Scope
}

/** Resolves a program as the strict code of one function. */
export function resolveScopes(program: Program): Scopes {
  const manager = analyze(program as unknown as Parameters<typeof analyze>[0], {
    ecmaVersion: 2023,
    sourceType: 'module',
    ignoreEval: true,
  })
  // A module's scopes: the global one, which stays empty, and inside it the one that holds the top level.
  const top = manager.scopes[1] as Scope
  const uses = manager.scopes.flatMap((scope) => scope.references.flatMap((reference) => useOf(reference, scope, top)))
  return {
    top,
    variables: [...top.variables].sort((a, b) => startOf(a.identifiers[0]) - startOf(b.identifiers[0])),
    uses: uses.sort((a, b) => a.start - b.start),
  }
}

function useOf(reference: Reference, scope: Scope, top: Scope): Use[] {
  const variable = reference.resolved
  if (variable !== null && variable.scope !== top) return []
  return [
    {
      name: reference.identifier.name,
      start: startOf(reference.identifier),
      node: reference.identifier,
      reads: reference.isRead(),
      writes: reference.isWrite() && reference.init !== true,
      ...(variable === null ? {} : { variable }),
      scope,
    },
  ]
}

/** Uses whose identifier begins in a stretch of code. They stand in the order of the code, so a long cell costs no more for each stretch. */
export function usesIn({ start, end }: { start: number; end: number }, uses: readonly Use[]): readonly Use[] {
  return uses.slice(firstFrom(start, uses), firstFrom(end, uses))
}

/** Index of the first of these, sorted by `start`, that begins at `place` or later. */
export function firstFrom(place: number, sorted: readonly { readonly start: number }[]): number {
  let [low, high] = [0, sorted.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((sorted[middle]?.start ?? 0) < place) low = middle + 1
    else high = middle
  }
  return low
}

/** acorn gives every node its offset; the tree's published types do not say so. */
export function startOf(node: unknown): number {
  return (node as { start?: number } | undefined)?.start ?? 0
}

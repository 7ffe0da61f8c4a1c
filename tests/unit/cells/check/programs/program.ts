/**
 * Small programs with what should hold of them. A right program gives the dimension of its names and has nothing said about it; a
 * wrong one has one mistake in its units, and is told so once, on its line, in words that must be there.
 */

/** Dimension of each name in base units, `1` for a pure number, `null` where none can be known. */
export type Names = Readonly<Record<string, string | null>>

export type Program =
  | { readonly source: string; readonly names: Names }
  | { readonly source: string; readonly line: number; readonly words: string }

export function right(source: string, names: Names): Program {
  return { source, names }
}

export function wrong(source: string, line: number, words: string): Program {
  return { source, line, words }
}

/**
 * A formula laid out: boxes beside, above and below each other. The same boxes become MathML for the eye (math-nodes.ts) and one line
 * of words for the ear (box-words.ts), so that both say the same.
 */

export type Box =
  | { readonly box: 'row'; readonly parts: readonly Box[] }
  /** A name as the author's TeX, as a letter, or as upright words; `words` is how it is said. */
  | { readonly box: 'symbol'; readonly symbol: NameSymbol; readonly words: string }
  /** Upright text: a method, a function of mathematics, a unit alone, a word. */
  | { readonly box: 'word'; readonly text: string }
  | { readonly box: 'number'; readonly number: string; readonly unit: string }
  | SignBox
  | { readonly box: 'fraction'; readonly over: Box; readonly under: Box }
  | { readonly box: 'power'; readonly base: Box; readonly exponent: Box }
  | { readonly box: 'root'; readonly degree: 2 | 3; readonly of: Box }
  | { readonly box: 'fence'; readonly open: string; readonly close: string; readonly of: Box }
  | { readonly box: 'cases'; readonly rows: readonly { readonly value: Box; readonly when?: Box }[] }

export interface SignBox {
  readonly box: 'sign'
  readonly sign: string
  readonly space: 'none' | 'after' | 'both'
  /** A long line may break here. */
  readonly breaks: boolean
}

export type NameSymbol =
  | { readonly kind: 'tex'; readonly tex: string }
  /** `base` alone or with `subscript`; a base of one letter leans, as variables do. */
  | { readonly kind: 'text'; readonly base: string; readonly subscript: string }

export function row(...parts: readonly Box[]): Box {
  const flat = parts.flatMap((part) => (part.box === 'row' ? part.parts : [part]))
  return flat.length === 1 && flat[0] !== undefined ? flat[0] : { box: 'row', parts: flat }
}

export const word = (text: string): Box => ({ box: 'word', text })

/** A sign with room on both sides, before which a long line may break. */
export const between = (sign: string): SignBox => ({ box: 'sign', sign, space: 'both', breaks: true })

export const tight = (sign: string): Box => ({ box: 'sign', sign, space: 'none', breaks: false })

/** The comma of a list; a line may break after it. */
export const comma: Box = { box: 'sign', sign: ',', space: 'after', breaks: true }

export const brackets = (of: Box): Box => ({ box: 'fence', open: '(', close: ')', of })

/** Brackets of arguments: they do not grow, so that a long list may break inside. */
export function listed(open: string, items: readonly Box[], close: string): Box {
  return row(tight(open), ...items.flatMap((item, index) => (index === 0 ? [item] : [comma, item])), tight(close))
}

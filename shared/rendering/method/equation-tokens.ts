/** The equations of doc comments, word by word: letters with subscripts, numbers and signs. */

export type Token = TokenKind & {
  /** Nothing stands between it and the token before: `P(t)` depends on t, `P (t + 1)` is a product. */
  readonly joined: boolean
}

type TokenKind =
  | { readonly kind: 'number'; readonly text: string }
  /** `v_i`, `C_L,max`, `T0`, `h'`: base, subscript, prime. */
  | { readonly kind: 'name'; readonly base: string; readonly subscript: string; readonly primes: string }
  | { readonly kind: 'sign'; readonly text: string }

const pattern =
  /(\s*)(?:(\d+(?:\.\d+)?(?:e-?\d+)?)|(log10|[A-Za-z]+)(\d+)?(?:_([A-Za-z\d]+(?:,c\/4|,[A-Za-z\d]+)*))?('*)|(<=|>=|\+-|[-+*/^=<>()[\]|,]))/y

/** `undefined` where something stands that is no part of an equation. */
export function tokensOf(text: string): readonly Token[] | undefined {
  const tokens: Token[] = []
  const end = text.trimEnd().length
  pattern.lastIndex = 0
  while (pattern.lastIndex < end) {
    const match = pattern.exec(text)
    if (match === null) return undefined
    const [, space, number, base, digits = '', below = '', primes = '', sign] = match
    const joined = space === '' && tokens.length > 0
    if (number !== undefined) tokens.push({ kind: 'number', text: number, joined })
    else if (base !== undefined) tokens.push({ kind: 'name', base, subscript: digits + below, primes, joined })
    else tokens.push({ kind: 'sign', text: sign ?? '', joined })
  }
  return tokens
}

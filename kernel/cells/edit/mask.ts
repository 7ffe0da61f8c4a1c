/** A source with its comments and the insides of its texts blanked: what remains is code, at the same places. */

const beforeRegularExpression = /(?:^|[=(,:[!&|?{};+\-*%<>~^]|\b(?:return|typeof|case|in|of|void))\s*$/

/** As long as `source`, line for line; every character of a comment, a text or a regular expression is a space. */
export function codeOf(source: string): string {
  const kept = source.split('')
  const blank = (from: number, to: number) => {
    for (let at = from; at < to; at += 1) if (kept[at] !== '\n') kept[at] = ' '
  }
  /** Reads code from `at` to the end, or to the `}` that ends the place of a template; answers where it stopped. */
  const readCode = (start: number, inTemplate: boolean): number => {
    let depth = 0
    let at = start
    while (at < source.length) {
      const sign = source[at]
      const end = endOfSilent(at)
      if (end !== undefined) {
        blank(at, end)
        at = end
      } else if (sign === '`') at = readTemplate(at)
      else {
        if (sign === '{') depth += 1
        if (sign === '}') {
          if (inTemplate && depth === 0) return at
          depth -= 1
        }
        at += 1
      }
    }
    return at
  }
  const endOfSilent = (at: number): number | undefined => {
    const sign = source[at]
    if (sign === '"' || sign === "'") return endOfText(source, at)
    if (sign !== '/') return undefined
    if (source[at + 1] === '/') return endOrAll(source.indexOf('\n', at), source)
    if (source[at + 1] === '*') return endOrAll(source.indexOf('*/', at + 2), source, 2)
    return beforeRegularExpression.test(kept.slice(Math.max(0, at - 40), at).join(''))
      ? endOfRegularExpression(source, at)
      : undefined
  }
  const readTemplate = (start: number): number => {
    let from = start
    let at = start + 1
    while (at < source.length && source[at] !== '`') {
      if (source[at] === '\\') at += 2
      else if (source[at] === '$' && source[at + 1] === '{') {
        blank(from, at + 2)
        at = readCode(at + 2, true)
        from = at
      } else at += 1
    }
    const end = Math.min(at + 1, source.length)
    blank(from, end)
    return end
  }
  readCode(0, false)
  return kept.join('')
}

function endOrAll(at: number, source: string, width = 0): number {
  return at === -1 ? source.length : at + width
}

/** After the closing quote, or at the end of a line that lacks it. */
function endOfText(source: string, start: number): number {
  for (let at = start + 1; at < source.length; at += 1) {
    if (source[at] === '\\') at += 1
    else if (source[at] === source[start]) return at + 1
    else if (source[at] === '\n') return at
  }
  return source.length
}

function endOfRegularExpression(source: string, start: number): number | undefined {
  let inClass = false
  for (let at = start + 1; at < source.length && source[at] !== '\n'; at += 1) {
    if (source[at] === '\\') at += 1
    else if (source[at] === '[') inClass = true
    else if (source[at] === ']') inClass = false
    else if (source[at] === '/' && !inClass) return at + 1
  }
  return undefined
}

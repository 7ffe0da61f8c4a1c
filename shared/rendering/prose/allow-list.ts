/** What prose may hold. Anything else loses its element and keeps its text. */

/** HTML elements that CommonMark and tables make, with the attributes each may keep. */
export const allowedElements: Readonly<Record<string, readonly string[]>> = {
  p: [],
  h1: [],
  h2: [],
  h3: [],
  h4: [],
  h5: [],
  h6: [],
  em: [],
  strong: [],
  code: [],
  pre: [],
  blockquote: [],
  ul: [],
  ol: ['start'],
  li: [],
  hr: [],
  br: [],
  a: ['href', 'title'],
  table: [],
  thead: [],
  tbody: [],
  tr: [],
  th: ['align'],
  td: ['align'],
  div: ['class'],
  span: ['class'],
}

/** Elements whose text is not for readers; they go with all they hold. */
export const droppedElements: ReadonlySet<string> = new Set(
  'script style template iframe object embed noscript textarea title svg annotation annotation-xml semantics'.split(
    ' ',
  ),
)

/** MathML Core presentation elements that temml writes. */
export const allowedMath: ReadonlySet<string> = new Set(
  (
    'math mrow mi mo mn ms mtext mspace mfrac msqrt mroot msub msup msubsup munder mover munderover ' +
    'mmultiscripts mprescripts none mtable mtr mtd mpadded mphantom menclose mstyle'
  ).split(' '),
)

export const allowedMathAttributes: ReadonlySet<string> = new Set(
  (
    'display displaystyle scriptlevel mathvariant fence form stretchy symmetric separator largeop movablelimits ' +
    'lspace rspace accent accentunder linethickness width height depth voffset minsize maxsize columnalign rowspan ' +
    'columnspan notation class'
  ).split(' '),
)

const mathValue = /^[A-Za-z0-9.%+\- ]{0,60}$/
const ownClasses: ReadonlySet<string> = new Set(['formula', 'formula-unread'])

/** The value an attribute may keep, or null when it must go. */
export function allowedValue(name: string, value: string): string | null {
  if (name === 'href') return safeAddress(value)
  if (name === 'class') return ownClasses.has(value) ? value : null
  if (name === 'align') return /^(left|right|center)$/.test(value) ? value : null
  if (name === 'start') return /^\d{1,9}$/.test(value) ? value : null
  return value
}

/** MathML attribute values are numbers, lengths and key words; classes only temml's own. */
export function allowedMathValue(name: string, value: string): string | null {
  if (!mathValue.test(value)) return null
  if (name !== 'class') return value
  const kept = value.split(' ').filter((word) => /^tml-[a-z-]+$/.test(word))
  return kept.length === 0 ? null : kept.join(' ')
}

/**
 * An address that may be linked: http, https, a path or a place on the page. Control characters and white space are
 * refused outright, because browsers drop some of them before they read the scheme; so is a backslash, read as a slash.
 */
export function safeAddress(address: string): string | null {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  if (/[\u0000-\u0020\u007f-\u009f\u00ad\u200b-\u200f\u2028-\u202e\ufeff\\]/.test(address)) return null
  if (/^https?:\/\/[^/]/i.test(address)) return address
  if (/^\/\//.test(address)) return null
  const beforePath = address.split(/[/?#]/, 1)[0] ?? ''
  return beforePath.includes(':') || address === '' ? null : address
}

/**
 * How a name looks in a formula: the author's TeX where it was given, else made from the identifier. English puts the thing last and what
 * qualifies it before, so `rotorRadius` is a radius with the subscript rotor; after a letter the words are its subscript: `vInduced`.
 */
import { humaniseName } from '../quantity/index.js'
import type { NameSymbol } from './box.js'

const greek: Readonly<Record<string, string>> = {
  alpha: 'α',
  beta: 'β',
  gamma: 'γ',
  delta: 'δ',
  epsilon: 'ε',
  zeta: 'ζ',
  eta: 'η',
  theta: 'θ',
  kappa: 'κ',
  lambda: 'λ',
  mu: 'μ',
  nu: 'ν',
  xi: 'ξ',
  pi: 'π',
  rho: 'ρ',
  sigma: 'σ',
  tau: 'τ',
  phi: 'φ',
  chi: 'χ',
  psi: 'ψ',
  omega: 'ω',
  Gamma: 'Γ',
  Delta: 'Δ',
  Theta: 'Θ',
  Lambda: 'Λ',
  Sigma: 'Σ',
  Phi: 'Φ',
  Psi: 'Ψ',
  Omega: 'Ω',
}

/** Words that join two others: such a name is a phrase and stays whole. */
const joining = new Set(
  'a an and as at by for from in is no not of on or over per the to under with without'.split(' '),
)

const longestSubscript = 24

/** The symbol of a name with its members: `hover`, `power` reads like `hoverPower`. */
export function symbolOf(parts: readonly string[]): NameSymbol {
  const own = symbolOfWords(wordsOf(parts.at(-1) ?? ''))
  const owners = parts.slice(0, -1).flatMap(wordsOf).join(' ')
  if (owners === '') return own
  // An index stands below what it counts in.
  if (/^\d+$/.test(own.base)) return { kind: 'text', base: owners, subscript: own.base }
  const subscript = [owners, own.subscript].filter((text) => text !== '').join(' ')
  if (subscript.length <= longestSubscript) return { kind: 'text', base: own.base, subscript }
  return { kind: 'text', base: `${subscript} ${own.base}`, subscript: '' }
}

function symbolOfWords(words: readonly string[]): TextSymbol {
  const [first = '', ...rest] = words
  if (rest.length === 0) return { kind: 'text', ...letterAndNumber(first) }
  if (words.some((one) => joining.has(one))) return { kind: 'text', base: words.join(' '), subscript: '' }
  const leads = isLetter(first)
  const subscript = (leads ? rest : words.slice(0, -1)).join(' ')
  if (subscript.length > longestSubscript) return { kind: 'text', base: words.join(' '), subscript: '' }
  return { kind: 'text', base: leads ? first : (words.at(-1) ?? ''), subscript }
}

type TextSymbol = Extract<NameSymbol, { kind: 'text' }>

function wordsOf(part: string): string[] {
  return humaniseName(part).split(' ').map(greekWord)
}

export function isLetter(text: string): boolean {
  return [...text].length === 1
}

function greekWord(text: string): string {
  return greekLetter(text) ?? text
}

/** The letter that a word names: `rho`; `undefined` for other words. */
export function greekLetter(text: string): string | undefined {
  return Object.hasOwn(greek, text) ? greek[text] : undefined
}

/** `V2`, `power2`: the number stands below. */
function letterAndNumber(text: string): { base: string; subscript: string } {
  const match = /^(.*?\D)(\d+)$/.exec(text)
  if (match === null || !/^[\p{L}]+$/u.test(match[1] ?? '')) return { base: text, subscript: '' }
  return { base: greekWord(match[1] ?? ''), subscript: match[2] ?? '' }
}

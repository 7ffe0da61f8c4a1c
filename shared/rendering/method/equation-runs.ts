/** Where an equation has words in it, what lies between them is still mathematics. */
import type { Box } from '../formula/box.js'
import { readEquation } from './read-equation.js'

export interface Run {
  readonly text: string
  /** Absent where it is words. */
  readonly box?: Box
}

/** Words that join pieces of mathematics, and the comma. */
const joint =
  /^(?:, (?:(?:and|at|by|for|from|if|or|so|then|where|with) )?|: | (?:above|and|as|at|below|by|for|from|if|in|is|of|or|over|so|take|takes|than|through|times|to|under|where|which|with|without)(?: (?:the|a))?(?:\s|$))/

/** The runs of a text in order; together they are the text. */
export function runsOf(text: string): readonly Run[] {
  const whole = readEquation(text)
  if (whole !== undefined) return [{ text, box: whole }]
  const runs = splitOutside(text, joint).flatMap((piece, index) =>
    index % 2 === 1 ? [{ text: piece }] : runsOfPiece(piece),
  )
  return joinWords(runs)
}

/** A piece that has a sign or a subscript in it and reads as an equation, after the words that lead it. */
function runsOfPiece(piece: string): Run[] {
  let start = 0
  for (let words = 0; words < 6; words += 1) {
    const rest = piece.slice(start)
    const box = isWorthReading(rest) ? readEquation(rest) : undefined
    if (box !== undefined)
      return start === 0 ? [{ text: rest, box }] : [{ text: piece.slice(0, start) }, { text: rest, box }]
    const lead = /^[A-Za-z][a-z'-]{2,} /.exec(rest)
    if (lead === null) break
    start += lead[0].length
  }
  return [{ text: piece }]
}

/** Signs between words alone are a sentence still: `hub + pod`. */
function isWorthReading(text: string): boolean {
  return /[=<>/^+_]|\d [A-Za-z]/.test(text) && /(?<![A-Za-z])[A-Za-z](?![A-Za-z])|_/.test(text) && !text.includes('`')
}

function joinWords(runs: readonly Run[]): readonly Run[] {
  const joined: Run[] = []
  for (const run of runs) {
    const last = joined.at(-1)
    if (run.box === undefined && last !== undefined && last.box === undefined)
      joined[joined.length - 1] = { text: last.text + run.text }
    else if (run.text !== '') joined.push(run)
  }
  return joined
}

/** Splits at what `separator` matches outside brackets; separators stand at the odd places of the answer. */
export function splitOutside(text: string, separator: RegExp): readonly string[] {
  const parts: string[] = []
  let depth = 0
  let start = 0
  let at = 0
  while (at < text.length) {
    const character = text[at] ?? ''
    if ('([{'.includes(character)) depth += 1
    else if (')]}'.includes(character)) depth -= 1
    const found = depth > 0 ? null : separator.exec(text.slice(at))
    if (found === null) at += 1
    else {
      parts.push(text.slice(start, at), found[0])
      at += found[0].length
      start = at
    }
  }
  return [...parts, text.slice(start)]
}

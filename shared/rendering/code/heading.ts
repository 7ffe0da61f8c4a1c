/**
 * Our convention for the heading of a sizing cell: the plain words of the comment lines (`//`) that open its source. So
 * a heading is ordinary TypeScript, travels with the cell and needs no field of its own.
 */
import { countOf } from '../quantity/index.js'

export interface CellHeading {
  /** Words of the first comment line; empty when the source opens with anything else. */
  readonly title: string
  /** Words of the comment lines that follow it without a gap. */
  readonly remark: string
  /** `18 lines of TypeScript`: lines that are neither empty nor part of the heading. */
  readonly lines: string
}

export function readHeading(source: string): CellHeading {
  const lines = source.split('\n')
  const start = lines.findIndex((line) => line.trim() !== '')
  const words: string[] = []
  let at = Math.max(start, 0)
  for (; at < lines.length && /^\s*\/\//.test(lines[at] ?? ''); at++)
    words.push((lines[at] ?? '').replace(/^\s*\/\/+\s?/, '').trim())
  const counted = lines.slice(at).filter((line) => line.trim() !== '').length
  return {
    title: words[0] ?? '',
    remark: words.slice(1).join(' ').trim(),
    lines: `${countOf(counted, 'line')} of TypeScript`,
  }
}

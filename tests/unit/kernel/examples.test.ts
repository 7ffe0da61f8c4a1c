/** Runs every example of the kernel's doc comments and compares the values written beside the lines. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { preloaded } from '../../../kernel/library/index.js'
import { expectClose } from './close-to.js'

const folder = new URL('../../../kernel/library/', import.meta.url).pathname
const tags = ['@equation', '@returns', '@throws', '@method', '@validity', '@source', '@example']

interface Documented {
  readonly name: string
  readonly comment: string
}

/** Doc comments of what cells call: functions exported from a file of the library that carries an @equation. */
function documented(): Documented[] {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'))
  return files.flatMap((file) => {
    const source = readFileSync(folder + file, 'utf8')
    return [...source.matchAll(/(\/\*\*(?:[^*]|\*(?!\/))*\*\/)\nexport (?:function|const) (\w+)/g)]
      .map((match) => ({ name: `${file} ${match[2]}`, comment: match[1] ?? '' }))
      .filter((one) => one.comment.includes('@equation'))
  })
}

/** `const x = f() // 12.5` becomes a check of x; other lines run as they are. */
function runnable(comment: string): string {
  const text = (comment.split('@example')[1] ?? '').replace(/^ \*\/|^ \* ?/gm, '')
  return text
    .split('\n')
    .map((line) => {
      const match = /^(?:const (\w+) = )?(.+?) \/\/ (-?[\d.]+(?:e[+-]?\d+)?|true|false)\b/.exec(line)
      if (match === null) return line
      const [, name, expression = '', value = ''] = match
      return name === undefined
        ? `check(${expression}, ${value}, '${value}')`
        : `const ${name} = ${expression}; check(${name}, ${value}, '${value}')`
    })
    .join('\n')
}

/** As close as the digits printed. */
function check(actual: unknown, expected: unknown, text: string): void {
  if (typeof expected !== 'number') {
    expect(actual).toBe(expected)
    return
  }
  const digits = text.replace(/e.*$/, '').replace(/^-?0*\.?0*|\./g, '').length
  expectClose(actual as number, expected, 0.51 * 10 ** (1 - digits) + 1e-12)
}

const functions = documented()

describe('doc comments of the kernel', () => {
  it('cover every function that cells see', () => {
    const names = Object.entries(preloaded).flatMap(([name, member]) =>
      typeof member === 'function' ? [name] : name === 'u' ? ['u'] : Object.keys(member),
    )
    const covered = new Set(functions.map((one) => one.name.split(' ')[1]))
    expect(names.filter((name) => !covered.has(name))).toEqual([])
  })

  it.each(functions)('$name has its parts in the fixed order', ({ name, comment }) => {
    const wanted = name.endsWith(' u') ? ['@equation', '@validity', '@source', '@example'] : tags
    const places = wanted.map((tag) => comment.indexOf(tag))
    expect(places).toEqual(places.filter((place) => place > 0).sort((a, b) => a - b))
  })

  it.each(functions)('$name has an example that runs and gives what it says', ({ comment }) => {
    const names = Object.keys(preloaded)
    const run = new Function(...names, 'check', `'use strict'\n${runnable(comment)}`)
    run(...Object.values(preloaded), check)
  })
})

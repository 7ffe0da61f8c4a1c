import { runInNewContext } from 'node:vm'
import { describe, expect, test } from 'vitest'
import { compile, runnableLineOffset, writeRunnable } from '../../../../kernel/cells/compile/index.js'
import { graphOf } from '../analyse/support.js'

/** Runs a compiled text as an evaluator does, with kernel names as globals. */
function run(text: string | undefined, reads: Record<string, unknown> = {}, globals: Record<string, unknown> = {}) {
  const made: unknown = runInNewContext(text ?? 'missing', globals)
  return (made as (reads: unknown) => Record<string, unknown>)(reads)
}

const compiledOf = async (sources: Readonly<Record<string, string>>, id: string) =>
  (await compile(await graphOf(sources))).get(id as never)

describe('compile', () => {
  test('compile() makes one function from the names a cell reads to the names it declares', async () => {
    const text = await compiledOf(
      { a: 'const x: number = y * u.km\nlet z = x\nz += 1\nfunction f() { return z }', b: 'const y = 2' },
      'a',
    )
    const given = run(text, { y: 2 }, { u: { km: 1000 } })
    expect(Object.keys(given)).toEqual(['x', 'z', 'f'])
    expect(given).toMatchObject({ x: 2000, z: 2001 })
    expect((given.f as () => number)()).toBe(2001)
    expect(text).toMatch(/^\(function \(reads\) \{ "use strict"; const \{ y \} = reads;\n/)
    expect(text).toMatch(/\}\)\n\/\/# sourceURL=cell:a\n$/)
  })

  test('compile() takes kernel names from outside and names of cells before them', async () => {
    const sources = { own: 'const mass = 3', reader: 'const m = mass, d = drag' }
    expect(run(await compiledOf(sources, 'reader'), { mass: 3 }, { mass: 'kernel', drag: 'kernel' })).toEqual({
      m: 3,
      d: 'kernel',
    })
  })

  test('compile() puts the first line of a cell’s code after the lines it promises', async () => {
    const text = (await compiledOf({ a: 'const first = 1' }, 'a')) ?? ''
    const code = (await graphOf({ a: 'const first = 1' })).cells[0]?.code ?? ''
    expect(text.split('\n')[runnableLineOffset]).toBe(code.split('\n')[0])
  })

  test('compile() runs cells as strict code', async () => {
    expect(run(await compiledOf({ a: 'const self = (function () { return this })()' }, 'a')).self).toBeUndefined()
  })

  test('compile() finds a parameter that the cell itself does not use', async () => {
    expect(
      run(await compiledOf({ a: 'const reads = 1, reads_ = 2\nconst x = y', b: 'const y = 5' }, 'a'), { y: 5 }),
    ).toEqual({
      reads: 1,
      reads_: 2,
      x: 5,
    })
  })

  test('compile() leaves out cells that do not run', async () => {
    const compiled = await compile(
      await graphOf({ a: 'const x = (', b: 'const y = nobody', c: 'const z = x', d: 'var w = 1' }),
    )
    expect([...compiled.keys()]).toEqual(['c'])
  })

  test('compile(graph, pause) asks before every cell whether to rest, and gives the same texts', async () => {
    const graph = await graphOf({ a: 'const x = 1', b: 'const y = x', c: 'const z = y' })
    let asked = 0
    const compiled = await compile(graph, () => {
      asked += 1
      return asked === 2 ? Promise.resolve() : undefined
    })
    expect(asked).toBe(3)
    expect(compiled).toEqual(await compile(graph))
  })

  test.each([
    ['an empty cell', ''],
    ['a comment at the end', 'const x = 1 // })'],
    ['an open comment sign in a text', 'const x = "/*"'],
    ['the closing of a function in a text', 'const x = "}) ; globalThis.evil = 1; (function () {"'],
    ['the closing in a template', 'const x = `\n})\nglobalThis.evil = 1;(function () {\n`'],
    ['the closing in a regular expression', 'const x = /\\}\\)\\(function\\(\\)\\{/.source'],
    ['a source name comment of its own', 'const x = 1\n//# sourceURL=cell:other'],
    ['an old comment sign', 'const x = 1\n<!-- }) ; globalThis.evil = 1'],
    ['an old comment end', 'let x = 3\nwhile (x --> 0) {}'],
    ['a directive of its own', '"use strict"\nconst x = 1'],
    ['no semicolons', 'const x = 1\nconst f = () => {}\nf'],
    ['line separators in a text', 'const x = "\u2028}\u2029)"'],
  ])('compile() encloses a cell with %s', async (_, source) => {
    const globals: Record<string, unknown> = {}
    const text = await compiledOf({ it: source }, 'it')
    expect(text).toBeDefined()
    run(text, {}, globals)
    expect(globals).toEqual({})
    expect(text?.trimEnd().split('\n').at(-1)).toBe('//# sourceURL=cell:it')
  })
})

describe('writeRunnable', () => {
  test.each([
    ['closes the function early', '})\nevil()\n;(function () {'],
    ['closes it and calls it', '})(); (function () { evil()'],
    ['closes it within its return', 'return {} })\n;(function (reads) {'],
    ['opens a comment that swallows the end', 'const x = 1 /*'],
    ['opens a template that swallows the end', 'const x = `'],
    ['begins like a program of a shell', '#!/bin/sh\nconst x = 1'],
    ['imports', 'import "x"'],
    ['declares what it reads', 'const given = 1'],
    ['is no code', 'const = 1'],
  ])('writeRunnable() gives nothing for code that %s', (_, code) => {
    expect(writeRunnable({ id: 'a', code, declares: [], reads: ['given'] })).toBeUndefined()
  })

  test('writeRunnable() ends code without a line break on its own line', () => {
    expect(run(writeRunnable({ id: 'a', code: 'const x = 1 // note', declares: ['x'], reads: [] }))).toEqual({ x: 1 })
  })
})

import { describe, expect, test } from 'vitest'
import { declared, graphOf, readAlone } from './support.js'

const names = (cell: { declares: readonly { name: string }[] }) => cell.declares.map(({ name }) => name)

describe('analyse: what a cell declares', () => {
  test('analyse() names constants, variables, functions and classes in the order of the text', async () => {
    const cell = await readAlone(
      'function area(r: number) { return r * r }\nconst a = 1, b = 2\nlet c = 3\nclass Wing {}',
    )
    expect(cell.declares.map(({ name, form }) => `${form} ${name}`)).toEqual([
      'function area',
      'const a',
      'const b',
      'let c',
      'class Wing',
    ])
  })

  test('analyse() finds every name of nested destructuring, with rest and renaming', async () => {
    const cell = await readAlone('const { a, b: { c = 1, ...d }, e: [f, , ...g] } = other')
    expect(names(cell)).toEqual(['a', 'c', 'd', 'f', 'g'])
  })

  test('analyse() does not count names of blocks, loops, functions and catch clauses as the cell’s own', async () => {
    const cell = await readAlone(
      '{ const inside = 1 }\nfor (let i = 0; i < 2; i += 1) { const step = i }\nfunction f() { const local = 1; return local }\ntry { f() } catch (problem) { console.log(problem) }',
    )
    expect(names(cell)).toEqual(['f'])
    expect(cell.graph.findings).toEqual([])
  })

  test('analyse() gives no declaration to types, which are erased', async () => {
    const cell = await readAlone('type Power = number\ninterface Rotor { radius: number }\nconst x: Power = 1')
    expect(names(cell)).toEqual(['x'])
  })

  test('analyse() places declarations after comments and blank lines where the text has them', async () => {
    const cell = await readAlone(
      '// heading\n\n/* more\n   words */\n  const  radius = 1.3 // metres\n\n\nfunction f() {}',
    )
    expect(declared(cell, 'radius')).toMatchObject({ line: 5, column: 10 })
    expect(declared(cell, 'f')).toMatchObject({ line: 8, column: 10 })
  })

  test('analyse() counts columns as an editor does, in characters beyond ASCII too', async () => {
    const cell = await readAlone('const ρ = 1.2, text = "日本 😀", η = 0.8')
    expect(declared(cell, 'ρ')).toMatchObject({ line: 1, column: 7 })
    expect(declared(cell, 'text')).toMatchObject({ line: 1, column: 16 })
    expect(declared(cell, 'η')).toMatchObject({ line: 1, column: 32 })
  })
})

describe('analyse: what each name is made from', () => {
  const readsOf = async (source: string, name: string) => declared(await readAlone(source), name)?.reads

  test('analyse() says per name what an initial value reads', async () => {
    const cell = await readAlone('const a = other * u.m\nconst b = a + density\nconst c = 4')
    expect(declared(cell, 'a')?.reads).toEqual(['other', 'u'])
    expect(declared(cell, 'b')?.reads).toEqual(['a', 'density'])
    expect(declared(cell, 'c')?.reads).toEqual([])
  })

  test('analyse() adds a destructuring default only to the name that has it', async () => {
    const source = 'const { a = density, [span]: b, ...c } = other'
    expect(await readsOf(source, 'a')).toEqual(['density', 'other'])
    expect(await readsOf(source, 'b')).toEqual(['span', 'other'])
    expect(await readsOf(source, 'c')).toEqual(['other'])
  })

  test('analyse() follows array patterns with holes, defaults and rest', async () => {
    const source = 'const [, a = density, ...[b]] = other'
    expect(await readsOf(source, 'a')).toEqual(['density', 'other'])
    expect(await readsOf(source, 'b')).toEqual(['other'])
  })

  test('analyse() counts what functions, arrow functions and classes read inside', async () => {
    expect(
      await readsOf('function f(x: number) { return x * density + g() }\nfunction g() { return f(span) }', 'f'),
    ).toEqual(['density', 'g'])
    expect(await readsOf('const f = (x: number) => x + other', 'f')).toEqual(['other'])
    expect(
      await readsOf('class Rotor { radius = span; static k = density; area() { return other } }', 'Rotor'),
    ).toEqual(['span', 'density', 'other'])
  })

  test('analyse() counts later assignments and the statement they stand in', async () => {
    const source = 'let best = 0\nfor (const x of other) { if (x > density) best = x + span }'
    expect(await readsOf(source, 'best')).toEqual(['other', 'density', 'span'])
  })

  test('analyse() counts a call on a member as a change of the list it is called on', async () => {
    const source = 'const rows: number[] = []\nfor (const x of other) rows.push(x * density)\nconst n = rows.length'
    expect(await readsOf(source, 'rows')).toEqual(['other', 'density'])
    expect(await readsOf(source, 'n')).toEqual(['rows'])
  })

  test('analyse() leaves names of the language and the name itself out', async () => {
    expect(await readsOf('const a = Math.sqrt(Number(other)) + NaN', 'a')).toEqual(['other'])
    expect(await readsOf('function f(n: number): number { return n < 2 ? 1 : n * f(n - 1) }', 'f')).toEqual([])
  })
})

describe('analyse: what a cell reads from others', () => {
  const freeOf = async (source: string) => (await readAlone(source)).reads

  test.each([
    ['a parameter that shadows it', 'const f = (other: number) => other', []],
    ['a local constant that shadows it', 'function f() { const other = 2; return other }', []],
    [
      'a loop variable that shadows it',
      'const n = [1].map((other) => other)\nfor (const other of n) console.log(other)',
      [],
    ],
    ['a catch clause that shadows it', 'try { console.log(1) } catch (other) { console.log(other) }', []],
    [
      'a block whose own name shadows it, and a reading beside it',
      '{ const other = 1; console.log(other) }\nconst x = other',
      ['other'],
    ],
    ['a closure', 'const f = () => () => other', ['other']],
    ['a default of a parameter', 'const f = (x = other) => x', ['other']],
    ['a default of a destructuring', 'const { x = other } = { x: 1 }', ['other']],
    ['a template text', 'const x = `$' + '{other} kg`', ['other']],
    ['an object shorthand', 'const x = { other }', ['other']],
    ['a property of that name', 'const x = { other: 1 }\nconst y = x.other', []],
    ['a computed property', 'const x = { [other]: 1 }', ['other']],
    ['a class field', 'class A { field = other }', ['other']],
    ['a class method of that name', 'class A { other() { return 1 } }', []],
    ['a class that extends it', 'class A extends other {}', ['other']],
    [
      'a private member and a static block',
      'class A { #x = other; static { console.log(density) } }',
      ['other', 'density'],
    ],
    ['a hoisted function, read before it stands', 'const x = f()\nfunction f() { return other }', ['other']],
    ['a type annotation', 'const x: typeof other = 1', []],
    ['an annotation with a type of that name', 'const x: other = 1\nfunction f(a: other): other { return a }', []],
    ['a cast and a satisfies', 'const x = (1 as other) satisfies density', []],
    ['type arguments', 'const x = new Map<other, density>()', []],
    ['a label of that name', 'other: for (;;) break other', []],
    [
      'typeof, optional chains and the conditional',
      'const x = typeof other === "number" ? density?.a : span',
      ['other', 'density', 'span'],
    ],
    ['a spread', 'const x = [...other, ...density]', ['other', 'density']],
    ['a text and a comment', 'const x = "other" // density', []],
    ['a named function expression that shadows it', 'const f = function other() { return other }', []],
    ['a nested shadow that the compiler renames', 'const x = 1\nconst f = (x: number) => x + other', ['other']],
  ])('analyse() with %s', async (_, source, expected) => {
    expect(await freeOf(source)).toEqual(expected)
  })

  test('analyse() makes an edge for a value and none for a type', async () => {
    const graph = await graphOf({
      use: 'const x: Power = power / 2\nconst y: typeof span = 3',
      values: 'const power = 3',
      types: 'type Power = number\nconst span = 3',
    })
    expect(graph.upstream.get(graph.cells[0]?.id ?? ('' as never))).toEqual(['values'])
  })

  test('analyse() gives the same edges in any order of the page', async () => {
    const there = await graphOf({ a: 'const x = y', b: 'const y = 1' })
    const back = await graphOf({ b: 'const y = 1', a: 'const x = y' })
    expect(there.findings).toEqual([])
    expect([...there.upstream].sort()).toEqual([...back.upstream].sort())
    expect([...there.owner].sort()).toEqual([...back.owner].sort())
  })

  test('analyse() lists assumptions named like their constant', async () => {
    const cell = await readAlone(
      "const range = assumption('range', 85 * u.km)\nconst count = assumption('count', 8 as number)",
    )
    expect(cell.assumptions).toEqual(['range', 'count'])
    expect(cell.graph.findings).toEqual([])
  })
})

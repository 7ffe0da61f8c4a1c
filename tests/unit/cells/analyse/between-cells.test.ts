import { transform } from 'esbuild-wasm'
import { describe, expect, test } from 'vitest'
import { analyse } from '../../../../kernel/cells/analyse/index.js'
import { createEraser } from '../../../../kernel/cells/compile/index.js'
import { absentNames, type Eraser, languageNames } from '../../../../kernel/cells/program/index.js'
import { cellsOf, graphOf, kernelNames, said } from './support.js'

describe('analyse: owners', () => {
  test('analyse() blames both owners of a name and names the other with its line', async () => {
    const graph = await graphOf({ a: '\nconst span = 12', b: 'const x = 1\nconst span = 13', c: 'const y = span' })
    expect(said(graph, 'a')).toEqual([
      '2:7 order error: "span" is declared more than once: also in cell "b", line 2. A name has one owner; rename or remove one of them.',
    ])
    expect(said(graph, 'b')).toEqual([
      expect.stringContaining('2:7 order error: "span" is declared more than once: also in cell "a", line 2.'),
    ])
    expect(said(graph, 'c')).toEqual([])
    expect(graph.owner.has('span')).toBe(false)
    expect(graph.upstream.get('c' as never)).toEqual(['a', 'b'])
  })

  test('analyse() names all others where three cells declare a name', async () => {
    const graph = await graphOf({ a: 'const s = 1', b: 'let s = 2', c: 'function s() {}' })
    expect(said(graph, 'b')[0]).toContain('also in cell "a", line 1 and cell "c", line 1.')
  })

  test('analyse() lets a cell own a kernel name, with a warning, and others read that', async () => {
    const graph = await graphOf({ a: 'const mass = 3', b: 'const x = mass' })
    expect(said(graph, 'a')).toEqual([expect.stringMatching(/^1:7 order warning: "mass" is also a name of the kernel/)])
    expect(graph.shadowed).toEqual(['mass'])
    expect(graph.upstream.get('b' as never)).toEqual(['a'])
    expect(graph.failed.size).toBe(0)
  })

  test.each(['Math', 'undefined', 'NaN', 'Date', 'Promise', '__proto__', 'console', 'globalThis'])(
    'analyse() lets no cell own %s, which belongs to the language',
    async (name) => {
      expect(said(await graphOf({ a: `const ${name} = 3` }), 'a')).toEqual([
        `1:7 order error: "${name}" belongs to the language; choose another name.`,
      ])
    },
  )

  test('analyse() lets a cell own names of platforms that are good names for a sizing', async () => {
    const graph = await graphOf({
      a: 'const top = 1, performance = 2, location = 3, name = 4, status = 5',
      b: 'const x = top + performance + location',
    })
    expect(graph.findings).toEqual([])
  })
})

describe('analyse: names that mean nothing here', () => {
  const saidOf = async (source: string) => said(await graphOf({ it: source, others: 'const density = 1' }), 'it')

  test('analyse() names an unknown name where it is first read, with the nearest known one', async () => {
    expect(await saidOf('// air\n\nconst q = 1 + densty / 2\nconst r = densty')).toEqual([
      '3:15 order error: No cell declares "densty" and the kernel has no such name; did you mean "density"?',
    ])
    expect(await saidOf('const q = wholly')).toEqual([
      '1:11 order error: No cell declares "wholly" and the kernel has no such name.',
    ])
    expect((await saidOf('const q = rotr.hover'))[0]).toContain('did you mean "rotor"?')
  })

  test.each([...absentNames.keys()].filter((name) => name !== 'eval' && name !== 'arguments'))(
    'analyse() says why %s is not available',
    async (name) => {
      const all = await saidOf(`const x = ${name}`)
      expect(all).toHaveLength(1)
      expect(all[0]).toMatch(new RegExp(`^1:11 order error: "${name}" is not available in cells: [a-z].*\\.$`))
    },
  )

  test('analyse() refuses eval, and arguments outside a function', async () => {
    expect((await saidOf('const x = (0, eval)("1")'))[0]).toMatch(/^1:15 order error: "eval" is not available/)
    expect((await saidOf('const x = () => arguments'))[0]).toMatch(/^1:17 order error: "arguments" is not available/)
    expect(await saidOf('function f() { return arguments.length }')).toEqual([])
  })

  test('analyse() refuses Math.random and other ways of the console than its log', async () => {
    expect((await saidOf('const x = 1 +\n  Math.random()'))[0]).toMatch(
      /^2:3 order error: "Math.random" is not available/,
    )
    expect(await saidOf('const x = Math["random"]()')).toHaveLength(1)
    expect((await saidOf('console.error(1)'))[0]).toContain('only console.log writes into the log of a cell')
    expect(await saidOf('console.log(Math.sqrt(2), Math.PI, Math["abs"](1))')).toEqual([])
    expect(await saidOf('const f = (Math: { random(): number }) => Math.random()')).toEqual([])
  })

  test('analyse() knows every name of the language that it promises', async () => {
    expect(await saidOf(`console.log(${[...languageNames].join(', ')})`)).toEqual([])
  })
})

describe('analyse: changing what belongs to others', () => {
  const saidOf = async (source: string) =>
    said(await graphOf({ it: source, owner: '\nlet density = 1', reader: 'const z = density' }), 'it')

  test.each([
    ['density = 2', '1:1', '"density" belongs to cell "owner" (line 2)'],
    ['const f = () => { density += 1 }', '1:19', '"density" belongs to cell "owner" (line 2)'],
    ['density++', '1:1', '"density" belongs to cell "owner" (line 2)'],
    [';[density] = [1]', '1:3', '"density" belongs to cell "owner" (line 2)'],
    ['for (density of [1]) {}', '1:6', '"density" belongs to cell "owner" (line 2)'],
    ['mass = 2', '1:1', '"mass" belongs to the kernel'],
    ['Math = 2', '1:1', '"Math" belongs to the language'],
    ['nobody = 2', '1:1', '"nobody" is given a value but never declared'],
  ])('analyse() refuses %j', async (source, place, sentence) => {
    expect(await saidOf(source)).toEqual([expect.stringContaining(`${place} order error: ${sentence}`)])
  })
})

describe('analyse: circles', () => {
  test('analyse() reports a circle on each of its cells with the names that lead round, and holds nothing else', async () => {
    const graph = await graphOf({
      a: 'const grossMass = 1 + batteryMass',
      b: '// battery\nconst batteryMass = energy * 2',
      c: 'const energy = grossMass / 3',
      d: 'const after = energy',
      e: 'const apart = 1',
    })
    expect(said(graph, 'a')[0]).toContain(
      '1:23 order error: These cells go round in a circle and none can be first: cell "a" reads "batteryMass" of cell "b", which reads "energy" of cell "c", which reads "grossMass" of cell "a".',
    )
    expect(said(graph, 'b')[0]).toContain(
      '2:21 order error: These cells go round in a circle and none can be first: cell "b" reads',
    )
    expect(said(graph, 'c')).toHaveLength(1)
    expect([...graph.failed.keys()].sort()).toEqual(['a', 'b', 'c'])
    expect(graph.failed.get('a' as never)).toMatchObject({ code: 'CYCLE', place: { cell: 'a', line: 1, column: 23 } })
  })

  test('analyse() goes the shortest way round where circles share cells', async () => {
    const graph = await graphOf({ a: 'const x = y + z', b: 'const y = z', c: 'const z = x' })
    expect(said(graph, 'a')[0]).toContain('cell "a" reads "z" of cell "c", which reads "x" of cell "a".')
  })

  test('analyse() takes recursion of functions within a cell for no circle', async () => {
    const graph = await graphOf({
      a: 'function f(n: number): number { return n > 0 ? g(n - 1) : 0 }\nconst g = (n: number): number => f(n)',
    })
    expect(graph.findings).toEqual([])
  })
})

describe('analyse: assumptions', () => {
  const saidOf = async (source: string) => said(await graphOf({ it: source }), 'it')

  test.each([
    ["const span = assumption('width', 3)", '1:14', "const span = assumption('span', ...)"],
    ["let span = assumption('span', 3)", '1:12', "const name = assumption('name', ...)"],
    ["function f() { return assumption('span', 3) }", '1:23', "const name = assumption('name', ...)"],
    ["const span = 2 * assumption('span', 3)", '1:18', "const name = assumption('name', ...)"],
    ["const { value } = assumption('value', 3)", '1:19', "const name = assumption('name', ...)"],
    ["const key = 'span'\nconst span = assumption(key, 3)", '2:14', "const span = assumption('span', ...)"],
    ["if (mass) { const span = assumption('span', 3) }", '1:26', "const name = assumption('name', ...)"],
    ['const again = assumption', '1:15', "const name = assumption('name', ...)"],
  ])('analyse() refuses %j', async (source, place, remedy) => {
    expect(await saidOf(source)).toEqual([
      `${place} order error: An assumption is declared at the top level of its cell and named like its constant: ${remedy}.`,
    ])
  })

  test('analyse() leaves a function of that name alone where a cell owns it', async () => {
    const graph = await graphOf({ it: 'const assumption = (x: number) => x', use: 'let a = assumption(2)' })
    expect(said(graph, 'use')).toEqual([])
  })
})

describe('analyse: what an edit costs', () => {
  test('analyse() asks the compiler for the edited cell only', async () => {
    const asked: string[][] = []
    const real = createEraser(transform)
    const counting: Eraser = (sources) => {
      asked.push([...sources])
      return real(sources)
    }
    const cells = { a: 'const x = 1', b: 'const y = x', c: 'const x2 = y' }
    await analyse(cellsOf(cells), counting, kernelNames)
    await analyse(cellsOf(cells), counting, kernelNames)
    await analyse(cellsOf({ ...cells, b: 'const y = x + 1' }), counting, kernelNames)
    expect(asked).toEqual([['const x = 1', 'const y = x', 'const x2 = y'], ['const y = x + 1']])
  })

  test('analyse() throws when the eraser leaves a source unanswered', async () => {
    await expect(analyse(cellsOf({ a: 'const x = 1' }), async () => [], kernelNames)).rejects.toThrow(
      'the eraser gave 0 answers to 1 sources',
    )
  })
})

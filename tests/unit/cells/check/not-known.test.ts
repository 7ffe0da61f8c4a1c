import typescript from 'typescript'
import { describe, expect, test } from 'vitest'
import { CellId } from '../../../../shared/contracts/index.js'
import { check, checkCell, checker } from './notebook.js'

describe('check(graph) says why it does not know a dimension', () => {
  test.each([
    ["const n = assumption('n', 2)\nconst a = (2 * u.m) ** n", 'the exponent n may change, and the dimension with it'],
    ['const a = 3 * u.kg + 2 * u.m', 'it is made from a step that is already reported'],
    ['const bad = 3 * u.kg + 2 * u.m\nconst a = 2 * bad', 'it is made from a step that is already reported'],
    ['let a = 3 * u.m\nif (a > 2 * u.m) a = 3 * u.kg', 'it may be in kg or in m'],
    ['const a = JSON.parse("3") * u.kg', 'nothing says what JSON.parse gives'],
    ["const q = JSON.parse('3') as number\nconst a = q * u.kg", 'nothing says what JSON.parse gives'],
    [
      'let t = 0\nconst add = (x: Mass) => { t += x }\nconst a = 2 * t',
      't is changed inside a function that may run at any time',
    ],
    [
      'const f = (x: number): number => x * f(x)\nconst a = f(2)',
      'a function that calls itself gives no one dimension',
    ],
    ['class Q extends Error { m = 3 * u.kg }\nconst a = new Q().m', 'the class that this one extends is not followed'],
    ['const g: { x?: number } = {}\nconst a = g.x ?? 3 * u.m', 'the declaration of x gives it no dimension'],
    ['const r: { x: number } = JSON.parse("{}")\nconst a = r.x * u.kg', 'the declaration of x gives it no dimension'],
  ])('%s', async (source, why) => {
    const { report } = await checkCell(source)
    const found = report.names.find(({ name }) => name === 'a')
    expect(found?.dimension).toBeNull()
    expect(found?.why).toContain(why)
  })

  test('and has nothing to explain about a figure', async () => {
    const { report } = await checkCell('const a = figure.massBreakdown({ masses: { wing: 180 * u.kg } })')
    expect(report.findings).toEqual([])
    expect(report.names).toMatchObject([{ name: 'a', dimension: null }])
    expect(report.names[0]).not.toHaveProperty('why')
  })

  test('for a name in two cells', async () => {
    const { names, findings } = await check({
      one: 'const a = 1 * u.m',
      two: 'const a = 2 * u.kg',
      three: 'const b = a * 2',
    })
    expect(findings).toEqual([])
    expect(names.find(({ name }) => name === 'b')?.why).toBe('a is declared in several cells')
  })

  test('and gives no reason for what is known or is no number', async () => {
    const { report } = await checkCell("const a = 3 * u.kg\nconst t = 'text'\nconst f = (x: number) => x")
    expect(report.names.map(({ why }) => why)).toEqual([undefined, undefined, undefined])
  })
})

describe('dimensionAt(node)', () => {
  test('knows names inside functions, and says what is missing', async () => {
    const source = 'const f = (m: Mass, x) => { const w = m * u.g0; return w * x }'
    await check({ cell: source })
    const id = CellId.parse('cell')
    const file = checker.language.service.getProgram()?.getSourceFile(checker.language.fileOf(id))
    const declared: Record<string, unknown> = {}
    const visit = (node: typescript.Node): void => {
      if (typescript.isIdentifier(node) && ['m', 'w', 'x'].includes(node.text))
        declared[node.text] ??= checker.language.dimensionAt(node)
      typescript.forEachChild(node, visit)
    }
    if (file !== undefined) visit(file)
    expect(declared).toEqual({
      m: { dimension: 'kg' },
      w: { dimension: 'kg m s^-2' },
      x: { why: 'nothing says what x is; give it a type, as in (x: Mass)' },
    })
  })
})

/** The pipeline with the real kernel in the isolated host of Node (built by `npm run build`), end to end. */
import { readFileSync } from 'node:fs'
import { afterAll, describe, expect, test } from 'vitest'
import { createNodeHost } from '../../../../kernel/cells/host-node/index.js'
import { createPipeline } from '../../../../kernel/cells/index.js'
import { languageNames } from '../../../../kernel/cells/program/index.js'
import { cellsOf, erase } from '../analyse/support.js'

const built = (name: string) => readFileSync(new URL(`../../../../.build/kernel/${name}`, import.meta.url), 'utf8')
const host = createNodeHost({ sandboxText: built('sandbox.js') })
const pipeline = createPipeline({ erase, host, kernel: JSON.parse(built('kernel.json')) })
afterAll(() => host.close())

describe('the pipeline in the isolated host', () => {
  test('compute() runs cells of any order with the kernel, and a trial value', async () => {
    const cells = cellsOf({
      energy: 'const time = range / (58 * u.mps)',
      needs: "const range = assumption('range', 58 * u.km)",
    })
    const at = async (overrides: Record<string, number>) => {
      const { results } = await pipeline.compute(cells, overrides, 'all')
      return results.find(({ cell }) => cell === 'energy')?.values[0]?.value
    }
    expect(await at({})).toEqual({ kind: 'number', si: 1000 })
    expect(await at({ range: 5800 })).toEqual({ kind: 'number', si: 100 })
  })

  test('compute() runs again only what an edit touched', async () => {
    const cells = { a: 'const ka = 1', b: 'const kb = ka', c: 'const kc = 3' }
    await pipeline.compute(cellsOf(cells), {}, 'all')
    const { ran } = await pipeline.compute(cellsOf({ ...cells, b: 'const kb = ka + 1' }), {}, 'all')
    expect(ran).toEqual(['b'])
  })

  test('compute() gives every name of the language that the analyser promises', async () => {
    const present = [...languageNames]
      .map((name) => `${name} === undefined ? '${name}' : ''`)
      .filter((text) => !text.startsWith('undefined'))
    const { results } = await pipeline.compute(
      cellsOf({ a: `const missing = [${present.join(', ')}].join('')` }),
      {},
      'all',
    )
    expect(results[0]?.error).toBeUndefined()
    expect(results[0]?.values[0]?.value).toEqual({ kind: 'text', text: '' })
  })

  test('compute() places a thrown error in the cell’s own text', async () => {
    const cells = cellsOf({
      it: "// note\n\nconst f = (x: number): number => {\n  throw new Error('no ' + x)\n}\n\nconst y = f(3)",
    })
    const { results } = await pipeline.compute(cells, {}, 'all')
    expect(results[0]?.error).toMatchObject({
      code: 'THROWN',
      message: 'no 3',
      place: { cell: 'it', line: 4, column: 9 },
    })
  })

  test('compute() gives failed and held-back cells beside those that ran', async () => {
    const cells = cellsOf({ bad: 'const p = (', held: 'const q = p', good: 'const r = 1' })
    const { results } = await pipeline.compute(cells, {}, 'all')
    expect(results.map(({ cell, outcome }) => `${cell} ${outcome}`).sort()).toEqual([
      'bad failed',
      'good computed',
      'held held back',
    ])
  })
})

/** Traces of cells in real isolation: what moves a number outside is in them. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createPipeline, type Reading } from '../../kernel/cells/index.js'
import type { NumbersHost } from '../../kernel/cells/program/index.js'
import { preloaded } from '../../kernel/library/index.js'
import { cellsOf, erase } from '../unit/cells/analyse/support.js'
import { plainHost } from '../unit/cells/pipeline/plain-host.js'
import { type NodeBench, prepareNodeBench } from './node-bench.js'
import { cellId } from './programs.js'

let bench: NodeBench
let host: NumbersHost
beforeAll(async () => {
  bench = await prepareNodeBench()
  host = bench.openNumbers()
}, 60_000)
afterAll(() => host.close())

function read(texts: Readonly<Record<string, string>>): Promise<Reading> {
  const kernel = { hash: bench.kernelHash, names: Object.keys(preloaded) }
  return createPipeline({ erase, host: plainHost(), kernel }).read(cellsOf(texts))
}

describe('values between cells', () => {
  it.each([
    ['a list', 'const shared: number[] = [1]', 'shared.push(x)', 'shared.length'],
    ['a record in a list', 'const shared = [{ mass: 1 }]', 'shared[0]!.mass = x', 'shared[0]!.mass'],
    [
      'a list that a function carries',
      'const shared = Object.assign(() => 1, { list: [1] })',
      'shared.list.push(x)',
      'shared.list.length',
    ],
    ['a list of a class', 'class shared { static list = [1] }', 'shared.list.push(x)', 'shared.list.length'],
    [
      'a prototype',
      'class shared { static make() { return new shared() } }',
      'Object.assign(shared.prototype, { mass: x })',
      '(shared.make() as any).mass ?? 1',
    ],
  ])(
    'a cell that changes %s of another cell fails, so that the others may do without it',
    async (_, declared, change, answer) => {
      const { program } = await read({
        owner: declared,
        changer: `const x = assumption('x', 5)\nconst changed = (${change}, x)`,
        reader: `const y = ${answer}`,
      })
      const names = [
        { name: 'changed', cell: cellId('changer') },
        { name: 'y', cell: cellId('reader') },
      ]
      const [outcome] = await host.evaluateNumbers(program, [{}], { names, requirements: [] })
      expect(outcome).toMatchObject({ ok: false, cell: 'changer', numbers: { y: 1 } })
    },
  )
})

import { describe, expect, test } from 'vitest'
import { createPipeline, withDimensions } from '../../../../kernel/cells/index.js'
import type { Checker } from '../../../../kernel/cells/program/index.js'
import type { CellResult, Finding } from '../../../../shared/contracts/index.js'
import { cellsOf, erase } from '../analyse/support.js'
import { plainHost } from './plain-host.js'

const kernel = { hash: 'kernel-1', names: ['u', 'assumption'] }
const pipelineOf = (checker?: () => Promise<Checker>) => {
  const host = plainHost()
  return { host, pipeline: createPipeline({ erase, host, kernel, ...(checker === undefined ? {} : { checker }) }) }
}
const given = (results: readonly CellResult[], name: string) =>
  results.flatMap((result) => result.values).find((value) => value.name === name)?.value

const sizing = cellsOf({
  energy: 'const energy: number = range * 2',
  needs: "const range = assumption('range', 85 * u.km)",
  broken: 'const x = (',
})

describe('pipeline.compute', () => {
  test('compute() turns cells in any order into numbers and says what is wrong beside them', async () => {
    const { results, findings, ran } = await pipelineOf().pipeline.compute(sizing, {}, 'all')
    expect(given(results, 'energy')).toEqual({ kind: 'number', si: 170_000 })
    expect(ran).toEqual(['needs', 'energy'])
    expect(findings).toMatchObject([{ cell: 'broken', kind: 'syntax' }])
    expect(results.find(({ cell }) => cell === 'broken')?.error?.place).toEqual({ cell: 'broken', line: 1, column: 12 })
  })

  test('compute() hands overrides of assumptions on', async () => {
    const { results } = await pipelineOf().pipeline.compute(sizing, { range: 10 }, 'all')
    expect(given(results, 'energy')).toEqual({ kind: 'number', si: 20 })
  })

  test('compute() throws for an override of an unknown assumption and suggests the nearest', async () => {
    const { pipeline, host } = pipelineOf()
    await expect(pipeline.compute(sizing, { rang: 10 }, 'all')).rejects.toMatchObject({
      code: 'ASSUMPTION_UNKNOWN',
      message: 'There is no assumption "rang"; did you mean "range"? Its assumptions: range.',
    })
    await expect(pipeline.compute([], { range: 10 }, 'all')).rejects.toThrow(
      'There is no assumption "range". This notebook has no assumptions.',
    )
    expect(host.programs).toEqual([])
  })

  test('compute() throws for an override that is no finite number', async () => {
    await expect(pipelineOf().pipeline.compute(sizing, { range: Number.NaN }, 'all')).rejects.toMatchObject({
      code: 'OVERRIDE_INVALID',
      message: 'The trial value NaN for "range" is not a finite number; give a number in SI units.',
    })
  })

  test('compute() places a failure in the text of the failing cell and of the calling one', async () => {
    const cells = cellsOf({
      caller: '// calls\n\n\nconst y: number = 1 +\n   check(2)',
      law: '/* a law\n   of two lines */\n\ninterface Law { limit: number }\nfunction check(value: number): number {\n  // never\n  if (value > 1)    throw new Error("too much")\n  return value\n}',
    })
    const seen: CellResult[] = []
    const { results } = await pipelineOf().pipeline.compute(cells, {}, 'all', {
      onResult: (result) => seen.push(result),
    })
    const error = results.find(({ cell }) => cell === 'caller')?.error
    expect(error?.place).toEqual({ cell: 'law', line: 7, column: 27 })
    expect(error?.calledFrom).toEqual([{ cell: 'caller', line: 5, column: 4 }])
    expect(seen.find(({ cell }) => cell === 'caller')?.error).toEqual(error)
  })

  test('evaluate() runs one reading many times', async () => {
    const { pipeline } = pipelineOf()
    const reading = await pipeline.read(sizing)
    const values = []
    for (const range of [1, 2, 3]) {
      const { results } = await pipeline.evaluate(reading, { range }, ['energy' as never])
      values.push(given(results, 'energy'))
    }
    expect(values.map((value) => value?.kind === 'number' && value.si)).toEqual([2, 4, 6])
  })

  test('read() gives a program for the kernel it was told of', async () => {
    const { graph, program } = await pipelineOf().pipeline.read(sizing)
    expect(program.kernelHash).toBe('kernel-1')
    expect(graph.cells).toHaveLength(3)
  })
})

describe('pipeline.check', () => {
  const finding = (cell: string, line: number, column: number, kind: Finding['kind']): Finding => ({
    ...{ cell: cell as never, line, column, kind, severity: 'error', message: `${kind} of the checker` },
  })
  const names = [{ cell: 'needs' as never, name: 'range', dimension: 'm' }]

  test('check() gives syntax and order alone where there is no checker', async () => {
    expect(await pipelineOf().pipeline.check(sizing)).toMatchObject({ findings: [{ cell: 'broken' }], names: [] })
  })

  test('check() puts the checker’s findings among its own in page order and says nothing twice', async () => {
    const cells = cellsOf({ a: 'const p = 1\nconst q = nobody', b: 'const r = (', c: 'const s = 1' })
    let loaded = 0
    const checker: Checker = {
      check: () => ({
        findings: [
          finding('c', 1, 1, 'type'),
          finding('b', 1, 3, 'type'),
          finding('a', 2, 11, 'type'),
          finding('a', 2, 11, 'dimension'),
          finding('a', 1, 7, 'type'),
        ],
        names,
      }),
    }
    const { pipeline } = pipelineOf(async () => {
      loaded += 1
      return checker
    })
    const report = await pipeline.check(cells)
    await pipeline.check(cells)
    expect(report.findings.map(({ cell, line, kind }) => `${cell}${line} ${kind}`)).toEqual([
      'a1 type',
      'a2 order',
      'a2 dimension',
      'b1 syntax',
      'c1 type',
    ])
    expect(report.names).toBe(names)
    expect(loaded).toBe(1)
  })

  test('compute() never waits for the checker', async () => {
    const { pipeline } = pipelineOf(() => new Promise(() => undefined))
    expect((await pipeline.compute(sizing, {}, 'all')).ran).toHaveLength(2)
  })

  test('assumptions() lists what overrides may set', async () => {
    const cells = cellsOf({
      a: "const b = assumption('b', 1)\nconst a = assumption('a', 1)",
      c: "const c = assumption('c', 2)",
    })
    expect(await pipelineOf().pipeline.assumptions(cells)).toEqual(['b', 'a', 'c'])
  })
})

describe('withDimensions', () => {
  test('withDimensions() fills in what the checker knows and keeps what is there', async () => {
    const { results } = await pipelineOf().pipeline.compute(sizing, {}, 'all')
    const filled = withDimensions(results, [
      { cell: 'needs' as never, name: 'range', dimension: 'm' },
      { cell: 'other' as never, name: 'energy', dimension: 'kg' },
    ])
    expect(filled.flatMap(({ values }) => values.map(({ name, dimension }) => [name, dimension]))).toEqual([
      ['range', 'm'],
      ['energy', null],
    ])
    expect(withDimensions(filled, [])[0]?.values[0]?.dimension).toBe('m')
  })
})

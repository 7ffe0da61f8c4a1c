import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { analyse } from '../../../../kernel/cells/analyse/index.js'
import { compile } from '../../../../kernel/cells/compile/index.js'
import { fingerprints, order } from '../../../../kernel/cells/order/index.js'
import type { Program, SizingCell } from '../../../../kernel/cells/program/index.js'
import { cellsOf, erase, graphOf, kernelNames } from '../analyse/support.js'

const programOf = async (sources: Readonly<Record<string, string>>, kernelHash = 'k'): Promise<Program> => {
  const graph = await graphOf(sources)
  return order(graph, await compile(graph), kernelHash)
}
const idsOf = (cells: readonly { id: string }[]) => cells.map(({ id }) => id)
const printsOf = async (sources: Readonly<Record<string, string>>, kernelHash = 'k') =>
  Object.fromEntries(fingerprints(await graphOf(sources), kernelHash)) as Record<string, string>

describe('order', () => {
  test('order() puts every cell after what it reads and otherwise keeps the page', async () => {
    const program = await programOf({
      a: 'const total = wing + body',
      b: 'const apart = 1',
      c: 'const body = 2 * span',
      d: 'const wing = span',
      e: 'const span = 12',
    })
    expect(idsOf(program.cells)).toEqual(['e', 'c', 'd', 'a', 'b'])
    expect(program.cells.at(3)).toMatchObject({
      declares: ['total'],
      reads: [
        { name: 'wing', from: 'd' },
        { name: 'body', from: 'c' },
      ],
      assumptions: [],
    })
    expect(program.kernelHash).toBe('k')
  })

  test('order() fails cells with their code and place and holds back what reads them, however far', async () => {
    const program = await programOf({
      syntax: 'const a = 1 +* 2',
      twice: 'const b = 1',
      again: 'const b = 2',
      unknown: '\nconst c = nobody',
      absent: 'const d = Date',
      first: 'const e = a',
      second: 'const f = e',
      both: 'const g = b',
      well: 'const h = 1',
    })
    expect(program.failed.map(({ id, error }) => [id, error.code, error.place?.line, error.place?.column])).toEqual([
      ['syntax', 'SYNTAX', 1, 14],
      ['twice', 'NAME_TWICE', 1, 7],
      ['again', 'NAME_TWICE', 1, 7],
      ['unknown', 'NAME_UNKNOWN', 2, 11],
      ['absent', 'NOT_IN_CELLS', 1, 11],
    ])
    expect(program.heldBack.map(({ id, by }) => [id, by])).toEqual([
      ['first', 'syntax'],
      ['second', 'syntax'],
      ['both', 'twice'],
    ])
    expect(idsOf(program.cells)).toEqual(['well'])
  })

  test('order() holds back whatever goes round through a name with two owners', async () => {
    const program = await programOf({ reader: 'const c = x', a: 'const x = c', b: 'const x = 1', far: 'const d = c' })
    expect(idsOf(program.failed).sort()).toEqual(['a', 'b'])
    expect(idsOf(program.heldBack).sort()).toEqual(['far', 'reader'])
    expect(program.cells).toEqual([])
  })

  test('order() fails a cell that has no runnable text, rather than running it', async () => {
    const graph = await graphOf({ a: 'const x = 1', b: 'const y = x' })
    const program = order(graph, new Map(), 'k')
    expect(program.failed[0]).toMatchObject({
      id: 'a',
      error: { code: 'SYNTAX', message: expect.stringContaining('cannot be made into one function') },
    })
    expect(program.cells).toEqual([])
  })

  test('order() lists assumptions for overrides', async () => {
    const program = await programOf({ a: "const span = assumption('span', 12 * u.m)" })
    expect(program.cells[0]?.assumptions).toEqual(['span'])
  })
})

describe('fingerprints', () => {
  const base = { a: 'const x = 1', b: 'const y = x', c: 'const z = y', d: 'const w = 4' }

  test('fingerprints() changes with the source for the cell and what reads it, and for nothing else', async () => {
    const before = await printsOf(base)
    const after = await printsOf({ ...base, b: 'const y = x + 1' })
    expect(Object.keys(before).filter((id) => before[id] !== after[id])).toEqual(['b', 'c'])
    expect(before.a).toMatch(/^[0-9a-f]{64}$/)
  })

  test('fingerprints() changes with the kernel for every cell', async () => {
    const [one, two] = [await printsOf(base, 'k1'), await printsOf(base, 'k2')]
    expect(Object.keys(base).every((id) => one[id] !== two[id])).toBe(true)
  })

  test('fingerprints() does not depend on ids, nor on the order of the page', async () => {
    const renamed = await printsOf({ q: base.d, r: base.c, s: base.b, t: base.a })
    const before = await printsOf(base)
    expect([renamed.t, renamed.s, renamed.r, renamed.q]).toEqual([before.a, before.b, before.c, before.d])
  })

  test('fingerprints() changes when a name of the kernel gets an owner, and when a failure is mended', async () => {
    const reader = 'const y = mass'
    expect((await printsOf({ r: reader })).r).not.toBe((await printsOf({ r: reader, o: 'const mass = 2' })).r)
    const alone = (await printsOf({ a: 'const x = 1' })).a
    const clash = (await printsOf({ a: 'const x = 1', b: 'const x = 2' })).a
    expect(clash).not.toBe(alone)
  })

  test('fingerprints() changes around a circle with any cell of it, and after a name with two owners with either', async () => {
    const circle = { a: 'const x = y', b: 'const y = x', c: 'const z = x' }
    const before = await printsOf(circle)
    const after = await printsOf({ ...circle, b: 'const y = x // note' })
    expect(Object.keys(circle).filter((id) => before[id] === after[id])).toEqual([])
    const twice = { a: 'const x = 1', b: 'const x = 2', c: 'const z = x' }
    expect((await printsOf(twice)).c).not.toBe((await printsOf({ ...twice, b: 'const x = 3' })).c)
  })

  test('fingerprints() equals what order() puts into the program', async () => {
    const sources = { a: 'const x = 1', b: 'const y = nobody', c: 'const z = y' }
    const program = await programOf(sources)
    const all = [...program.cells, ...program.failed, ...program.heldBack]
    expect(Object.fromEntries(all.map(({ id, fingerprint }) => [id, fingerprint]))).toEqual(await printsOf(sources))
  })

  test('fingerprints() and order() are the same for any shuffle and any renaming of the cells of a random notebook', async () => {
    const notebook = fc
      .array(fc.array(fc.nat({ max: 11 }), { maxLength: 3 }), { minLength: 1, maxLength: 12 })
      .map((reads) =>
        // Cell n reads only earlier ones, so that there is no circle.
        reads.map(
          (list, n) =>
            `const n${n} = ${[1, ...list.filter((other) => other < n).map((other) => `n${other}`)].join(' + ')}`,
        ),
      )
    const shuffled = notebook.chain((sources) =>
      fc.record({
        sources: fc.constant(sources),
        page: fc.shuffledSubarray(sources, { minLength: sources.length, maxLength: sources.length }),
      }),
    )
    const bySource = async (cells: readonly SizingCell[]) => {
      const graph = await analyse(cells, erase, kernelNames)
      const prints = fingerprints(graph, 'k')
      const program = order(graph, await compile(graph), 'k')
      const place = new Map(program.cells.map((cell, index) => [cell.id, index]))
      for (const cell of program.cells)
        for (const { from } of cell.reads) expect(place.get(from)).toBeLessThan(place.get(cell.id) ?? -1)
      return cells.map((cell) => [cell.source, prints.get(cell.id)]).sort()
    }
    await fc.assert(
      fc.asyncProperty(shuffled, async ({ sources, page }) => {
        const there = await bySource(cellsOf(Object.fromEntries(sources.map((source, n) => [`c${n}`, source]))))
        const here = await bySource(cellsOf(Object.fromEntries(page.map((source, n) => [`other${n}`, source]))))
        expect(here).toEqual(there)
      }),
      { seed: 20_241_124, numRuns: 40 },
    )
  })
})

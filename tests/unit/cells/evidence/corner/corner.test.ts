import { describe, expect, it } from 'vitest'
import { runCorners } from '../../../../../kernel/cells/evidence/index.js'
import { normal, range, toolsOf } from '../spread/plain-model.js'

const assumptions = [
  range('a', 1, 0, 2),
  range('b', 1, -1, 3),
  normal('c', 10, 1),
  { name: 'd', value: 5 },
  range('still', 7, 6, 8),
]

describe('runCorners(assumptions, base, tools)', () => {
  it('of a margin that rises and falls steadily is the least margin of all corners', async () => {
    const margin = ({ a = 1, b = 1, c = 10, d = 5 }) => 3 * a - 2 * b + c + d
    const tools = toolsOf((point) => ({ y: 0, margin: margin(point) }))
    const [corner, ...more] = await runCorners(assumptions, {}, tools)
    expect(more).toEqual([])
    // P5 of a normal distribution: 1.644853626951 deviations below (Abramowitz and Stegun, table 26.1).
    const least = 10 - 1.644853626951
    expect(corner).toMatchObject({ requirement: 'limit', failing: [], ends: { a: 0, b: 3 } })
    expect(corner?.ends.c).toBeCloseTo(least, 9)
    expect(Object.keys(corner?.ends ?? {})).toEqual(['a', 'b', 'c'])
    expect(corner?.margin).toBeCloseTo(3 * 0 - 2 * 3 + least + 5, 9)
    expect(tools.evaluated).toHaveLength(1 + 2 * 4 + 1)
  })

  it('leaves alone what fails at an end, and names it', async () => {
    const tools = toolsOf(({ a = 1, b = 1 }) => {
      if (a > 1.5) throw new Error('does not close')
      return { y: 0, margin: a + b }
    })
    expect(await runCorners(assumptions, {}, tools)).toEqual([
      { requirement: 'limit', ends: { b: -1 }, failing: ['a'], margin: 0 },
    ])
  })

  it('has no margin where the corner itself does not compute', async () => {
    const tools = toolsOf(({ a = 1, b = 1 }) => {
      if (a === 0 && b === -1) throw new Error('does not close')
      return { y: 0, margin: a + b }
    })
    expect(await runCorners(assumptions, {}, tools)).toEqual([
      { requirement: 'limit', ends: { a: 0, b: -1 }, failing: [] },
    ])
  })

  it('keeps trial values of what is not varied', async () => {
    const tools = toolsOf(({ a = 1, d = 5 }) => ({ y: 0, margin: a + d }))
    expect(await runCorners(assumptions, { d: 7 }, tools)).toMatchObject([{ ends: { a: 0 }, margin: 7 }])
  })

  it('gives nothing where the document itself fails, where nothing is uncertain moves nothing, and after a stop', async () => {
    const failing = toolsOf(() => {
      throw new Error('does not close')
    })
    expect(await runCorners(assumptions, {}, failing)).toEqual([])
    const tools = toolsOf(({ d = 5 }) => ({ y: 0, margin: d }))
    expect(await runCorners([{ name: 'd', value: 5 }], {}, tools)).toMatchObject([{ ends: {}, margin: 5 }])
    const stopped = toolsOf(() => ({ y: 0, margin: 1 }), { signal: AbortSignal.abort() })
    expect(await runCorners(assumptions, {}, stopped)).toEqual([])
  })
})

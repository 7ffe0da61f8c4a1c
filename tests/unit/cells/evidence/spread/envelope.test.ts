import { describe, expect, test } from 'vitest'
import {
  drawSamples,
  type EnvelopeRequest,
  type EnvelopeTools,
  runEnvelope,
} from '../../../../../kernel/cells/evidence/index.js'
import {
  type AssumptionRecord,
  type Envelope,
  percentileOf,
  type SpreadAtEnds,
} from '../../../../../shared/contracts/index.js'
import { normal, range, toolsOf } from './plain-model.js'

const ask = (
  assumptions: readonly AssumptionRecord[],
  tools: EnvelopeTools,
  more: Partial<EnvelopeRequest> = {},
): Promise<Envelope> => runEnvelope({ target: 'y', ...more }, drawSamples({ assumptions, target: 'y' }), tools)
const p90 = (at: SpreadAtEnds | undefined) => percentileOf(at?.summary as NonNullable<SpreadAtEnds['summary']>, 0.9)

const assumptions = [normal('a', 10, 1), range('raises', 2, 1, 4), range('lowers', 0, -1, 1), range('idle', 5, 0, 9)]
/** The document's values where nothing is overridden. */
const model = ({ a = 10, raises = 2, lowers = 0 }: { a?: number; raises?: number; lowers?: number }) => {
  const y = a + raises - 3 * lowers
  return { y, margin: 14 - y }
}

describe('runEnvelope', () => {
  test('runEnvelope() shows what each range does to the number and to its spread', async () => {
    const found = await ask(assumptions, toolsOf(model))
    expect(found.nominal).toBe(12)
    expect(found.effects).toMatchObject([
      { name: 'lowers', low: -1, high: 1, atLow: 15, atHigh: 9 },
      { name: 'raises', low: 1, high: 4, atLow: 11, atHigh: 14 },
      { name: 'idle', atLow: 12, atHigh: 12 },
    ])
    const [first] = found.effects
    expect(p90(first?.spreads?.low)).toBeCloseTo(p90(found.held) + 3, 9)
    expect(p90(first?.spreads?.high)).toBeCloseTo(p90(found.held) - 3, 9)
  })

  test('runEnvelope() puts all ranges at the ends that lower and raise the number: the box that holds the spread', async () => {
    const found = await ask(assumptions, toolsOf(model))
    expect(found.lowest?.ends).toEqual({ raises: 1, lowers: 1 })
    expect(found.highest?.ends).toEqual({ raises: 4, lowers: -1 })
    expect(p90(found.lowest)).toBeCloseTo(p90(found.held) - 4, 9)
    expect(p90(found.highest)).toBeCloseTo(p90(found.held) + 5, 9)
    expect(found.worst).toEqual([{ requirement: 'limit', ends: { raises: 4, lowers: -1 }, probability: 0 }])
  })

  test('runEnvelope() uses what the spread has evaluated already and leaves out ranges that cannot reach', async () => {
    const samples = drawSamples({ assumptions, target: 'y' })
    const tools = toolsOf(model)
    await samples.extend(256, tools)
    tools.evaluated.length = 0
    const found = await runEnvelope({ target: 'y', reaching: ['raises'], count: 64 }, samples, tools)
    expect(found.effects.map(({ name }) => name)).toEqual(['raises'])
    // Screening 3; lowest and highest 64 each, which are also the ends of the one range.
    expect(tools.evaluated).toHaveLength(3 + 2 * 64)
    expect(found).toMatchObject({ runs: 131, count: 64, stopped: false })
  })

  test('runEnvelope() lists a range that fails at an end first and leaves it where it is in the combinations', async () => {
    const found = await ask(
      assumptions,
      toolsOf((p) => {
        if (p.idle === 9) throw new Error('no')
        return model(p)
      }),
    )
    expect(found.effects[0]).toMatchObject({ name: 'idle', atLow: 12, atHigh: undefined })
    expect(found.effects[0]?.spreads?.high).toMatchObject({ failed: 128, summary: undefined })
    expect(found.highest?.ends).toEqual({ raises: 4, lowers: -1 })
  })

  test('runEnvelope() without any distribution gives the number itself at the ends', async () => {
    const tools = toolsOf(model)
    const found = await ask(assumptions.slice(1), tools)
    expect([found.lowest?.summary?.mean, found.highest?.summary?.mean]).toEqual([8, 17])
    expect(tools.evaluated.length).toBeLessThan(20)
  })

  test('runEnvelope() tells what it has as it goes, and keeps it when stopped', async () => {
    const stop = new AbortController()
    const seen: Envelope[] = []
    const found = await ask(assumptions, {
      ...toolsOf(model),
      signal: stop.signal,
      onProgress: (done, asked) => {
        expect(asked).toBeGreaterThanOrEqual(done)
        if (done > 200) stop.abort()
      },
      onEnvelope: (envelope) => seen.push(envelope),
    })
    expect(found.stopped).toBe(true)
    expect(found.held).toBeDefined()
    expect(found.highest).toBeUndefined()
    expect(found.effects).toHaveLength(3)
    expect(seen.at(-1)).toEqual(found)
  })
})

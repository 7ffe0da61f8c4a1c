import { describe, expect, test } from 'vitest'
import type { Envelope, Shares, Spread, Summary } from '../../../shared/contracts/index.js'
import { Figure } from '../../../shared/contracts/index.js'
import {
  askedSubject,
  convergenceSentence,
  percentRange,
  percentText,
  renderConvergence,
  renderEnvelope,
  renderFailures,
  renderNoDistributions,
  renderPercentiles,
  renderProbabilities,
  renderShares,
  shareSentence,
  sheetContext,
  spreadBasis,
  spreadCurve,
  spreadSentence,
} from '../../../shared/rendering/index.js'
import { cellId, cellView, newDocument, number, plainText, resultOf, sheetView } from './support.js'

const document = newDocument()
const view = sheetView([
  cellView('mass', {
    number: '4',
    result: resultOf('mass', {
      values: [number('grossMass', 1637, 'kg', { unit: 'kg' }), number('payload', 400, 'kg', { unit: 'kg' })],
      requirements: [
        { name: 'mass limit', actual: 1637, atMost: 1700, margin: 63, met: true, unit: 'kg' },
        { name: 'pad', actual: 13, atMost: 14, margin: 1, met: true, unit: 'm' },
      ],
    }),
  }),
])
const subject = askedSubject(view, 'grossMass') as NonNullable<ReturnType<typeof askedSubject>>
const context = sheetContext(view)

/** A number spread evenly from 1600 to 1700 kg. */
const summary: Summary = {
  count: 1000,
  mean: 1650,
  deviation: 28.9,
  least: 1600,
  greatest: 1700,
  percentiles: [0.05, 0.1, 0.5, 0.9, 0.95].map((share) => ({
    share,
    value: 1600 + 100 * share,
    between: [1598 + 100 * share, 1602 + 100 * share],
  })),
  curve: Array.from({ length: 101 }, (_, step) => 1600 + step),
}
const requirement = (name: string, probability: number, failed = 0) => ({
  name,
  met: probability * 1000,
  computed: 1000,
  failed,
  probability,
  between: [probability - 0.02, probability + 0.02] as const,
  bounds: [probability - 0.01, probability + 0.01] as const,
  marginKept90: 3,
  marginP50: 50,
})
const spread: Spread = {
  target: 'grossMass',
  seed: 7,
  asked: 1024,
  done: 1024,
  sampled: ['payload', 'packEnergy'],
  intervals: [{ name: 'span', low: 1, high: 2 }],
  correlated: false,
  summary,
  requirements: [requirement('mass limit', 0.875, 24), requirement('pad', 0.5)],
  failures: [
    {
      code: 'DOES_NOT_CLOSE',
      message: 'the mass <b>runs away</b>',
      cell: cellId('mass'),
      count: 24,
      lost: 24,
      example: { payload: 431, packEnergy: 800000, span: 3 },
    },
  ],
  convergence: {
    rows: [
      { count: 32, mean: 1640, p10: 1605, p50: 1645, p90: 1688 },
      { count: 64, mean: 1650, p10: 1610, p50: 1650, p90: 1690 },
    ],
    settledAt: undefined,
  },
  stopped: false,
}

describe('askedSubject', () => {
  test('askedSubject() finds the number and the requirements that are about this very number', () => {
    expect(subject).toEqual({
      name: 'grossMass',
      label: 'gross mass',
      dimension: 'kg',
      unit: 'kg',
      value: 1637,
      limits: [{ requirement: 'mass limit', bound: 'at most', value: 1700 }],
    })
    expect(askedSubject(view, 'wing')).toBeUndefined()
  })
})

describe('percentText', () => {
  test('percentText() says 0 and 100 only where it is so', () => {
    const said = (share: number) => percentText(share).replaceAll('\u202f', ' ')
    expect([0, 0.0004, 0.5, 0.87512, 0.9996, 1].map(said)).toEqual([
      '0 %',
      'under 0.1 %',
      '50 %',
      '87.5 %',
      'over 99.9 %',
      '100 %',
    ])
    expect(percentRange([0.1, 0.2]).replaceAll('\u202f', ' ')).toBe('10 to 20 %')
    expect(percentRange([0.5, 0.5]).replaceAll('\u202f', ' ')).toBe('50 %')
  })
})

describe('spread in words and tables', () => {
  test('spreadSentence() gives P10, P50 and P90 in plain words, beside the number of the document', () => {
    expect(spreadSentence(subject, spread).replaceAll('\u202f', ' ')).toBe(
      'Half of the samples lie at or below 1 650 kg, nine of ten at or below 1 690 kg; eight of ten between 1 610 kg and 1 690 kg. The document has 1 637 kg.',
    )
    expect(spreadSentence(subject, { ...spread, summary: undefined })).toBe(
      'gross mass was computed at none of the samples.',
    )
    const still = { ...summary, least: 1650, greatest: 1650 }
    expect(spreadSentence(subject, { ...spread, summary: still })).toContain('nothing that is sampled moves it')
  })

  test('spreadBasis() prints samples, assumptions and seed, and says when it ended early', () => {
    expect(spreadBasis(spread)).toBe(
      '1024 samples of 2 assumptions together, independent; scrambled Sobol points, seed 7. The same seed gives the same numbers.',
    )
    expect(spreadBasis({ ...spread, done: 64, stopped: true, correlated: true })).toContain(
      '64 samples of 1024, stopped of 2 assumptions together, correlated as stated',
    )
  })

  test('renderPercentiles() shows every percentile with its interval and where the document lies', () => {
    const drawn = renderPercentiles(document, subject, summary)
    const rows = [...drawn.querySelectorAll('tbody tr')].map(plainText)
    expect(rows).toHaveLength(8)
    expect(rows[3]).toBe('P901 690 kg1 688 kg to 1 692 kg')
    expect(rows[7]).toBe('in the document1 637 kg37 % at or below')
    expect(plainText(drawn.querySelector('.spread-note'))).toContain(
      'P90 is the value that 90 % of the samples do not exceed',
    )
  })

  test('renderProbabilities() puts the requirement on the number itself first and never drops a failure', () => {
    const drawn = renderProbabilities(document, subject, {
      ...spread,
      requirements: [...spread.requirements].reverse(),
    })
    const [first, second] = [...(drawn?.querySelectorAll('li') ?? [])].map(plainText)
    expect(first).toBe(
      'mass limitmet in 87.5 %95 % interval 85.5 to 89.5 %; 24 samples did not compute: 86.5 to 88.5 %, according to whether they count as not met or as met',
    )
    expect(second).toBe('padmet in 50 %95 % interval 48 to 52 %')
    expect(renderProbabilities(document, subject, { ...spread, requirements: [] })).toBeNull()
  })

  test('renderFailures() counts by reason, names the row and the values, and shows hostile words as text', () => {
    const drawn = renderFailures(document, spread, context)
    expect(plainText(drawn?.querySelector('p'))).toContain('24 samples of 1024 (2.3 %) gave no number.')
    const line = drawn?.querySelector('li')
    expect(plainText(line)).toContain('24 times in row 4: the mass <b>runs away</b>')
    expect(line?.querySelector('b')).toBeNull()
    expect(plainText(line?.querySelector('details p'))).toBe('payload 431 kg, pack energy 800 000')
    expect(renderFailures(document, { ...spread, failures: [] }, context)).toBeNull()
    const beside = { ...spread, failures: spread.failures.map((reason) => ({ ...reason, lost: 0 })) }
    expect(plainText(renderFailures(document, beside, context))).toContain(
      'The number itself was computed at every sample',
    )
  })

  test('renderConvergence() lists the answer at doubling counts', () => {
    expect(
      [...(renderConvergence(document, subject, spread)?.querySelectorAll('tbody tr') ?? [])].map(plainText),
    ).toEqual(['321 640 kg1 645 kg1 688 kg', '641 650 kg1 650 kg1 690 kg'])
    expect(convergenceSentence(spread)).toContain('Not settled yet')
    expect(convergenceSentence({ ...spread, convergence: { rows: [], settledAt: 512 } })).toContain(
      'Settled at 512 samples',
    )
    expect(
      renderConvergence(document, subject, { ...spread, convergence: { rows: [], settledAt: undefined } }),
    ).toBeNull()
  })

  test('renderNoDistributions() teaches how to state a distribution', () => {
    const words = plainText(renderNoDistributions(document, 36))
    expect(words).toContain(
      '36 assumptions have a range, which says how far a value may lie and nothing about how likely',
    )
    expect(words).toContain('distribution: { triangular: [350 * u.kg, 450 * u.kg] }')
    expect(plainText(renderNoDistributions(document, 0))).not.toContain('have a range')
  })
})

describe('spreadCurve', () => {
  test('spreadCurve() is a sound figure with curve, percentiles and the limit of the requirement', () => {
    const figure = spreadCurve(subject, spread)
    expect(Figure.safeParse(figure).success).toBe(true)
    expect(figure?.marks.filter(({ mark }) => mark === 'dot')).toHaveLength(3)
    expect(figure?.marks.at(-1)).toMatchObject({ mark: 'rule', axis: 'x', at: 1700, label: 'at most' })
    expect(figure?.description?.replaceAll('\u202f', ' ')).toContain(
      'P90 1 690 kg. The requirement "mass limit" asks for at most 1 700 kg.',
    )
    expect(spreadCurve(subject, { ...spread, summary: undefined })).toBeUndefined()
  })

  test('spreadCurve() adds the limits that bare ranges give, broken', () => {
    const lines = spreadCurve(subject, spread, envelope)?.marks.filter(({ mark }) => mark === 'line') ?? []
    expect(lines).toHaveLength(3)
    expect(lines.filter((mark) => 'broken' in mark && mark.broken)).toHaveLength(2)
  })
})

const estimate = (value: number) => ({ value, low: value - 0.03, high: value + 0.03 })
const shares: Shares = {
  target: 'grossMass',
  method: 'Sobol indices',
  shares: [
    { name: 'payload', alone: estimate(0.6), withOthers: estimate(0.7) },
    { name: 'packEnergy', alone: estimate(0.2), withOthers: estimate(0.3) },
    { name: 'seatPitch', alone: estimate(0), withOthers: estimate(0.002) },
  ],
  rows: 512,
  runs: 1536,
  missing: 3,
  settled: true,
  stopped: false,
}

describe('renderShares', () => {
  test('renderShares() draws what each does alone full and what it does with others striped, with both in words', () => {
    const drawn = renderShares(document, shares)
    const [first] = drawn.querySelectorAll('li')
    expect(plainText(first)).toBe('payload70 %alone 60 %; within 67 % to 73 %')
    const [full, striped] = [...(first?.querySelectorAll('line') ?? [])]
    expect([full?.getAttribute('x2'), full?.getAttribute('stroke-dasharray')]).toEqual(['60%', null])
    expect([
      striped?.getAttribute('x1'),
      striped?.getAttribute('x2'),
      striped?.getAttribute('stroke-dasharray'),
    ]).toEqual(['60%', '70%', '2 2'])
    expect(plainText(drawn)).toContain('Under 1 % each: seat pitch.')
    expect(plainText(drawn)).toContain(
      '512 rows, 1536 runs; 95 % intervals from resampling. 3 runs gave no number and are left out.',
    )
    expect(shareSentence(shares.shares[0] as Shares['shares'][number]).replaceAll('\u202f', ' ')).toBe(
      'payload has the largest share of the variance, 70 %.',
    )
  })

  test('renderShares() says which way it was worked out, and when it is rough, stopped or empty', () => {
    const fair: Shares = {
      ...shares,
      method: 'Shapley effects',
      shares: [{ name: 'payload', fair: estimate(1) }],
      settled: false,
    }
    expect(plainText(renderShares(document, fair))).toContain('Shapley effects, because assumptions are correlated')
    expect(plainText(renderShares(document, fair))).toContain('the shares are rough')
    expect(plainText(renderShares(document, { ...fair, stopped: true }))).toContain('Stopped early.')
    expect(plainText(renderShares(document, { ...shares, shares: [] }))).toContain(
      'Nothing that is sampled moves this number.',
    )
  })
})

const atEnds = (shift: number, ends: Readonly<Record<string, number>>) => ({
  ends,
  failed: 0,
  requirements: [],
  summary: {
    ...summary,
    curve: summary.curve.map((value) => value + shift),
    percentiles: summary.percentiles.map((one) => ({ ...one, value: one.value + shift })),
  },
})
const envelope: Envelope = {
  target: 'grossMass',
  nominal: 1637,
  count: 128,
  effects: [
    { name: 'sector', low: 1, high: 2, atLow: 1500, atHigh: undefined },
    {
      name: 'payload',
      low: 300,
      high: 450,
      atLow: 1550,
      atHigh: 1720,
      spreads: { low: atEnds(-50, {}), high: atEnds(50, {}) },
    },
    { name: 'idle', low: 1, high: 2, atLow: 1637, atHigh: 1637 },
  ],
  held: atEnds(0, {}),
  lowest: atEnds(-50, { payload: 300 }),
  highest: atEnds(50, { payload: 450 }),
  worst: [{ requirement: 'mass limit', probability: 0.4, ends: { payload: 450 } }],
  runs: 700,
  stopped: false,
}

describe('renderEnvelope', () => {
  test('renderEnvelope() gives the limits between which the distribution lies, in plain words', () => {
    const words = plainText(renderEnvelope(document, subject, envelope, context))
    expect(words).toContain(
      'at the ends that lower it P50 is 1 600 kg and P90 1 640 kg; as in the document 1 650 kg and 1 690 kg; at the ends that raise it 1 700 kg and 1 740 kg.',
    )
    expect(words).toContain('Raising: payload 450 kg.')
    expect(words).toContain('mass limit 40 % (payload 450 kg)')
  })

  test('renderEnvelope() shows every range: what it does, that it fails at an end, that it does nothing', () => {
    const drawn = renderEnvelope(document, subject, envelope, context)
    expect([...drawn.querySelectorAll('tbody tr')].map(plainText)).toEqual([
      'sector1 500 kgdoes not compute',
      'payload1 550 kg1 720 kg1 640 kg to 1 740 kg',
    ])
    expect(plainText(drawn)).toContain('Without effect: idle.')
    expect(plainText(drawn)).toContain('because an end does not compute: sector.')
  })

  test('renderEnvelope() without a distribution gives the number itself, and part of it when stopped', () => {
    const alone = (mean: number) => ({ ...atEnds(0, {}), summary: { ...summary, count: 1, mean } })
    const single = { ...envelope, lowest: alone(1500), highest: alone(1800) }
    expect(plainText(renderEnvelope(document, subject, single, context))).toContain(
      'gross mass is 1 500 kg; at those that raise it, 1 800 kg.',
    )
    const early = { ...envelope, lowest: undefined, stopped: true }
    expect(plainText(renderEnvelope(document, subject, early, context))).toContain('Stopped early: some are missing.')
  })
})

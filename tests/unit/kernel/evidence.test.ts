import { describe, expect, it } from 'vitest'
import type { DistributionOption } from '../../../kernel/library/evidence/index.js'
import { advise, InvalidInput, preloaded, setRecorder, silently } from '../../../kernel/library/index.js'
import { AssumptionRecord, RequirementRecord } from '../../../shared/contracts/index.js'
import { listenWhile } from './recorder-stub.js'

const { assumption, requirement, result, table, u } = preloaded

describe('assumption(name, value, options)', () => {
  it('returns the value where nobody listens', () => {
    expect(assumption('payload', 400 * u.kg)).toBe(400)
  })

  it('tells the recorder what was stated, in SI', () => {
    const heard = listenWhile(() =>
      assumption('payload', 400 * u.kg, {
        range: [300 * u.kg, 500 * u.kg],
        unit: 'kg',
        source: 'Skerry Link brief',
        note: 'pilot plus three',
        symbol: 'm_p',
        label: 'payload',
      }),
    )
    const stated = { name: 'payload', value: 400, low: 300, high: 500, unit: 'kg', source: 'Skerry Link brief' }
    expect(heard.assumptions).toEqual([{ ...stated, note: 'pilot plus three', symbol: 'm_p', label: 'payload' }])
    expect(AssumptionRecord.safeParse(stated).success).toBe(true)
  })

  it.each<[DistributionOption, object]>([
    [{ normal: 20 }, { kind: 'normal', mean: 400, deviation: 20 }],
    [{ uniform: [350, 480] }, { kind: 'uniform', low: 350, high: 480 }],
    [{ triangular: [350, 480] }, { kind: 'triangular', low: 350, mode: 400, high: 480 }],
    [{ lognormal: 1.2 }, { kind: 'lognormal', median: 400, factor: 1.2 }],
  ])('centres the distribution %j on the value', (distribution, read) => {
    const heard = listenWhile(() =>
      assumption('payload', 400, { distribution, correlated: { pack: -0.4 }, owner: 'masses' }),
    )
    const stated = { name: 'payload', value: 400, distribution: read, correlated: { pack: -0.4 }, owner: 'masses' }
    expect(heard.assumptions).toEqual([stated])
    expect(AssumptionRecord.safeParse(stated).success).toBe(true)
  })

  it.each<[string, object, RegExp]>([
    ['no record', { distribution: 5 }, /the distribution of "x" is 5.*one of \{ normal/],
    ['no kind', { distribution: {} }, /with 0 kinds/],
    ['two kinds', { distribution: { normal: 1, lognormal: 2 } }, /with 2 kinds/],
    ['an unknown kind', { distribution: { norml: 1 } }, /did you mean "normal"/],
    ['a deviation of 0', { distribution: { normal: 0 } }, /normal: 0.*a standard deviation above 0/],
    ['a deviation that is text', { distribution: { normal: '1' } }, /normal: the text "1"/],
    ['a factor of 1', { distribution: { lognormal: 1 } }, /lognormal: 1.*a factor above 1/],
    ['bounds that descend', { distribution: { uniform: [2, 1] } }, /uniform: \[2, 1\].*ascending/],
    ['bounds without end', { distribution: { uniform: [0, Number.POSITIVE_INFINITY] } }, /two finite numbers/],
    ['three bounds', { distribution: { triangular: [0, 1, 2] } }, /triangular: \[0, 1, 2\]/],
    ['one bound', { distribution: { triangular: 3 } }, /triangular: 3/],
    ['a triangle without the value', { distribution: { triangular: [2, 3] } }, /with the value 1 between them/],
    ['correlations that are none', { correlated: 0.5 }, /the correlation of "x" is 0.5.*a record of rank/],
    ['a correlation of 1', { correlated: { y: 1 } }, /y: 1/],
    ['a correlation that is text', { correlated: { y: 'half' } }, /y: the text "half"/],
    ['a correlation with itself', { correlated: { x: 0.5 } }, /x: 0.5.*another assumption/],
  ])('refuses a distribution or correlation with %s', (_, options, message) => {
    expect(() => assumption('x', 1, options)).toThrow(InvalidInput)
    expect(() => assumption('x', 1, options)).toThrow(message)
  })

  it('refuses a lognormal around a value that is not above 0', () => {
    expect(() => assumption('x', 0, { distribution: { lognormal: 2 } })).toThrow(/for a value above 0 only/)
  })

  it('returns the trial value in force, in a solver too', () => {
    listenWhile(
      () => {
        expect(assumption('payload', 400)).toBe(350)
        expect(silently(() => assumption('payload', 400))).toBe(350)
      },
      { payload: 350 },
    )
  })

  it('advises where the value in force is outside its stated range', () => {
    const heard = listenWhile(() => assumption('range', 85 * u.km, { range: [40 * u.km, 90 * u.km], unit: 'km' }), {
      range: 120_000,
    })
    expect(heard.advisories).toMatchObject([{ code: 'OUTSIDE_STATED_RANGE', quantity: 'range', value: 120_000 }])
    expect(heard.advisories[0]?.message).toContain('range is 120 km, outside its stated range of 40 km to 90 km')
  })

  it('widens a literal to number and keeps a quantity what it is', () => {
    const count: number = assumption('rotorCount', 8)
    // @ts-expect-error a force is not a power
    const power: typeof u.kW = assumption('thrust', u.kN)
    expect([count, power]).toEqual([8, 1000])
  })

  it.each<[string, () => unknown, RegExp]>([
    ['an empty name', () => assumption('', 1), /name/],
    ['NaN', () => assumption('x', Number.NaN), /"x" is NaN/],
    ['a unit it cannot read', () => assumption('x', 1, { unit: 'kq' }), /the unit of "x".*kq/],
    ['a range that descends', () => assumption('x', 1, { range: [2, 1] }), /range of "x" is \[2, 1\]/],
    ['a range that is none', () => assumption('x', 1, { range: 5 as unknown as [number, number] }), /\[low, high\]/],
    ['an unknown option', () => assumption('x', 1, { rnge: [0, 1] } as object), /did you mean "range"/],
  ])('refuses %s', (_, run, message) => {
    expect(run).toThrow(InvalidInput)
    expect(run).toThrow(message)
  })
})

describe('requirement(name, options)', () => {
  it.each<[string, object, number, boolean]>([
    ['a lower bound met', { actual: 10, atLeast: 8 }, 2, true],
    ['a lower bound missed', { actual: 7, atLeast: 8 }, -1, false],
    ['an upper bound met exactly', { actual: 14, atMost: 14 }, 0, true],
    ['both bounds, the nearer counts', { actual: 9, atLeast: 8, atMost: 20 }, 1, true],
    ['a span', { actual: 25, within: [8, 20] }, -5, false],
  ])('has the signed margin of %s', (_, options, margin, met) => {
    const record = requirement('r', options as { actual: number })
    expect(record).toMatchObject({ name: 'r', margin, met })
    expect(RequirementRecord.safeParse(record).success).toBe(true)
  })

  it('tells the recorder, with unit and source', () => {
    const heard = listenWhile(() => requirement('span', { actual: 13, atMost: 14, unit: 'm', source: 'pad' }))
    expect(heard.requirements).toEqual([
      { name: 'span', actual: 13, atMost: 14, margin: 1, met: true, unit: 'm', source: 'pad' },
    ])
  })

  it.each<[string, object, RegExp]>([
    ['no bound', { actual: 1 }, /atLeast, atMost or within/],
    ['two ways of bounding', { actual: 1, atLeast: 0, within: [0, 2] }, /given twice/],
    ['a span that is no pair', { actual: 1, within: [0] }, /within/],
    ['a bound that is not finite', { actual: 1, atLeast: Number.NaN }, /lower bound/],
    ['an upper bound that is not finite', { actual: 1, atMost: Number.NaN }, /upper bound/],
    ['bounds that cross', { actual: 1, atLeast: 2, atMost: 1 }, /not above the upper one/],
    ['an actual that is not finite', { actual: Number.NaN, atLeast: 2 }, /actual of "r" is NaN/],
    ['a unit it cannot read', { actual: 1, atLeast: 2, unit: '??' }, /the unit of "r"/],
    ['an unknown option', { actual: 1, atleast: 2 }, /did you mean "atLeast"/],
  ])('refuses %s', (_, options, message) => {
    const call = () => requirement('r', options as { actual: number })
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('result(name, value, options)', () => {
  it('returns the value and tells the recorder how to show it', () => {
    const heard = listenWhile(() => expect(result('hoverPower', 315_884, { unit: 'kW', symbol: 'P_h' })).toBe(315_884))
    expect(heard.results).toEqual([{ name: 'hoverPower', value: 315_884, unit: 'kW', symbol: 'P_h' }])
  })

  it.each<[string, () => unknown]>([
    ['an empty name', () => result(' ', 1)],
    ['infinity', () => result('x', Number.POSITIVE_INFINITY)],
    ['a unit it cannot read', () => result('x', 1, { unit: 'degC' })],
    ['an unknown option', () => result('x', 1, { units: 'm' } as object)],
  ])('refuses %s', (_, run) => {
    expect(run).toThrow(InvalidInput)
  })
})

describe('table(name, rows, options)', () => {
  const rows = [
    { part: 'wing', mass: 180 },
    { part: 'boom', mass: 21 },
  ]

  it('returns the rows and tells the recorder how to show them', () => {
    const heard = listenWhile(() => expect(table('parts', rows, { units: { mass: 'kg' }, label: 'Parts' })).toBe(rows))
    expect(heard.results).toEqual([{ name: 'parts', value: rows, units: { mass: 'kg' }, label: 'Parts' }])
  })

  it.each<[string, () => unknown, RegExp]>([
    ['an empty name', () => table(' ', rows), /name/],
    ['no rows', () => table('x', []), /a list of at least one record/],
    ['rows that are no records', () => table('x', [1] as never), /"x"\[0\] is 1; it must be a record/],
    ['lists for rows', () => table('x', [[1]]), /"x"\[0\] is a list of 1/],
    ['an empty label', () => table('x', rows, { label: '' }), /label/],
    ['a unit it cannot read', () => table('x', rows, { units: { mass: 'kq' } }), /unit of "mass"/],
    ['a unit for no field', () => table('x', rows, { units: { mas: 'kg' } }), /for one of part, mass/],
    ['an unknown option', () => table('x', rows, { unit: 'kg' } as object), /did you mean "units"/],
  ])('refuses %s', (_, run, message) => {
    expect(run).toThrow(InvalidInput)
    expect(run).toThrow(message)
  })
})

describe('setRecorder(recorder)', () => {
  const silence = { advisory: () => {}, assumption: () => 1, requirement: () => {}, result: () => {} }

  it('returns the one before, so that runs can nest', () => {
    expect(setRecorder(silence)).toBeUndefined()
    expect(setRecorder(undefined)).toBe(silence)
  })

  it('silently(search) drops advisories, requirements and results, also when the search throws', () => {
    const heard = listenWhile(() => {
      expect(() =>
        silently(() => {
          advise({ code: 'A', method: 'm', message: 'x' })
          requirement('r', { actual: 1, atLeast: 0 })
          result('x', 1)
          throw new Error('stop')
        }),
      ).toThrow('stop')
      silently(() => silently(() => advise({ code: 'B', method: 'm', message: 'x' })))
      advise({ code: 'C', method: 'm', message: 'x' })
    })
    expect(heard.advisories.map((advisory) => advisory.code)).toEqual(['C'])
    expect([...heard.requirements, ...heard.results]).toEqual([])
  })

  it('set inside a silent search starts speaking anew', () => {
    silently(() => setRecorder(undefined))
    expect(listenWhile(() => advise({ code: 'D', method: 'm', message: 'x' })).advisories).toHaveLength(1)
  })
})

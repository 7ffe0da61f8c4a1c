import { parseHTML } from 'linkedom'
import { describe, expect, test } from 'vitest'
import { type AssumptionRecord, CellId, type RequirementRecord } from '../../../shared/contracts/index.js'
import {
  type RequirementSureness,
  registerCount,
  registerTeaching,
  renderRegister,
  renderRequirements,
} from '../../../shared/rendering/register/index.js'

const { document } = parseHTML('<!doctype html><html><body></body></html>')
const cell = CellId.parse('a')

function register(...records: readonly AssumptionRecord[]): readonly string[] {
  const rows = records.map((record, order) => ({
    name: record.name,
    cell,
    number: '3a',
    order,
    state: 'current' as const,
    record,
    dimension: 'kg',
    usedIn: [{ cell: CellId.parse('b'), number: '4' }],
  }))
  return textsOf(renderRegister(document, rows))
}

function requirements(record: RequirementRecord): readonly string[] {
  return textsOf(renderRequirements(document, [{ cell, number: '5', state: 'current', record, tried: false }]))
}

function textsOf(drawn: HTMLElement): readonly string[] {
  return [...drawn.querySelectorAll('p, tbody th, tbody td')].map((one) =>
    (one.textContent ?? '').replace(/[\u00a0\u202f]/g, ' '),
  )
}

describe('renderRegister(document, rows)', () => {
  test('renderRegister tells a range from a distribution and says what has no source', () => {
    expect(register({ name: 'payload', value: 400, unit: 'kg', low: 350, high: 450 })).toEqual([
      ...['payload', '400 kg', '', 'no source', 'range 350 kg to 450 kgadd distribution'],
      ...['add note', 'add owner', 'kg', '3a', '4'],
    ])
    const distribution = { kind: 'normal', mean: 400, deviation: 20 } as const
    const record = { name: 'payload', value: 400, unit: 'kg', distribution, source: 'weighed', owner: 'masses' }
    expect(register(record).slice(0, 7)).toEqual([
      ...['payload', '400 kg', '', 'weighed', 'add rangenormal, deviation 20 kg', 'add note', 'masses'],
    ])
  })

  test('renderRegister shows the value of the document and leaves a place for what is on trial', () => {
    const record = { name: 'payload', value: 400, unit: 'kg' }
    expect(register({ ...record, trial: 420 })).toEqual(register(record))
  })

  test('renderRegister says in its heads how it is sorted', () => {
    const heads = [...renderRegister(document, [], { column: 'value', descending: true }).querySelectorAll('th')]
    expect(heads.map((head) => head.getAttribute('aria-sort'))).toEqual([
      ...[null, 'descending', null, null, null, null, null, null, null, null],
    ])
    expect(heads[1]?.textContent).toBe('Value ↓')
  })

  test('renderRegister shows hostile text as text', () => {
    const source = '<img src=x onerror=alert(1)>"\u202e'
    const drawn = renderRegister(document, [
      {
        name: source,
        cell,
        number: '1',
        order: 0,
        state: 'out of date',
        record: { name: source, value: 1, source },
        dimension: null,
        usedIn: [],
      },
    ])
    expect(drawn.querySelector('img')).toBeNull()
    expect(drawn.querySelector('tbody th')?.textContent).toBe(source)
    expect(drawn.textContent).toContain('1 out of date')
  })
})

describe('registerCount(rows, shown)', () => {
  test('registerCount says what has no source, and how many are shown where not all are', () => {
    const row = (source: string | undefined, order: number) => ({
      ...{ name: 'mass', cell, number: '1', order, state: 'current' as const, dimension: 'kg', usedIn: [] },
      record: { name: 'mass', value: 1, ...(source === undefined ? {} : { source }) },
    })
    expect(registerCount([row('weighed', 0)], 1)).toBe('1 assumption, every one with a source.')
    expect(registerCount([row(' ', 0), row(undefined, 1)], 0)).toBe('2 assumptions, 2 without a source; none shown.')
  })

  test('registerTeaching says how an assumption is written', () => {
    expect(registerTeaching).toContain("assumption('name', value, { source })")
  })
})

describe('renderRequirements(document, rows)', () => {
  test('renderRequirements calls at risk what is met by less than 5 % of its bound', () => {
    const record = { name: 'R', actual: 96, atMost: 100, margin: 4, met: true }
    expect(requirements(record)).toEqual(
      expect.arrayContaining(['1 of 1 met, 1 of them by less than 5 %.', 'met, at risk: less than 5 % to spare']),
    )
    expect(requirements({ ...record, actual: 95, margin: 5 })).toEqual(expect.arrayContaining(['1 of 1 met.', 'met']))
    expect(requirements({ ...record, actual: 104, margin: -4, met: false })).toContain('not met')
  })

  test('renderRequirements gives paragraph, means, bound, margin with its share of the bound, and status', () => {
    const record = { name: 'Mass', actual: 2069, atMost: 2200, margin: 131, met: true, unit: 'kg' }
    expect(requirements({ ...record, paragraph: '2.1', means: 'analysis', owner: 'masses', source: 'brief' })).toEqual([
      '1 of 1 met.',
      ...['Mass', 'met', '2 069 kg', 'at most 2 200 kg', '131 kg (6.0 %)', '5', '2.1', 'analysis', 'masses', 'brief'],
    ])
  })

  test('renderRequirements takes the share of the bound that is nearer, and none of a bound of 0', () => {
    const between = { name: 'R', actual: 9, atLeast: 2, atMost: 10, margin: 1, met: true }
    expect(requirements(between)).toContain('1 (10.0 %)')
    expect(requirements({ name: 'R', actual: -1, atLeast: 0, margin: -1, met: false })).toEqual(
      expect.arrayContaining(['0 of 1 met.', 'at least 0', '−1', 'not met']),
    )
  })

  test('renderRequirements shows worst corner and P90 where they are known, and says why not elsewhere', () => {
    const record = { name: 'Mass', actual: 96, atMost: 100, margin: 4, met: true, unit: 'kg' }
    const spread = {
      ...{ name: 'Mass', met: 490, computed: 500, failed: 12, probability: 0.98, marginKept90: 1.5, marginP50: 4 },
      ...({ between: [0.9, 1], bounds: [0.9, 1] } as const),
    }
    const shown = (sureness: RequirementSureness, rows = [record]) =>
      textsOf(
        renderRequirements(
          document,
          rows.map((each) => ({ cell, number: '5', state: 'current' as const, record: each, tried: false })),
          sureness,
        ),
      ).slice(6, 8)
    const corner = { requirement: 'Mass', ends: { a: 1 }, margin: -3, failing: [] }
    expect(shown({ corners: [corner], spreads: [spread] })).toEqual([
      '−3 kg, not met',
      '1.5 kg; met in 98 % of samples, 12 do not compute',
    ])
    expect(shown({ corners: [{ ...corner, margin: 2, failing: ['b'] }] })).toEqual([
      '2 kg; an end of b does not compute',
      'no distribution is stated',
    ])
    expect(shown({ corners: [{ requirement: 'Mass', ends: {}, failing: [] }], spreads: [] })).toEqual([
      'does not compute',
      'does not compute',
    ])
    expect(shown({ corners: [] })[0]).toBe('does not compute')
    expect(shown({})[0]).toBe('nothing uncertain is stated')
    expect(shown({ corners: [corner] }, [record, record])[0]).toBe('not told: two of this name')
  })

  test('renderRequirements says in words and by a mark what a trial has changed', () => {
    const record = { name: 'R', actual: 104, atMost: 100, margin: -4, met: false }
    const drawn = renderRequirements(document, [{ cell, number: '5', state: 'current', record, tried: true }])
    expect(textsOf(drawn)).toContain('not met; trial')
    expect(drawn.querySelectorAll('tr[data-trial]')).toHaveLength(1)
  })

  test('renderRequirements of nothing says how a requirement is written', () => {
    expect(renderRequirements(document, []).textContent).toContain("requirement('name'")
  })
})

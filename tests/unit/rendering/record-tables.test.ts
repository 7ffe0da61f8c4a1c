import { describe, expect, it } from 'vitest'
import type { NamedValue, ResultValue } from '../../../shared/contracts/index.js'
import { renderFigures, renderResult } from '../../../shared/rendering/index.js'
import { recordTable } from '../../../shared/rendering/sheet/record-table.js'
import { cellView, newDocument, number, plainText, resultOf } from './support.js'

const document = newDocument()

function resultValue(plain: unknown): ResultValue {
  if (typeof plain === 'number') return { kind: 'number', si: plain }
  if (typeof plain === 'string') return { kind: 'text', text: plain }
  if (typeof plain === 'boolean') return { kind: 'truth', value: plain }
  if (plain === null) return { kind: 'nothing' }
  if (Array.isArray(plain)) return { kind: 'list', length: plain.length, items: plain.map(resultValue) }
  return {
    kind: 'record',
    more: 0,
    entries: Object.entries(plain as object).map(([name, value]) => [name, resultValue(value)] as const),
  }
}

const tableOf = (rows: unknown, more: Partial<NamedValue> = {}): NamedValue => ({
  name: 'corners',
  value: resultValue(rows),
  dimension: null,
  ...more,
})
const plain = (rows: readonly (readonly string[])[] | undefined) =>
  rows?.map((row) => row.map((text) => text.replaceAll('\u202f', ' ')))
const drawn = (...values: NamedValue[]) =>
  renderFigures(document, cellView('a', { result: resultOf('a', { values }) })).querySelectorAll('.record-table')

describe('recordTable(named)', () => {
  it('has a column per field, in a unit of its dimension that suits the largest number', () => {
    const table = recordTable(
      tableOf(
        [
          { corner: 'new', mass: 429.6, power: 291_200, met: true },
          { corner: 'old', mass: 792.22, power: 900, note: 'cold' },
        ],
        { columns: { mass: 'kg', power: 'kg m^2 s^-3' } },
      ),
    )
    expect(table?.heads).toEqual([
      { text: 'corner', numeric: false },
      { text: 'mass, kg', numeric: true },
      { text: 'power, kW', numeric: true },
      { text: 'met', numeric: false },
      { text: 'note', numeric: false },
    ])
    expect(plain(table?.rows)).toEqual([
      ['new', '429.6', '291.2', 'true', '–'],
      ['old', '792.2', '0.9', '–', 'cold'],
    ])
    expect(table).toMatchObject({ label: 'corners', remark: '2 rows', stated: false })
  })

  it('takes the unit that its author names, unless it has another dimension', () => {
    const rows = [{ range: 85_000, mass: 500 }]
    const columns = { range: 'm', mass: 'kg' }
    const table = recordTable(tableOf(rows, { columns, units: { range: 'nmi', mass: 'km' } }))
    expect(table?.heads.map((head) => head.text)).toEqual(['range, nmi', 'mass, kg'])
    expect(plain(table?.rows)).toEqual([['45.90', '500']])
  })

  it('shows numbers of mixed quantities in the unit that the row itself names', () => {
    const rows = [
      { component: 'battery', size: 412, gap: 0.05, unit: 'kg' },
      { component: 'lift motor', size: 240, gap: 0.2, unit: 'N m' },
    ]
    const table = recordTable(tableOf(rows, { columns: { gap: '1' } }))
    expect(table?.heads.map((head) => head.text)).toEqual(['component', 'size', 'gap'])
    expect(plain(table?.rows)).toEqual([
      ['battery', '412 kg', '0.05'],
      ['lift motor', '240 N m', '0.2'],
    ])
    // Without dimensions nothing is known to be in that unit.
    expect(recordTable(tableOf(rows))?.heads.map((head) => head.text)).toContain('unit')
  })

  it('says that numbers are in SI where no unit is known, and how many rows are not shown', () => {
    expect(recordTable(tableOf([{ a: 1 }]))?.remark).toBe('1 row, numbers in SI')
    expect(recordTable(tableOf([{ a: 'x' }]))?.remark).toBe('1 row')
    const long = tableOf([{ a: 'x' }, { a: 'y' }])
    const cut = { ...long, value: { ...long.value, length: 250 } as ResultValue }
    expect(recordTable(cut)?.remark).toBe('first 2 of 250 rows')
  })

  it('shows numbers that are not finite, lists inside and fields named like members of objects', () => {
    const value: ResultValue = {
      kind: 'list',
      length: 1,
      items: [
        {
          kind: 'record',
          more: 0,
          entries: [
            ['toString', { kind: 'number', si: 'NaN' }],
            ['inside', resultValue([1, 2])],
            ['gone', { kind: 'nothing' }],
          ],
        },
      ],
    }
    const table = recordTable({ ...tableOf([]), value })
    expect(table?.heads.map((head) => head.text)).toEqual(['to string', 'inside', 'gone'])
    expect(table?.rows).toEqual([['not a number', '1, 2', '–']])
  })

  it.each([
    ['a number', 5],
    ['an empty list', []],
    ['a list of numbers', [1, 2]],
    ['a list with something else in it', [{ a: 1 }, 2]],
    ['a list of empty records', [{}]],
    ['a record', { a: 1 }],
  ])('is null for %s', (_, value) => {
    expect(recordTable(tableOf(value))).toBeNull()
  })
})

describe('renderFigures(document, cell)', () => {
  it('draws lists of records as tables with heads for their columns', () => {
    const [table] = drawn(
      tableOf([{ corner: 'new', mass: 5 }], { columns: { mass: 'kg' }, label: 'Pack, every corner' }),
    )
    expect(plainText(table?.querySelector('summary'))).toBe('Pack, every corner (1 row)')
    expect(Array.from(table?.querySelectorAll('th[scope="col"]') ?? []).map(plainText)).toEqual(['corner', 'mass, kg'])
    expect(table?.querySelectorAll('td.numeric')).toHaveLength(1)
    expect(table?.querySelector('[role="region"]')?.getAttribute('aria-label')).toBe('Pack, every corner')
    expect(table?.hasAttribute('open')).toBe(true)
  })

  it('folds tables that are not stated and hold records or lists of their own', () => {
    const [table] = drawn(tableOf([{ way: 'bare', gain: { low: 1, high: 2 } }]))
    expect(table?.hasAttribute('open')).toBe(false)
  })

  it('sets sentences of a list one after the other, and anything shorter with commas', () => {
    const table = recordTable(tableOf([{ limits: ['It must stop.', 'It must start.'], parts: ['hub', 'pod'] }]))
    expect(table?.rows).toEqual([['It must stop. It must start.', 'hub, pod']])
  })

  it('folds tables that are not stated where the cell states something else', () => {
    const open = (...values: NamedValue[]) => Array.from(drawn(...values)).map((table) => table.hasAttribute('open'))
    const stated = number('mass', 5, 'kg', { stated: true })
    expect(open(tableOf([{ a: 1 }]), number('b', 1, '1'))).toEqual([true])
    expect(open(tableOf([{ a: 1 }]), stated)).toEqual([false])
    expect(open(tableOf([{ a: 1 }], { stated: true }), stated)).toEqual([true])
  })
})

describe('renderResult(document, cell)', () => {
  it('calls a list of records a table, and gives the fields of a record their units', () => {
    const values = [
      tableOf([{ a: 1 }, { a: 2 }]),
      tableOf({ mass: 792.22, share: 0.5 }, { name: 'pack', columns: { mass: 'kg' } }),
    ]
    const made = renderResult(document, cellView('a', { result: resultOf('a', { values }) }))
    expect(Array.from(made.querySelectorAll('dd.value-words')).map(plainText)).toEqual([
      'table of 2 rows',
      'record of 2 entriesmass 792.2 kgshare 0.5without a unit: in SI',
    ])
  })
})

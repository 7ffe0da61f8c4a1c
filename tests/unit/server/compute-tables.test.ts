import { describe, expect, it } from 'vitest'
import type { Computed } from '../../../server/command/compute-data.js'
import { computationAsData } from '../../../server/command/compute-data.js'
import { describeComputation } from '../../../server/command/compute-text.js'
import type { CellId, NamedValue, Notebook } from '../../../shared/contracts/index.js'
import { resultOf } from '../rendering/support.js'

const row = (part: string, mass: number) =>
  ({
    kind: 'record',
    more: 0,
    entries: [
      ['part', { kind: 'text', text: part }],
      ['mass', { kind: 'number', si: mass }],
    ],
  }) as const
const parts: NamedValue = {
  name: 'parts',
  value: { kind: 'list', length: 2, items: [row('wing', 180), row('boom of carbon', 21.25)] },
  dimension: null,
  columns: { mass: 'kg' },
}
const notebook: Notebook = {
  format: 'hoverfolio notebook',
  version: 1,
  title: 'T',
  cells: [{ id: 'a' as CellId, kind: 'sizing', source: ['// Parts', 'const parts = []'] }],
} as unknown as Notebook
const computed: Computed = {
  notebook,
  results: [resultOf('a', { values: [parts] })],
  findings: [],
  overrides: {},
  units: 'as written',
}

describe('describeComputation(computed)', () => {
  it('prints lists of records as aligned columns with units in their heads', () => {
    const lines = describeComputation(computed).split('\n')
    const at = lines.indexOf('  parts (2 rows)')
    expect(lines.slice(at + 1, at + 4)).toEqual([
      '    part            mass, kg',
      '    wing                 180',
      '    boom of carbon     21.25',
    ])
  })
})

describe('computationAsData(computed)', () => {
  it('gives the dimensions of the columns beside the rows', () => {
    expect(computationAsData(computed)).toMatchObject({ results: { parts: { cell: 'a', columns: { mass: 'kg' } } } })
  })
})

import { describe, expect, test } from 'vitest'
import type { RevisionComparison } from '../../../shared/contracts/index.js'
import { addressInUnits, comparisonInUnits, renderComparison } from '../../../shared/rendering/index.js'
import { newDocument, plainText } from './support.js'

const span = { name: 'span', actual: 12, atMost: 14, margin: 2, met: true, unit: 'm' }
const comparison: RevisionComparison = {
  from: 'A',
  to: 'B',
  fields: [],
  cells: [],
  assumptions: [
    {
      name: 'payload',
      dimension: 'kg',
      from: { name: 'payload', value: 400, unit: 'kg' },
      to: { name: 'payload', value: 450, unit: 'kg' },
      differs: ['value'],
    },
    {
      name: 'reach',
      dimension: 'm',
      from: { name: 'reach', value: 1000, unit: 'm' },
      to: { name: 'reach', value: 1000, unit: 'km' },
      differs: ['unit'],
    },
  ],
  numbers: [
    { name: 'mass', dimension: 'kg', unit: 'kg', from: 1000, to: 1100, change: 100, percent: 10, stated: true },
    { name: 'gone', dimension: null, from: 3, stated: true },
  ],
  requirements: [{ name: 'span', from: span }],
  advisories: [],
  figures: [],
  same: { cells: 0, assumptions: 0, numbers: 0, requirements: 0, figures: 0 },
  kernelChanged: false,
  methods: { added: [], removed: [] },
}

describe('comparisonInUnits(comparison, system)', () => {
  test('comparisonInUnits shows results, changes, assumptions and margins in the units of the reader', () => {
    const drawn = renderComparison(newDocument(), comparisonInUnits(comparison, 'aviation'), {
      pictures: false,
      picturesAt: '#',
    })
    const text = plainText(drawn)
    for (const words of ['2 205 lb', '2 425 lb', '+220.5 lb', '881.8 lb', '992.1 lb', 'met, margin 6.562 ft'])
      expect(text).toContain(words)
    expect(text).toContain('reach unit m km'.replaceAll(' ', ''))
  })

  test('comparisonInUnits leaves everything as written where the reader chose nothing', () => {
    expect(comparisonInUnits(comparison, 'as written')).toBe(comparison)
  })
})

test('addressInUnits() adds the choice of units to an address, and nothing for units as written', () => {
  expect(addressInUnits('/a?from=A', 'SI')).toBe('/a?from=A&units=SI')
  expect(addressInUnits('/a', 'aviation')).toBe('/a?units=aviation')
  expect(addressInUnits('/a')).toBe('/a')
})

import { describe, expect, test } from 'vitest'
import { allAskable } from '../../../client/asked/askable.js'
import type { RequirementRecord, Trace, TraceStep } from '../../../shared/contracts/index.js'
import { askedSubject, marginsOf, showValue, TraceSubject, viewInUnits } from '../../../shared/rendering/index.js'
import { cellId, cellView, number, plainText, resultOf, sheetView } from './support.js'

const light: RequirementRecord = { name: 'light', actual: 35, atMost: 40, margin: 5, met: true, unit: 'kg' }
const twice: RequirementRecord = { name: 'twice', actual: 1, atLeast: 0, margin: 1, met: true }
const view = sheetView([
  cellView('a', {
    result: resultOf('a', {
      values: [number('mass', 35, 'kg'), number('five', 5, 'kg')],
      requirements: [light, twice],
    }),
  }),
  cellView('b', { result: resultOf('b', { requirements: [twice, { ...twice, name: 'free' }] }) }),
])

describe('margins of requirements', () => {
  test('marginsOf() leaves out requirements that share a name', () => {
    expect(marginsOf(view).map(({ value, cell }) => [value.name, cell.id])).toEqual([
      ['margin of light', 'a'],
      ['margin of free', 'b'],
    ])
  })

  test('askedSubject() of a margin has its unit, and 0 as its limit', () => {
    expect(askedSubject(view, 'margin of light')).toEqual({
      name: 'margin of light',
      label: 'margin of light',
      dimension: 'kg',
      unit: 'kg',
      value: 5,
      limits: [{ requirement: 'light', bound: 'at least', value: 0 }],
    })
    expect(askedSubject(view, 'margin of free')).toMatchObject({ unit: '1', dimension: '1' })
    expect(askedSubject(view, 'margin of twice')).toBeUndefined()
  })

  test('allAskable() offers margins behind the numbers of their cell', () => {
    expect(allAskable(view).map(({ name, cell }) => [name, cell])).toEqual([
      ['mass', 'a'],
      ['five', 'a'],
      ['margin of light', 'a'],
      ['margin of free', 'b'],
    ])
  })

  test('TraceSubject shows a margin in the unit of its requirement, and of the reader', () => {
    const place = { name: 'margin of light', cell: cellId('a'), line: 1, kind: 'number', value: 5 } as const
    const step: TraceStep = { ...place, reads: [], methods: [], acts: 'moves', wakes: [], apart: false }
    const trace: Trace = { target: step.name, base: 5, steps: [step], runs: 1, left: [] }
    expect(plainText({ textContent: new TraceSubject(trace, view).value(step) } as Node)).toBe('5 kg')
    const abroad = viewInUnits(view, 'aviation')
    expect(plainText({ textContent: new TraceSubject(trace, abroad).value(step) } as Node)).toBe('11.02 lb')
    const subject = askedSubject(abroad, 'margin of light')
    expect(subject === undefined ? '' : showValue(subject, 5).replace(/\s/g, ' ')).toBe('11.02 lb')
  })
})

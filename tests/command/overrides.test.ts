import { describe, expect, test } from 'vitest'
import { readOverrides } from '../../server/command/overrides.js'
import { WrongCall } from '../../server/command/subcommand.js'
import type { CellId, NameDimension } from '../../shared/contracts/index.js'

const cell = 'a' as CellId
const names: readonly NameDimension[] = [
  { cell, name: 'range', dimension: 'm' },
  { cell, name: 'rotorCount', dimension: '1' },
  { cell, name: 'anything', dimension: null },
]
const assumptions = names.map(({ name }) => name)
const read = (...settings: string[]) => readOverrides(settings, assumptions, names)

describe('readOverrides', () => {
  test('gives SI values by name', () => {
    expect(read('range=60 km', 'rotorCount=6', 'anything = 5 kW')).toEqual({
      range: 60_000,
      rotorCount: 6,
      anything: 5000,
    })
  })

  test.each([
    [
      'an unknown assumption',
      ['rangee=60 km'],
      /no assumption of that name; did you mean "range"\? Its assumptions are range, rotorCount/,
    ],
    ['a wrong dimension', ['range=60 kg'], /"60 kg" is kg, but range is m/],
    ['a missing unit', ['range=60'], /a pure number, but range is m/],
    ['a unit on a pure number', ['rotorCount=6 m'], /"6 m" is m, but rotorCount is a pure number/],
    ['an unreadable number', ['range=sixty km'], /does not begin with a number/],
    ['an unknown unit', ['range=60 furlong'], /no unit "furlong"/],
    ['a setting without a value', ['range'], /NAME="VALUE UNIT".*got "range"/],
    ['a setting without a name', ['=60 km'], /NAME="VALUE UNIT"/],
    ['a setting given twice', ['range=60 km', 'range=70 km'], /range twice/],
  ])('refuses %s as a wrong call', (_what, settings, sentence) => {
    expect(() => read(...settings)).toThrow(WrongCall)
    expect(() => read(...settings)).toThrow(sentence)
  })

  test('says so when the notebook has no assumptions', () => {
    expect(() => readOverrides(['range=1 m'], [], [])).toThrow('declares no assumptions')
  })
})

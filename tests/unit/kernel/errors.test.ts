import { describe, expect, it } from 'vitest'
import {
  requireCount,
  requireFinite,
  requireNonNegative,
  requirePositive,
  requireRepresentable,
  requireShare,
  requireText,
  requireUnit,
  requireWithin,
} from '../../../kernel/library/check.js'
import { checkOptions, describeValue } from '../../../kernel/library/errors.js'
import { DoesNotClose, InvalidInput, KernelError, kernelErrors, NoFold } from '../../../kernel/library/index.js'
import { writeNumber, writeQuantity } from '../../../kernel/library/number-text.js'

function caught(run: () => unknown): InvalidInput {
  try {
    run()
  } catch (error) {
    if (error instanceof InvalidInput) return error
    throw error
  }
  throw new Error('nothing was thrown')
}

describe('InvalidInput', () => {
  it('names method, argument, value, unit and what would be accepted', () => {
    const error = caught(() => requirePositive('rotor.hover', 'thrust', -5, 'N'))
    expect(error.message).toBe('rotor.hover: thrust is -5 N; it must be a finite number greater than 0 N.')
    expect(error).toMatchObject({
      code: 'INVALID_INPUT',
      method: 'rotor.hover',
      argument: 'thrust',
      value: -5,
      unit: 'N',
    })
    expect(error.details).toEqual({
      method: 'rotor.hover',
      argument: 'thrust',
      value: -5,
      unit: 'N',
      accepted: 'a finite number greater than 0 N',
    })
  })

  it('is an Error by name and class, also where Error.prototype is frozen', () => {
    const error = caught(() => requirePositive('m', 'a', Number.NaN, '1'))
    expect(error).toBeInstanceOf(KernelError)
    expect(Object.hasOwn(error, 'name')).toBe(true)
    expect(String(error)).toMatch(/^InvalidInput: m: a is NaN/)
  })

  it('has codes that the registry lists, and no class that a cell could change', () => {
    const errors = [
      caught(() => requireShare('m', 'a', 2)),
      new DoesNotClose({ method: 'm', reason: 'r', runsAway: 'x', shortfall: 1, atGrossMass: 2 }),
      new NoFold({ method: 'm', variable: 'v', reason: 'r' }),
    ]
    expect(errors.map((error) => error.code).sort()).toEqual(Object.keys(kernelErrors).sort())
    for (const error of errors) {
      expect(Object.isFrozen(error.constructor.prototype)).toBe(true)
      for (const value of Object.values(error.details)) expect(['string', 'number', 'object']).toContain(typeof value)
    }
  })
})

describe('the checks of arguments', () => {
  it.each([
    ['requirePositive', () => requirePositive('m', 'a', 0, 'N')],
    ['requirePositive with text', () => requirePositive('m', 'a', '5' as unknown as number, 'N')],
    ['requirePositive with infinity', () => requirePositive('m', 'a', Number.POSITIVE_INFINITY, 'N')],
    ['requireNonNegative', () => requireNonNegative('m', 'a', -1e-9, 'N')],
    ['requireFinite', () => requireFinite('m', 'a', Number.NaN, '1')],
    ['requireWithin', () => requireWithin('m', 'a', 3, 'm', 0, 2)],
    ['requireShare', () => requireShare('m', 'a', 1.01)],
    ['requireCount', () => requireCount('m', 'a', 1.5)],
    ['requireText', () => requireText('m', 'a', ' ')],
    ['requireRepresentable', () => requireRepresentable('m', Number.POSITIVE_INFINITY)],
    ['requireUnit', () => requireUnit('m', 'a', 'kX')],
    ['requireUnit with a number', () => requireUnit('m', 'a', 5 as unknown as string)],
  ])('%s refuses', (_, run) => {
    expect(caught(run).message).toMatch(/^m: .* it must be /)
  })

  it('requireUnit passes on what the reader of unit text says', () => {
    expect(caught(() => requireUnit('result', 'the unit of "x"', 'kw')).message).toContain('Did you mean "kW"?')
  })

  it('checkOptions suggests the option that was meant', () => {
    const known = new Set(['thrust', 'density'])
    expect(caught(() => checkOptions('m', { thurst: 1 }, known)).message).toContain('did you mean "thrust"?')
    expect(caught(() => checkOptions('m', null as unknown as object, known)).message).toContain('null')
    expect(() => checkOptions('m', { thrust: 1 }, known)).not.toThrow()
  })

  it('describeValue puts anything in a few words', () => {
    const values = [5, 'abc', undefined, null, [1, 2], { a: 1 }, () => 0].map(describeValue)
    expect(values).toEqual([5, 'the text "abc"', 'missing', 'null', 'a list of 2', 'a record', 'a function'])
  })
})

describe('writeNumber(value)', () => {
  it('keeps four digits and whole thousands', () => {
    expect([0, 165.037, 3326.4, 0.018, 1e-6, 2e9, Number.NaN].map(writeNumber)).toEqual([
      '0',
      '165.0',
      '3326',
      '0.01800',
      '1.000e-6',
      '2.000e+9',
      'NaN',
    ])
  })

  it('writeQuantity(si, unit) writes in the unit and typesets it', () => {
    expect(writeQuantity(165_037, 'km')).toBe('165.0 km')
    expect(writeQuantity(846_000, 'Wh/kg')).toBe('235 Wh/kg')
    expect(writeQuantity(8, undefined)).toBe('8')
    expect(writeQuantity(8, 'no unit at all')).toBe('8')
  })
})

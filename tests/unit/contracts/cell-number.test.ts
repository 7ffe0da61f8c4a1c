import { describe, expect, it } from 'vitest'
import { marginNumbers, numberForPlace } from '../../../shared/contracts/index.js'

const numbersOf = (...cells: (readonly [id: string, number?: string])[]) => [
  ...marginNumbers(cells.map(([id, number]) => ({ id, number }))).values(),
]
const shown = (...cells: (readonly [id: string, number?: string])[]) => {
  const numbers = marginNumbers(cells.map(([id, number]) => ({ id, number })))
  return cells.map(([id]) => numbers.get(id))
}

describe('marginNumbers', () => {
  it('marginNumbers(cells) counts from 1 where no cell has a number of its own', () => {
    expect(shown(['a'], ['b'], ['c'])).toEqual(['1', '2', '3'])
    expect(numbersOf()).toEqual([])
  })

  it('marginNumbers(cells) lets cells keep theirs wherever they stand', () => {
    expect(shown(['c', '3'], ['a', '1'], ['x', '2a'], ['b', '2'])).toEqual(['3', '1', '2a', '2'])
  })

  it('marginNumbers(cells) numbers what has none by its place, never with a number that is taken', () => {
    expect(shown(['a'], ['b'], ['c', '2a'])).toEqual(['1', '2', '2a'])
    expect(shown(['a', '1'], ['b'], ['c', '2'], ['d'])).toEqual(['1', '1a', '2', '3'])
    expect(shown(['a'], ['b', '1'])).toEqual(['0a', '1'])
  })

  it('marginNumbers(cells) gives one number to one cell, whichever way the page is ordered', () => {
    expect(shown(['a', '1'], ['y', '1a'], ['x', '1a'], ['b', '2'])).toEqual(['1', '1b', '1a', '2'])
    expect(shown(['a', '1'], ['x', '1a'], ['y', '1a'], ['b', '2'])).toEqual(['1', '1a', '1b', '2'])
  })

  it('marginNumbers(cells) keeps numbers of another form as they are', () => {
    expect(shown(['a', 'A-1'], ['b'], ['c', '1'])).toEqual(['A-1', '0a', '1'])
  })
})

describe('numberForPlace', () => {
  it('numberForPlace(numbers, index) gives letters after the number above', () => {
    expect(numberForPlace(['1', '2', '3', '4'], 3)).toBe('3a')
    expect(numberForPlace(['1', '2', '3', '3a', '4'], 3)).toBe('3b')
    expect(numberForPlace(['1', '2', '3', '3a', '4'], 4)).toBe('3b')
    expect(numberForPlace(['1', '2'], 0)).toBe('0a')
  })

  it('numberForPlace(numbers, index) goes on with aa after z', () => {
    const letters = 'abcdefghijklmnopqrstuvwxyz'.split('').map((letter) => `3${letter}`)
    expect(numberForPlace(['3', ...letters, '4'], 1)).toBe('3aa')
    expect(numberForPlace(['3', ...letters, '3aa', '4'], 1)).toBe('3ab')
    expect(numberForPlace(['3', '3az', '4'], 1)).toBe('3ba')
  })

  it('numberForPlace(numbers, index) gives the next whole number at the end', () => {
    expect(numberForPlace(['1', '7', '2', '2a'], 4)).toBe('8')
    expect(numberForPlace([], 0)).toBe('1')
  })

  it('numberForPlace(numbers, index, retired) does not give out the number of a removed cell', () => {
    expect(numberForPlace(['1', '2'], 2, ['3'])).toBe('4')
    expect(numberForPlace(['1', '2'], 1, ['1a'])).toBe('1b')
  })
})

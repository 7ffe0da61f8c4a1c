import { describe, expect, it } from 'vitest'
import { freshKeys, keyAt } from '../../../client/live/order-keys.js'

describe('keyAt', () => {
  it('keyAt(keys, index) sorts between its neighbours, at both ends and in the middle', () => {
    const keys = freshKeys(3)
    for (let index = 0; index <= 3; index += 1) {
      const key = keyAt(keys, index)
      expect(key).not.toBeNull()
      const placed = [...keys.slice(0, index), key ?? '', ...keys.slice(index)]
      expect([...placed].sort()).toEqual(placed)
    }
  })

  it('keyAt(keys, index) between two equal keys goes after both', () => {
    const [first, last] = freshKeys(2)
    const key = keyAt([first ?? '', first ?? '', last ?? ''], 1) ?? ''
    expect(key > (first ?? '')).toBe(true)
    expect(key < (last ?? '')).toBe(true)
  })

  it('keyAt(keys, index) gives null for keys of a foreign make, so that the page is numbered anew', () => {
    expect(keyAt(['', ''], 1)).toBeNull()
    expect(keyAt(['~~', '~~~'], 1)).toBeNull()
  })
})

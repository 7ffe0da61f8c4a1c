import { describe, expect, it } from 'vitest'
import { progressWords } from '../../../client/notebook/progress.js'

describe('progressWords', () => {
  it('progressWords(progress, milliseconds) says which cell, how many of how many, and how long', () => {
    expect(progressWords({ done: 3, of: 140, cell: '12' }, 4321)).toBe('computing cell 12, 3 of 140 done, 4 s')
    expect(progressWords({ done: 0, of: 1 }, 125_000)).toBe('computing, 0 of 1 done, 2 min 5 s')
  })
})

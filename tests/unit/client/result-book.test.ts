import { describe, expect, it } from 'vitest'
import { mayBeShared, ResultBook } from '../../../client/compute/result-book.js'
import { failure, id, print, program, result, runnable } from './result-samples.js'

const a = id('a')

function bookAt(version: string): ResultBook {
  const book = new ResultBook()
  book.setProgram(program([runnable('a', version)]))
  return book
}

describe('ResultBook', () => {
  it('standing(cell) of a cell nobody computed is "not computed"', () => {
    expect(bookAt('1').standing(a)).toEqual({ state: 'not computed' })
  })

  it('standing(cell) takes stored results as current until the cells were read', () => {
    const book = new ResultBook()
    book.showStored([result('a', '1')], [result('b', '0')])
    expect(book.standing(a).state).toBe('current')
    expect(book.standing(id('b')).state).toBe('out of date')
    book.setProgram(program([runnable('a', '2')]))
    expect(book.standing(a).state).toBe('out of date')
    book.setProgram(program([runnable('a', '1')]))
    expect(book.standing(a).state).toBe('current')
    expect(book.needed()).toEqual([])
  })

  it('standing(cell) keeps the last good values while out of date, computing and failed', () => {
    const book = bookAt('1')
    book.accept([result('a', '1', 5)])
    book.setProgram(program([runnable('a', '2')]))
    expect(book.standing(a)).toMatchObject({ state: 'out of date', result: { fingerprint: print('1') } })
    book.begin([a])
    expect(book.standing(a)).toMatchObject({ state: 'computing', result: { fingerprint: print('1') } })
    book.accept([failure('a', '2')])
    expect(book.standing(a)).toMatchObject({
      state: 'failed',
      result: { error: { code: 'THROWN' }, values: [{ value: { si: 5 } }] },
    })
  })

  it('standing(cell) of an edit that was taken back is current at once', () => {
    const book = bookAt('1')
    book.accept([result('a', '1')])
    book.setProgram(program([runnable('a', '2')]))
    book.accept([result('a', '2')])
    book.setProgram(program([runnable('a', '1')]))
    expect(book.standing(a)).toMatchObject({ state: 'current', result: { fingerprint: print('1') } })
  })

  it('standing(cell) says why a cell cannot run, and which cell holds another back', () => {
    const book = new ResultBook()
    book.setProgram(
      program([], {
        failed: [{ id: a, fingerprint: print('1'), error: { code: 'SYNTAX', message: 'unreadable' } }],
        heldBack: [{ id: id('b'), fingerprint: print('2'), by: a }],
      }),
    )
    expect(book.standing(a)).toMatchObject({ state: 'failed', result: { error: { code: 'SYNTAX' } } })
    expect(book.standing(id('b'))).toMatchObject({ state: 'held back', result: { heldBackBy: 'a' } })
    expect(book.needed()).toEqual([])
  })

  it('accept(results) of a stopped run leaves the cell out of date and still needed', () => {
    const book = bookAt('1')
    book.accept([failure('a', '1', 'STOPPED')])
    expect(book.standing(a).state).toBe('not computed')
    expect(book.needed()).toEqual(['a'])
  })

  it('markStopped(cells) keeps a text from being computed again until it changes or all is computed', () => {
    const book = bookAt('1')
    book.markStopped([a])
    expect(book.needed()).toEqual([])
    book.setProgram(program([runnable('a', '2')]))
    expect(book.needed()).toEqual(['a'])
    book.setProgram(program([runnable('a', '1')]))
    book.forgetFailures()
    expect(book.needed()).toEqual(['a'])
  })

  it('forgetFailures() forgets failures and keeps good results', () => {
    const book = new ResultBook()
    book.setProgram(program([runnable('a', '1'), runnable('b', '2')]))
    book.accept([failure('a', '1', 'TIME_LIMIT'), result('b', '2')])
    book.forgetFailures()
    expect(book.needed()).toEqual(['a'])
  })

  it('accept(results) forgets the oldest results that no cell shows', () => {
    const book = bookAt('1')
    book.accept([result('a', '1')])
    for (let index = 0; index < 2100; index += 1) book.accept([result('old', `o${index}`)])
    expect(book.standing(a).state).toBe('current')
    book.setProgram(program([runnable('old', 'o0')]))
    expect(book.needed()).toEqual(['old'])
  })

  it('mayBeShared(result) keeps failures of this browser’s circumstances to itself', () => {
    expect(mayBeShared(result('a', '1'))).toBe(true)
    expect(mayBeShared(failure('a', '1'))).toBe(true)
    for (const code of ['STOPPED', 'TIME_LIMIT', 'MEMORY_LIMIT'])
      expect(mayBeShared(failure('a', '1', code))).toBe(false)
  })
})

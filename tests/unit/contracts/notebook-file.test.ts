import { describe, expect, test } from 'vitest'
import { migrate, migrations, notebookVersion, readNotebook, writeNotebook } from '../../../shared/contracts/index.js'

const smallest =
  '{"format": "hoverfolio notebook", "version": 1, "title": "T", "cells": [{"id": "a", "kind": "sizing", "source": ["const x = 1 * u.m"]}]}'
const withCells = (cells: unknown) => JSON.stringify({ format: 'hoverfolio notebook', version: 1, title: 'T', cells })

describe('readNotebook', () => {
  test('reads the smallest valid file', () => {
    expect(readNotebook(smallest)).toMatchObject({ ok: true, notebook: { title: 'T', cells: [{ id: 'a' }] } })
  })

  test('reads a file that begins with a byte order mark', () => {
    expect(readNotebook(`\uFEFF${smallest}`).ok).toBe(true)
  })

  test.each([
    ['not JSON', 'oh', /not JSON/],
    ['an array', '[]', /no JSON object/],
    ['another format', '{"format":"x"}', /its format is "x"/],
    ['no format', '{}', /its format is missing/],
    ['no version', '{"format":"hoverfolio notebook"}', /its version is missing/],
    ['version 0', '{"format":"hoverfolio notebook","version":0}', /whole numbers from 1/],
    ['a later version', '{"format":"hoverfolio notebook","version":99}', /newer Hoverfolio.*up to version 1/],
    ['deep nesting', `${'['.repeat(40)}${']'.repeat(40)}`, /nested 40 levels/],
    [
      'an id twice',
      withCells([
        { id: 'a', kind: 'sizing', source: [] },
        { id: 'a', kind: 'sizing', source: [] },
      ]),
      /already used by cell 1/,
    ],
    ['an id with a slash', withCells([{ id: '../a', kind: 'sizing', source: [] }]), /letters, digits/],
    ['an unknown kind', withCells([{ id: 'a', kind: 'poem', source: [] }]), /cells 1 kind/],
    ['source as text', withCells([{ id: 'a', kind: 'sizing', source: 'x' }]), /cells 1 source/],
    ['a line break in a line', withCells([{ id: 'a', kind: 'sizing', source: ['a\nb'] }]), /one line per item/],
    [
      'an unknown key',
      withCells([{ id: 'a', kind: 'sizing', sorce: [], source: [] }]),
      /unknown key "sorce"; did you mean "source"/,
    ],
  ])('refuses %s with the reason', (_what, text, reason) => {
    const reading = readNotebook(text)
    expect(!reading.ok && reading.reason).toMatch(reason)
  })

  test('refuses more characters than the limit without parsing them', () => {
    const reading = readNotebook(`"${'x'.repeat(9 * 1024 * 1024)}"`)
    expect(!reading.ok && reading.reason).toMatch(/at most 8388608/)
  })

  test('does not let "__proto__" change anything', () => {
    readNotebook(
      '{"__proto__": {"polluted": 1}, "format": "hoverfolio notebook", "version": 1, "title": "T", "cells": []}',
    )
    expect(({} as Record<string, unknown>).polluted).toBeUndefined()
  })
})

describe('writeNotebook', () => {
  test('writes keys in a stable order and reads back the same', () => {
    const reading = readNotebook(
      '{"cells":[{"source":["1","2"],"kind":"rationale","id":"b","order":"a0"}],"title":"T","version":1,"format":"hoverfolio notebook"}',
    )
    if (!reading.ok) throw new Error(reading.reason)
    const text = writeNotebook(reading.notebook)
    expect(text.indexOf('"format"')).toBeLessThan(text.indexOf('"version"'))
    expect(text.indexOf('"order"')).toBeLessThan(text.indexOf('"source"'))
    expect(text).toContain('        "1",\n        "2"\n')
    expect(readNotebook(text)).toEqual(reading)
  })
})

describe('migrate', () => {
  test('has a step for every version below the current one', () => {
    for (let from = 1; from < notebookVersion; from += 1)
      expect(migrations[from], `step ${from}`).toBeTypeOf('function')
    expect(Object.keys(migrations)).toHaveLength(notebookVersion - 1)
  })
  test('walks the steps in order and sets the version', () => {
    const steps = {
      1: (d: object) => ({ ...d, trail: ['one'] }),
      2: (d: { trail?: unknown }) => ({ ...d, trail: [...(d.trail as string[]), 'two'] }),
    }
    expect(migrate({ version: 1 }, 1, 3, steps)).toEqual({ version: 3, trail: ['one', 'two'] })
  })
  test('throws at a gap', () => {
    expect(() => migrate({ version: 1 }, 1, 2, {})).toThrow('no step from notebook version 1 to 2')
  })
})

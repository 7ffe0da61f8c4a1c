import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import {
  absentNames,
  belongsToLanguage,
  components,
  languageNames,
  PipelineTrouble,
  pipelineCodes,
  pipelineMessage,
} from '../../../../kernel/cells/program/index.js'

describe('the registry of the pipeline', () => {
  test('errors.md lists exactly the codes of the registry', () => {
    const path = new URL('../../../../kernel/cells/program/errors.md', import.meta.url)
    const listed = [...readFileSync(path, 'utf8').matchAll(/^\| `([A-Z_]+)` /gm)].map(([, code]) => code)
    expect(listed.sort()).toEqual([...pipelineCodes].sort())
  })

  test('pipelineMessage() says what came and what would be accepted', () => {
    expect(pipelineMessage('TIME_LIMIT', { milliseconds: 2500 })).toContain('after 2.5 s')
    expect(pipelineMessage('MEMORY_LIMIT', { megabytes: 512 })).toContain('512 MB')
    expect(pipelineMessage('OUTPUT_TOO_LARGE', { bytes: 9, limit: 8 })).toContain('9 bytes; at most 8')
    expect(pipelineMessage('STOPPED', undefined)).toContain('stopped')
  })

  test('PipelineTrouble carries its code, its data and its sentence', () => {
    const trouble = new PipelineTrouble('OVERRIDE_INVALID', { name: 'range', value: 'NaN' })
    expect(trouble).toMatchObject({ name: 'PipelineTrouble', code: 'OVERRIDE_INVALID', data: { name: 'range' } })
    expect(trouble.message).toContain('"range"')
  })

  test('absentNames and languageNames have nothing in common', () => {
    expect([...absentNames.keys()].filter((name) => languageNames.has(name))).toEqual([])
    expect(belongsToLanguage('Math') && belongsToLanguage('Date') && !belongsToLanguage('top')).toBe(true)
  })
})

describe('components', () => {
  const order = (edges: Record<string, string[]>) =>
    components(Object.keys(edges) as never[], (id) => (edges[id] ?? []) as never[]).map((group) => [...group].sort())

  test('components() puts what is read before its readers, and otherwise keeps the page', () => {
    expect(order({ a: ['c'], b: [], c: ['d'], d: [] })).toEqual([['d'], ['c'], ['a'], ['b']])
  })

  test('components() groups circles, also those that share cells', () => {
    expect(order({ a: ['b'], b: ['c', 'a'], c: ['b'], d: ['a'], e: ['e2'], e2: ['e'] })).toEqual([
      ['a', 'b', 'c'],
      ['d'],
      ['e', 'e2'],
    ])
  })

  test('components() goes through a chain of a thousand cells', () => {
    const edges = Object.fromEntries(Array.from({ length: 1000 }, (_, n) => [`c${n}`, n < 999 ? [`c${n + 1}`] : []]))
    expect(order(edges).at(0)).toEqual(['c999'])
  })
})

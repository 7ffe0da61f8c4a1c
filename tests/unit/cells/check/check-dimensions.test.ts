import { describe, expect, test } from 'vitest'
import { correct } from './dimension-cases.js'
import { checkCell } from './notebook.js'
import { planted, typeErrors } from './planted.js'

describe('check(graph) gives every name its dimension and reports nothing in a correct cell', () => {
  test.each(correct)('%s', async (source, names) => {
    const { report, names: found, said } = await checkCell(source)
    expect(said).toEqual([])
    expect(report.names.length).toBeGreaterThan(0)
    expect(found).toMatchObject(names)
  })
})

describe('check(graph) says once, and in its place, what is wrong with a unit', () => {
  test.each(planted)('%s', async (source, line, column, words) => {
    const { report, said } = await checkCell(source)
    expect(said).toHaveLength(1)
    expect(report.findings[0]).toMatchObject({ kind: 'dimension', line, column })
    expect(report.findings[0]?.message).toContain(words)
  })
})

describe('check(graph) keeps what TypeScript has to say about types', () => {
  test.each(typeErrors)('%s', async (source, line, column, words) => {
    const { report, said } = await checkCell(source)
    expect(said).toHaveLength(1)
    expect(report.findings[0]).toMatchObject({ kind: 'type', severity: 'error', line, column })
    expect(report.findings[0]?.message).toContain(words)
    expect(report.findings[0]?.message).not.toContain('[dimension]')
  })
})

import { describe, expect, test } from 'vitest'
import { check } from '../notebook.js'
import { hoverCruise } from './hover-and-cruise.js'
import { kernelAndCode } from './kernel-and-code.js'
import { massesAndPacks } from './masses-and-packs.js'
import type { SizingProgram, Slip } from './sizing-program.js'

const programs: readonly SizingProgram[] = [...hoverCruise, ...massesAndPacks, ...kernelAndCode]

const checked = (cells: readonly string[]) => check(Object.fromEntries(cells.map((cell, index) => [`c${index}`, cell])))

function slipped(program: SizingProgram, [written, instead]: Slip): readonly string[] {
  expect(program.cells.filter((cell) => cell.includes(written))).toHaveLength(1)
  return program.cells.map((cell) => cell.replace(written, instead))
}

describe.each(programs.map((program) => [program.title, program] as const))('check(%s)', (_, program) => {
  test('finds every dimension and nothing wrong', async () => {
    const { findings, names } = await checked(program.cells)
    expect(findings).toEqual([])
    const found = Object.fromEntries(names.map(({ name, dimension }) => [name, dimension]))
    expect(found).toMatchObject(program.names)
  })

  test.each(program.slips)('%s written as %s is said', async (...slip) => {
    const { findings } = await checked(slipped(program, slip))
    const messages = findings.map(({ message }) => message)
    expect(messages[0] ?? 'nothing').toContain(slip[2])
    expect(findings.every(({ kind }) => kind === 'dimension')).toBe(true)
    expect(messages.length).toBeLessThanOrEqual(4)
  })
})

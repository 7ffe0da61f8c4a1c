import { describe, expect, test } from 'vitest'
import { checkCell } from './notebook.js'
import { arithmetic } from './programs/arithmetic.js'
import { changingNames } from './programs/changing-names.js'
import { classes } from './programs/classes.js'
import { functions } from './programs/functions.js'
import { kernelCalls } from './programs/kernel-calls.js'
import { lists } from './programs/lists.js'
import { mathematics } from './programs/mathematics.js'
import type { Program } from './programs/program.js'
import { records } from './programs/records.js'
import { sizingPieces } from './programs/sizing-pieces.js'
import { temperatures } from './programs/temperatures.js'

const subjects: Readonly<Record<string, readonly Program[]>> = {
  arithmetic,
  mathematics,
  'names that change': changingNames,
  lists,
  records,
  functions,
  'kernel calls': kernelCalls,
  classes,
  temperatures,
  'pieces of sizing code': sizingPieces,
}

describe.each(Object.entries(subjects))('check(program) follows %s', (_, programs) => {
  test.each(programs.map((program) => [program.source, program] as const))('%s', async (source, program) => {
    const { report, names, said } = await checkCell(source)
    if ('names' in program) {
      expect(said).toEqual([])
      expect(names).toMatchObject(program.names)
      return
    }
    expect(said).toHaveLength(1)
    expect(report.findings[0]).toMatchObject({ kind: 'dimension', line: program.line })
    expect(report.findings[0]?.message).toContain(program.words)
  })
})

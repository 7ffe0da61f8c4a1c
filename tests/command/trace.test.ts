import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { cautionLine, type TraceStep } from '../../shared/contracts/index.js'
import { runHoverfolio } from './run-command.js'

let folder = ''
let file = ''
let failing = ''

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hoverfolio-trace-'))
  file = await notebookFile('mass.json', [
    [
      "const payload = assumption('payload', 400 * u.kg, { unit: 'kg', source: 'client' })",
      "const floor = assumption('floor', 500 * u.kg, { unit: 'kg', range: [100 * u.kg, 1500 * u.kg] })",
      "const altitude = assumption('altitude', 600 * u.m, { unit: 'm' })",
    ],
    [
      'const density = air.standard(altitude, 0 * u.K).density',
      "const gross = result('gross', Math.max(2 * payload, floor), { unit: 'kg' })",
      'const perDensity = gross / density',
    ],
  ])
  failing = await notebookFile('failing.json', [['const a = 1', 'const bad = battery.massForEnergy({ energy: -1 })']])
})
afterAll(() => rm(folder, { recursive: true }))

async function notebookFile(name: string, sources: readonly (readonly string[])[]): Promise<string> {
  const path = join(folder, name)
  const cells = sources.map((source, at) => ({ id: `c${at}`, kind: 'sizing', source }))
  await writeFile(path, JSON.stringify({ format: 'hoverfolio notebook', version: 1, title: 'Masses', cells }))
  return path
}

/** A process that loads TypeScript and isolates; more on a busy machine. */
const patience = { timeout: 120_000 }

describe('hoverfolio trace', patience, () => {
  test('trace prints the outline down to sources, with what would wake what does not move the number', async () => {
    const { code, out, err } = await runHoverfolio('trace', file, 'perDensity')
    expect([code, err]).toEqual([0, ''])
    const text = out.replaceAll(/[\u202f\u00a0]/g, ' ')
    expect(text).toContain(`Masses\n${cautionLine}`)
    expect(text).toContain('rests on 3 assumptions: 2 move it, 1 does not, all else as it stands.')
    expect(text).toContain('\n    payload = 400 kg: moves it\n        cell 1, line 1, assumption; source: client\n')
    expect(text).toContain('floor = 500 kg: does not move it; would move it from 800.0 kg up\n')
    expect(text).toMatch(/floor[^\n]*\n *cell 1, line 2, assumption; no source\n/)
    expect(text).toMatch(/density = 1.156 kg\/m³: moves it\n *cell 2, line 1\n.*\n *by air.standard\n/)
    expect(text).toMatch(/Methods\n {2}air.standard: .*\n {6}valid for: .*\n {6}source: ISO 2533/)
  })

  test('trace --units shows every value in the units of the reader', async () => {
    const { code, out } = await runHoverfolio('trace', file, 'perDensity', '--units', 'aviation')
    expect(code).toBe(0)
    const text = out.replaceAll(/[\u202f\u00a0]/g, ' ')
    expect(text).toContain('payload = 881.8 lb: moves it\n')
    expect(text).toContain('floor = 1 102 lb: does not move it; would move it from 1 764 lb up\n')
    expect(text).toContain('altitude = 1 969 ft: moves it\n')
  })

  test('trace --json gives every step with its place, its value, what it does and its source', async () => {
    const { code, out } = await runHoverfolio('trace', file, 'gross', '--json', '--set', 'floor=900 kg')
    expect(code).toBe(0)
    const data = JSON.parse(out) as { steps: (TraceStep & { source?: string })[]; [key: string]: unknown }
    expect(data).toMatchObject({
      caution: cautionLine,
      target: 'gross',
      base: 900,
      overrides: { floor: 900 },
      left: [],
    })
    expect(data.steps.map(({ name, acts }) => [name, acts])).toEqual([
      ['payload', 'inactive'],
      ['floor', 'moves'],
      ['gross', 'moves'],
    ])
    const [payload, floor] = data.steps
    expect(payload).toMatchObject({ cell: 'c0', line: 1, kind: 'assumption', value: 400, source: 'client' })
    expect(payload?.wakes).toMatchObject([{ by: 'payload', fails: false }])
    expect(payload?.wakes[0]?.from).toBeCloseTo(450, 2)
    expect(floor).toMatchObject({ value: 900, source: null })
  })

  test('trace of a number that does not compute says why and exits 1', async () => {
    const { code, out, err } = await runHoverfolio('trace', failing, 'bad')
    expect([code, out]).toEqual([1, ''])
    expect(err).toMatch(/^"bad" has no value to trace: .+\. A trace is asked of a number that computes\.\n$/)
  })

  test('trace refuses a name that is no number, and a call without one', async () => {
    const unknown = await runHoverfolio('trace', file, 'gros')
    expect(unknown.code).toBe(2)
    expect(unknown.err).toContain('This notebook has no number "gros"; did you mean "gross"?')
    expect(unknown.err).toContain('Its numbers are payload, floor, altitude, density, gross, perDensity.')
    const alone = await runHoverfolio('trace', file)
    expect([alone.code, alone.err.split('\n')[0]]).toEqual([
      2,
      expect.stringContaining('trace takes a notebook file and the name of one number'),
    ])
    const empty = await runHoverfolio('trace', failing, 'mass')
    expect(empty.err).toContain('None of its cells has worked out a number.')
  })
})

import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { cautionInFull, cautionLine } from '../../shared/contracts/index.js'
import { runHoverfolio, spawnHoverfolio } from './run-command.js'

const worked = 'notebooks/worked-sizing.json'
let folder = ''

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hoverfolio-command-'))
})
afterAll(() => rm(folder, { recursive: true }))

async function notebookFile(name: string, ...sources: string[]): Promise<string> {
  const path = join(folder, name)
  const cells = sources.map((source, index) => ({ id: `c${index + 1}`, kind: 'sizing', source: source.split('\n') }))
  await writeFile(path, JSON.stringify({ format: 'hoverfolio notebook', version: 1, title: 'T', cells }))
  return path
}

describe('hoverfolio compute', () => {
  test('compute FILE prints the answers, the caution and exits 0', async () => {
    const { code, out } = await spawnHoverfolio('compute', worked)
    expect(out).toContain(`${cautionLine} Cautions in full: hoverfolio help.`)
    expect(out).toMatch(/grossMass\s+1\s637\skg/)
    expect(code).toBe(0)
  })

  test('compute --units aviation shows the same answers in ft, kt, lb and nmi, and says so', async () => {
    const { code, out } = await runHoverfolio('compute', worked, '--units', 'aviation')
    expect(out).toContain('In aviation units.')
    expect(out).toMatch(/grossMass\s+3\s609\slb/)
    expect(out).toMatch(/range\s+45\.90\snmi/)
    expect(out).toMatch(/hoverPower\s+315\.9\skW/)
    expect(code).toBe(0)
  })

  test('compute --units of another name exits 2 and says which there are', async () => {
    const { code, err } = await runHoverfolio('compute', worked, '--units', 'aviaton')
    expect(err).toContain('--units aviaton is no system of units; did you mean "aviation"? There are SI and aviation')
    expect(code).toBe(2)
  })

  test('compute --json gives SI values by name, cells with their state and the caution', async () => {
    const { code, out } = await runHoverfolio('compute', worked, '--json')
    const data = JSON.parse(out)
    expect(data.results.grossMass.si).toBeCloseTo(1636.9422, 3)
    expect(data.results.energy.dimension).toBe('kg m^2 s^-2')
    expect(data.caution).toBe(cautionLine)
    expect(data.cells.every((cell: { state: string }) => cell.state === 'current')).toBe(true)
    expect(code).toBe(0)
  })

  test('compute opens the smallest valid file', async () => {
    const file = await notebookFile('smallest.json', 'const x = 1 * u.m')
    const { code, out } = await runHoverfolio('compute', file, '--json')
    expect(JSON.parse(out).results.x).toMatchObject({ si: 1, dimension: 'm' })
    expect(code).toBe(0)
  })

  test('compute beyond the fold says so, names what runs away, prints no gross mass and exits 1', async () => {
    const { code, out } = await spawnHoverfolio('compute', worked, '--json', '--set', 'range=165.2 km')
    const data = JSON.parse(out)
    const failed = data.cells.find((cell: { state: string }) => cell.state === 'failed')
    expect(failed.cell).toBe('closure')
    expect(failed.error.code).toBe('DOES_NOT_CLOSE')
    expect(failed.error.message).toMatch(/battery/)
    expect(failed.error.message).toMatch(/165\.0 km/)
    expect(data.results.grossMass).toBeUndefined()
    expect(code).toBe(1)
  })

  test('compute with a requirement that is not met exits 1 and says by how much', async () => {
    const file = await notebookFile(
      'missed.json',
      "const m = 3 * u.kg\nrequirement('light', { actual: m, atMost: 2 * u.kg, unit: 'kg' })",
    )
    const { code, out } = await runHoverfolio('compute', file)
    expect(out).toMatch(/light: NOT MET: 3\skg, wanted at most 2\skg, margin .1\skg/)
    expect(code).toBe(1)
  })

  test.each([
    ['a wrong dimension', ['--set', 'range=60 kg'], /"60 kg" is kg, but range is m/],
    ['an unknown option', ['--jsn'], /--jsn/],
    ['a second file', ['other.json'], /one notebook file/],
  ])('compute refuses %s with exit code 2', async (_what, args, sentence) => {
    const { code, out, err } = await runHoverfolio('compute', worked, ...args)
    expect(err).toMatch(sentence)
    expect(out).toBe('')
    expect(code).toBe(2)
  })

  test('compute refuses files that are no notebooks with exit code 2', async () => {
    const path = join(folder, 'bad.json')
    await writeFile(path, '{"format": "something else"}')
    expect(await runHoverfolio('compute', path)).toMatchObject({
      code: 2,
      err: expect.stringContaining('its format is "something else"'),
    })
    expect(await runHoverfolio('compute', join(folder, 'missing.json'))).toMatchObject({
      code: 2,
      err: expect.stringContaining('cannot be read'),
    })
    expect(await runHoverfolio('compute')).toMatchObject({
      code: 2,
      err: expect.stringContaining('needs a notebook file'),
    })
  })

  test('compute ends an endless loop, names the cell and computes the rest', { timeout: 60_000 }, async () => {
    const file = await notebookFile('loop.json', 'const a = 1', 'while (true) {}', 'const b = a + 1')
    const { code, out } = await runHoverfolio('compute', file, '--json')
    const data = JSON.parse(out)
    expect(data.cells.find((cell: { cell: string }) => cell.cell === 'c2').error.code).toBe('TIME_LIMIT')
    expect(data.results.b.si).toBe(2)
    expect(code).toBe(1)
  })
})

describe('hoverfolio check', () => {
  test('check --json finds nothing in the worked notebook and knows every dimension', async () => {
    const { code, out } = await runHoverfolio('check', worked, '--json')
    const { findings, names } = JSON.parse(out)
    expect(findings).toEqual([])
    const dimension = (name: string) => names.find((entry: { name: string }) => entry.name === name)?.dimension
    expect(dimension('grossMass')).toBe('kg')
    expect(dimension('hoverPower')).toBe('kg m^2 s^-3')
    expect(dimension('rotorCount')).toBe('1')
    expect(code).toBe(0)
  })

  test('check says why it does not know a dimension, as text and as data', async () => {
    const file = await notebookFile('open.json', 'const n = JSON.parse("3") as number\nconst mass_ = n * u.kg')
    const why = 'nothing says what JSON.parse gives'
    const [text, data] = await Promise.all([runHoverfolio('check', file), runHoverfolio('check', file, '--json')])
    expect(text.out).toContain(`the dimension of mass_ is not known: ${why}.`)
    expect(JSON.parse(data.out).names).toEqual([
      { cell: 'c1', name: 'n', dimension: null, why },
      { cell: 'c1', name: 'mass_', dimension: null, why },
    ])
    expect([text.code, data.code]).toEqual([0, 0])
  })

  test('check exits 1 on a dimension error and names cell, line and column', async () => {
    const file = await notebookFile('wrong.json', 'const a = 1 * u.m\n// a comment\nconst b = a + 2 * u.s')
    const { code, out } = await runHoverfolio('check', file, '--json')
    expect(JSON.parse(out).findings).toMatchObject([{ cell: 'c1', line: 3, kind: 'dimension', severity: 'error' }])
    expect(code).toBe(1)
  })
})

test('hoverfolio with an unknown subcommand suggests one and exits 2', async () => {
  const { code, err } = await spawnHoverfolio('compte', worked)
  expect(err).toMatch(/did you mean "compute"/)
  expect(code).toBe(2)
})

test('hoverfolio help prints the usage and the cautions in full', async () => {
  const { code, out } = await runHoverfolio('help')
  for (const words of ['hoverfolio compute FILE', ...cautionInFull]) expect(out).toContain(words)
  expect(code).toBe(0)
})

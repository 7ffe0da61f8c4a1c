import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { cautionLine } from '../../shared/contracts/index.js'
import { runHoverfolio } from './run-command.js'

let folder = ''
let file = ''
let failing = ''

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hoverfolio-export-'))
  file = await notebookFile('pack.json', [
    "const payload = assumption('payload', 400 * u.kg, { unit: 'kg', source: '=HYPERLINK(\"x\")' })",
    "requirement('R1', { actual: payload, atMost: 500 * u.kg, unit: 'kg' })",
    'const sizes = figure.massBreakdown({ masses: { payload } })',
  ])
  failing = await notebookFile('failing.json', ['const a = nothing.here'])
})
afterAll(() => rm(folder, { recursive: true }))

async function notebookFile(name: string, source: readonly string[]): Promise<string> {
  const path = join(folder, name)
  const cells = [{ id: 'a', kind: 'sizing', source }]
  await writeFile(path, JSON.stringify({ format: 'hoverfolio notebook', version: 1, title: 'Pack', cells }))
  return path
}

const to = (name: string) => join(folder, name)

describe('hoverfolio export', () => {
  test('export --to sheet.html writes a file that carries numbers, caution and fingerprint', async () => {
    const { code, out, err } = await runHoverfolio('export', file, '--to', 'sheet.html', '--out', to('sheet.html'))
    expect([code, err]).toEqual([0, ''])
    expect(out).toContain(`Written: ${to('sheet.html')}\n${cautionLine}`)
    const text = await readFile(to('sheet.html'), 'utf8')
    expect(text).toMatch(/<meta name="fingerprint" content="[0-9a-f]{64}">/)
    expect(text).toContain('revision draft (not issued)')
    expect(text).toMatch(/<span class="value-number">400<\/span>/)
    expect(text).not.toContain('<script')
  })

  test('export --to register.csv escapes what a spreadsheet would run', async () => {
    await runHoverfolio('export', file, '--to', 'register.csv', '--out', to('register.csv'))
    const text = await readFile(to('register.csv'), 'utf8')
    expect(text).toContain(`payload,400,kg,,,400,kg,,,,"'=HYPERLINK(""x"")",,,1,1,current`)
  })

  test('export --units aviation gives values in lb beside those in SI, and the sheet says so', async () => {
    const call = (kind: string) => [
      'export',
      file,
      '--units',
      'aviation',
      '--to',
      kind,
      '--out',
      to(`aviation-${kind}`),
    ]
    await Promise.all([runHoverfolio(...call('register.csv')), runHoverfolio(...call('sheet.html'))])
    const register = await readFile(to('aviation-register.csv'), 'utf8')
    expect(register).toContain('payload,881.84904873951,lb,,,400,kg,')
    const sheet = await readFile(to('aviation-sheet.html'), 'utf8')
    expect(sheet).toContain('Result, aviation units')
    expect(sheet).toMatch(/<span class="value-number">881.8<\/span>/)
  })

  test('export --to figures/ writes each figure with caution and fingerprint', async () => {
    const { code } = await runHoverfolio('export', file, '--to', 'figures', '--out', to('figures'))
    expect(code).toBe(0)
    expect(await readdir(to('figures'))).toEqual(['figure-1.svg'])
    const text = await readFile(join(to('figures'), 'figure-1.svg'), 'utf8')
    expect(text).toMatch(/Pack · revision draft \(not issued\) · fingerprint [0-9a-f]{4} [0-9a-f]{4}/)
  })

  test('export of a notebook whose cells fail writes what there is, says so and exits 1', async () => {
    const { code, err } = await runHoverfolio('export', failing, '--to', 'compliance.csv', '--out', to('failing.csv'))
    expect([code, err]).toEqual([1, 'One cell has no values; the export says which.\n'])
  })

  test('export --to notebook.json writes the notebook in its own format, and again only with --overwrite', async () => {
    const call = ['export', file, '--to', 'notebook.json', '--out', to('copy.json')]
    expect((await runHoverfolio(...call)).code).toBe(0)
    expect(JSON.parse(await readFile(to('copy.json'), 'utf8')).title).toBe('Pack')
    const again = await runHoverfolio(...call)
    expect([again.code, again.err]).toEqual([
      2,
      expect.stringContaining(`${to('copy.json')} exists already; choose another`),
    ])
    expect((await runHoverfolio(...call, '--overwrite')).code).toBe(0)
  })

  test('export refuses a call that it cannot do, before it computes anything', async () => {
    await mkdir(to('folder'))
    const refused: readonly (readonly [args: readonly string[], sentence: string])[] = [
      [[file], 'export needs --to with one of: sheet.html, register.csv'],
      [[file, '--to', 'regster.csv'], 'did you mean "register.csv"?'],
      [['--to', 'sheet.html'], 'export needs a notebook file'],
      [[file, '--to', 'notebook.json', '--out', to('folder')], 'is a folder; give a file with --out PATH'],
      [[file, '--to', 'figures/', '--out', file], 'is a file; figures are written to a folder'],
      [[file, '--to', 'notebook.json', '--out', join(folder, 'none', 'x.json')], 'cannot be written (ENOENT'],
    ]
    const outcomes = await Promise.all(refused.map(([args]) => runHoverfolio('export', ...args)))
    outcomes.forEach(({ code, err }, index) => {
      expect(code).toBe(2)
      expect(err).toContain(refused[index]?.[1])
    })
  })
})

/** Damaged and hostile files in the data folder: refused with a reason or shown harmlessly, bytes kept, the server goes on. */
import { parseHTML } from 'linkedom'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { limits } from '../../shared/contracts/index.js'
import { sampleNotebook } from '../lab/index.js'
import { type Harness, openHarness } from './harness.js'

let harness: Harness
beforeEach(async () => {
  harness = await openHarness()
})
afterEach(() => harness.app.close())

const valid = {
  format: 'hoverfolio notebook',
  version: 1,
  title: 'T',
  cells: [{ id: 'a', kind: 'sizing', source: ['const x = 1'] }],
}
const variant = (changes: object) => JSON.stringify({ ...valid, ...changes })
const cell = (changes: object) => variant({ cells: [{ ...valid.cells[0], ...changes }] })

const refused: [string, string | Uint8Array, RegExp][] = [
  ['an empty file', '', /not JSON/],
  ['half a file', JSON.stringify(valid).slice(0, 60), /not JSON/],
  ['a list', '[]', /no JSON object/],
  ['null', 'null', /no JSON object/],
  ['deep nesting of lists', '['.repeat(200_000) + ']'.repeat(200_000), /nested 200000 levels/],
  ['deep nesting of objects', `${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)}`, /nested 50000 levels/],
  ['deep nesting inside threads', variant({ threads: [JSON.parse('['.repeat(40) + ']'.repeat(40))] }), /nested/],
  ['50 MB of spaces', `${JSON.stringify(valid)}${' '.repeat(50 * 1024 * 1024)}`, /at most/],
  ['50 MB of source', new Uint8Array(50 * 1024 * 1024).fill(120), new RegExp(`at most ${limits.notebookBytes}`)],
  ['another format', variant({ format: 'other' }), /its format is "other"/],
  ['no version', variant({ version: undefined }), /its version is missing/],
  ['version 0', variant({ version: 0 }), /its version is 0/],
  ['version 99', variant({ version: 99 }), /written by a newer/],
  ['version 1.5', variant({ version: 1.5 }), /whole numbers/],
  ['a title that is a number', variant({ title: 5 }), /title/],
  ['cells that are an object', variant({ cells: {} }), /cells/],
  ['a source that is one text', cell({ source: 'const x = 1' }), /source/],
  ['a source with a line break', cell({ source: ['a\nb'] }), /one line per item/],
  ['an unknown kind', cell({ kind: 'shell' }), /kind/],
  ['an id that is a path', cell({ id: '../../x' }), /id/],
  ['duplicated ids', variant({ cells: [valid.cells[0], valid.cells[0]] }), /already used by cell 1/],
  ['an unknown key', variant({ tite: 'x' }), /unknown key "tite"; did you mean "title"/],
  [
    'too many cells',
    variant({ cells: Array.from({ length: 1001 }, (_, index) => ({ ...valid.cells[0], id: `c${index}` })) }),
    /cells/,
  ],
  ['binary bytes', new Uint8Array([0x89, 0x50, 0xff, 0, 1, 2, 3]), /not UTF-8 text/],
  ['NaN as a number', '{"format": NaN}', /not JSON/],
]

describe('a file in the data folder with', () => {
  it.each(refused)(
    '%s is refused with the reason and its bytes are kept',
    async (_, content, reason) => {
      await harness.files.writeOutside('/data/bad.json', content)
      const before = harness.files.disk.present.get('/data/bad.json')?.present.slice()
      const list = (await harness.ask('GET', '/api/notebooks')).json()
      expect(list.refused).toEqual([{ file: 'bad.json', reason: expect.stringMatching(reason) }])
      for (const url of [
        '/api/notebooks/bad',
        '/api/notebooks/bad/file',
        '/api/notebooks/bad/results',
        '/notebooks/bad',
      ]) {
        const reply = await harness.ask('GET', url)
        expect([url, reply.statusCode, reply.json().code]).toEqual([url, 422, 'NOTEBOOK_REFUSED'])
        expect(reply.json().message).toMatch(reason)
      }
      const rename = await harness.ask('PATCH', '/api/notebooks/bad', { payload: { title: 'x' } })
      expect(rename.statusCode).toBe(422)
      expect((await harness.ask('GET', '/healthz')).statusCode).toBe(200)
      const after = harness.files.disk.present.get('/data/bad.json')?.present
      expect(Buffer.compare(Buffer.from(after ?? []), Buffer.from(before ?? []))).toBe(0)
    },
    60_000,
  )

  it('the smallest valid content opens', async () => {
    await harness.files.writeOutside('/data/small.json', JSON.stringify(valid))
    expect((await harness.ask('GET', '/api/notebooks/small')).json()).toMatchObject({ id: 'small', title: 'T' })
  })

  it.each([
    '<script>window.stolen = 1</script>',
    '<img src=x onerror="alert(1)">',
    '[a](javascript:alert(1))',
    '![a](https://elsewhere.example/pixel.png)',
    '<iframe src="https://elsewhere.example"></iframe>',
    '<svg><script>alert(1)</script></svg>',
    '$\\href{javascript:alert(1)}{x}$',
    '<style>*{display:none}</style>',
    '<form action="https://elsewhere.example"><button>x</button></form>',
    '<a href="data:text/html,<script>alert(1)</script>">x</a>',
  ])('%s in a rationale is shown harmlessly', async (line) => {
    const cells = [{ id: 'a', kind: 'rationale', source: [line] }]
    await harness.files.writeOutside(
      '/data/script.json',
      JSON.stringify({ ...sampleNotebook(line.slice(0, 100)), cells }),
    )
    const reply = await harness.ask('GET', '/notebooks/script')
    expect(reply.statusCode).toBe(200)
    const { document } = parseHTML(reply.body)
    const sheet = document.querySelector('#sheet')
    expect(sheet?.querySelectorAll('script, iframe, style, form, object, embed, link, base, meta')).toHaveLength(0)
    for (const element of sheet?.querySelectorAll('*') ?? [])
      for (const { name, value } of element.attributes) {
        expect(name).not.toMatch(/^on/)
        if (['href', 'src', 'xlink:href', 'action'].includes(name))
          expect(value).not.toMatch(/^\s*(javascript|data|https?:\/\/elsewhere)/i)
      }
    expect(document.querySelectorAll('script')).toHaveLength(1)
  })

  it('a damaged live state begins a new epoch from the file', async () => {
    await harness.files.makeFolder('/data/a.live')
    await harness.files.writeOutside('/data/a.json', JSON.stringify(valid))
    for (const name of ['state', 'log', 'base.json', 'pending.json'])
      await harness.files.writeOutside(`/data/a.live/${name}`, 'nonsense')
    await harness.files.writeOutside('/data/a.results.json', 'nonsense')
    expect((await harness.ask('GET', '/api/notebooks/a')).json()).toMatchObject({ title: 'T' })
    expect((await harness.ask('GET', '/notebooks/a')).statusCode).toBe(200)
  })
})

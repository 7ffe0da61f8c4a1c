import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseHTML } from 'linkedom'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { MethodCatalogue } from '../../shared/contracts/index.js'
import { type Harness, openHarness } from './harness.js'

const form = (summary: string): MethodCatalogue['methods'][number]['forms'][number] => ({
  summary,
  equation: 'P = T v',
  takes: [],
  arguments: [],
  gives: { name: '', kind: 'power', dimension: 'kg m^2 s^-3', optional: false, text: '' },
  throws: [],
  method: 'Momentum theory.',
  validity: 'Any thrust.',
  source: 'A <b>book</b>, 2006.',
  example: {
    source: 'f()',
    cell: 'const power = 2 * u.kW',
    values: [{ name: 'power', value: { kind: 'number', si: 2000 }, dimension: 'kg m^2 s^-3' }],
    advisories: [],
  },
})
const catalogue: MethodCatalogue = {
  kernelHash: 'lab',
  methods: [
    { name: 'rotor.hover', subject: 'rotor', forms: [form('Power to hover.'), form('Built up.')] },
    { name: 'wing.trim', subject: 'wing', forms: [form('Angle in balance.')] },
  ],
}

let harness: Harness
let folder: string
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'hoverfolio-methods-'))
  await writeFile(join(folder, 'methods.json'), JSON.stringify(catalogue))
  harness = await openHarness({ kernelFolder: folder })
})
afterAll(async () => {
  await harness.app.close()
  await rm(folder, { recursive: true })
})

async function page(address: string): Promise<Document> {
  const reply = await harness.ask('GET', address, { headers: { accept: 'text/html' } })
  expect([reply.statusCode, reply.headers['content-type']]).toEqual([200, 'text/html; charset=utf-8'])
  return parseHTML(reply.body).document as unknown as Document
}

const shown = (document: Document) =>
  [...document.querySelectorAll('.method:not([hidden])')].map((method) => method.getAttribute('data-method'))

describe('GET /methods', () => {
  it('has every method at its anchor, with equation, source and the numbers of its example', async () => {
    const document = await page('/methods')
    expect(shown(document)).toEqual(['rotor.hover', 'wing.trim'])
    const body = document.getElementById('rotor.hover')
    expect(body?.querySelectorAll('.method-form')).toHaveLength(2)
    expect(body?.querySelector('.value-number')?.textContent).toBe('2')
    expect(body?.querySelector('[data-fact="source"] dd')?.textContent).toBe('A <b>book</b>, 2006.')
    expect(document.querySelectorAll('script, [onclick], [style]')).toHaveLength(0)
  })

  it('shows what fits the words of its address, and keeps them in the field', async () => {
    const document = await page('/methods?find=balance%22%3E%3Cscript%3E')
    expect(shown(document)).toEqual([])
    expect(document.querySelector('#find')?.getAttribute('value')).toBe('balance"><script>')
    const fitting = await page('/methods?find=wing+BALANCE')
    expect(shown(fitting)).toEqual(['wing.trim'])
    expect(fitting.querySelector('.method-count')?.textContent).toBe('1 of 2 methods.')
    expect(fitting.querySelector('section#rotor')?.hasAttribute('hidden')).toBe(true)
  })
})

describe('POST /methods/notebooks', () => {
  it('begins a notebook with the example as a sizing cell and goes to it', async () => {
    const boundary = 'xyz'
    const field = (name: string, value: string) =>
      `--${boundary}\r\ncontent-disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`
    const reply = await harness.ask('POST', '/methods/notebooks', {
      headers: { 'content-type': `multipart/form-data; boundary=${boundary}`, 'sec-fetch-site': 'same-origin' },
      payload: `${field('method', 'rotor.hover')}${field('form', '1')}--${boundary}--\r\n`,
    })
    expect(reply.statusCode).toBe(303)
    const id = String(reply.headers.location).split('/').at(-1)
    const notebook = (await harness.ask('GET', `/api/notebooks/${id}`)).json()
    expect(notebook.title).toBe('Trying rotor.hover')
    expect(notebook.cells.map((cell: { kind: string }) => cell.kind)).toEqual(['rationale', 'sizing'])
    expect(notebook.cells[0].source.join('\n')).toContain('A <b>book</b>, 2006.')
    expect(notebook.cells[1].source).toContain('const power = 2 * u.kW')
  })
})

describe('POST /api/methods/:name/notebooks', () => {
  it('gives the notebook it began', async () => {
    const reply = await harness.ask('POST', '/api/methods/wing.trim/notebooks')
    expect([reply.statusCode, reply.json().title]).toEqual([200, 'Trying wing.trim'])
  })

  it('refuses a method or a form that there is not', async () => {
    for (const address of ['/api/methods/wing.fly/notebooks', '/api/methods/wing.trim/notebooks?form=1']) {
      const reply = await harness.ask('POST', address)
      expect([reply.statusCode, reply.json().code]).toEqual([404, 'METHOD_UNKNOWN'])
      expect(reply.json().message).toMatch(/^The kernel has no method "wing\.\w+" with a form \d;/)
    }
  })
})

describe('GET /methods without a catalogue', () => {
  it('says how to make one', async () => {
    const bare = await openHarness()
    const reply = await bare.ask('GET', '/methods', { headers: { accept: 'text/html' } })
    expect(reply.body).toContain('The catalogue is not built')
    await bare.app.close()
  })
})

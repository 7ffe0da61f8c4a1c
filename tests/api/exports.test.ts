import { parseHTML } from 'linkedom'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { cautionLine } from '../../shared/contracts/index.js'
import { labFingerprint, labKernel } from '../lab/index.js'
import { type Harness, openHarness } from './harness.js'

const source = 'const payload = 400 * u.kg'
const title = '=cmd|"<script>alert(1)</script>'

let harness: Harness
let id: string
beforeAll(async () => {
  harness = await openHarness({ kernel: { ...labKernel(), readers: async () => () => [] } })
  const notebook = {
    format: 'hoverfolio notebook',
    version: 1,
    title,
    titleBlock: { revision: 'A, concept' },
    cells: [{ id: 'a', kind: 'sizing', source: [source] }],
  }
  id = (await harness.ask('POST', '/api/notebooks', { payload: { notebook } })).json().id
  const result = {
    cell: 'a',
    fingerprint: labFingerprint(source),
    outcome: 'computed',
    values: [{ name: 'payload', value: { kind: 'number', si: 400 }, dimension: 'kg' }],
    figures: [],
    advisories: [],
    assumptions: [{ name: 'payload', value: 400, unit: 'kg', source: '@board' }],
    requirements: [{ name: 'R1', actual: 400, atMost: 500, margin: 100, met: true, unit: 'kg' }],
    log: [],
  }
  await harness.ask('POST', `/api/notebooks/${id}/results`, { payload: { results: [result] } })
})
afterAll(() => harness.app.close())

async function file(path: string, type: string, name = path): Promise<string> {
  const reply = await harness.ask('GET', `/api/notebooks/${id}/${path}`)
  expect([reply.statusCode, reply.headers['content-type']]).toEqual([200, type])
  expect(reply.headers['content-disposition']).toBe(`attachment; filename="${id}-${name}"`)
  return reply.body
}

const provenance = async () => (await harness.ask('GET', `/api/notebooks/${id}/provenance`)).json()

describe('GET /api/notebooks/:id/provenance', () => {
  it('names title, revision and fingerprint', async () => {
    expect(await provenance()).toEqual({
      title,
      revision: 'A, concept (not issued)',
      fingerprint: expect.stringMatching(/^[0-9a-f]{64}$/),
    })
  })

  it('has the fingerprint of a revision that is issued, and says that it was', async () => {
    const before = await provenance()
    const issued = (await harness.ask('POST', `/api/notebooks/${id}/revisions`, { payload: {} })).json()
    expect(issued.fingerprint).toBe(before.fingerprint)
    expect((await provenance()).revision).toBe('A, issued')
    const rename = { payload: { title: `${title}!` } }
    await harness.ask('PATCH', `/api/notebooks/${id}`, rename)
    const after = await provenance()
    expect([after.revision, after.fingerprint === before.fingerprint]).toEqual(['after A, changed since', false])
    await harness.ask('PATCH', `/api/notebooks/${id}`, { payload: { title } })
    expect(await provenance()).toEqual({ ...before, revision: 'A, issued' })
  })
})

describe('GET /api/notebooks/:id/sheet.html', () => {
  it('is a download with numbers, provenance and a policy of its own', async () => {
    const { document } = parseHTML(await file('sheet.html', 'text/html; charset=utf-8'))
    const { fingerprint } = await provenance()
    expect(document.querySelector('title')?.textContent).toBe(title)
    expect(document.querySelector('.value-number')?.textContent).toBe('400')
    expect(document.querySelector('meta[name="fingerprint"]')?.getAttribute('content')).toBe(fingerprint)
    expect(document.querySelectorAll('script')).toHaveLength(0)
    expect(document.querySelector('meta[http-equiv]')?.getAttribute('content')).toMatch(/^default-src 'none'/)
  })
})

describe('GET /api/notebooks/:id/register.csv and compliance.csv', () => {
  it('?units=aviation shows values in lb beside those in SI, and another system is refused', async () => {
    const register = await file('register.csv?units=aviation', 'text/csv; charset=utf-8', 'register.csv')
    expect(register).toContain('payload,881.84904873951,lb,,,400,kg,')
    const compliance = await file('compliance.csv?units=aviation', 'text/csv; charset=utf-8', 'compliance.csv')
    expect(compliance).toContain('at most,1102.31131092439,220.462262184878,lb,400,500,100,kg,met')
    const sheet = await file('sheet.html?units=aviation', 'text/html; charset=utf-8', 'sheet.html')
    expect(sheet).toContain('Result, aviation units')
    const reply = await harness.ask('GET', `/api/notebooks/${id}/sheet.html?units=furlongs`)
    expect(reply.statusCode).toBe(400)
  })

  it('begin with caution and provenance, and escape what a spreadsheet would run', async () => {
    const register = await file('register.csv', 'text/csv; charset=utf-8')
    expect(register.startsWith(`\ufeff"${cautionLine}","'=cmd|""<script>alert(1)</script>","revision `)).toBe(true)
    expect(register).toContain("payload,400,kg,,,400,kg,,,,'@board,,,1,,current\r\n")
    const compliance = await file('compliance.csv', 'text/csv; charset=utf-8')
    expect(compliance).toContain('R1,,,1,400,at most,500,100,kg,400,500,100,kg,met,,,current\r\n')
  })

  it('are refused for a notebook that there is not', async () => {
    for (const name of ['register.csv', 'compliance.csv', 'sheet.html', 'provenance']) {
      const reply = await harness.ask('GET', `/api/notebooks/none/${name}`)
      expect([reply.statusCode, reply.json().code]).toEqual([404, 'NOTEBOOK_UNKNOWN'])
    }
  })
})

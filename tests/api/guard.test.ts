import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { sampleNotebook } from '../lab/index.js'
import { type Harness, openHarness } from './harness.js'

let harness: Harness
beforeAll(async () => {
  harness = await openHarness()
  await harness.ask('POST', '/api/notebooks', { payload: { notebook: sampleNotebook() } })
})
afterAll(() => harness.app.close())

const routes = [
  ['GET', '/'],
  ['GET', '/cautions'],
  ['GET', '/words'],
  ['GET', '/notebooks/tern-watch'],
  ['GET', '/style/pages.css'],
  ['GET', '/sandbox.html'],
  ['GET', '/kernel/sandbox.js'],
  ['GET', '/assets/a.js'],
  ['GET', '/healthz'],
  ['GET', '/api/openapi.json'],
  ['GET', '/api/notebooks'],
  ['POST', '/api/notebooks'],
  ['GET', '/api/notebooks/tern-watch'],
  ['GET', '/api/notebooks/tern-watch/file'],
  ['PATCH', '/api/notebooks/tern-watch'],
  ['DELETE', '/api/notebooks/tern-watch'],
  ['PATCH', '/api/notebooks/tern-watch/title-block'],
  ['DELETE', '/api/bin/tern-watch'],
  ['POST', '/api/notebooks/tern-watch/restore'],
  ['POST', '/api/notebooks/tern-watch/copy'],
  ['GET', '/api/notebooks/tern-watch/results'],
  ['POST', '/api/notebooks/tern-watch/results'],
  ['POST', '/api/erase'],
  ['GET', '/api/notebooks/tern-watch/live'],
  ['POST', '/notebooks'],
  ['POST', '/notebooks/import'],
  ['POST', '/notebooks/tern-watch/bin'],
  ['POST', '/notebooks/tern-watch/copy'],
  ['POST', '/notebooks/tern-watch/restore'],
  ['POST', '/notebooks/tern-watch/discard'],
  ['POST', '/notebooks/worked'],
  ['POST', '/notebooks/starter'],
  ['GET', '/api/notebooks/tern-watch/revisions'],
  ['POST', '/api/notebooks/tern-watch/revisions'],
  ['GET', '/api/notebooks/tern-watch/revisions/A'],
  ['GET', '/api/notebooks/tern-watch/revisions/A/file'],
  ['POST', '/api/notebooks/tern-watch/revisions/A/signatures'],
  ['POST', '/api/notebooks/tern-watch/revisions/A/notebook'],
  ['GET', '/api/notebooks/tern-watch/compare?from=A&to=B'],
  ['GET', '/notebooks/tern-watch/revisions/A'],
  ['POST', '/notebooks/tern-watch/revisions/A/begin'],
  ['GET', '/notebooks/tern-watch/compare?from=A&to=B'],
  ['GET', '/methods'],
  ['POST', '/methods/notebooks'],
  ['POST', '/api/methods/rotor.hover/notebooks'],
  ['GET', '/api/notebooks/tern-watch/provenance'],
  ['GET', '/api/notebooks/tern-watch/sheet.html'],
  ['GET', '/api/notebooks/tern-watch/register.csv'],
  ['GET', '/api/notebooks/tern-watch/compliance.csv'],
  ['GET', '/no/such/address'],
] as const

/** As the description of the interface writes the path. */
function describedPath(url: string): string {
  return url
    .replace(/\?.*/, '')
    .replace('tern-watch', '{id}')
    .replace('/revisions/A', '/revisions/{name}')
    .replace('rotor.hover', '{name}')
}

describe('every route', () => {
  it.each(routes)('%s %s refuses a rebound name, a foreign page and an opaque origin', async (method, url) => {
    const rebound = await harness.ask(method, url, { headers: { host: 'rebound.example:4180' } })
    expect([rebound.statusCode, rebound.body]).toEqual([403, expect.stringContaining('HOST_REFUSED')])
    for (const headers of [
      { origin: 'https://elsewhere.example' },
      { origin: 'null' },
      { 'sec-fetch-site': 'cross-site' },
    ]) {
      const reply = await harness.ask(method, url, { headers })
      expect([reply.statusCode, reply.body]).toEqual([403, expect.stringContaining('ORIGIN_REFUSED')])
    }
  })

  it.each(routes)('%s %s says nosniff, a content policy and who may frame it', async (method, url) => {
    const reply = await harness.ask(method === 'DELETE' ? 'GET' : method, url)
    expect(reply.headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': url === '/sandbox.html' ? 'no-referrer' : 'same-origin',
      'content-security-policy': expect.stringContaining("default-src 'none'"),
      'x-frame-options': url === '/sandbox.html' ? 'SAMEORIGIN' : 'DENY',
    })
    expect(reply.headers['access-control-allow-origin']).toBeUndefined()
  })

  it('the list of routes here is the list of routes there are', async () => {
    const described = Object.keys((await harness.ask('GET', '/api/openapi.json')).json().paths)
    const asked = new Set(routes.map(([, url]) => describedPath(url)))
    expect(described.filter((path) => !asked.has(path as never))).toEqual([])
  })
})

describe('limits', () => {
  it('a body of another type than JSON is refused', async () => {
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'text/xml']) {
      const reply = await harness.ask('POST', '/api/notebooks', {
        payload: '{"title":"a"}',
        headers: { 'content-type': type },
      })
      expect([reply.statusCode, reply.json().code]).toEqual([400, 'BODY_INVALID'])
    }
  })

  it.each([
    '{',
    '[]',
    '{"title": 5}',
    '{"title": ""}',
    '{"titel": "a"}',
    `{"title": "${'x'.repeat(201)}"}`,
    '{"__proto__": {"a": 1}, "title": "a"}',
  ])('POST /api/notebooks with %s is refused in words', async (payload) => {
    const reply = await harness.ask('POST', '/api/notebooks', {
      payload,
      headers: { 'content-type': 'application/json' },
    })
    expect([reply.statusCode, reply.json().code]).toEqual([400, 'BODY_INVALID'])
  })

  it('a body beyond its limit is refused with both sizes', async () => {
    const reply = await harness.ask('PATCH', '/api/notebooks/tern-watch', { payload: { title: 'x'.repeat(300_000) } })
    expect([reply.statusCode, reply.json().message]).toEqual([
      413,
      expect.stringMatching(/has 300\d+ bytes; at most 262144/),
    ])
  })

  it('too many requests are refused with the time to wait', async () => {
    const strict = await openHarness({ requestsPerMinute: 3 })
    for (let count = 0; count < 3; count += 1) expect((await strict.ask('GET', '/healthz')).statusCode).toBe(200)
    const reply = await strict.ask('GET', '/healthz')
    expect([reply.statusCode, reply.json().code]).toEqual([429, 'TOO_MANY_REQUESTS'])
    await strict.app.close()
  })

  it('a fault of the server is answered with a reference and logged with it', async () => {
    const logged: string[] = []
    const log = { info() {}, warn() {}, error: (fields: object) => void logged.push(JSON.stringify(fields)) }
    const faulty = await openHarness({ log })
    faulty.documents.get = async () => {
      throw new TypeError('made by the test')
    }
    const reply = await faulty.ask('GET', '/api/notebooks/a')
    expect([reply.statusCode, reply.json().code]).toEqual([500, 'SERVER_FAULT'])
    expect(reply.body).not.toContain('made by the test')
    expect(logged.join()).toContain(/reference (\w+)/.exec(reply.json().message)?.[1])
    await faulty.app.close()
  })

  it('a full disk is answered with STORE_UNAVAILABLE', async () => {
    const full = await openHarness()
    full.files.plan = (operation) => (operation === 'write' ? 'fail' : undefined)
    const reply = await full.ask('POST', '/api/notebooks', { payload: { title: 'a' } })
    expect([reply.statusCode, reply.json().message]).toEqual([503, expect.stringContaining('the disk is full')])
    full.files.plan = () => undefined
    await full.app.close()
  })
})

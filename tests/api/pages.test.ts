import { parseHTML } from 'linkedom'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import type { ShippedNotebooks } from '../../server/shipped.js'
import { CellId, cautionInFull, cautionLine, PageData, writeNotebook } from '../../shared/contracts/index.js'
import { labResult, sampleNotebook } from '../lab/index.js'
import { type Harness, openHarness } from './harness.js'

let harness: Harness
beforeEach(async () => {
  harness = await openHarness()
})
afterEach(() => harness.app.close())

async function page(url: string) {
  const reply = await harness.ask('GET', url, { headers: { accept: 'text/html' } })
  return { reply, document: parseHTML(reply.body).document }
}
const create = (notebook = sampleNotebook()) => harness.ask('POST', '/api/notebooks', { payload: { notebook } })

/** Notebooks that come with the program, by name and title. */
const shipped = (titles: Record<string, string>): ShippedNotebooks => ({
  names: async () => Object.keys(titles),
  read: async (name) => (titles[name] === undefined ? undefined : writeNotebook(sampleNotebook(titles[name]))),
})

/** A form as browsers send it. */
function form(fields: Record<string, string | { name: string; content: string }>) {
  const boundary = 'lab-boundary'
  const parts = Object.entries(fields).map(([name, value]) => {
    const file = typeof value === 'string' ? '' : `; filename="${value.name}"\r\nContent-Type: application/json`
    return `--${boundary}\r\nContent-Disposition: form-data; name="${name}"${file}\r\n\r\n${typeof value === 'string' ? value : value.content}\r\n`
  })
  return {
    payload: `${parts.join('')}--${boundary}--\r\n`,
    headers: { 'content-type': `multipart/form-data; boundary=${boundary}` },
  }
}

describe('GET /', () => {
  it('teaches when there is nothing yet, and carries the caution', async () => {
    const { reply, document } = await page('/')
    expect(document.querySelector('.teach')?.textContent).toContain('calculation sheet')
    expect(reply.body).toContain(cautionLine)
    expect(reply.headers['content-security-policy']).toContain("script-src 'self'")
  })

  it('lists titles, questions and cells with everything escaped', async () => {
    await create(sampleNotebook('<script>alert(1)</script>', { titleBlock: { question: '"><img src=x>' } }))
    const { reply, document } = await page('/')
    expect(document.querySelector('.notebooks .title')?.textContent).toBe('<script>alert(1)</script>')
    expect(document.querySelector('.notebooks .question')?.textContent).toBe('"><img src=x>')
    expect(reply.body).not.toContain('<script>alert')
    expect(document.querySelector('.notebooks .facts')?.textContent).toContain('2 cells')
  })

  it('its forms begin, import, duplicate, bin and restore without any script', async () => {
    const begun = await harness.ask('POST', '/notebooks', form({ title: 'Skerry' }))
    expect([begun.statusCode, begun.headers.location]).toEqual([303, '/notebooks/skerry'])
    const file = { name: 'a.json', content: JSON.stringify(sampleNotebook('Imported')) }
    const imported = await harness.ask('POST', '/notebooks/import', form({ file }))
    expect([imported.statusCode, imported.headers.location]).toEqual([303, '/notebooks/imported'])
    for (const act of ['copy', 'bin', 'restore', 'bin'])
      expect((await harness.ask('POST', `/notebooks/skerry/${act}`, form({}))).statusCode).toBe(303)
    const { document } = await page('/')
    expect([...document.querySelectorAll('.notebooks .title')].map((title) => title.textContent).sort()).toEqual([
      'Copy of Skerry',
      'Imported',
    ])
    expect(document.querySelector('.bin summary')?.textContent).toBe('Bin (1)')
    expect(document.querySelector('.bin .for-good')?.textContent).toContain('nothing brings')
    expect((await harness.ask('POST', '/notebooks/skerry/discard', form({}))).statusCode).toBe(303)
    expect((await page('/')).document.querySelector('.bin summary')?.textContent).toBe('Bin (0)')
  })

  it('its first steps open a notebook that comes with the program, as often as they are asked to', async () => {
    expect((await harness.ask('POST', '/notebooks/worked', form({}))).statusCode).toBe(404)
    expect((await page('/')).document.querySelector('.first form')).toBeNull()
    await harness.app.close()
    harness = await openHarness({ shipped: shipped({ 'worked-sizing': 'Worked' }) })
    expect((await page('/')).document.querySelector('.first form')?.getAttribute('action')).toBe('/notebooks/worked')
    for (const path of ['/notebooks/worked', '/notebooks/worked-2'])
      expect((await harness.ask('POST', '/notebooks/worked', form({}))).headers.location).toBe(path)
  })

  it('leads whoever has nothing of their own to the starter in one step, and then no more', async () => {
    await harness.app.close()
    harness = await openHarness({ shipped: shipped({ 'worked-sizing': 'Worked', starter: 'Starter' }) })
    for (const title of ['starter', 'worked-sizing']) await create(sampleNotebook(title))
    const welcome = async () => (await page('/')).document.querySelector('.first')
    expect((await welcome())?.querySelector('a.go')?.getAttribute('href')).toBe('/notebooks/starter')
    expect((await page('/')).document.querySelectorAll('.notebooks > li')).toHaveLength(2)
    expect((await page('/notebooks/starter')).document.querySelector('noscript a')?.getAttribute('href')).toBe('/')
    await create()
    expect(await welcome()).toBeNull()
    for (const id of ['starter', 'worked-sizing', 'tern-watch'])
      await harness.ask('POST', `/notebooks/${id}/bin`, form({}))
    expect((await welcome())?.querySelector('form')?.getAttribute('action')).toBe('/notebooks/starter')
    const reply = await harness.ask('POST', '/notebooks/starter', form({}))
    expect([reply.statusCode, reply.headers.location]).toEqual([303, '/notebooks/starter-2'])
  })

  it('its import refuses a damaged file as a page with the reason', async () => {
    const { payload, headers } = form({ file: { name: 'a.json', content: '{"format": "other"}' } })
    const reply = await harness.ask('POST', '/notebooks/import', {
      payload,
      headers: { ...headers, accept: 'text/html' },
    })
    expect(reply.statusCode).toBe(422)
    expect(parseHTML(reply.body).document.querySelector('.refusal')?.textContent).toContain('its format is "other"')
  })
})

describe('GET /notebooks/:id', () => {
  it('is readable before any script: title, prose, source, caution', async () => {
    await create()
    const { document } = await page('/notebooks/tern-watch')
    const text = document.querySelector('#sheet')?.textContent ?? ''
    for (const words of ['Tern Watch', 'Endurance.', 'payload', cautionLine]) expect(text).toContain(words)
  })

  it('shows stored results, and those of an earlier text as out of date', async () => {
    await create()
    const cell = { id: CellId.parse('masses'), source: 'const payload = 4 * u.kg' }
    await harness.ask('POST', '/api/notebooks/tern-watch/results', { payload: { results: [labResult(cell, 4711)] } })
    const state = async () => (await page('/notebooks/tern-watch')).document.querySelector('[data-cell=masses]')
    expect((await state())?.getAttribute('data-state')).toBe('current')
    expect((await state())?.textContent).toMatch(/4\D?711/)
    const document = await harness.documents.get('tern-watch' as never)
    await document.edit((doc) => {
      const cell = doc.getMap('cells').get('masses')
      const source = cell instanceof Y.Map ? cell.get('source') : undefined
      if (source instanceof Y.Text) source.insert(0, '// ')
    })
    expect((await state())?.getAttribute('data-state')).toBe('out of date')
  })

  it('carries its data as JSON that no cell can break out of', async () => {
    const about = { ...sampleNotebook().cells[0], source: ['</script><script>alert(1)</script>', '<!--'] }
    await create(sampleNotebook('</script>', { cells: [about as never] }))
    const { reply, document } = await page('/notebooks/script')
    const data = PageData.parse(JSON.parse(document.querySelector('#page-data')?.textContent ?? ''))
    expect(data.notebook.cells[0]?.source).toEqual(about.source)
    expect(reply.body.match(/<script/g)).toHaveLength(1)
  })

  it('of an unknown or damaged notebook is a page that says so', async () => {
    const unknown = await page('/notebooks/none')
    expect([unknown.reply.statusCode, unknown.document.querySelector('.refusal')?.textContent]).toEqual([
      404,
      expect.stringContaining('"none"'),
    ])
    await harness.files.writeOutside('/data/broken.json', '{"half')
    const damaged = await page('/notebooks/broken')
    expect([damaged.reply.statusCode, damaged.document.querySelector('.refusal')?.textContent]).toEqual([
      422,
      expect.stringContaining('not JSON'),
    ])
    expect((await page('/')).document.querySelector('.refused dt')?.textContent).toBe('broken.json')
  })
})

describe('other pages', () => {
  it('GET /cautions gives every sentence', async () => {
    const { reply } = await page('/cautions')
    for (const sentence of cautionInFull) expect(reply.body).toContain(sentence)
  })

  it('GET / and GET /notebooks/:id link the cautions and the words, and each page leads back to the list', async () => {
    await create()
    const links = async (url: string) =>
      [...(await page(url)).document.querySelectorAll('a')].map((link) => link.getAttribute('href'))
    expect(await links('/')).toEqual(expect.arrayContaining(['/cautions', '/words']))
    for (const url of ['/notebooks/tern-watch', '/words', '/notebooks/none'])
      expect(await links(url)).toEqual(expect.arrayContaining(['/', '/cautions']))
    expect(await links('/cautions')).toEqual(expect.arrayContaining(['/', '/words']))
    expect(await links('/notebooks/tern-watch')).toContain('/words')
  })

  it('GET /sandbox.html is a frame of opaque origin without network', async () => {
    const { reply } = await page('/sandbox.html')
    expect(reply.headers['content-security-policy']).toMatch(/sandbox allow-scripts;.*connect-src 'none'/)
    expect(reply.headers['content-security-policy']).not.toContain("script-src 'self'")
  })
})

describe('results', () => {
  const cell = { id: CellId.parse('masses'), source: 'const payload = 4 * u.kg' }

  it('POST keeps what fits the live text and names what does not', async () => {
    await create()
    const results = [
      labResult(cell),
      { ...labResult({ ...cell, source: 'const other = 1' }) },
      labResult({ ...cell, id: CellId.parse('gone') }),
    ]
    const reply = await harness.ask('POST', '/api/notebooks/tern-watch/results', { payload: { results } })
    expect(reply.json()).toEqual({ accepted: ['masses'], stale: ['masses', 'gone'] })
    const stored = await harness.ask('GET', '/api/notebooks/tern-watch/results')
    expect(stored.json()).toEqual({ results: [labResult(cell)] })
    expect(harness.files.textOf('/data/tern-watch.results.json')).toContain('"masses"')
  })

  it('POST refuses what is no result', async () => {
    await create()
    const reply = await harness.ask('POST', '/api/notebooks/tern-watch/results', {
      payload: { results: [{ cell: 'masses' }] },
    })
    expect([reply.statusCode, reply.json().code]).toEqual([400, 'BODY_INVALID'])
  })

  it('POST /api/erase gives back what the eraser gives', async () => {
    const reply = await harness.ask('POST', '/api/erase', { payload: { sources: ['const a = 1'] } })
    expect(reply.json()).toEqual({ erased: [{ ok: true, code: 'const a = 1', map: '{}' }] })
  })
})

import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { NotebookList, readNotebook } from '../../shared/contracts/index.js'
import { sampleNotebook } from '../lab/index.js'
import { type Harness, openHarness } from './harness.js'

let harness: Harness
beforeEach(async () => {
  harness = await openHarness()
})
afterEach(() => harness.app.close())

const create = (notebook = sampleNotebook()) => harness.ask('POST', '/api/notebooks', { payload: { notebook } })

describe('/api/notebooks', () => {
  it('GET gives an empty list, bin and refusals for a new folder', async () => {
    const reply = await harness.ask('GET', '/api/notebooks')
    expect(reply.statusCode).toBe(200)
    expect(reply.json()).toEqual({ notebooks: [], binned: [], refused: [] })
  })

  it('POST with a title begins an empty notebook under an id made from the title', async () => {
    const reply = await harness.ask('POST', '/api/notebooks', { payload: { title: 'Skerry Link, Größe & more' } })
    expect(reply.json()).toMatchObject({ id: 'skerry-link-grosse-more', title: 'Skerry Link, Größe & more', cells: 0 })
  })

  it('POST twice with one title gives two ids', async () => {
    const ids = [(await create()).json().id, (await create()).json().id]
    expect(ids).toEqual(['tern-watch', 'tern-watch-2'])
  })

  it('GET :id gives the notebook with threads and revisions untouched', async () => {
    await create()
    const reply = await harness.ask('GET', '/api/notebooks/tern-watch')
    expect(reply.json()).toMatchObject({
      id: 'tern-watch',
      titleBlock: sampleNotebook().titleBlock,
      threads: sampleNotebook().threads,
      revisions: sampleNotebook().revisions,
    })
  })

  it('GET :id/file gives the readable file as a download', async () => {
    await create()
    const reply = await harness.ask('GET', '/api/notebooks/tern-watch/file')
    expect(reply.headers['content-disposition']).toBe('attachment; filename="tern-watch.json"')
    expect(reply.body).toContain('\n  "title": "Tern Watch"')
    expect(readNotebook(reply.body).ok).toBe(true)
  })

  it('PATCH renames in the document and in the file', async () => {
    await create()
    const reply = await harness.ask('PATCH', '/api/notebooks/tern-watch', { payload: { title: 'Tern Watch B' } })
    expect(reply.json()).toMatchObject({ id: 'tern-watch', title: 'Tern Watch B' })
    expect(harness.files.textOf('/data/tern-watch.json')).toContain('"title": "Tern Watch B"')
  })

  it('DELETE moves to the bin and restore takes out again with everything in it', async () => {
    await create()
    await harness.ask('PATCH', '/api/notebooks/tern-watch', { payload: { title: 'Renamed' } })
    expect((await harness.ask('DELETE', '/api/notebooks/tern-watch')).statusCode).toBe(204)
    const list = NotebookList.parse((await harness.ask('GET', '/api/notebooks')).json())
    expect([list.notebooks.length, list.binned.map((notebook) => notebook.title)]).toEqual([0, ['Renamed']])
    expect((await harness.ask('GET', '/api/notebooks/tern-watch')).statusCode).toBe(404)
    const restored = await harness.ask('POST', '/api/notebooks/tern-watch/restore')
    expect(restored.json()).toMatchObject({ id: 'tern-watch', title: 'Renamed' })
    expect((await harness.ask('GET', '/api/notebooks/tern-watch')).json().threads).toEqual(sampleNotebook().threads)
  })

  it('DELETE /api/bin/:id deletes for good what is in the bin, and nothing else', async () => {
    await create()
    const refused = await harness.ask('DELETE', '/api/bin/tern-watch')
    expect([refused.statusCode, refused.json().code]).toEqual([404, 'NOTEBOOK_UNKNOWN'])
    await harness.ask('DELETE', '/api/notebooks/tern-watch')
    expect((await harness.ask('DELETE', '/api/bin/tern-watch')).statusCode).toBe(204)
    expect((await harness.ask('GET', '/api/notebooks')).json()).toEqual({ notebooks: [], binned: [], refused: [] })
    expect((await harness.ask('POST', '/api/notebooks/tern-watch/restore')).statusCode).toBe(404)
    expect([...harness.files.disk.present.keys()].filter((path) => path.includes('tern-watch'))).toEqual([])
  })

  it('POST copy duplicates under another id', async () => {
    await create()
    const reply = await harness.ask('POST', '/api/notebooks/tern-watch/copy')
    expect(reply.json()).toMatchObject({ id: 'copy-of-tern-watch', title: 'Copy of Tern Watch', cells: 2 })
  })

  it.each([
    ['GET', '/api/notebooks/none', 'NOTEBOOK_UNKNOWN', 404],
    ['PATCH', '/api/notebooks/none', 'BODY_INVALID', 400],
    ['DELETE', '/api/notebooks/none', 'NOTEBOOK_UNKNOWN', 404],
    ['POST', '/api/notebooks/none/restore', 'NOTEBOOK_UNKNOWN', 404],
    ['POST', '/api/notebooks/none/copy', 'NOTEBOOK_UNKNOWN', 404],
    ['GET', '/api/notebooks/none/results', 'NOTEBOOK_UNKNOWN', 404],
    ['DELETE', '/api/bin/none', 'NOTEBOOK_UNKNOWN', 404],
    ['PATCH', '/api/notebooks/none/title-block', 'BODY_INVALID', 400],
    ['GET', '/api/notebooks/..%2F..%2Fetc', 'BODY_INVALID', 400],
    ['GET', '/api/notebooks/a.b', 'BODY_INVALID', 400],
    ['GET', '/api/nothing', 'ADDRESS_UNKNOWN', 404],
  ] as const)('%s %s is refused with %s', async (method, url, code, status) => {
    const reply = await harness.ask(method, url, method === 'PATCH' ? { payload: {} } : {})
    expect([reply.statusCode, reply.json().code]).toEqual([status, code])
    expect(reply.json().message).toMatch(/\.$/)
  })
})

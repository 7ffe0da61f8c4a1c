/** Revisions over the interface: issuing, signing in order, altered files, two people at once, a server that is killed. */
import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import {
  type CellId,
  type RevisionList,
  RevisionRecord,
  type RevisionSummary,
  SignatureRecord,
} from '../../shared/contracts/index.js'
import { LabBrowser, labKernel, labResult, sampleNotebook } from '../lab/index.js'
import { type Harness, openHarness } from './harness.js'
import { bundleServedProcess, removeBundle, startProcess, temporaryFolder } from './process.js'

const base = '/api/notebooks/tern-watch'
const folder = '/data/tern-watch.revisions'

let harness: Harness
beforeEach(async () => {
  harness = await openHarness({ kernel: { ...labKernel({ computes: true }), methods: async () => ['rotor.hover'] } })
  await harness.ask('POST', '/api/notebooks', { payload: { notebook: sampleNotebook() } })
  await harness.background.idle()
})
afterEach(() => harness.app.close())

const issue = async (payload: object = {}) => harness.ask('POST', `${base}/revisions`, { payload })
const issued = async (payload: object = {}) => (await issue(payload)).json<RevisionSummary>()
const list = async () => (await harness.ask('GET', `${base}/revisions`)).json<RevisionList>()
const sign = (name: string, payload: object) => harness.ask('POST', `${base}/revisions/${name}/signatures`, { payload })

/** Types into the cell, so that its result is out of date. */
async function edit(source: string): Promise<void> {
  const document = await harness.documents.get('tern-watch' as never)
  const browser = new LabBrowser()
  browser.connect(document)
  browser.deliver()
  const text = browser.source('masses')
  text.delete(0, text.length)
  text.insert(0, source)
  await browser.answered()
  browser.disconnect()
}

async function alter(file: string, from: string | RegExp, to: string): Promise<void> {
  const text = harness.files.textOf(`${folder}/${file}`) ?? ''
  const changed = text.replace(from, to)
  expect(changed).not.toBe(text)
  await harness.files.writeOutside(`${folder}/${file}`, changed)
}

describe('POST /api/notebooks/:id/revisions', () => {
  it('issues A, B, C with text, results, kernel and methods, by the clock of the server', async () => {
    const first = await issued({ purpose: '  for the\nboard ' })
    expect(first).toMatchObject({
      name: 'A',
      purpose: 'for the board',
      unsettled: [],
      signatures: [],
      kernelHash: 'lab',
    })
    expect(Date.parse(first.issued)).not.toBeNaN()
    expect((await issued()).name).toBe('B')
    const { summary, content } = (await harness.ask('GET', `${base}/revisions/A`)).json()
    expect(summary).toEqual(first)
    expect(content).toMatchObject({
      text: { title: 'Tern Watch' },
      results: [{ cell: 'masses' }],
      methods: ['rotor.hover'],
    })
    expect((await list()).next).toBe('C')
  })

  it('refuses while a cell is out of date, and lists it when told to issue all the same', async () => {
    await edit('const payload = 5 * u.kg')
    const refused = await issue()
    expect(refused.statusCode).toBe(409)
    expect(refused.json()).toEqual({
      code: 'REVISION_UNSETTLED',
      message:
        'Not every cell has current values: cell 2 (out of date). Compute them first, or issue the revision with them; it then lists them.',
    })
    const revision = await issued({ withUnsettled: true })
    expect(revision.unsettled).toEqual([{ cell: 'masses', number: '2', state: 'out of date' }])
    const document = await harness.documents.get('tern-watch' as never)
    const failed = { ...labResult({ id: 'masses' as CellId, source: 'const payload = 5 * u.kg' }), outcome: 'failed' }
    await harness.ask('POST', `${base}/results`, {
      payload: { results: [{ ...failed, error: { code: 'THROWN', message: 'no' } }] },
    })
    expect(document.readers).toBe(0)
    expect((await issue()).json().message).toContain('cell 2 (failed)')
  })

  it('gives two people at the same instant two letters, and nothing of either is lost', async () => {
    const names = (await Promise.all(Array.from({ length: 6 }, (_, index) => issued({ purpose: `of ${index}` })))).map(
      ({ name }) => name,
    )
    expect([...names].sort()).toEqual(['A', 'B', 'C', 'D', 'E', 'F'])
    const { revisions, troubles } = await list()
    expect(revisions.map(({ name }) => name)).toEqual(['A', 'B', 'C', 'D', 'E', 'F'])
    expect(new Set(revisions.map(({ purpose }) => purpose)).size).toBe(6)
    expect([troubles, revisions.filter(({ altered }) => altered !== undefined)]).toEqual([[], []])
  })

  it('freezes: what is written afterwards changes neither the revision nor its fingerprint', async () => {
    const before = await issued()
    await edit('const payload = 6 * u.kg')
    await harness.ask('PATCH', base, { payload: { title: 'Other' } })
    const { summary, content } = (await harness.ask('GET', `${base}/revisions/A`)).json()
    expect(summary.fingerprint).toBe(before.fingerprint)
    expect(content.text).toMatchObject({ title: 'Tern Watch', cells: [{}, { source: ['const payload = 4 * u.kg'] }] })
  })

  it('says to every browser that has the notebook open which revision is the latest now', async () => {
    const browser = new LabBrowser()
    browser.connect(await harness.documents.get('tern-watch' as never))
    browser.deliver()
    await issue()
    browser.deliver()
    const said = browser.heard.findLast(({ type }) => type === 'revision')
    expect(said).toMatchObject({ type: 'revision', mark: { name: 'A', signatures: [] } })
    browser.disconnect()
  })

  it('is refused for an unknown notebook, an unknown key, and a purpose of more than a line', async () => {
    expect((await harness.ask('POST', '/api/notebooks/none/revisions', { payload: {} })).json().code).toBe(
      'NOTEBOOK_UNKNOWN',
    )
    expect((await issue({ letter: 'Q' })).json().code).toBe('BODY_INVALID')
    expect((await issue({ purpose: 'x'.repeat(201) })).json().code).toBe('BODY_INVALID')
  })
})

describe('POST /api/notebooks/:id/revisions/:name/signatures', () => {
  let fingerprint = ''
  beforeEach(async () => {
    fingerprint = (await issued()).fingerprint
  })
  const as = (role: string, name: string, more: object = {}) => sign('A', { role, name, fingerprint, ...more })

  it('takes prepared, checked and approved in order, each with date, remark and hand check', async () => {
    const handCheck = { what: 'disk loading of cell 2', expected: '398 N/m2', found: '398 N/m2', within: '1 %' }
    expect((await as('prepared', 'Ada Bell')).statusCode).toBe(200)
    await as('checked', 'Ben Cole', { remark: ' with reservations ', handCheck })
    const { signatures } = (await as('approved', 'Cy Dunn')).json<RevisionSummary>()
    expect(signatures.map(({ role, name }) => [role, name])).toEqual([
      ['prepared', 'Ada Bell'],
      ['checked', 'Ben Cole'],
      ['approved', 'Cy Dunn'],
    ])
    expect(signatures[1]).toMatchObject({ remark: 'with reservations', handCheck, fingerprint })
    expect((await list()).revisions[0]?.signatures).toEqual(signatures)
  })

  it.each([
    ['checked', 'Ben', 'checked comes after prepared, and nobody has signed revision A as prepared yet.'],
    ['approved', 'Ben', 'approved comes after prepared, and nobody has signed revision A as prepared yet.'],
  ])('refuses %s before its turn', async (role, name, sentence) => {
    expect((await as(role, name)).json()).toEqual({
      code: 'SIGNATURE_REFUSED',
      message: `The signature was not taken: ${sentence}`,
    })
  })

  it.each(['ada bell', ' ADA  BELL ', 'AdaBell', 'Ada\u200bBell', '\u202eAda Bell', 'Ａｄａ Bell'])(
    'refuses the preparer as checker and approver, also as "%s"',
    async (alias) => {
      await as('prepared', 'Ada Bell')
      expect((await as('checked', alias)).json().message).toContain('it must be checked by somebody else.')
      await as('checked', 'Ben')
      expect((await as('approved', alias)).json().message).toContain('it must be approved by somebody else.')
      expect((await as('approved', 'Ben')).statusCode).toBe(200)
    },
  )

  it('refuses a role given twice, another fingerprint, a name nobody can see, and an unknown revision', async () => {
    await as('prepared', 'Ada')
    expect((await as('prepared', 'Ben')).json().message).toContain('was signed as prepared by Ada')
    const other = { role: 'checked', name: 'Ben', fingerprint: '0'.repeat(64) }
    expect((await sign('A', other)).json().message).toMatch(/names the fingerprint 00000000, and revision A has /)
    expect((await as('checked', '\u200b\u202e')).json().message).toContain('it has no name')
    expect((await as('checked', '  ')).json().code).toBe('BODY_INVALID')
    expect((await sign('B', { ...other })).json().message).toBe('There is no revision "B"; there are A.')
    expect((await sign('b', { ...other })).json().code).toBe('BODY_INVALID')
  })

  it('lets only one of two people who sign at the same instant sign as prepared', async () => {
    const answers = await Promise.all([as('prepared', 'Ada'), as('prepared', 'Ben')])
    expect(answers.map(({ statusCode }) => statusCode).sort()).toEqual([200, 409])
  })
})

describe('records on disk', () => {
  beforeEach(async () => {
    const { fingerprint } = await issued()
    await sign('A', { role: 'prepared', name: 'Ada', fingerprint })
    await issue()
  })

  it('are chained: each names the seal of the one before, a signature also that of what it signs', () => {
    const [a, signature, b] = [1, 2, 3].map((number) =>
      JSON.parse(harness.files.textOf(`${folder}/0000${number}.json`) ?? ''),
    )
    const revision = RevisionRecord.parse(a)
    expect(SignatureRecord.parse(signature)).toMatchObject({
      previous: revision.seal,
      signs: revision.seal,
      fingerprint: revision.fingerprint,
    })
    expect([revision.previous, b.previous]).toEqual([null, signature.seal])
  })

  it('may have other line endings and another order of keys, and hold all the same', async () => {
    const text = harness.files.textOf(`${folder}/00001.json`) ?? ''
    const shuffled = Object.fromEntries(Object.entries(JSON.parse(text)).reverse())
    await harness.files.writeOutside(`${folder}/00001.json`, JSON.stringify(shuffled, null, 4).replaceAll('\n', '\r\n'))
    const { revisions, troubles } = await list()
    expect([revisions[0]?.altered, revisions[0]?.signatures.length, troubles]).toEqual([undefined, 1, []])
  })

  it.each([
    ['a number in its text', '00001.json', '4 * u.kg', '5 * u.kg'],
    ['a result', '00001.json', '"si": 1', '"si": 2'],
    ['its date', '00001.json', /"issued": "\d/, '"issued": "3'],
    ['its fingerprint', '00001.json', /"fingerprint": "[0-9a-f]/, '"fingerprint": "x'],
  ])('with %s altered are reported as altered, and never shown as signed', async (_, file, from, to) => {
    await alter(file, from, to)
    const { revisions, troubles, next } = await list()
    const altered = revisions.find(({ name }) => name === 'A')
    if (altered === undefined) expect(troubles.join()).toContain('Revision A of this notebook cannot be read')
    else expect(altered).toMatchObject({ signatures: [], altered: expect.stringMatching(/altered|fingerprint/) })
    expect(troubles.join()).toContain('does not count')
    expect(next).toBe('C')
    expect(revisions.find(({ name }) => name === 'B')?.altered).toBeUndefined()
  })

  it('rewritten with a seal of their own do not fit the chain', async () => {
    const { sealOf, contentFingerprint } = await import('../../kernel/cells/revision/index.js')
    const record = JSON.parse(harness.files.textOf(`${folder}/00001.json`) ?? '')
    record.content.text.title = 'Forged'
    record.fingerprint = contentFingerprint(record.content)
    record.seal = sealOf(record)
    await harness.files.writeOutside(`${folder}/00001.json`, JSON.stringify(record))
    const { revisions } = await list()
    expect(revisions[0]).toMatchObject({ altered: expect.stringContaining('names another one'), signatures: [] })
    const signing = await sign('A', { role: 'checked', name: 'Ben', fingerprint: record.fingerprint })
    expect(signing.json().code).toBe('REVISION_ALTERED')
  })

  it('altered in the name of a signer no longer count as signed', async () => {
    await alter('00002.json', 'Ada', 'Eve')
    const { revisions, troubles } = await list()
    expect(revisions[0]).toMatchObject({ name: 'A', signatures: [] })
    expect(troubles).toEqual([
      'The signature "prepared" of revision A, Eve, does not count: its file was altered after it was written.',
    ])
  })

  it('of garbage keep their letter: the next one is not given twice and none is written over', async () => {
    await harness.files.writeOutside(`${folder}/00003.json`, '{{{')
    const { troubles, next } = await list()
    expect(troubles).toEqual(['Record 3 of this notebook cannot be read: its file cannot be read as it was written.'])
    expect(next).toBe('C')
    await harness.files.remove(`${folder}/00001.json`)
    expect((await issued()).name).toBe('C')
    expect(harness.files.textOf(`${folder}/00003.json`)).toBe('{{{')
    expect((await list()).troubles.join()).toContain('does not count')
  })

  it('taken from between are missed', async () => {
    await harness.files.remove(`${folder}/00002.json`)
    expect((await list()).revisions[0]?.altered).toContain('names another one')
    await harness.files.remove(`${folder}/00001.json`)
    expect((await list()).revisions[0]?.altered).toContain('the one before it was removed')
  })

  it('show in the title block of the page at once when they are altered', async () => {
    const page = async () =>
      (await harness.ask('GET', '/notebooks/tern-watch', { headers: { accept: 'text/html' } })).body
    expect(await page()).toContain('as issued')
    await alter('00003.json', '4 * u.kg', '5 * u.kg')
    expect(await page()).toContain('altered on disk, not to be relied on')
  })
})

describe('reading and comparing', () => {
  beforeEach(async () => {
    await issue({ purpose: '<b>&"\u202e' })
    await edit('const payload = 6 * u.kg')
  })

  it('GET /notebooks/:id shows revision, fingerprint and that the text changed since', async () => {
    const { fingerprint = '' } = (await list()).revisions[0] ?? {}
    const page = await harness.ask('GET', '/notebooks/tern-watch')
    expect(page.body).toContain('changed since')
    expect(page.body).toContain(fingerprint.slice(0, 4))
    expect(page.body).toContain('A: awaiting')
  })

  it('GET /notebooks/:id/revisions/:name is a sheet without script that says which revision it is', async () => {
    const page = await harness.ask('GET', '/notebooks/tern-watch/revisions/A')
    expect(page.headers['content-security-policy']).not.toContain('script-src')
    expect(page.body).not.toContain('<script')
    expect(page.body).toContain('Revision A, read-only')
    expect(page.body).toContain('payload = <span class="number">4</span>')
    expect(page.body).toContain('Not a basis for flight')
    expect(page.body).toContain('Names are stated, not proven')
    expect(page.body).toContain('&lt;b&gt;&amp;')
    expect((await harness.ask('GET', '/notebooks/tern-watch/revisions/Q')).statusCode).toBe(404)
  })

  it('GET /api/notebooks/:id/compare tells what changed, and the page the same without script', async () => {
    const compared = (await harness.ask('GET', `${base}/compare?from=A&to=live`)).json()
    expect(compared.cells).toMatchObject([{ cell: 'masses', change: 'changed' }])
    const page = await harness.ask('GET', '/notebooks/tern-watch/compare')
    expect(page.body).toContain('<ins')
    expect(page.body).toContain('6 * u.kg')
    expect(page.headers['content-security-policy']).toContain("form-action 'self'")
    expect((await harness.ask('GET', `${base}/compare?from=A&to=A`)).json()).toMatchObject({
      cells: [],
      numbers: [],
      same: { cells: 2 },
    })
    expect((await harness.ask('GET', `${base}/compare?from=A&to=B`)).json().code).toBe('REVISION_UNKNOWN')
    expect((await harness.ask('GET', `${base}/compare?from=A`)).json().code).toBe('BODY_INVALID')
  })

  it('GET of the pages of revisions takes the units of the reader, and its links keep them', async () => {
    const sheet = await harness.ask('GET', '/notebooks/tern-watch/revisions/A?units=aviation')
    expect(sheet.body).toContain('href="/notebooks/tern-watch/revisions/A?units=SI">SI</a> <strong>aviation</strong>')
    expect(sheet.body).toContain('/compare?from=A&to=live&units=aviation')
    const compared = await harness.ask('GET', '/notebooks/tern-watch/compare?from=A&to=live&units=SI')
    expect(compared.body).toContain('<input type="hidden" name="units" value="SI">')
    expect(compared.body).toContain('href="/notebooks/tern-watch/compare?from=A&amp;to=live">as written')
    const refused = await harness.ask('GET', '/notebooks/tern-watch/compare?units=nautical')
    expect(refused.statusCode).toBe(400)
  })

  it('GET /notebooks/:id/compare without any revision teaches', async () => {
    await harness.ask('POST', '/api/notebooks', { payload: { title: 'New' } })
    const page = await harness.ask('GET', '/notebooks/new/compare')
    expect(page.body).toContain('This notebook has no revision yet')
    expect((await harness.ask('GET', '/api/notebooks/new/revisions/A')).json().message).toBe(
      'There is no revision "A"; none has been issued yet.',
    )
  })

  it('GET /api/notebooks/:id/revisions/:name/file downloads record, signatures and caution', async () => {
    const file = await harness.ask('GET', `${base}/revisions/A/file`)
    expect(file.headers['content-disposition']).toBe('attachment; filename="tern-watch-A.json"')
    const kept = file.json()
    expect(kept.caution).toContain('Not a basis for flight')
    expect(RevisionRecord.parse(kept.revision).fingerprint).toBe(kept.fingerprint)
    expect(kept.signatures).toEqual([])
  })

  it('POST /api/notebooks/:id/revisions/:name/notebook begins a notebook from what was frozen', async () => {
    const summary = (await harness.ask('POST', `${base}/revisions/A/notebook`)).json()
    expect(summary.title).toBe('Tern Watch (from revision A)')
    const begun = (await harness.ask('GET', `/api/notebooks/${summary.id}`)).json()
    expect(begun.cells[1].source).toEqual(['const payload = 4 * u.kg'])
    expect((await harness.ask('GET', `/api/notebooks/${summary.id}/revisions`)).json()).toEqual({
      revisions: [],
      troubles: [],
      next: 'A',
    })
    const form = await harness.ask('POST', '/notebooks/tern-watch/revisions/A/begin')
    expect([form.statusCode, form.headers.location?.startsWith('/notebooks/')]).toEqual([303, true])
  })
})

describe('a server that is killed', () => {
  let program = ''
  beforeAll(async () => {
    program = await bundleServedProcess()
  }, 60_000)
  afterAll(removeBundle)

  it('has every revision and signature that it answered, after kill -9', async () => {
    const data = await temporaryFolder()
    await writeFile(join(data, 'tern-watch.json'), JSON.stringify(sampleNotebook()))
    const ask = async (address: string, path: string, payload?: object) => {
      const response = await fetch(new URL(`${base}${path}`, address), {
        method: payload === undefined ? 'GET' : 'POST',
        ...(payload === undefined
          ? {}
          : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(payload) }),
      })
      return (await response.json()) as RevisionSummary & RevisionList
    }
    const answered: string[] = []
    for (let round = 0; round < 2; round += 1) {
      const server = await startProcess(program, data)
      const { name, fingerprint } = await ask(server.address, '/revisions', { withUnsettled: true })
      await ask(server.address, `/revisions/${name}/signatures`, { role: 'prepared', name: 'Ada', fingerprint })
      answered.push(name)
      // One more is on its way when the power goes.
      void ask(server.address, '/revisions', { withUnsettled: true }).catch(() => undefined)
      await server.kill()
    }
    const server = await startProcess(program, data)
    const { revisions, troubles } = await ask(server.address, '/revisions')
    expect(troubles).toEqual([])
    for (const name of answered) {
      const kept = revisions.find((revision) => revision.name === name)
      expect([kept?.altered, kept?.signatures.map(({ role }) => role)]).toEqual([undefined, ['prepared']])
    }
    expect(new Set(revisions.map(({ name }) => name)).size).toBe(revisions.length)
    await server.kill()
  }, 60_000)
})

import { beforeEach, describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { type LiveDocument, LiveDocuments } from '../../../../server/live/index.js'
import type { Log } from '../../../../server/log.js'
import {
  Epoch,
  limits,
  NotebookId,
  readNotebook,
  type ServerMessage,
  writeNotebook,
} from '../../../../shared/contracts/index.js'
import {
  LabBrowser,
  LabClock,
  LabFileSystem,
  labFolder,
  labStore,
  sampleNotebook,
  seededChance,
  settle,
} from '../../../lab/index.js'

const id = NotebookId.parse('tern-watch')
const file = `${labFolder}/${id}.json`

let files: LabFileSystem
let clock: LabClock
let documents: LiveDocuments
let warnings: string[]

beforeEach(async () => {
  files = new LabFileSystem(seededChance(1))
  clock = new LabClock()
  warnings = []
  const note = (_: unknown, message: string) => void warnings.push(message)
  const log: Log = { info() {}, warn: note, error: note }
  await files.makeFolder(labFolder)
  await files.writeOutside(file, writeNotebook(sampleNotebook()))
  documents = new LiveDocuments({ store: await labStore(files), clock, log })
})

async function connected(document: LiveDocument): Promise<LabBrowser> {
  const browser = new LabBrowser()
  browser.connect(document)
  browser.deliver()
  return browser
}

const last = (browser: LabBrowser, type: ServerMessage['type']) =>
  browser.heard.findLast((message) => message.type === type)
const kept = () => {
  const reading = readNotebook(files.textOf(file) ?? '')
  if (!reading.ok) throw new Error(reading.reason)
  return reading.notebook
}

/** Sends an update made by `change` on a copy of the browser's document, as a hostile client might. */
async function sendRaw(
  document: LiveDocument,
  browser: LabBrowser,
  change: (doc: Y.Doc) => void,
): Promise<ServerMessage[]> {
  const doc = new Y.Doc()
  Y.applyUpdate(doc, Y.encodeStateAsUpdate(browser.doc))
  const before = Y.encodeStateVector(doc)
  change(doc)
  return await sendBytes(document, browser, Y.encodeStateAsUpdate(doc, before))
}

async function sendBytes(document: LiveDocument, browser: LabBrowser, update: Uint8Array): Promise<ServerMessage[]> {
  const said: ServerMessage[] = []
  const connection = { send: (message: ServerMessage) => void said.push(message), close() {} }
  const epoch = browser.epoch ?? Epoch.parse('none')
  await document.receive(connection, {
    type: 'update',
    epoch,
    number: 1,
    update: Buffer.from(update).toString('base64'),
  })
  return said
}

describe('LiveDocument', () => {
  it('receive(update) acknowledges after the flush and tells the others', async () => {
    const document = await documents.get(id)
    const [one, two] = [await connected(document), await connected(document)]
    one.type(0, 'The ')
    expect(last(one, 'saved')).toBeUndefined()
    await one.answered()
    one.deliver()
    two.deliver()
    expect(last(one, 'saved')).toMatchObject({ sequence: 1, number: 1 })
    expect(last(two, 'edited')).toMatchObject({ sequence: 1 })
    expect([one.pending, two.title]).toEqual([0, 'The Tern Watch'])
  })

  it('receive(update) shares one flush among updates that come together', async () => {
    const document = await documents.get(id)
    const browser = await connected(document)
    browser.type(0, 'a')
    await browser.answered()
    let flushes = 0
    files.plan = (operation) => {
      if (operation === 'sync') flushes += 1
      return undefined
    }
    for (const letter of 'bcdefgh') browser.type(0, letter)
    await browser.answered()
    browser.deliver()
    expect([flushes, browser.pending]).toEqual([1, 0])
  })

  it('receive(update) answers STORE_UNAVAILABLE when the disk is full, keeps its document as it was, and takes the resend', async () => {
    const document = await documents.get(id)
    const browser = await connected(document)
    files.plan = (operation) => (operation === 'write' ? 'fail' : undefined)
    browser.type(0, 'Lost? ')
    await browser.answered()
    browser.deliver()
    expect(last(browser, 'refused')).toMatchObject({ code: 'STORE_UNAVAILABLE', number: 1 })
    expect(last(browser, 'refused')).toHaveProperty('message', expect.stringContaining('the disk is full'))
    expect(document.content.title).toBe('Tern Watch')
    files.plan = () => undefined
    browser.resend()
    await browser.answered()
    browser.deliver()
    expect([browser.pending, document.content.title]).toEqual([0, 'Lost? Tern Watch'])
  })

  it('receive(update) refuses what cannot be decoded, is too large, or builds on what is missing', async () => {
    const document = await documents.get(id)
    const browser = await connected(document)
    const undecodable = await sendBytes(document, browser, new Uint8Array([1, 2, 3, 250, 250, 250]))
    expect(undecodable).toMatchObject([{ type: 'refused', code: 'UPDATE_REFUSED', number: 1 }])
    const large = await sendBytes(document, browser, new Uint8Array(limits.updateBytes + 1))
    expect(large[0]).toHaveProperty('message', expect.stringContaining(`${limits.updateBytes}`))
    const doc = new Y.Doc()
    doc.getText('title').insert(0, 'never sent')
    const gap = Y.encodeStateVector(doc)
    doc.getText('title').insert(10, ' and this')
    const building = await sendBytes(document, browser, Y.encodeStateAsUpdate(doc, gap))
    expect(building[0]).toHaveProperty('message', expect.stringContaining('builds on an edit that was not saved'))
    expect(document.content.title).toBe('Tern Watch')
  })

  it('receive(update) refuses a stale epoch, and hello with one asks to rebase', async () => {
    const document = await documents.get(id)
    const browser = await connected(document)
    browser.epoch = Epoch.parse('stale')
    expect((await sendRaw(document, browser, (doc) => doc.getText('title').insert(0, 'x')))[0]).toMatchObject({
      code: 'UPDATE_REFUSED',
    })
    const said: ServerMessage[] = []
    const connection = { send: (message: ServerMessage) => void said.push(message), close() {} }
    await document.receive(connection, { type: 'hello', epoch: browser.epoch, stateVector: '' })
    expect(said[0]).toMatchObject({ type: 'welcome', rebase: true, epoch: document.epoch })
    await document.receive(connection, { type: 'hello', stateVector: '////' })
    await document.receive(connection, { type: 'ping' })
    expect(said.slice(1).filter(({ type }) => type !== 'titleBlock')).toMatchObject([
      { type: 'refused' },
      { type: 'pong' },
    ])
  })

  it.each<[string, (doc: Y.Doc) => void]>([
    ['an unknown root', (doc) => doc.getArray('other').push([1])],
    ['a cell that is a number', (doc) => doc.getMap('cells').set('bad', 5)],
    ['a cell with an id that is a path', (doc) => doc.getMap('cells').set('../x', new Y.Map())],
    ['a cell without source', (doc) => doc.getMap('cells').set('empty', new Y.Map([['kind', 'sizing']]))],
    [
      'a cell of an unknown kind',
      (doc) =>
        doc.getMap('cells').set(
          'odd',
          new Y.Map<unknown>([
            ['kind', 'shell'],
            ['source', new Y.Text('x')],
          ]),
        ),
    ],
    [
      'a source that is a map',
      (doc) =>
        doc.getMap('cells').set(
          'map',
          new Y.Map<unknown>([
            ['kind', 'sizing'],
            ['source', new Y.Map()],
          ]),
        ),
    ],
    ['the title as a map', (doc) => doc.getMap('title').set('a', 1)],
    ['the cells as a list', (doc) => doc.getArray('cells').push(['a'])],
  ])('receive(update) tolerates %s', async (_, change) => {
    const document = await documents.get(id)
    const browser = await connected(document)
    const said = await sendRaw(document, browser, (doc) => {
      const bare = new Y.Doc()
      change(bare)
      Y.applyUpdate(doc, Y.encodeStateAsUpdate(bare))
    })
    expect(said).toMatchObject([{ type: 'saved' }])
    await document.flush()
    expect(kept().cells.map((cell) => cell.id)).toEqual(['about', 'masses'])
    await documents.close()
    expect((await documents.get(id)).content.cells).toHaveLength(2)
  })

  it('receive(update) names unknown roots to the operator once', async () => {
    const document = await documents.get(id)
    const browser = await connected(document)
    await sendRaw(document, browser, (doc) => doc.getArray('other').push([1]))
    await document.flush()
    await document.flush()
    expect(warnings.filter((warning) => warning.includes('passed over'))).toHaveLength(1)
  })

  it.each<[string, (doc: Y.Doc) => void, RegExp]>([
    [
      'a title beyond its limit',
      (doc) => doc.getText('title').insert(0, 'x'.repeat(limits.titleCharacters)),
      /title would have/,
    ],
    [
      'a source beyond its limit',
      (doc) => source(doc).insert(0, 'x'.repeat(limits.sourceCharacters)),
      /cell "masses" would have/,
    ],
    ['an order key beyond its limit', (doc) => void cell(doc).set('order', 'a'.repeat(201)), /order key/],
    ['too many cells', (doc) => addCells(doc, limits.cells), /cells; at most/],
  ])('receive(update) refuses %s', async (_, change, sentence) => {
    const document = await documents.get(id)
    const browser = await connected(document)
    const said = await sendRaw(document, browser, change)
    expect(said[0]).toHaveProperty('message', expect.stringMatching(sentence))
    expect(document.content.cells).toHaveLength(2)
  })

  it('receive(update) refuses a text whose file could not be read again', async () => {
    const document = await documents.get(id)
    const browser = await connected(document)
    const refusals: ServerMessage[] = []
    for (let index = 0; index < 5; index += 1) {
      const before = Y.encodeStateVector(browser.doc)
      browser.doc.transact(() => put(browser.doc, `lines${index}`, '\n'.repeat(limits.sourceCharacters - 2)), 'server')
      refusals.push(...(await sendBytes(document, browser, Y.encodeStateAsUpdate(browser.doc, before))))
    }
    expect(refusals.some((message) => message.type === 'refused' && message.message.includes('bytes'))).toBe(true)
    await document.flush()
    expect(kept().title).toBe('Tern Watch')
  }, 60_000)

  it('the file follows within half a second and keeps title block, threads and revisions', async () => {
    const browser = await connected(await documents.get(id))
    browser.source('masses').insert(0, 'const x = 1\n')
    await browser.answered()
    clock.advance(500)
    await settle()
    expect(kept()).toMatchObject({
      titleBlock: sampleNotebook().titleBlock,
      threads: sampleNotebook().threads,
      revisions: sampleNotebook().revisions,
      cells: [{ id: 'about' }, { id: 'masses', source: ['const x = 1', 'const payload = 4 * u.kg'] }],
    })
  })

  it('a file that nobody edits is not rewritten by being opened', async () => {
    const before = files.textOf(file)
    await connected(await documents.get(id))
    clock.advance(5000)
    await settle()
    await documents.close()
    expect(files.textOf(file)).toBe(before)
  })

  it('a file write that fails is tried again', async () => {
    const browser = await connected(await documents.get(id))
    browser.type(0, 'The ')
    await browser.answered()
    files.plan = (operation, _, path) => (operation === 'rename' && path === file ? 'fail' : undefined)
    clock.advance(400)
    await settle()
    expect(kept().title).toBe('Tern Watch')
    files.plan = () => undefined
    clock.advance(3000)
    await settle()
    expect(kept().title).toBe('The Tern Watch')
  })
})

describe('LiveDocuments', () => {
  it('get(id) begins a new epoch from the file when the live state is gone', async () => {
    const first = await documents.get(id)
    const epoch = first.epoch
    await documents.close()
    expect((await documents.get(id)).epoch).toBe(epoch)
    await documents.close()
    await files.remove(`${labFolder}/${id}.live`)
    const document = await documents.get(id)
    expect(document.epoch).not.toBe(epoch)
    expect(document.content.title).toBe('Tern Watch')
  })

  it('get(id) refuses what is unknown or damaged', async () => {
    await expect(documents.get(NotebookId.parse('none'))).rejects.toMatchObject({ code: 'NOTEBOOK_UNKNOWN' })
    await files.writeOutside(file, '{')
    await expect(documents.get(id)).rejects.toMatchObject({ code: 'NOTEBOOK_REFUSED' })
  })

  it('get(id) condenses the log after many edits and loses none', async () => {
    const browser = await connected(await documents.get(id))
    for (let edit = 0; edit < 30; edit += 1) {
      for (let letter = 0; letter < 20; letter += 1) browser.source('masses').insert(0, 'x')
      await browser.answered()
    }
    const log = files.disk.present.get(`${labFolder}/${id}.live/log`)?.present.length ?? 0
    expect(log).toBeLessThan(6000)
    await documents.close()
    expect((await documents.get(id)).content.cells[1]?.source).toMatch(/^x{600}const/)
  })

  it('a document without readers is closed after a while, one with readers is not', async () => {
    const document = await documents.get(id)
    const browser = await connected(document)
    clock.advance(130_000)
    await settle()
    expect(documents.all).toHaveLength(1)
    browser.disconnect()
    clock.advance(130_000)
    await settle()
    expect(documents.all).toHaveLength(0)
  })
})

const cell = (doc: Y.Doc) => doc.getMap<Y.Map<unknown>>('cells').get('masses') as Y.Map<unknown>
const source = (doc: Y.Doc) => cell(doc).get('source') as Y.Text

function put(doc: Y.Doc, id: string, text: string): void {
  const map = new Y.Map<unknown>([
    ['kind', 'sizing'],
    ['source', new Y.Text(text)],
    ['order', id],
    ['removed', false],
  ])
  doc.getMap('cells').set(id, map)
}

function addCells(doc: Y.Doc, count: number): void {
  doc.transact(() => {
    for (let index = 0; index < count; index += 1) put(doc, `more${index}`, '')
  })
}

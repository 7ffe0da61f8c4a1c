import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { fromBase64, toBase64 } from '../../../client/live/base64.js'
import { addCell } from '../../../client/live/cell-operations.js'
import { rewrite, snapshotOf, sourceOf, titleOf } from '../../../client/live/document.js'
import { type Keep, type KeptKey, type KeptWork, keepNothing, mergeWork, openKeep } from '../../../client/live/keep.js'
import { savingWords } from '../../../client/live/saving-state.js'
import { type Clock, LiveSession, type Socket } from '../../../client/live/session.js'
import {
  CellId,
  ClientMessage,
  type Fingerprint,
  RevisionName,
  type ServerMessage,
} from '../../../shared/contracts/index.js'

const cell = CellId.parse('a')

/** A server of one document, in memory: welcomes, and saves when the test says so. */
class FakeServer {
  doc = new Y.Doc()
  epoch = 'e1'
  sockets: FakeSocket[] = []
  updates: { socket: FakeSocket; number: number; update: Uint8Array }[] = []
  reachable = true

  open = (): Socket => {
    const socket = new FakeSocket(this)
    this.sockets.push(socket)
    return socket
  }

  get line(): FakeSocket {
    const last = this.sockets.at(-1)
    if (last === undefined) throw new Error('nobody is connected')
    return last
  }

  connect(): void {
    this.line.onopen?.()
  }

  take(socket: FakeSocket, message: ClientMessage): void {
    if (message.type === 'hello') {
      const rebase = message.epoch !== undefined && message.epoch !== this.epoch
      const known = rebase ? undefined : fromBase64(message.stateVector)
      socket.deliver({
        type: 'welcome',
        epoch: this.epoch as never,
        sequence: 1,
        update: toBase64(Y.encodeStateAsUpdate(this.doc, known)),
        stateVector: toBase64(Y.encodeStateVector(this.doc)),
        rebase,
      })
    }
    if (message.type === 'update')
      this.updates.push({ socket, number: message.number, update: fromBase64(message.update) })
    if (message.type === 'ping') socket.deliver({ type: 'pong' })
  }

  /** Stores and acknowledges everything received. */
  save(acknowledge = true): void {
    for (const { socket, number, update } of this.updates.splice(0)) {
      Y.applyUpdate(this.doc, update)
      if (acknowledge) socket.deliver({ type: 'saved', epoch: this.epoch as never, sequence: 2, number })
    }
  }
}

class FakeSocket implements Socket {
  onopen: (() => void) | null = null
  onmessage: ((event: { data: unknown }) => void) | null = null
  onclose: (() => void) | null = null
  closed = false
  readonly server: FakeServer
  constructor(server: FakeServer) {
    this.server = server
  }
  send(text: string): void {
    this.server.take(this, ClientMessage.parse(JSON.parse(text)))
  }
  close(): void {
    this.closed = true
  }
  deliver(message: ServerMessage): void {
    this.onmessage?.({ data: JSON.stringify(message) })
  }
}

class FakeClock implements Clock {
  waiting: { at: number; call: () => void }[] = []
  now = 0
  random = () => 0.5
  after(milliseconds: number, call: () => void): () => void {
    const entry = { at: this.now + milliseconds, call }
    this.waiting.push(entry)
    return () => {
      this.waiting = this.waiting.filter((other) => other !== entry)
    }
  }
  pass(milliseconds: number): void {
    this.now += milliseconds
    const due = this.waiting.filter((entry) => entry.at <= this.now)
    this.waiting = this.waiting.filter((entry) => entry.at > this.now)
    for (const entry of due) entry.call()
  }
}

/** A keep in memory that outlives sessions, as a browser's storage does. While `asleep` it writes nothing but what is held at once. */
class FakeKeep implements Keep {
  readonly lasts = true
  base: Uint8Array | null = null
  edits = new Map<number, { epoch: string; update: Uint8Array }>()
  held: KeptWork | null = null
  asleep = false
  #key = 0
  load = async (): Promise<readonly KeptWork[]> => {
    const epochs = [...new Set([...this.edits.values()].map((edit) => edit.epoch))]
    const stored = epochs.map((epoch) => ({
      epoch,
      base: this.base,
      edits: [...this.edits]
        .filter(([, edit]) => edit.epoch === epoch)
        .map(([key, edit]) => ({ key, update: edit.update })),
    }))
    return mergeWork(stored, this.held === null ? [] : [this.held])
  }
  add = async (epoch: string, update: Uint8Array, base: Uint8Array | null) => {
    if (this.asleep) return new Promise<never>(() => undefined)
    if (base !== null) this.base = base
    this.#key += 1
    this.edits.set(this.#key, { epoch, update })
    return this.#key
  }
  remove = async (keys: readonly KeptKey[]) => {
    for (const key of keys)
      if (typeof key === 'number') this.edits.delete(key)
      else this.held = null
  }
  hold = (epoch: string, base: Uint8Array, update: Uint8Array) => {
    this.held = { epoch, base, edits: [{ key: 'held', update }] }
  }
  release = () => {
    this.held = null
  }
}

/** Storage that writes at once, up to so many characters. */
function storageUpTo(most: number): Storage {
  const entries = new Map<string, string>()
  return {
    get length() {
      return entries.size
    },
    key: (index) => [...entries.keys()][index] ?? null,
    getItem: (key) => entries.get(key) ?? null,
    setItem: (key, text) => {
      if (text.length > most) throw new Error('the storage is full')
      entries.set(key, text)
    },
    removeItem: (key) => void entries.delete(key),
    clear: () => entries.clear(),
  }
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0))

function start(server: FakeServer, keep: Keep = keepNothing, kept: readonly KeptWork[] = []) {
  const clock = new FakeClock()
  const seen = {
    doc: new Y.Doc(),
    words: '',
    readers: 0,
    results: 0,
    checked: undefined as string | undefined,
    revision: '',
  }
  const session = new LiveSession(server.open, keep, kept, clock, {
    onDocument: (doc) => {
      seen.doc = doc
    },
    onSaving: (state) => {
      seen.words = savingWords(state)
    },
    onResults: (results) => {
      seen.results += results.length
    },
    onTitleBlock: (block) => {
      seen.checked = block.checked
    },
    onRevision: (mark) => {
      seen.revision = mark.name
    },
    onPresent: (readers) => {
      seen.readers = readers
    },
  })
  server.connect()
  return { session, clock, seen }
}

function serverWith(source: string): FakeServer {
  const server = new FakeServer()
  titleOf(server.doc).insert(0, 'Skerry')
  addCell(server.doc, 'sizing', null, cell, source)
  return server
}

function type(doc: Y.Doc, source: string): void {
  const text = sourceOf(doc, cell)
  if (text === undefined) throw new Error('the cell must be there')
  rewrite(text, source)
}

const sourceIn = (doc: Y.Doc) => snapshotOf(doc).cells.find((each) => each.id === cell)?.source

/** Words typed while the line was dead, the page gone, the server's document begun anew, the page opened again. */
async function reopenedInAnotherEpoch(go: (session: LiveSession) => void) {
  const server = serverWith('one\ntwo')
  const keep = new FakeKeep()
  const first = start(server, keep)
  server.line.onclose?.()
  type(first.seen.doc, 'one\ntwo\nmine')
  await settled()
  go(first.session)
  server.doc = serverWith('zero\none\ntwo').doc
  server.epoch = 'e2'
  const second = start(server, keep, await keep.load())
  expect(sourceIn(second.seen.doc)).toBe('zero\none\ntwo\nmine')
  return { server, keep }
}

describe('LiveSession', () => {
  it('LiveSession shows the document that the welcome brings', () => {
    const { seen } = start(serverWith('const a = 1'))
    expect(snapshotOf(seen.doc)).toMatchObject({ title: 'Skerry', cells: [{ id: 'a', source: 'const a = 1' }] })
    expect(seen.words).toBe('all edits saved')
  })

  it('LiveSession calls an edit saved only when the server has acknowledged it', () => {
    const server = serverWith('const a = 1')
    const { seen } = start(server)
    type(seen.doc, 'const a = 2')
    expect(seen.words).toBe('saving')
    server.save()
    expect(seen.words).toBe('all edits saved')
    expect(sourceIn(server.doc)).toBe('const a = 2')
  })

  it('LiveSession sends one group at a time and the rest together after it', () => {
    const server = serverWith('')
    const { seen } = start(server)
    for (const text of ['c', 'co', 'con', 'cons']) type(seen.doc, text)
    expect(server.updates).toHaveLength(1)
    server.save()
    expect(server.updates).toHaveLength(1)
    server.save()
    expect(sourceIn(server.doc)).toBe('cons')
    expect(seen.words).toBe('all edits saved')
  })

  it('LiveSession keeps edits made while the network is lost and delivers them once it is back', () => {
    const server = serverWith('const a = 1')
    const { seen, clock } = start(server)
    server.line.onclose?.()
    type(seen.doc, 'const a = 7')
    expect(seen.words).toBe('not connected: 1 edit kept here')
    clock.pass(500)
    server.connect()
    server.save()
    expect(sourceIn(server.doc)).toBe('const a = 7')
    expect(seen.words).toBe('all edits saved')
  })

  it('LiveSession sends an edit again whose acknowledgement was lost, without doubling it', () => {
    const server = serverWith('a')
    const { seen, clock } = start(server)
    type(seen.doc, 'ab')
    server.save(false)
    server.line.onclose?.()
    clock.pass(500)
    server.connect()
    server.save()
    expect(sourceIn(server.doc)).toBe('ab')
    expect(seen.words).toBe('all edits saved')
  })

  it('LiveSession waits longer after each failed attempt, and not at all when told that the network is back', () => {
    const server = serverWith('a')
    const { session, clock } = start(server)
    server.line.onclose?.()
    clock.pass(399)
    expect(server.sockets).toHaveLength(1)
    clock.pass(1)
    expect(server.sockets).toHaveLength(2)
    server.line.onclose?.()
    clock.pass(799)
    expect(server.sockets).toHaveLength(2)
    session.retryNow()
    expect(server.sockets).toHaveLength(3)
    session.close()
    expect(server.line.closed).toBe(true)
  })

  it('LiveSession takes a connection on which nothing is heard as lost', () => {
    const server = serverWith('a')
    const { seen, clock } = start(server)
    const silent = server.line
    silent.send = () => undefined
    clock.pass(15_000)
    clock.pass(15_000)
    expect(silent.closed).toBe(true)
    expect(seen.words).toContain('not connected')
  })

  it('LiveSession takes up what an earlier visit kept, as after a reload or a crash', async () => {
    const server = serverWith('const a = 1')
    const keep = new FakeKeep()
    const first = start(server, keep)
    server.line.onclose?.()
    type(first.seen.doc, 'const a = 42')
    await settled()
    first.session.close()
    const second = start(server, keep, await keep.load())
    expect(sourceIn(second.seen.doc)).toBe('const a = 42')
    expect(second.seen.words).toBe('saving')
    server.save()
    await settled()
    expect(sourceIn(server.doc)).toBe('const a = 42')
    expect(keep.edits.size).toBe(0)
  })

  it('LiveSession keeps at once what is unsaved when the page is left, however slow the database is', async () => {
    const server = serverWith('const a = 1')
    const keep = new FakeKeep()
    keep.asleep = true
    const first = start(server, keep)
    for (const text of ['const a = 12', 'const a = 123']) type(first.seen.doc, text)
    server.updates = []
    first.session.leave()
    expect(server.updates).toHaveLength(1)
    server.updates = []
    const second = start(server, keep, await keep.load())
    expect(sourceIn(second.seen.doc)).toBe('const a = 123')
    server.save()
    await settled()
    expect(sourceIn(server.doc)).toBe('const a = 123')
    expect(keep.held).toBeNull()
  })

  it('LiveSession lets go of what it held when the page was not left after all', () => {
    const server = serverWith('a')
    const keep = new FakeKeep()
    const { session, seen } = start(server, keep)
    session.leave()
    expect(keep.held).toBeNull()
    type(seen.doc, 'ab')
    session.leave()
    expect(keep.held).not.toBeNull()
    server.save()
    expect(seen.words).toBe('all edits saved')
    expect(keep.held).toBeNull()
    expect(sourceIn(server.doc)).toBe('ab')
  })

  it('LiveSession carries what was held in an older epoch over once, though it was stored as well', async () => {
    const { keep } = await reopenedInAnotherEpoch((session) => session.leave())
    await settled()
    expect(keep.held).toBeNull()
  })

  it('LiveSession carries own unsaved text into a new epoch without doubling what is there', () => {
    const server = serverWith('one\ntwo')
    const { seen, clock } = start(server)
    server.line.onclose?.()
    type(seen.doc, 'one\nmine\ntwo')
    const again = serverWith('one\ntwo\ntheirs')
    server.doc = again.doc
    server.epoch = 'e2'
    clock.pass(500)
    server.connect()
    expect(sourceIn(seen.doc)).toBe('one\nmine\ntwo\ntheirs')
    server.save()
    expect(sourceIn(server.doc)).toBe('one\nmine\ntwo\ntheirs')
    expect(seen.words).toBe('all edits saved')
  })

  it('LiveSession carries work kept from an older epoch over after a reload', async () => {
    const { server, keep } = await reopenedInAnotherEpoch((session) => session.close())
    server.save()
    await settled()
    expect(keep.edits.size).toBe(0)
    expect(sourceIn(server.doc)).toBe('zero\none\ntwo\nmine')
  })

  it('LiveSession says hello again when the document began a new life under it', () => {
    const server = serverWith('a')
    const { seen, clock } = start(server)
    server.epoch = 'e2'
    server.line.deliver({ type: 'edited', epoch: 'e2' as never, sequence: 1, update: '' })
    clock.pass(500)
    server.connect()
    expect(seen.words).toBe('all edits saved')
    expect(server.sockets).toHaveLength(2)
  })

  it('LiveSession says why an edit was refused, keeps it, and tries again with the next edit', () => {
    const server = serverWith('a')
    const { seen } = start(server)
    type(seen.doc, 'ab')
    server.updates = []
    server.line.deliver({ type: 'refused', code: 'UPDATE_REFUSED', message: 'it is too large.', number: 1 })
    expect(seen.words).toBe('not saved: it is too large.')
    type(seen.doc, 'abc')
    server.save()
    expect(sourceIn(server.doc)).toBe('abc')
    expect(seen.words).toBe('all edits saved')
  })

  it('LiveSession tries by itself again when the data folder could not be written', () => {
    const server = serverWith('a')
    const { seen, clock } = start(server)
    type(seen.doc, 'ab')
    server.updates = []
    server.line.deliver({ type: 'refused', code: 'STORE_UNAVAILABLE', message: 'the disk is full.', number: 1 })
    clock.pass(500)
    server.save()
    expect(seen.words).toBe('all edits saved')
  })

  it('LiveSession gives back what a restored server lacks', () => {
    const server = serverWith('const a = 1')
    const older = Y.encodeStateAsUpdate(server.doc)
    const { seen, clock } = start(server)
    type(seen.doc, 'const a = 2')
    server.save()
    server.doc = new Y.Doc()
    Y.applyUpdate(server.doc, older)
    server.line.onclose?.()
    clock.pass(500)
    server.connect()
    server.save()
    expect(sourceIn(server.doc)).toBe('const a = 2')
  })

  it('LiveSession passes on results, the title block and the number of readers, and ignores what it cannot read', () => {
    const server = serverWith('a')
    const { seen } = start(server)
    server.line.deliver({ type: 'present', readers: 3 })
    server.line.deliver({ type: 'results', results: [] })
    server.line.deliver({ type: 'titleBlock', titleBlock: { checked: 'R. Marsh' } })
    const print = '0'.repeat(64) as Fingerprint
    const mark = { fingerprint: print, textFingerprint: print, kernelHash: 'k', issued: '', signatures: [] }
    server.line.deliver({ type: 'revision', mark: { name: RevisionName.parse('B'), ...mark } })
    server.line.onmessage?.({ data: 'not JSON' })
    server.line.onmessage?.({ data: '{"type":"unheard of"}' })
    expect([seen.readers, seen.checked, seen.revision]).toEqual([3, 'R. Marsh', 'B'])
    expect(seen.words).toBe('all edits saved')
  })
})

describe('openKeep', () => {
  const [base, update] = [Uint8Array.of(1, 2, 3), Uint8Array.of(4, 5)]

  it('openKeep without a database holds what a page left unsaved for later visits, each its own', async () => {
    const storage = storageUpTo(1000)
    const [one, two] = [await openKeep('n', undefined, storage), await openKeep('n', undefined, storage)]
    expect(await one?.add('e', update, base)).toBeNull()
    one?.hold('e', base, update)
    two?.hold('e', base, update)
    two?.release()
    const later = await openKeep('n', undefined, storage)
    const work = await later.load()
    expect(work).toMatchObject([{ epoch: 'e', base, edits: [{ update }] }])
    expect(await (await openKeep('other', undefined, storage)).load()).toEqual([])
    await later.remove(work.flatMap(({ edits }) => edits.map(({ key }) => key)))
    expect(await later.load()).toEqual([])
  })

  it('openKeep holds the edits alone where the storage has no room for what they stand on', async () => {
    const storage = storageUpTo(100)
    const keep = await openKeep('n', undefined, storage)
    keep.hold('e', new Uint8Array(200), update)
    expect(await keep.load()).toMatchObject([{ epoch: 'e', base: null, edits: [{ update }] }])
    keep.hold('f', base, new Uint8Array(200))
    expect(await keep.load()).toMatchObject([{ epoch: 'e' }])
  })

  it('openKeep passes over what it cannot read, and keeps nothing where the browser has no storage', async () => {
    const storage = storageUpTo(1000)
    storage.setItem('hoverfolio unsaved edits n x', 'not JSON')
    expect(await (await openKeep('n', undefined, storage)).load()).toEqual([])
    const none = await openKeep('n', undefined, undefined)
    none.hold('e', base, update)
    none.release()
    expect([none.lasts, await none.load(), await none.add('e', update, base)]).toEqual([false, [], null])
  })
})

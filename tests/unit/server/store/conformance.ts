/**
 * What every store must do, whatever keeps the bytes. An implementation passes a way to open it twice on the same bytes:
 * `open` starts a store, `reopen` starts another one after the first is gone without a goodbye.
 */
import { afterEach, describe, expect, it } from 'vitest'
import type { Store } from '../../../../server/store/index.js'
import { Epoch, type NotebookId, writeNotebook } from '../../../../shared/contracts/index.js'
import { labResult, sampleNotebook } from '../../../lab/index.js'

export interface StoreUnderTest {
  open(): Promise<Store>
  /** Another holder on the same bytes while the first one lives: must reject. */
  openRival(): Promise<Store>
  /** Another holder after the first was killed. */
  reopen(): Promise<Store>
}

const bytes = (text: string) => new TextEncoder().encode(text)
const texts = (updates: readonly Uint8Array[] | undefined) => updates?.map((update) => new TextDecoder().decode(update))
const first = Epoch.parse('first')
const second = Epoch.parse('second')

const addSample = (store: Store, title?: string): Promise<NotebookId> =>
  store.create(title ?? 'Tern Watch', (id) => writeNotebook({ ...sampleNotebook(title), id }))

export function describeStore(name: string, prepareStore: () => StoreUnderTest): void {
  const opened: Store[] = []
  const kept = async (store: Promise<Store>) => {
    opened.push(await store)
    return store
  }
  const prepare = (): StoreUnderTest => {
    const test = prepareStore()
    return {
      open: () => kept(test.open()),
      openRival: () => kept(test.openRival()),
      reopen: () => kept(test.reopen()),
    }
  }
  describe(`${name} as a store`, () => {
    afterEach(async () => {
      for (const store of opened.splice(0)) await store.close()
    })

    it('create(wish, textFor) gives different ids to equal wishes and lists both', async () => {
      const store = await prepare().open()
      const ids = [await addSample(store), await addSample(store)]
      expect(ids).toEqual(['tern-watch', 'tern-watch-2'])
      const { notebooks } = await store.list()
      expect(
        notebooks.map(({ id, title, cells }) => [id, title, cells]).sort((a, b) => (String(a) < String(b) ? -1 : 1)),
      ).toEqual([
        ['tern-watch', 'Tern Watch', 2],
        ['tern-watch-2', 'Tern Watch', 2],
      ])
    })

    it.each(['../../etc/passwd', '', '..', '/', 'CON', 'a'.repeat(300), '東京', 'bin'])(
      'create(%j, ...) makes a harmless id',
      async (wish) => {
        const store = await prepare().open()
        const id = await addSample(store, wish)
        expect(id).toMatch(/^[a-z0-9-]{1,60}$/)
        expect(await store.readText(id)).toContain('hoverfolio notebook')
      },
    )

    it('readText(id) gives undefined for what is not there', async () => {
      const store = await prepare().open()
      expect(await store.readText('none' as NotebookId)).toBeUndefined()
      expect(await store.textMark('none' as NotebookId)).toBeUndefined()
    })

    it('replaceText(id, expected, text) writes over the expected text only', async () => {
      const store = await prepare().open()
      const id = await addSample(store)
      const text = (await store.readText(id)) ?? ''
      expect(await store.replaceText(id, 'something else', 'lost')).toBe('changed outside')
      expect(await store.readText(id)).toBe(text)
      const mark = await store.textMark(id)
      expect(await store.replaceText(id, text, `${text}\n`)).toBe('written')
      expect(await store.readText(id)).toBe(`${text}\n`)
      expect(await store.textMark(id)).not.toBe(mark)
      expect(await store.knownTexts(id)).toContain(`${text}\n`)
    })

    it('keepKnownText(id, text) is remembered by the next holder', async () => {
      const test = prepare()
      const store = await test.open()
      const id = await addSample(store)
      await store.keepKnownText(id, 'known')
      expect(await (await test.reopen()).knownTexts(id)).toEqual(['known'])
    })

    it('append(id, epoch, updates) numbers updates and the next holder finds them', async () => {
      const test = prepare()
      const store = await test.open()
      const id = await addSample(store)
      expect(await store.openLive(id)).toBeUndefined()
      await store.beginLive(id, first, { update: bytes('state'), broughtIn: 'ab'.repeat(32) })
      expect(await store.append(id, first, [{ update: bytes('one') }, { update: bytes('two') }])).toBe(2)
      expect(await store.append(id, first, [{ update: bytes('three'), broughtIn: 'cd'.repeat(32) }])).toBe(3)
      const live = await (await test.reopen()).openLive(id)
      expect(live).toMatchObject({ epoch: first, sequence: 3, broughtIn: 'cd'.repeat(32) })
      expect(texts(live?.updates)).toEqual(['state', 'one', 'two', 'three'])
    })

    it('append(id, epoch, []) adds nothing and tells the sequence', async () => {
      const test = prepare()
      const store = await test.open()
      const id = await addSample(store)
      await store.openLive(id)
      await store.beginLive(id, first, { update: bytes('state') })
      await store.append(id, first, [{ update: bytes('one') }])
      const next = await test.reopen()
      await next.openLive(id)
      expect(await next.append(id, first, [])).toBe(1)
      expect(await next.append(id, first, [{ update: bytes('two') }])).toBe(2)
      expect(texts((await next.openLive(id))?.updates)).toEqual(['state', 'one', 'two'])
    })

    it('append(id, epoch, updates) refuses another epoch than the one begun', async () => {
      const store = await prepare().open()
      const id = await addSample(store)
      await store.openLive(id)
      await store.beginLive(id, first, { update: bytes('state') })
      await expect(store.append(id, second, [{ update: bytes('one') }])).rejects.toThrow(/epoch/)
      await expect(store.snapshot(id, second, bytes('state'))).rejects.toThrow(/epoch/)
    })

    it('snapshot(id, epoch, state) takes the place of the updates and keeps counting', async () => {
      const test = prepare()
      const store = await test.open()
      const id = await addSample(store)
      await store.openLive(id)
      await store.beginLive(id, first, { update: bytes('state') })
      await store.append(id, first, [{ update: bytes('one') }, { update: bytes('two') }])
      expect(store.liveSize(id).updates).toBe(2)
      await store.snapshot(id, first, bytes('state and one and two'))
      expect(store.liveSize(id).updates).toBe(0)
      expect(await store.append(id, first, [{ update: bytes('three') }])).toBe(3)
      expect(texts((await (await test.reopen()).openLive(id))?.updates)).toEqual(['state and one and two', 'three'])
    })

    it('beginLive(id, epoch, state) ends the earlier epoch', async () => {
      const test = prepare()
      const store = await test.open()
      const id = await addSample(store)
      await store.openLive(id)
      await store.beginLive(id, first, { update: bytes('old') })
      await store.append(id, first, [{ update: bytes('one') }])
      await store.beginLive(id, second, { update: bytes('new') })
      const live = await (await test.reopen()).openLive(id)
      expect([live?.epoch, live?.sequence, texts(live?.updates)]).toEqual([second, 0, ['new']])
    })

    it('bin(id) and restore(id) carry text, live state, results and revisions', async () => {
      const store = await prepare().open()
      const id = await addSample(store)
      await store.openLive(id)
      await store.beginLive(id, first, { update: bytes('state') })
      const result = labResult({ id: sampleNotebook().cells[1]?.id ?? ('x' as never), source: 'const x = 1' })
      await store.writeResults(id, [result])
      await store.addRevision(id, 'revision A')
      await store.bin(id)
      expect(await store.readText(id)).toBeUndefined()
      const listing = await store.list()
      expect([listing.notebooks.length, listing.binned.map((notebook) => notebook.id)]).toEqual([0, [id]])
      expect(await store.restore(id)).toBe(id)
      expect(texts((await store.openLive(id))?.updates)).toEqual(['state'])
      expect(await store.readResults(id)).toEqual([result])
      expect((await store.revisions(id)).map(({ text }) => text)).toEqual(['revision A'])
    })

    it('discard(id) deletes what is in the bin with all that belongs to it, and nothing of it comes back under its name', async () => {
      const store = await prepare().open()
      const id = await addSample(store)
      await store.openLive(id)
      await store.beginLive(id, first, { update: bytes('state') })
      await store.addRevision(id, 'revision A')
      await expect(store.discard(id)).rejects.toMatchObject({ code: 'NOTEBOOK_UNKNOWN' })
      await store.bin(id)
      await store.discard(id)
      expect(await store.list()).toEqual({ notebooks: [], binned: [], refused: [] })
      await expect(store.restore(id)).rejects.toMatchObject({ code: 'NOTEBOOK_UNKNOWN' })
      const next = await addSample(store)
      expect([await store.openLive(next), await store.revisions(next)]).toEqual([undefined, []])
    })

    it('restore(id) chooses another id when a new notebook has taken the old one', async () => {
      const store = await prepare().open()
      const id = await addSample(store)
      await store.bin(id)
      expect(await addSample(store)).not.toBe(id)
      await expect(store.restore('none' as NotebookId)).rejects.toMatchObject({ code: 'NOTEBOOK_UNKNOWN' })
      await expect(store.bin('none' as NotebookId)).rejects.toMatchObject({ code: 'NOTEBOOK_UNKNOWN' })
    })

    it('addRevision(id, text) keeps every text with its hash, oldest first', async () => {
      const test = prepare()
      const store = await test.open()
      const id = await addSample(store)
      expect(await store.revisions(id)).toEqual([])
      const hash = await store.addRevision(id, 'A')
      await store.addRevision(id, 'B')
      const kept = await (await test.reopen()).revisions(id)
      expect(kept.map(({ text }) => text)).toEqual(['A', 'B'])
      expect(kept[0]?.hash).toBe(hash)
    })

    it('revisionsMark(id) changes with every text added and stays while there is none', async () => {
      const store = await prepare().open()
      const id = await addSample(store)
      const before = await store.revisionsMark(id)
      expect(await store.revisionsMark(id)).toBe(before)
      await store.addRevision(id, 'A')
      const one = await store.revisionsMark(id)
      await store.addRevision(id, 'B')
      expect(new Set([before, one, await store.revisionsMark(id)]).size).toBe(3)
    })

    it('start() refuses a second living holder, and the next one has a larger token', async () => {
      const test = prepare()
      const store = await test.open()
      await expect(test.openRival()).rejects.toThrow(/already serves/)
      const next = await test.reopen()
      expect(next.fencingToken).toBeGreaterThan(store.fencingToken)
    })

    it('every write of a holder that lost the lease is refused', async () => {
      const test = prepare()
      const store = await test.open()
      const id = await addSample(store)
      await store.openLive(id)
      await store.beginLive(id, first, { update: bytes('state') })
      await test.reopen()
      const refused = { code: 'STORE_UNAVAILABLE' }
      await expect(store.append(id, first, [{ update: bytes('late') }])).rejects.toMatchObject(refused)
      await expect(store.replaceText(id, '', 'late')).rejects.toMatchObject(refused)
      await expect(store.writeResults(id, [])).rejects.toMatchObject(refused)
      await expect(addSample(store)).rejects.toMatchObject(refused)
    })

    it('close() gives the lease back at once', async () => {
      const test = prepare()
      await (await test.open()).close()
      await expect(test.openRival()).resolves.toBeDefined()
    })
  })
}

import { mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { FilesStore, machineProcesses, nodeFileSystem } from '../../../../server/store/index.js'
import { Epoch, NotebookId, writeNotebook } from '../../../../shared/contracts/index.js'
import { LabFileSystem, labFolder, labProcesses, labStore, sampleNotebook, seededChance } from '../../../lab/index.js'
import { describeStore } from './conformance.js'

describeStore('FilesStore on the lab disk', () => {
  const files = new LabFileSystem(seededChance(1))
  const alive = new Set([1])
  return {
    open: () => labStore(files, 1, alive),
    openRival: () => labStore(files, 2, new Set([1, 2])),
    reopen: () => labStore(files, 3, new Set([3])),
  }
})

const made: string[] = []
afterAll(() => Promise.all(made.map((folder) => rm(folder, { recursive: true, force: true }))))

async function realFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'hoverfolio-store-'))
  made.push(folder)
  return folder
}

describeStore('FilesStore on real files', () => {
  const folder = realFolder()
  const start = async (pid: number, alive: readonly number[]) => {
    const processes = labProcesses(pid, new Set(alive))
    const store = new FilesStore({ files: nodeFileSystem, folder: await folder, processes })
    await store.start()
    return store
  }
  return { open: () => start(1, [1]), openRival: () => start(2, [1, 2]), reopen: () => start(3, [3]) }
})

const epoch = Epoch.parse('e')
const bytes = (text: string) => new TextEncoder().encode(text)

async function storeWithLog() {
  const files = new LabFileSystem(seededChance(1))
  const store = await labStore(files)
  const id = await store.create('a', () => writeNotebook(sampleNotebook('a')))
  await store.openLive(id)
  await store.beginLive(id, epoch, { update: bytes('state') })
  await store.append(id, epoch, [{ update: bytes('one') }, { update: bytes('two') }])
  return { files, store, id, log: `${labFolder}/${id}.live/log`, state: `${labFolder}/${id}.live/state` }
}

const present = (files: LabFileSystem, path: string) => files.disk.present.get(path)?.present ?? new Uint8Array()

describe('FilesStore', () => {
  it('openLive(id) drops a torn tail, and the next append cuts it off', async () => {
    const { files, id, log } = await storeWithLog()
    const whole = present(files, log)
    for (const cut of [1, 5, 9, 12]) {
      await files.writeOutside(log, whole.slice(0, whole.length - cut))
      const next = await labStore(files, 2)
      const live = await next.openLive(id)
      expect(live?.sequence).toBe(1)
      expect(await next.append(id, epoch, [{ update: bytes('again') }])).toBe(2)
      expect((await next.openLive(id))?.updates.map((update) => new TextDecoder().decode(update))).toEqual([
        'state',
        'one',
        'again',
      ])
    }
  })

  it('openLive(id) stops at a damaged record', async () => {
    const { files, id, log } = await storeWithLog()
    const damaged = present(files, log).slice()
    damaged[damaged.length - 1] = (damaged[damaged.length - 1] ?? 0) ^ 1
    await files.writeOutside(log, damaged)
    expect((await (await labStore(files, 2)).openLive(id))?.sequence).toBe(1)
  })

  it.each(['', 'nonsense', '\0'.repeat(64)])('openLive(id) gives undefined for the state %j', async (state) => {
    const { files, id, state: path } = await storeWithLog()
    await files.writeOutside(path, state)
    expect(await (await labStore(files, 2)).openLive(id)).toBeUndefined()
  })

  it('list() names files that are no notebooks and leaves their bytes', async () => {
    const files = new LabFileSystem(seededChance(1))
    const store = await labStore(files)
    const strange = { 'a.json': '{', 'b c.json': '{}', 'd.json': new Uint8Array([0xff, 0xfe, 0]), 'e.json': '[]' }
    for (const [name, content] of Object.entries(strange)) await files.writeOutside(`${labFolder}/${name}`, content)
    const { notebooks, refused } = await store.list()
    expect(notebooks).toEqual([])
    expect(refused.map(({ file }) => file)).toEqual(['a.json', 'b c.json', 'd.json', 'e.json'])
    for (const { reason } of refused) expect(reason).toMatch(/^This notebook cannot be opened.*\.$/)
    expect(present(files, `${labFolder}/d.json`)).toEqual(strange['d.json'])
  })

  it('readText(id) and list() refuse a link planted in the folder', async () => {
    const folder = await realFolder()
    const elsewhere = join(await realFolder(), 'secret.json')
    await writeFile(elsewhere, writeNotebook(sampleNotebook('secret')))
    await symlink(elsewhere, join(folder, 'planted.json'))
    const store = new FilesStore({ files: nodeFileSystem, folder, processes: machineProcesses })
    await store.start()
    await expect(store.readText(NotebookId.parse('planted'))).rejects.toMatchObject({ code: 'NOTEBOOK_REFUSED' })
    expect((await store.list()).refused.map(({ file }) => file)).toEqual(['planted.json'])
    expect(await readFile(elsewhere, 'utf8')).toContain('secret')
    await store.close()
  })

  it('start() takes over a torn lease and one whose process number was given to another program', async () => {
    const folder = await realFolder()
    const start = () => {
      const store = new FilesStore({ files: nodeFileSystem, folder, processes: machineProcesses })
      return store.start().then(() => store)
    }
    await writeFile(join(folder, '.lease'), '{"pid": 1, "tok')
    await (await start()).close()
    await writeFile(
      join(folder, '.lease'),
      JSON.stringify({ pid: process.pid, started: 'long ago', token: 7, holder: 'h' }),
    )
    const store = await start()
    expect(store.fencingToken).toBe(8)
    await expect(start()).rejects.toThrow(/already serves/)
    await store.close()
  })

  it('start() finishes a move to the bin that a kill cut in two', async () => {
    const { files, store, id } = await storeWithLog()
    await store.closeLive(id)
    await files.rename(`${labFolder}/${id}.json`, `${labFolder}/bin/${id}.json`)
    await files.writeOutside(`${labFolder}/x.json.unfinished`, 'half')
    const next = await labStore(files, 2)
    expect(await next.restore(id)).toBe(id)
    expect((await next.openLive(id))?.sequence).toBe(2)
    expect(files.textOf(`${labFolder}/x.json.unfinished`)).toBeUndefined()
  })

  it('readResults(id) passes over a damaged file', async () => {
    const { files, store, id } = await storeWithLog()
    await files.writeOutside(`${labFolder}/${id}.results.json`, '{"results": [1, {"cell": "a"}]}')
    expect(await store.readResults(id)).toEqual([])
    await files.writeOutside(`${labFolder}/${id}.results.json`, '{"resu')
    expect(await store.readResults(id)).toEqual([])
  })

  it('append(id, ...) before openLive(id) and writes before start() are refused in words', async () => {
    const files = new LabFileSystem(seededChance(1))
    const store = await labStore(files)
    await expect(store.append('a' as NotebookId, epoch, [])).rejects.toThrow(/not open/)
    const cold = new FilesStore({ files, folder: labFolder, processes: labProcesses(1) })
    await expect(cold.create('a', () => 'a')).rejects.toThrow(/not started/)
  })

  it.each([
    ['ENOSPC', /disk is full/],
    ['EROFS', /read-only/],
    ['EWHATEVER', /made by the test/],
  ])('a write that fails with %s says why', async (code, sentence) => {
    const files = new LabFileSystem(seededChance(1))
    const store = await labStore(files)
    files.open = async () => {
      throw Object.assign(new Error('made by the test'), { code })
    }
    await expect(store.create('a', () => 'a')).rejects.toThrow(sentence)
  })

  it('a file system that takes no bytes is a failure, not a loop', async () => {
    const files = new LabFileSystem(seededChance(1))
    const store = await labStore(files)
    files.open = async () => ({
      write: async () => 0,
      sync: async () => {},
      truncate: async () => {},
      close: async () => {},
    })
    await expect(store.create('a', () => 'a')).rejects.toThrow(/took 0 of/)
  })
})

import { readFile, rm, writeFile } from 'node:fs/promises'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { WebSocket } from 'ws'
import { CannotServe, type RunningServer, serve } from '../../server/serve.js'
import { limits, writeNotebook } from '../../shared/contracts/index.js'
import { labKernel, sampleNotebook } from '../lab/index.js'
import { bundleServedProcess, removeBundle, SocketBrowser, startProcess, temporaryFolder, until } from './process.js'

const openKernel = async () => ({ kernel: labKernel({ computes: true }), close: async () => undefined })
const folders: string[] = []

async function folderWithNotebook(): Promise<string> {
  const folder = await temporaryFolder()
  folders.push(folder)
  await writeFile(join(folder, 'tern-watch.json'), writeNotebook(sampleNotebook()))
  return folder
}

afterAll(async () => {
  for (const folder of folders) await rm(folder, { recursive: true, force: true })
})

describe('serve', () => {
  let server: RunningServer
  let folder: string
  beforeAll(async () => {
    folder = await folderWithNotebook()
    server = await serve({ port: 0, dataFolder: folder, openKernel })
  })
  afterAll(() => server.close())

  it('two browsers converge, each edit acknowledged, and results reach both', async () => {
    const [one, two] = [
      new SocketBrowser(server.address, 'tern-watch'),
      new SocketBrowser(server.address, 'tern-watch'),
    ]
    await until('both are welcome', () => one.title === 'Tern Watch' && two.title === 'Tern Watch')
    for (let count = 0; count < 20; count += 1) {
      one.type(0, 'a')
      two.type(two.title.length, 'b')
    }
    await until('all is saved', () => one.allSaved && two.allSaved)
    await until('they converge', () => one.title === two.title && one.title.length === 'Tern Watch'.length + 40)
    expect(one.heard.findLast((message) => message.type === 'present')).toEqual({ type: 'present', readers: 2 })
    one.close()
    two.close()
    await until('the file follows', async () =>
      (await readFile(join(folder, 'tern-watch.json'), 'utf8')).includes(one.title),
    )
  })

  it('the first reader finds numbers, because shipped and found notebooks are computed at start', async () => {
    const results = async () => (await fetch(new URL('/api/notebooks/tern-watch/results', server.address))).json()
    await until(
      'the notebook is computed',
      async () => ((await results()) as { results: unknown[] }).results.length === 1,
    )
  })

  it('shipped notebooks are copied once and do not come back from the bin', async () => {
    const { notebooks } = (await (await fetch(new URL('/api/notebooks', server.address))).json()) as {
      notebooks: { id: string }[]
    }
    expect(notebooks.map(({ id }) => id)).toContain('worked-sizing')
    const other = await folderWithNotebook()
    const first = await serve({ port: 0, dataFolder: other, openKernel })
    await fetch(new URL('/api/notebooks/worked-sizing', first.address), { method: 'DELETE' })
    await first.close()
    const second = await serve({ port: 0, dataFolder: other, openKernel })
    const list = (await (await fetch(new URL('/api/notebooks', second.address))).json()) as Record<
      string,
      { id: string }[]
    >
    await second.close()
    expect(list.notebooks?.map(({ id }) => id)).not.toContain('worked-sizing')
    expect(list.binned?.map(({ id }) => id)).toContain('worked-sizing')
  })

  it.each([
    ['an unknown notebook', 'none', {}, 404],
    ['another page', 'tern-watch', { origin: 'https://elsewhere.example' }, 403],
    ['an opaque origin', 'tern-watch', { origin: 'null' }, 403],
    ['a rebound name', 'tern-watch', { headers: { host: 'rebound.example' } }, 403],
    ['another site', 'tern-watch', { headers: { 'sec-fetch-site': 'cross-site' } }, 403],
  ])('an upgrade from %s is refused before it happens', async (_, id, options, status) => {
    const { host } = new URL(server.address)
    const socket = new WebSocket(`ws://${host}/api/notebooks/${id}/live`, options)
    const code = await new Promise((resolve) => {
      socket.on('unexpected-response', (_request, response) => resolve(response.statusCode))
      socket.on('open', () => resolve('opened'))
      socket.on('error', () => undefined)
    })
    socket.terminate()
    expect(code).toBe(status)
  })

  it.each([
    ['no JSON', '{', 'BODY_INVALID'],
    ['an unknown type', '{"type": "shout"}', 'BODY_INVALID'],
    ['an update that is no base64', '{"type":"update","epoch":"a","number":1,"update":"***"}', 'BODY_INVALID'],
    ['an update of another epoch', '{"type":"update","epoch":"a","number":1,"update":"AAA="}', 'UPDATE_REFUSED'],
  ])('a message with %s is refused and the connection goes on', async (_, text, code) => {
    const browser = new SocketBrowser(server.address, 'tern-watch')
    await until('it is welcome', () => browser.heard.some((message) => message.type === 'welcome'))
    browser.sendText(text)
    await until('it is refused', () =>
      browser.heard.some((message) => message.type === 'refused' && message.code === code),
    )
    browser.sendText('{"type":"ping"}')
    await until('it goes on', () => browser.heard.some((message) => message.type === 'pong'))
    browser.close()
  })

  it.each([
    ['a frame beyond the limit', (browser: SocketBrowser) => browser.sendText('x'.repeat(limits.updateBytes * 2))],
    [
      'a flood of messages',
      (browser: SocketBrowser) => Array.from({ length: 2500 }, () => browser.sendText('{"type":"ping"}')),
    ],
  ])('%s ends the connection and nothing else', async (_, misbehave) => {
    const browser = new SocketBrowser(server.address, 'tern-watch')
    const other = new SocketBrowser(server.address, 'tern-watch')
    const readers = () => other.heard.findLast((message) => message.type === 'present')
    await until('both are there', () => (readers() as { readers?: number } | undefined)?.readers === 2)
    misbehave(browser)
    await until('one is gone', () => (readers() as { readers?: number } | undefined)?.readers === 1)
    other.close()
  })

  it('serve(options) says plainly why it cannot', async () => {
    const other = await temporaryFolder()
    folders.push(other)
    const port = Number(new URL(server.address).port)
    await expect(serve({ port, dataFolder: other, openKernel })).rejects.toThrow(
      `Port ${port} on 127.0.0.1 is taken by another program. Choose another with --port NUMBER`,
    )
    await expect(serve({ port: 0, dataFolder: folder, openKernel })).rejects.toThrow(/already serves/)
    for (const host of ['0.0.0.0', '192.168.1.5', 'example.org', '::'])
      await expect(serve({ port: 0, host, dataFolder: other, openKernel })).rejects.toThrow(
        /no people and roles set up/,
      )
    await expect(serve({ port: 0, dataFolder: '/dev/null/data', openKernel })).rejects.toThrow(CannotServe)
    const after = await serve({ port: 0, dataFolder: other, openKernel })
    await after.close()
  })

  it('a page of another site reaches nothing although its requests arrive', async () => {
    const elsewhere = createServer().listen(0, '127.0.0.1')
    const origin = `http://127.0.0.1:${(elsewhere.address() as AddressInfo | null)?.port ?? 1}`
    const reply = await fetch(new URL('/api/notebooks', server.address), {
      method: 'POST',
      headers: { origin, 'content-type': 'application/json' },
      body: '{"title":"planted"}',
    })
    elsewhere.close()
    expect(reply.status).toBe(403)
  })
})

describe('a server process', () => {
  let program: string
  beforeAll(async () => {
    program = await bundleServedProcess()
  }, 60_000)
  afterAll(removeBundle)

  it('killed with -9 while two people type keeps everything it acknowledged', async () => {
    const folder = await folderWithNotebook()
    let expected = 'Tern Watch'
    for (let life = 0; life < 3; life += 1) {
      const { address, kill } = await startProcess(program, folder)
      const [one, two] = [new SocketBrowser(address, 'tern-watch'), new SocketBrowser(address, 'tern-watch')]
      await until('both are welcome', () => one.title !== '' && two.title !== '')
      expect([one.title, two.title], `life ${life}`).toEqual([expected, expected])
      for (let count = 0; count < 10; count += 1) {
        one.type(0, 'a')
        two.type(0, 'b')
      }
      await until('all is saved', () => one.allSaved && two.allSaved)
      await until('they converge', () => one.title === two.title)
      expected = one.title
      await kill()
    }
    expect(expected).toHaveLength('Tern Watch'.length + 60)
  }, 60_000)

  it('ended with SIGTERM writes the file and gives the folder back', async () => {
    const folder = await folderWithNotebook()
    const { address, child } = await startProcess(program, folder)
    const browser = new SocketBrowser(address, 'tern-watch')
    await until('it is welcome', () => browser.title !== '')
    browser.type(0, 'The ')
    await until('it is saved', () => browser.allSaved)
    const gone = new Promise((resolve) => child.once('exit', resolve))
    child.kill('SIGTERM')
    expect(await gone).toBe(0)
    expect(await readFile(join(folder, 'tern-watch.json'), 'utf8')).toContain('"title": "The Tern Watch"')
    expect(JSON.parse(await readFile(join(folder, '.lease'), 'utf8')).holder).toBe('')
  }, 60_000)
})

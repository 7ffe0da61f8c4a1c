/** The server put together for this machine: data folder, kernel, application, address. */
import { mkdir } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { pino } from 'pino'
import { evaluatorFrame } from '../kernel/cells/host-browser/index.js'
import { buildApplication } from './application.js'
import type { ServerKernel } from './kernel.js'
import type { Log } from './log.js'
import { loopbackNames } from './security/index.js'
import { copyShipped, shippedNotebooks } from './shipped.js'
import { FilesStore, machineProcesses, nodeFileSystem } from './store/index.js'

export interface ServeOptions {
  /** 0 takes any free port. */
  readonly port: number
  /** A loopback name; anything else is refused until there are people and roles. */
  readonly host?: string
  readonly dataFolder: string
  /** Warnings and faults go to standard error when absent. */
  readonly log?: Log
  /** Opens the kernel; the built one when absent. */
  readonly openKernel?: () => Promise<OpenedKernel>
}

export interface OpenedKernel {
  readonly kernel: ServerKernel
  close(): Promise<void>
}

export interface RunningServer {
  /** `http://127.0.0.1:4180/` */
  readonly address: string
  /** Takes no more requests, writes every open notebook's file, gives the data folder back. */
  close(): Promise<void>
}

/** A reason not to serve, in a sentence for the operator. */
export class CannotServe extends Error {
  override readonly name = 'CannotServe'
}

/** Folders of the build and the program: this module runs as `.build/server/serve.js`, tests run it as `server/serve.ts`. */
const here = fileURLToPath(new URL('..', import.meta.url))
const root = here.replace(/[\\/]\.build[\\/]?$/, '')
const buildFolder = join(root, '.build')

/** Starts serving. Throws CannotServe when the address or the data folder cannot be had. */
export async function serve({
  port,
  host = '127.0.0.1',
  dataFolder,
  log = operatorLog(),
  openKernel = openBuiltKernel,
}: ServeOptions): Promise<RunningServer> {
  refuseOpenAddress(host)
  const folder = resolve(dataFolder)
  await mkdir(folder, { recursive: true }).catch((error: Error) => {
    throw new CannotServe(
      `The data folder ${folder} cannot be made (${error.message}); choose another with --data FOLDER.`,
    )
  })
  const store = new FilesStore({ files: nodeFileSystem, folder, processes: machineProcesses })
  await store.start().catch((error: Error) => {
    throw new CannotServe(error.message)
  })
  const undo: (() => Promise<void>)[] = [() => store.close()]
  try {
    const opened = await openKernel()
    undo.unshift(() => opened.close())
    const shippedFolder = join(root, 'notebooks')
    await copyShipped({ store, files: nodeFileSystem, dataFolder: folder, shippedFolder })
    const { app, background } = await buildApplication({
      store,
      kernel: opened.kernel,
      clientFolder: join(buildFolder, 'client'),
      kernelFolder: join(buildFolder, 'kernel'),
      framePage: evaluatorFrame(),
      shipped: shippedNotebooks(shippedFolder),
      log,
    })
    undo.unshift(() => app.close())
    await app.listen({ port, host }).catch((error: NodeJS.ErrnoException) => {
      throw new CannotServe(describeListening(error, port, host))
    })
    for (const { id } of (await store.list()).notebooks) background.ask(id)
    return { address: addressOf(app.server.address(), host), close: () => closeAll(undo) }
  } catch (error) {
    await closeAll(undo)
    throw error
  }
}

async function closeAll(steps: readonly (() => Promise<void>)[]): Promise<void> {
  for (const step of steps) await step()
}

function refuseOpenAddress(host: string): void {
  const names: readonly string[] = [...loopbackNames, '::1']
  if (names.includes(host.toLowerCase())) return
  throw new CannotServe(
    `This server has no people and roles set up, so it listens on this machine only; "${host}" would open it to others. Use one of: 127.0.0.1, localhost, ::1.`,
  )
}

function describeListening(error: NodeJS.ErrnoException, port: number, host: string): string {
  if (error.code === 'EADDRINUSE')
    return `Port ${port} on ${host} is taken by another program. Choose another with --port NUMBER, for instance --port ${port < 65535 ? port + 1 : 4180}.`
  if (error.code === 'EACCES')
    return `Port ${port} may not be used by this account. Choose one above 1023 with --port NUMBER.`
  return `The server cannot listen on ${host} port ${port} (${error.message}).`
}

function addressOf(address: ReturnType<import('node:net').Server['address']>, host: string): string {
  const port = address === null || typeof address === 'string' ? 0 : address.port
  const name = host === '::1' ? '[::1]' : host
  return `http://${name}:${port}/`
}

function operatorLog(): Log {
  return pino({ level: 'warn' }, pino.destination(2))
}

async function openBuiltKernel(): Promise<OpenedKernel> {
  const { openPipelineKernel } = await import('./open-pipeline-kernel.js')
  return await openPipelineKernel(join(buildFolder, 'kernel/'))
}

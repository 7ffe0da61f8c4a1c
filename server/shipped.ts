/** Shipped notebooks are copied into a new data folder once; one that its owner binned or renamed does not come back. */
import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { NotebookId, readNotebook, writeNotebook } from '../shared/contracts/index.js'
import { replaceFile } from './store/atomic-file.js'
import type { FileSystem, Store } from './store/index.js'

const Shipped = z.object({ shipped: z.array(z.string()) })

export interface ShippingOptions {
  readonly store: Store
  readonly files: FileSystem
  readonly dataFolder: string
  /** Folder of the notebooks that come with the program. */
  readonly shippedFolder: string
}

/** Copies what was not shipped before and gives the ids of the copies. */
export async function copyShipped({
  store,
  files,
  dataFolder,
  shippedFolder,
}: ShippingOptions): Promise<readonly NotebookId[]> {
  const record = join(dataFolder, '.shipped.json')
  const before = readRecord(await files.read(record))
  const fresh = (await filesOf(shippedFolder)).filter((name) => !before.includes(name))
  const copies: NotebookId[] = []
  for (const name of fresh) {
    const reading = readNotebook(await readFile(join(shippedFolder, name), 'utf8'))
    if (!reading.ok) throw new Error(`the shipped notebook ${name} cannot be read: ${reading.reason}`)
    const { notebook } = reading
    copies.push(await store.create(name.slice(0, -extension.length), (id) => writeNotebook({ ...notebook, id })))
    await replaceFile(
      files,
      record,
      `${JSON.stringify({ shipped: [...before, ...fresh.slice(0, copies.length)] }, null, 2)}\n`,
    )
  }
  return copies
}

/** The notebooks that come with the program, each by its name, which is the id of its copy in a new data folder. */
export interface ShippedNotebooks {
  names(): Promise<readonly string[]>
  /** The text of one; `undefined` when none has that name. */
  read(name: string): Promise<string | undefined>
}

export function shippedNotebooks(shippedFolder: string): ShippedNotebooks {
  return {
    names: async () => (await filesOf(shippedFolder)).map((name) => name.slice(0, -extension.length)),
    async read(name) {
      const id = NotebookId.safeParse(name)
      return id.success
        ? await readFile(join(shippedFolder, `${id.data}${extension}`), 'utf8').catch(() => undefined)
        : undefined
    },
  }
}

const extension = '.json'

async function filesOf(folder: string): Promise<readonly string[]> {
  return (await readdir(folder).catch(() => [])).filter((name) => name.endsWith(extension)).sort()
}

function readRecord(bytes: Uint8Array | undefined): readonly string[] {
  if (bytes === undefined) return []
  try {
    return Shipped.parse(JSON.parse(new TextDecoder().decode(bytes))).shipped
  } catch {
    return []
  }
}

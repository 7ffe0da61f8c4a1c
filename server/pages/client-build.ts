/** Which files of the built client a page links, from the manifest that the build leaves beside them. */
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'

const Manifest = z.record(
  z.string(),
  z.object({
    file: z.string(),
    name: z.string().optional(),
    isEntry: z.boolean().optional(),
    css: z.array(z.string()).optional(),
    imports: z.array(z.string()).optional(),
  }),
)

export interface PageAssets {
  readonly scripts: readonly string[]
  readonly styles: readonly string[]
  /** Modules the script will import, so that the browser fetches them at once. */
  readonly preloads: readonly string[]
}

export interface ClientBuild {
  /** Assets of the entry of that name; nothing when the client has no such entry or is not built. */
  entry(name: string): PageAssets
}

const nothing: PageAssets = { scripts: [], styles: [], preloads: [] }

export async function readClientBuild(folder: string): Promise<ClientBuild> {
  const text = await readFile(join(folder, '.vite', 'manifest.json'), 'utf8').catch(() => undefined)
  if (text === undefined) return { entry: () => nothing }
  const manifest = Manifest.parse(JSON.parse(text))
  return {
    entry(name) {
      const entry = Object.values(manifest).find((chunk) => chunk.isEntry === true && chunk.name === name)
      if (entry === undefined) return nothing
      const imported = new Set<string>()
      const follow = (keys: readonly string[] = []) => {
        for (const key of keys) {
          if (imported.has(key)) continue
          imported.add(key)
          follow(manifest[key]?.imports)
        }
      }
      follow(entry.imports)
      const chunks = [...imported].flatMap((key) => manifest[key] ?? [])
      const address = (file: string) => `/${file}`
      return {
        scripts: entry.file.endsWith('.js') ? [address(entry.file)] : [],
        styles: [...new Set([...chunks, entry].flatMap((chunk) => chunk.css ?? []))].map(address),
        preloads: chunks.map((chunk) => address(chunk.file)),
      }
    },
  }
}

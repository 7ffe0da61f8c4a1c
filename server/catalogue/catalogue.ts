/** The method catalogue as the server holds it. */
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { type Method, MethodCatalogue } from '../../shared/contracts/index.js'
import { catalogueFile } from './catalogue-file.js'

/** The built catalogue; empty where the kernel was built without one. */
export async function readCatalogue(folder: string): Promise<readonly Method[]> {
  const text = await readFile(join(folder, catalogueFile), 'utf8').catch(() => undefined)
  return text === undefined ? [] : MethodCatalogue.parse(JSON.parse(text)).methods
}

/** Whether the build was made from the present sources, and making it when it was not. */
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { build } from './build.js'
import { buildFolder, lockHash, root } from './preparation.js'

const sourceFolders = ['shared', 'kernel', 'server', 'client']
const mark = join(buildFolder, 'sources.sha256')

/** Builds when a source file has changed since the last build. */
export async function ensureBuilt(say) {
  const hash = sourceHash()
  if (isBuiltFrom(hash)) return
  await build(say)
  mkdirSync(buildFolder, { recursive: true })
  writeFileSync(mark, hash)
}

/** True when the build was made from the present sources. */
export function isBuilt() {
  return isBuiltFrom(sourceHash())
}

function isBuiltFrom(hash) {
  return existsSync(mark) && readFileSync(mark, 'utf8') === hash
}

function sourceHash() {
  const hash = createHash('sha256').update(lockHash())
  for (const file of sourceFiles())
    hash
      .update(file)
      .update('\0')
      .update(readFileSync(join(root, file)))
      .update('\0')
  return hash.digest('hex')
}

function sourceFiles() {
  const files = ['tsconfig.json', 'package.json']
  for (const folder of sourceFolders)
    for (const entry of readdirSync(join(root, folder), { recursive: true, withFileTypes: true }))
      if (entry.isFile()) files.push(join(entry.parentPath, entry.name).slice(root.length))
  return files.sort()
}

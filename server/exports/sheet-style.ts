/** The style of an exported sheet: the very files that the page is built from, then what a file of its own adds. */
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** This module runs as `.build/server/exports/`, tests run it as `server/exports/`; the styles lie in the sources only. */
const here = fileURLToPath(new URL('../..', import.meta.url))
const folder = join(here.replace(/[\\/]\.build[\\/]?$/, ''), 'shared', 'rendering', 'styles')

/** In the order in which the page has them. */
const files = [
  'tokens',
  'dark',
  'sheet',
  'columns',
  'prose',
  'lines',
  'figure',
  'record-tables',
  'method',
  'narrow',
  'print',
  'export',
] as const

let style: Promise<string> | undefined

export function sheetStyle(): Promise<string> {
  style ??= Promise.all(files.map((name) => readFile(join(folder, `${name}.css`), 'utf8'))).then(
    (texts) => texts.join('\n'),
    (failure: unknown) => {
      style = undefined
      throw failure
    },
  )
  return style
}

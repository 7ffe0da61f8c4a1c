/** Reading and writing the notebook file. Reading refuses with a reason and never alters the bytes it was given. */
import type { z } from 'zod'
import { limits } from './limits.js'
import { migrate } from './migrations.js'
import { Notebook, notebookFormat, notebookVersion } from './notebook.js'
import { endSentence, suggest } from './suggest.js'

export type NotebookReading =
  | { readonly ok: true; readonly notebook: Notebook }
  | { readonly ok: false; readonly reason: string }

/** Reads a notebook from the text of its file. */
export function readNotebook(text: string): NotebookReading {
  if (text.length > limits.notebookBytes)
    return refuse(`the file has ${text.length} characters; a notebook holds at most ${limits.notebookBytes}`)
  const depth = jsonDepth(text)
  if (depth > limits.jsonDepth)
    return refuse(`the JSON is nested ${depth} levels deep; at most ${limits.jsonDepth} are read`)
  let document: unknown
  try {
    document = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text)
  } catch (error) {
    return refuse(`the file is not JSON (${error instanceof Error ? error.message : String(error)})`)
  }
  return readNotebookDocument(document)
}

/** Reads a notebook from parsed JSON. */
export function readNotebookDocument(document: unknown): NotebookReading {
  if (typeof document !== 'object' || document === null || Array.isArray(document))
    return refuse('the file holds no JSON object; a notebook is an object with format, version, title and cells')
  const record = document as Record<string, unknown>
  if (record.format !== notebookFormat)
    return refuse(`its format is ${shown(record.format)}; a notebook says "format": "${notebookFormat}"`)
  const version = record.version
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return refuse(`its version is ${shown(version)}; versions are whole numbers from 1 to ${notebookVersion}`)
  if (version > notebookVersion)
    return refuse(
      `it has version ${version}, written by a newer Hoverfolio; this one reads up to version ${notebookVersion}`,
    )
  const parsed = Notebook.safeParse(migrate(record, version, notebookVersion))
  return parsed.success ? { ok: true, notebook: parsed.data } : refuse(describeIssues(parsed.error))
}

/** Writes keys in a stable order with one source line per line of text, ending in a line feed. */
export function writeNotebook(notebook: Notebook): string {
  const { format, version, id, title, titleBlock, cells, threads, revisions } = notebook
  const ordered = {
    format,
    version,
    ...(id === undefined ? {} : { id }),
    title,
    ...(titleBlock === undefined ? {} : { titleBlock }),
    cells: cells.map(({ id, order, number, kind, source }) => ({
      id,
      ...(order === undefined ? {} : { order }),
      ...(number === undefined ? {} : { number }),
      kind,
      source,
    })),
    ...(threads === undefined ? {} : { threads }),
    ...(revisions === undefined ? {} : { revisions }),
  }
  return `${JSON.stringify(ordered, null, 2)}\n`
}

/** The first few problems of a failed schema as sentences with the path of each. */
export function describeIssues(error: z.ZodError, most = 4): string {
  const sentences = error.issues.slice(0, most).map((issue) => {
    const place =
      issue.path.length === 0
        ? 'the notebook'
        : issue.path.map((part) => (typeof part === 'number' ? part + 1 : String(part))).join(' ')
    return issue.code === 'unrecognized_keys' ? unknownKeys(place, issue.keys) : `${place}: ${issue.message}`
  })
  const more = error.issues.length - sentences.length
  return more > 0 ? `${sentences.join('; ')}; and ${more} more` : sentences.join('; ')
}

const knownKeys = [
  'format',
  'version',
  'id',
  'title',
  'titleBlock',
  'cells',
  'threads',
  'revisions',
  'order',
  'kind',
  'source',
  'number',
  'question',
  'project',
  'basis',
  'prepared',
  'checked',
  'approved',
  'date',
  'revision',
]

function unknownKeys(place: string, keys: readonly string[]): string {
  const key = keys[0] ?? ''
  return `${place} has the unknown key "${key}"${suggest(key, knownKeys)}`
}

/** Depth of brackets outside strings, counted without parsing so that a hostile file cannot exhaust the stack. */
function jsonDepth(text: string): number {
  let depth = 0
  let deepest = 0
  let inString = false
  for (let index = 0; index < text.length; index += 1) {
    const character = text.charCodeAt(index)
    if (inString) {
      if (character === 92) index += 1
      else if (character === 34) inString = false
    } else if (character === 34) inString = true
    else if (character === 91 || character === 123) {
      depth += 1
      if (depth > deepest) deepest = depth
    } else if (character === 93 || character === 125) depth -= 1
  }
  return deepest
}

function refuse(reason: string): NotebookReading {
  return { ok: false, reason: endSentence(`This notebook cannot be opened: ${reason}`) }
}

function shown(value: unknown): string {
  const text = value === undefined ? 'missing' : JSON.stringify(value)
  return text.length > 60 ? `${text.slice(0, 57)}...` : text
}

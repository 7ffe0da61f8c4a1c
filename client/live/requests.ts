/** Requests to the server; a refusal becomes an error whose message is the server's sentence. */
import {
  type CellId,
  type CellResult,
  type ChangeTitleBlock,
  type ErasedSource,
  EraseReply,
  NotebookSummary,
  PostResultsReply,
  Provenance,
  TitleBlock,
  TroubleBody,
} from '../../shared/contracts/index.js'

/** The server, or the way to it, said no. `code` is of the error registry, or `UNREACHABLE`. */
export class Refusal extends Error {
  override readonly name = 'Refusal'
  readonly code: string
  constructor(code: string, message: string) {
    super(message)
    this.code = code
  }
}

export const notebookPath = (id: string, rest = '') => `/api/notebooks/${encodeURIComponent(id)}${rest}`

export async function eraseAtServer(sources: readonly string[]): Promise<readonly ErasedSource[]> {
  return EraseReply.parse(await request('POST', '/api/erase', { sources })).erased
}

/** Answers the cells whose results do not belong to the text that the server has. */
export async function postResults(id: string, results: readonly CellResult[]): Promise<readonly CellId[]> {
  return PostResultsReply.parse(await request('POST', notebookPath(id, '/results'), { results })).stale
}

export const createNotebook = async (title: string) =>
  NotebookSummary.parse(await request('POST', '/api/notebooks', { title }))

/** A new notebook with the example of a method; a method may have several forms. */
export const beginFromMethod = async (method: string, form: number) =>
  NotebookSummary.parse(await request('POST', `/api/methods/${encodeURIComponent(method)}/notebooks?form=${form}`))

/** What every export of the notebook carries, as the server has it now. */
export const readProvenance = async (id: string) =>
  Provenance.parse(await request('GET', notebookPath(id, '/provenance')))

/** `notebook` is the parsed JSON of a file; the server judges it. */
export const importNotebook = async (notebook: unknown) =>
  NotebookSummary.parse(await request('POST', '/api/notebooks', { notebook }))

export const renameNotebook = async (id: string, title: string) =>
  NotebookSummary.parse(await request('PATCH', notebookPath(id), { title }))

export const copyNotebook = async (id: string) => request('POST', notebookPath(id, '/copy'))

export const binNotebook = async (id: string) => request('DELETE', notebookPath(id))

export const restoreNotebook = async (id: string) => request('POST', notebookPath(id, '/restore'))

export const discardNotebook = async (id: string) => request('DELETE', `/api/bin/${encodeURIComponent(id)}`)

/** Answers the title block as it then stands, on disk. */
export const changeTitleBlock = async (id: string, change: ChangeTitleBlock) =>
  TitleBlock.parse(await request('PATCH', notebookPath(id, '/title-block'), change))

/** The answer as parsed JSON. Throws `Refusal`. */
export async function request(method: string, path: string, body?: unknown): Promise<unknown> {
  let response: Response
  try {
    response = await fetch(path, {
      method,
      ...(body === undefined ? {} : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    })
  } catch {
    throw new Refusal('UNREACHABLE', 'The server could not be reached; check that it is running and try again.')
  }
  const text = await response.text()
  const data: unknown = text === '' ? null : parseOrNull(text)
  if (response.ok) return data
  const trouble = TroubleBody.safeParse(data)
  if (trouble.success) throw new Refusal(trouble.data.code, trouble.data.message)
  throw new Refusal('UNREACHABLE', `The server answered with status ${response.status} and no reason; try again.`)
}

function parseOrNull(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

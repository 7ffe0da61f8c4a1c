/**
 * Everything client and server say to each other, in one file. The comment at each shape says who sends it and who
 * answers with what. Binary payloads (Yjs updates and state vectors) travel as base64 text.
 */
import { z } from 'zod'
import { CellId, Epoch, NotebookId } from './identifiers.js'
import { limits } from './limits.js'
import { Notebook, TitleBlock } from './notebook.js'
import { Provenance } from './provenance.js'
import { CellResult } from './results.js'
import { RevisionMark } from './revision.js'

const base64 = z
  .string()
  .regex(/^[A-Za-z0-9+/]*={0,2}$/)
  .max(Math.ceil((limits.updateBytes * 4) / 3) + 4)
const title = z.string().trim().min(1).max(limits.titleCharacters)

/* ---- Live document: WebSocket /api/notebooks/:id/live, text frames of JSON ---- */

/** Client to server. `hello` is first and is answered by `welcome`; each `update` is answered by `saved` or `refused`. */
export const ClientMessage = z.discriminatedUnion('type', [
  /** `epoch` is the one the client last knew; absent on its first visit. */
  z.strictObject({ type: z.literal('hello'), epoch: Epoch.optional(), stateVector: base64 }),
  /** `number` counts this connection's updates from 1, so that acknowledgements can name them. */
  z.strictObject({ type: z.literal('update'), epoch: Epoch, number: z.number().int().positive(), update: base64 }),
  z.strictObject({ type: z.literal('ping') }),
])
export type ClientMessage = z.infer<typeof ClientMessage>

/** Server to client. */
export const ServerMessage = z.discriminatedUnion('type', [
  /** Answers `hello`: what the client lacks, and the server's state vector so that the client can send what the server lacks.
   *  `rebase` is true when the client's epoch is stale: it must start a new document and carry its own text over. */
  z.strictObject({
    type: z.literal('welcome'),
    epoch: Epoch,
    sequence: z.number(),
    update: z.string(),
    stateVector: z.string(),
    rebase: z.boolean(),
  }),
  /** Answers `update` once it is on disk. Until then the client shows the edit as not yet saved. */
  z.strictObject({ type: z.literal('saved'), epoch: Epoch, sequence: z.number(), number: z.number() }),
  /** Another person's edit, or a change of the file on disk. */
  z.strictObject({ type: z.literal('edited'), epoch: Epoch, sequence: z.number(), update: z.string() }),
  /** Results that someone computed and the server accepted. */
  z.strictObject({ type: z.literal('results'), results: z.array(CellResult) }),
  /** The title block as it stands: after `welcome`, and to everyone when it was changed. */
  z.strictObject({ type: z.literal('titleBlock'), titleBlock: TitleBlock }),
  /** A revision was issued or signed: what the title block says of the latest one now. */
  z.strictObject({ type: z.literal('revision'), mark: RevisionMark }),
  /** How many browsers have this notebook open. */
  z.strictObject({ type: z.literal('present'), readers: z.number() }),
  /** Answers an `update` or `hello` that cannot be taken; `number` names the update. */
  z.strictObject({ type: z.literal('refused'), code: z.string(), message: z.string(), number: z.number().optional() }),
  z.strictObject({ type: z.literal('pong') }),
])
export type ServerMessage = z.infer<typeof ServerMessage>

/* ---- Requests ---- */

/** GET /api/notebooks -> NotebookList */
export const NotebookSummary = z.strictObject({
  id: NotebookId,
  title: z.string(),
  question: z.string().optional(),
  cells: z.number(),
  /** ISO 8601. */
  changed: z.string(),
})
export type NotebookSummary = z.infer<typeof NotebookSummary>
/** A file in the data folder that is no notebook this version can open; its bytes are kept. */
export const RefusedFile = z.strictObject({ file: z.string(), reason: z.string() })
export type RefusedFile = z.infer<typeof RefusedFile>
export const NotebookList = z.strictObject({
  notebooks: z.array(NotebookSummary),
  binned: z.array(NotebookSummary),
  refused: z.array(RefusedFile),
})
export type NotebookList = z.infer<typeof NotebookList>

/** POST /api/notebooks: an empty notebook by title, or a whole one -> NotebookSummary */
export const CreateNotebook = z.union([z.strictObject({ title }), z.strictObject({ notebook: Notebook })])
export type CreateNotebook = z.infer<typeof CreateNotebook>

/** PATCH /api/notebooks/:id -> NotebookSummary */
export const RenameNotebook = z.strictObject({ title })
export type RenameNotebook = z.infer<typeof RenameNotebook>

/**
 * PATCH /api/notebooks/:id/title-block -> the title block as it then stands, on disk. `from` is what the sender saw ('' for an empty
 * field): a field that reads otherwise by now is refused with TITLE_BLOCK_CHANGED, so that nobody's words are replaced unseen.
 */
export const TitleBlockField = TitleBlock.keyof()
export type TitleBlockField = z.infer<typeof TitleBlockField>
export const ChangeTitleBlock = z.strictObject({
  field: TitleBlockField,
  from: z.string().max(1000),
  to: z.string().max(1000),
})
export type ChangeTitleBlock = z.infer<typeof ChangeTitleBlock>

/** GET /api/notebooks/:id -> the notebook file as it stands; GET /api/notebooks/:id/file the same as a download. */
/** POST /api/notebooks/:id/copy -> NotebookSummary of the copy */
/** DELETE /api/notebooks/:id moves it to the bin; POST /api/notebooks/:id/restore takes it out again -> NotebookSummary */
/** DELETE /api/bin/:id deletes for good what is in the bin, with its results and revisions; answers nothing. */

/** POST /api/notebooks/:id/results: results computed in the browser; those whose fingerprint is stale are named, not stored. */
export const PostResults = z.strictObject({ results: z.array(CellResult).max(limits.cells) })
export type PostResults = z.infer<typeof PostResults>
export const PostResultsReply = z.strictObject({ accepted: z.array(CellId), stale: z.array(CellId) })
export type PostResultsReply = z.infer<typeof PostResultsReply>

/** GET /api/notebooks/:id/results -> stored results whose fingerprint matches the live source. */
export const StoredResults = z.strictObject({ results: z.array(CellResult) })
export type StoredResults = z.infer<typeof StoredResults>

/** GET /api/notebooks/:id/provenance -> Provenance of what the server has: what every export of it carries. */
/** GET /api/notebooks/:id/sheet.html, register.csv, compliance.csv -> files to keep and pass on. */

/** POST /api/erase: TypeScript of cells in, JavaScript with types erased out, so that a first run need not wait for the compiler. */
export const EraseRequest = z.strictObject({
  sources: z.array(z.string().max(limits.sourceCharacters)).max(limits.cells),
})
export type EraseRequest = z.infer<typeof EraseRequest>
export const ErasedSource = z.union([
  z.strictObject({ ok: z.literal(true), code: z.string(), map: z.string() }),
  z.strictObject({ ok: z.literal(false), line: z.number(), column: z.number(), message: z.string() }),
])
export type ErasedSource = z.infer<typeof ErasedSource>
export const EraseReply = z.strictObject({ erased: z.array(ErasedSource) })
export type EraseReply = z.infer<typeof EraseReply>

/* ---- Pages ---- */

/**
 * What the page of a notebook carries for its script, as JSON in `<script type="application/json" id="page-data">`: the sheet
 * as the server drew it. `results` are those whose fingerprint matches the text; a cell named in `outOfDate` was drawn with the
 * older result given there.
 */
export const PageData = z.strictObject({
  id: NotebookId,
  notebook: Notebook,
  results: z.array(CellResult),
  outOfDate: z.array(CellResult),
  kernelHash: z.string(),
  /** The latest revision, where one was issued. */
  revision: RevisionMark.optional(),
  /** Of what was drawn; absent where it could not be had. */
  provenance: Provenance.optional(),
})
export type PageData = z.infer<typeof PageData>
